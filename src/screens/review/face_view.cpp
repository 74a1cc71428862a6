#include "screens/review/face_view.h"

#include <algorithm>
#include <array>

#include "pour/log/log_entry.h"
#include "pour/outlook/face_bands.h"
#include "pour/plan/row_reach.h"
#include "record/model/dose_map.h"

namespace rb::screens {

namespace {

// Of what is allowed: well within, on the way, near, over.
constexpr std::array kShares{0.5, 0.75, 1.0};

Patch around(const Patch& a, const Patch& b) {
  const Length left = std::min(a.x, b.x);
  const Length low = std::min(a.z, b.z);
  return {left, low, std::max(a.x + a.w, b.x + b.w) - left, std::max(a.z + a.h, b.z + b.h) - low};
}

std::optional<Patch> lift_box(const PourState& state, std::size_t element, int number,
                              std::optional<std::size_t> bay) {
  const Element& planned = state.plan->elements[element];
  const LiftState* of = lift_numbered(state.elements[element], number);
  if (of == nullptr) return std::nullopt;
  const LiftState& lift = *of;
  std::optional<Patch> box;
  for (std::size_t b = 0; b < lift.top.size(); ++b) {
    if ((bay && *bay != b) || lift.top[b] <= lift.bottom[b]) continue;
    const Patch one{planned.bay_start(b), lift.bottom[b], planned.bays[b],
                    lift.top[b] - lift.bottom[b]};
    box = box ? around(*box, one) : one;
  }
  return box;
}

std::optional<Patch> load_box(const PourState& state, std::size_t element, const TicketId& ticket,
                              const std::vector<LoadBand>& loads) {
  const Element& planned = state.plan->elements[element];
  const auto truck = truck_of(state, ticket);
  if (!truck) return std::nullopt;
  std::optional<Patch> box;
  for (const LoadBand& band : loads) {
    if (std::find(band.trucks.begin(), band.trucks.end(), *truck) == band.trucks.end()) continue;
    const Patch one{planned.bay_start(band.bay), band.from, planned.bays[band.bay],
                    band.to - band.from};
    box = box ? around(*box, one) : one;
  }
  return box;
}

}  // namespace

FaceShading look_of_dose(std::size_t dose_class) {
  constexpr std::array<FaceShading, kDoseClasses> kLooks{{{3, FacePattern::slanted},
                                                          {2, FacePattern::slanted},
                                                          {1, FacePattern::slanted},
                                                          {0, FacePattern::plain},
                                                          {1, FacePattern::barred},
                                                          {2, FacePattern::barred}}};
  return kLooks.at(dose_class);
}

FaceShading look_of_share(double share) {
  std::uint8_t shade = 0;
  while (shade < kShares.size() && share >= kShares.at(shade)) ++shade;
  return {shade, shade == kMostShade ? FacePattern::barred : FacePattern::plain};
}

std::vector<FaceKey> face_keys(FaceKind kind, const PourState& state, std::size_t element) {
  using Says = FaceKey::Says;
  std::vector<FaceKey> keys;
  if (kind == FaceKind::dose) {
    DoseMap map;
    map.dose_min = state.plan->limits.dose_min.value;
    map.dose_max = state.plan->limits.dose_max.value;
    const auto edges = dose_class_edges(map);
    keys.push_back({look_of_dose(0), {}, {}, Says::none});
    for (std::size_t i = 0; i <= edges.size(); ++i) {
      FaceKey key{.look = look_of_dose(i + 1)};
      if (i > 0) key.from = edges.at(i - 1).count();
      if (i < edges.size()) key.to = edges.at(i).count();
      keys.push_back(key);
    }
    return keys;
  }
  const bool held = kind != FaceKind::head || state.plan->elements[element].form_rating;
  if (!held) return {{{}, {}, {}, Says::unknown}};
  for (std::size_t i = 0; i <= kShares.size(); ++i) {
    FaceKey key;
    if (i > 0) key.from = kShares.at(i - 1);
    if (i < kShares.size()) key.to = kShares.at(i);
    key.look = look_of_share(key.from.value_or(0));
    keys.push_back(key);
  }
  if (kind == FaceKind::load) keys.push_back({{1, FacePattern::slanted}, {}, {}, Says::unknown});
  if (kind == FaceKind::cover) keys.push_back({{0, FacePattern::slanted}, {}, {}, Says::open});
  return keys;
}

std::optional<Patch> place_of(const PourState& state, const Finding& finding,
                              const std::vector<LoadBand>& loads) {
  if (!finding.element || *finding.element >= state.elements.size()) return std::nullopt;
  const Element& planned = state.plan->elements[*finding.element];
  if (finding.row && *finding.row < planned.rows.size()) {
    const RowSpan span = span_of(planned, planned.rows[*finding.row]);
    const Length high = std::min(span.high, planned.rise_height());
    return Patch{span.left, span.low, span.right - span.left, std::max(Length{}, high - span.low)};
  }
  if (finding.lift) return lift_box(state, *finding.element, *finding.lift, finding.bay);
  if (finding.ticket) return load_box(state, *finding.element, *finding.ticket, loads);
  if (finding.bay && *finding.bay < planned.bays.size()) {
    return Patch{planned.bay_start(*finding.bay),
                 {},
                 planned.bays[*finding.bay],
                 state.elements[*finding.element].tops[*finding.bay].standing()};
  }
  return std::nullopt;
}

std::vector<FaceMark> make_face_marks(const PourState& state, const CheckReport& report,
                                      std::size_t element, Side side,
                                      const std::vector<LoadBand>& loads) {
  std::vector<FaceMark> marks;
  std::size_t first = 0;
  int number = 0;
  for (const auto& same : by_cause(report.findings)) {
    ++number;
    const Finding& told = same.front();
    const std::size_t here = first;
    first += same.size();
    if (told.element && *told.element != element) continue;
    if (told.side && *told.side != side) continue;
    FaceMark& mark = marks.emplace_back();
    mark.number = number;
    mark.finding = here;
    mark.count = same.size();
    if (!told.element) continue;
    if (const auto box = place_of(state, told, loads)) mark.box.emplace(*box);
  }
  number = 0;
  for (const EventRef ref : state.blemishes) {
    const auto* seen = std::get_if<event::Blemish>(&state.log[ref].event.what);
    if (seen == nullptr) continue;
    ++number;
    if (seen->element != state.plan->elements[element].id || seen->side != side) continue;
    FaceMark& mark = marks.emplace_back();
    mark.number = number;
    mark.blemish = true;
    mark.box.emplace(seen->patch);
    mark.ref = ref;
  }
  return marks;
}

}  // namespace rb::screens
