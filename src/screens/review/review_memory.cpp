#include "screens/review/review_memory.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "check/review.h"
#include "pour/log/as_it_was.h"
#include "pour/outlook/face_bands.h"
#include "pour/outlook/form.h"
#include "pour/plan/row_reach.h"
#include "record/model/dose_map.h"
#include "trade/dose/dose_in_time.h"

namespace rb::screens {

// Named, for what is kept has them as fields.
namespace kept {

/// A pour as it stands: another one, or one with another tap, has another.
struct Standing {
  PourId pour{};
  std::size_t events = 0;
  std::uint64_t stamp = 0;
  const Plan* plan = nullptr;
  std::size_t findings = 0;
  bool operator==(const Standing&) const = default;
};

Standing standing_of(const PourState& state, const CheckReport& report) {
  return {state.pour, state.log.size(), AsItWas::stamp(state), state.plan.get(),
          report.findings.size()};
}

// Layers of the dose as parts of a map: cut into classes once for each that is new.
class DoseParts {
 public:
  DoseParts(const PourState& state, std::size_t element, Side side)
      : element_(element), side_(side), dose_(face_of(state, element, {side})) {
    map_.dose_min = state.plan->limits.dose_min.value;
    map_.dose_max = state.plan->limits.dose_max.value;
  }

  void add_to(std::vector<FacePatch>& patches, Seconds at) {
    if (known_.size() > kKept) known_.clear();
    for (const trade::DoseInTime::Layer& layer : dose_.at(at)) {
      const auto [it, fresh] = known_.try_emplace(layer.turn);
      if (fresh) it->second = cut(layer.field);
      patches.insert(patches.end(), it->second.begin(), it->second.end());
    }
  }

 private:
  static constexpr std::size_t kKept = 400;

  [[nodiscard]] std::vector<FacePatch> cut(const trade::DoseField& field) {
    map_.patches = side_dose(element_, side_, field).patches;
    const auto classes = dose_bands(map_);
    std::vector<FacePatch> made;
    for (std::size_t c = 0; c < classes.size(); ++c) {
      for (const DoseBand& band : classes.at(c)) {
        made.push_back({band.x, band.z, band.w, band.h, look_of_dose(c)});
      }
    }
    return made;
  }

  std::size_t element_;
  Side side_;
  trade::DoseInTime dose_;
  DoseMap map_;
  std::map<std::uint64_t, std::vector<FacePatch>> known_;
};

}  // namespace kept

namespace {

FacePatch patch_of(const Element& planned, std::size_t bay, Length from, Length to,
                   FaceShading look) {
  return {in_metres(planned.bay_start(bay)), in_metres(from), in_metres(planned.bays[bay]),
          in_metres(to - from), look};
}

FaceLabel label_over(const FacePatch& patch, std::variant<std::string, Seconds, Pressure> tells) {
  return {patch.x, patch.z, patch.w, patch.h, std::move(tells)};
}

}  // namespace

struct ReviewMemory::Inside {
  const PourState* state = nullptr;
  const CheckReport* report = nullptr;
  kept::Standing standing;
  std::size_t element = 0;
  Side side = Side::near_side;
  std::optional<kept::DoseParts> dose;
  std::optional<std::vector<LoadBand>> loads;
  std::optional<std::vector<CoverBand>> covers;
  std::optional<std::vector<HeadSpan>> heads;
  std::optional<AxisView> axis;
  std::optional<std::size_t> axis_of;
  std::optional<SpotView> spot;
  std::tuple<std::size_t, Side, Spot> spot_of;
  struct Behind {
    Finding finding;
    std::vector<EventRef> taps;
  };
  std::map<std::size_t, Behind> behind;  ///< by the finding's place in the report
  std::optional<std::set<std::string>> accepted;
  std::optional<std::vector<FaceMark>> marks;
  std::tuple<std::size_t, Side, Seconds> marks_of;
  FaceMap face;

  void turn_to(std::size_t of, Side on) {
    if (of == element && on == side) return;
    if (of != element) {
      loads.reset();
      covers.reset();
    }
    element = of;
    side = on;
    dose.reset();
    heads.reset();
  }
  [[nodiscard]] const Element& planned() const { return state->plan->elements[element]; }
  [[nodiscard]] const ElementState& there() const { return state->elements[element]; }

  const std::vector<LoadBand>& load_list() {
    if (!loads) loads = load_bands(*state, element);
    return *loads;
  }

