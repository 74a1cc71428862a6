#include "screens/view/strip_view.h"

#include <algorithm>

#include "pour/log/log_entry.h"
#include "pour/outlook/form.h"

namespace rb::screens {

namespace {

template <class Kind>
const Kind* told_at(const PourState& state, EventRef ref) {
  return std::get_if<Kind>(&state.log[ref].event.what);
}

Mended mended_of(bool repaired_last, const BlemishView& view) {
  if (view.repairs.empty() && view.looks.empty()) return Mended::open;
  if (repaired_last) return Mended::repaired;
  return view.looks.back().ok ? Mended::accepted : Mended::refused;
}

// Repairs of a blemish, looks at it or at one of them, and photos of either.
void put_what_became(const PourState& state, BlemishView& view) {
  std::optional<EventRef> repaired, looked;
  for (const EventRef ref : state.repairs) {
    const auto* repair = told_at<event::Repair>(state, ref);
    if (repair == nullptr || repair->target != view.told.id) continue;
    const Event& event = state.log[ref].event;
    view.repairs.push_back({event.id, *repair, person_name(*state.plan, event.by), event.at});
    repaired = ref;
  }
  const auto is_of_it = [&](const EventId& target) {
    return target == view.told.id ||
           std::any_of(view.repairs.begin(), view.repairs.end(),
                       [&](const RepairView& repair) { return repair.id == target; });
  };
  for (const EventRef ref : state.reinspections) {
    const auto* look = told_at<event::Reinspect>(state, ref);
    if (look == nullptr || !is_of_it(look->target)) continue;
    const Event& event = state.log[ref].event;
    view.looks.push_back({look->ok, look->note, person_name(*state.plan, event.by), event.at});
    looked = ref;
  }
  for (const EventRef ref : state.photos) {
    const auto* photo = told_at<event::Photo>(state, ref);
    if (photo != nullptr && is_of_it(photo->target)) ++view.photos;
  }
  view.mended = mended_of(repaired && (!looked || *repaired > *looked), view);
}

SpotTold told_of_spot(const PourState& state, const CheckReport& report, std::size_t element,
                      Side side, Length x, Length z) {
  SpotTold told;
  for (const std::size_t i : speaking_of(state, report, element, side, x, z)) {
    const std::string& rule = report.findings[i].rule;
    if (std::find(told.rules.begin(), told.rules.end(), rule) == told.rules.end()) {
      told.rules.push_back(rule);
    }
  }
  told.judged = state.plan->elements[element].has_rows(side);
  told.dose_min = state.plan->limits.dose_min.value;
  const auto story = trade::spot_story(face_of(state, element, {side}), 0, x, z);
  if (!story) return told;
  told.came = state.moment(story->came);
  told.sets = state.moment(story->sets);
  told.dose = story->dose;
  const std::size_t bay = state.plan->elements[element].bay_at(x);
  for (const LiftState& lift : state.elements[element].lifts) {
    if (z > lift.bottom[bay] && z <= lift.top[bay]) told.lift = lift.lift;
  }
  return told;
}

void put_blemishes(const PourState& state, const CheckReport& report, std::size_t element,
                   FaceView& face) {
  const ElementId& id = state.plan->elements[element].id;
  int number = 0;
  for (const EventRef ref : state.blemishes) {
    const auto* seen = told_at<event::Blemish>(state, ref);
    if (seen == nullptr) continue;
    ++number;
    if (seen->element != id || seen->side != face.side) continue;
    const Event& event = state.log[ref].event;
    BlemishView view{.told = {event.id, event.at, event.what},
                     .what = *seen,
                     .number = number,
                     .by = person_name(*state.plan, event.by)};
    put_what_became(state, view);
    view.spot = LazyList<SpotTold>{[&state, &report, element, side = face.side, at = seen->patch] {
      return std::vector{
          told_of_spot(state, report, element, side, at.x + at.w / 2.0, at.z + at.h / 2.0)};
    }};
    face.blemishes.push_back(std::move(view));
  }
}

FaceView make_face_view(const PourState& state, const CheckReport& report, std::size_t element,
                        Side side) {
  const Element& planned = state.plan->elements[element];
  FaceView face{.side = side,
                .length = planned.length,
                .height = planned.rise_height(),
                .openings = planned.openings,
                .lifts = planned.lifts};
  for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
    const Length x = planned.bay_start(bay);
    face.bays.push_back({x, x + planned.bays[bay], state.elements[element].tops[bay].standing()});
  }
  for (const EventRef ref : state.strips) {
    const auto* strip = told_at<event::Strip>(state, ref);
    if (strip == nullptr || strip->element != planned.id || strip->side != side) continue;
    face.stripped = state.log[ref].event.at;
  }
  for (const EventRef ref : state.inspections) {
    const auto* look = told_at<event::Inspect>(state, ref);
    if (look == nullptr || look->element != planned.id || look->side != side) continue;
    face.inspected = state.log[ref].event.at;
    face.inspected_by = person_name(*state.plan, state.log[ref].event.by);
  }
  put_blemishes(state, report, element, face);
  face.score = score_face(state, report, element, side);
  return face;
}

}  // namespace

std::string person_name(const Plan& plan, const PersonId& person) {
  const Person* known = plan.find(person);
  return known == nullptr || known->name.empty() ? person.text : known->name;
}

std::vector<FaceView> make_face_views(const PourState& state, const CheckReport& report,
                                      std::size_t element) {
  std::vector<FaceView> views;
  if (element >= state.elements.size()) return views;
  views.reserve(2);
  for (const Side side : {Side::near_side, Side::far_side}) {
    views.push_back(make_face_view(state, report, element, side));
  }
  return views;
}

Patch onto_face(const FaceView& face, Patch drawn, Length least) {
  const auto fit = [&](Length& from, Length& size, Length end) {
    const Length middle = from + size / 2.0;
    size = std::min(std::max(size, least), end);
    from = std::clamp(middle - size / 2.0, Length{}, end - size);
  };
  fit(drawn.x, drawn.w, face.length);
  fit(drawn.z, drawn.h, face.height);
  return drawn;
}

const BlemishView* blemish_at(const FaceView& face, Length x, Length z) {
  const BlemishView* found = nullptr;
  for (const BlemishView& blemish : face.blemishes) {
    const Patch& p = blemish.what.patch;
    if (x < p.x || x > p.x + p.w || z < p.z || z > p.z + p.h) continue;
    if (found == nullptr || p.w * p.h < found->what.patch.w * found->what.patch.h) found = &blemish;
  }
  return found;
}

}  // namespace rb::screens