  void outline(Seconds at);
  void doses(Seconds at);
  void cover(Seconds at);
  void head(Seconds at);
  void load(Seconds at);
};

ReviewMemory::ReviewMemory() : in_(std::make_unique<Inside>()) {}
ReviewMemory::~ReviewMemory() = default;

void ReviewMemory::look(const PourState& state, const CheckReport& report) {
  in_->state = &state;
  in_->report = &report;
  kept::Standing now = kept::standing_of(state, report);
  if (now == in_->standing) return;
  auto fresh = std::make_unique<Inside>();
  fresh->state = &state;
  fresh->report = &report;
  fresh->standing = std::move(now);
  fresh->element = in_->element;
  fresh->side = in_->side;
  in_ = std::move(fresh);
}

const PourState& ReviewMemory::state() const {
  return *in_->state;
}
const CheckReport& ReviewMemory::report() const {
  return *in_->report;
}

const std::set<std::string>& ReviewMemory::accepted() {
  // What is found in an open pour changes by itself: no acceptance is taken for one of today.
  if (in_->accepted && in_->state->closed) return *in_->accepted;
  std::set<std::string>& keys = in_->accepted.emplace();
  if (in_->state->reviews.empty()) return keys;
  for (const ReviewedGroup& group : review_of(*in_->state, *in_->report).groups) {
    if (group.standing == Standing::accepted) keys.insert(group.key);
  }
  return keys;
}

void ReviewMemory::Inside::outline(Seconds at) {
  const Element& element_there = planned();
  face.side = side;
  face.length = element_there.length;
  face.height = element_there.rise_height();
  face.bay_edges.assign(1, Length{});
  for (const Length& bay : element_there.bays) {
    face.bay_edges.push_back(face.bay_edges.back() + bay);
  }
  face.openings = element_there.openings;
  face.tops.clear();
  for (const trade::TopCurve& top : there().tops) face.tops.push_back(top.at(at));
  face.lifts.clear();
  for (const LiftState& lift : there().lifts) {
    if (lift.next_start.value_or(at) < at) {
      face.lifts.push_back(*std::max_element(lift.top.begin(), lift.top.end()));
    }
  }
  face.rows.clear();
  for (std::size_t r = 0; r < element_there.rows.size(); ++r) {
    const Row& row = element_there.rows[r];
    if (row.side != side || row.motors.empty()) continue;
    const RowSpan span = span_of(element_there, row);
    face.rows.push_back({row.id.text, row.z, span.left, span.right, false});
    const auto& runs = there().rows[r].runs;
    const auto next =
        std::upper_bound(runs.begin(), runs.end(), at,
                         [&](Seconds m, std::size_t run) { return m < state->runs[run].from; });
    if (next == runs.begin()) continue;
    const RunState& run = state->runs[*(next - 1)];
    face.rows.back().running = at < counts_until(*state, run, state->last, Unended::to_next_event);
  }
  face.patches.clear();
  face.labels.clear();
}

void ReviewMemory::Inside::doses(Seconds at) {
  if (!planned().has_rows(side)) return;  // nothing is judged there
  if (!dose) dose.emplace(*state, element, side);
  dose->add_to(face.patches, at);
}

void ReviewMemory::Inside::cover(Seconds at) {
  if (!covers) covers = cover_bands(*state, element);
  for (const CoverBand& band : *covers) {
    const Length to = std::min(band.to, there().tops[band.bay].at(at));
    if (to <= band.from) continue;
    FaceShading look;
    const bool stands = at > band.came && !band.last;
    if (stands) look = look_of_share(band.share(at));
    const bool open = stands && (!band.covered || *band.covered > at);
    if (open && look.shade < kMostShade) look.pattern = FacePattern::slanted;
    face.patches.push_back(patch_of(planned(), band.bay, band.from, to, look));
    if (stands) face.labels.push_back(label_over(face.patches.back(), band.age(at)));
  }
}

void ReviewMemory::Inside::head(Seconds at) {
  if (!heads) heads = head_spans(*state, element, side);
  const auto& rating = planned().form_rating;
  for (const HeadBand& band : heads_until(there(), *heads, at)) {
    face.labels.push_back(
        label_over(patch_of(planned(), band.bay, band.from, band.to, {}), band.low));
    if (!rating) {
      face.patches.push_back(patch_of(planned(), band.bay, band.from, band.to, {}));
      continue;
    }
    // Cut where it passes from one share of the rating to the next.
    Length from = band.from;
    for (const double share : {1.0, 0.75, 0.5, 0.0}) {
      const Pressure least = *rating * share;
      if (band.low <= least) continue;
      Length to = band.to;
      if (band.high < least) {
        to = band.from + (band.to - band.from) * ((band.low - least) / (band.low - band.high));
      }
      if (to <= from) continue;
      face.patches.push_back(patch_of(
          planned(), band.bay, from, to,
          share >= 1 ? FaceShading{kMostShade, FacePattern::barred} : look_of_share(share)));
      from = to;
    }
  }
}

void ReviewMemory::Inside::load(Seconds at) {
  const Seconds oldest = state->plan->limits.load_age_max.value;
  for (const LoadBand& band : load_list()) {
    if (band.came >= at) continue;
    const Length to = std::min(band.to, there().tops[band.bay].at(at));
    if (to <= band.from) continue;
    const bool known = !band.trucks.empty() && band.age;
    const FaceShading look =
        known ? look_of_share(*band.age / oldest) : FaceShading{1, FacePattern::slanted};
    face.patches.push_back(patch_of(planned(), band.bay, band.from, to, look));
    std::string tickets;
    for (const std::size_t truck : band.trucks) {
      tickets += (tickets.empty() ? "" : " ") + state->trucks[truck].ticket.text;
    }
    face.labels.push_back(label_over(face.patches.back(), tickets.empty() ? "?" : tickets));
  }
}

const FaceMap& ReviewMemory::face(FaceKind kind, std::size_t element, Side side, Seconds at) {
  Inside& in = *in_;
  in.turn_to(element, side);
  in.outline(at);
  switch (kind) {
    case FaceKind::dose:
      in.doses(at);
      break;
    case FaceKind::cover:
      in.cover(at);
      break;
    case FaceKind::head:
      in.head(at);
      break;
    case FaceKind::load:
      in.load(at);
      break;
  }
  return in.face;
}

const AxisView& ReviewMemory::axis(std::size_t element) {
  Inside& in = *in_;
  if (!in.axis || in.axis_of != element) {
    in.axis = make_axis_view(*in.state, *in.report, element);
    in.axis_of = element;
  }
  return *in.axis;
}

const SpotView& ReviewMemory::spot(std::size_t element, Side side, Spot spot) {
  Inside& in = *in_;
  const std::tuple asked{element, side, spot};
  if (!in.spot || in.spot_of != asked) {
    in.spot = make_spot_view(*in.state, element, side, spot);
    in.spot_of = asked;
  }
  return *in.spot;
}

const std::vector<EventRef>& ReviewMemory::behind(std::size_t finding) {
  const Finding& asked = in_->report->findings[finding];
  const auto [it, fresh] = in_->behind.try_emplace(finding);
  if (fresh || !(it->second.finding == asked)) {
    it->second = {asked, taps_behind(*in_->state, asked)};
  }
  return it->second.taps;
}

bool ReviewMemory::lets_through(const TapFilter& filter, std::size_t finding) {
  const Finding& asked = in_->report->findings[finding];
  if (filter.lift && asked.lift != filter.lift) return false;
  if (filter.row) {
    if (!asked.row || !asked.element) return false;
    const Element& planned = in_->state->plan->elements[*asked.element];
    const Row& row = planned.rows[*asked.row];
    if (!(RowPlace{planned.id, row.side, row.id} == *filter.row)) return false;
  }
  if (!filter.person && !filter.late && !filter.corrected) return true;
  TapFilter by_taps = filter;
  by_taps.row.reset();
  by_taps.lift.reset();
  const auto& taps = behind(finding);
  return std::any_of(taps.begin(), taps.end(), [&](EventRef tap) {
    return screens::lets_through(*in_->state, by_taps, tap);
  });
}

const std::vector<FaceMark>& ReviewMemory::marks(std::size_t element, Side side) {
  Inside& in = *in_;
  in.turn_to(element, side);
  const std::tuple asked{element, side, in.report->asof.at};
  if (!in.marks || in.marks_of != asked) {
    in.marks = make_face_marks(*in.state, *in.report, element, side, in.load_list());
    in.marks_of = asked;
  }
  return *in.marks;
}

std::optional<Patch> ReviewMemory::place(std::size_t finding) {
  const Finding& asked = in_->report->findings[finding];
  if (asked.element != in_->element) return std::nullopt;
  return place_of(*in_->state, asked, in_->load_list());
}

}  // namespace rb::screens
