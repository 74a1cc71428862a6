#include "screens/view/spot_view.h"

#include <algorithm>

#include "pour/log/log_entry.h"
#include "pour/outlook/face_bands.h"
#include "pour/outlook/form.h"
#include "pour/outlook/insertions.h"
#include "pour/outlook/loads.h"
#include "pour/plan/verdicts.h"

namespace rb::screens {

namespace {

// The places of the rows of a side, motor by motor, as face_of() puts them.
std::vector<RowPlace> places_of(const Element& element, Side side) {
  std::vector<RowPlace> places;
  for (const Row& row : element.rows) {
    if (row.side != side) continue;
    places.insert(places.end(), row.motors.size(), {element.id, row.side, row.id});
  }
  return places;
}

class Telling {
 public:
  Telling(const PourState& state, std::size_t element, Side side, Spot spot)
      : state_(state), index_(element), planned_(state.plan->elements[element]) {
    view_.element = planned_.id;
    view_.side = side;
    view_.at = {std::clamp(spot.x, Length{}, planned_.length),
                std::clamp(spot.z, Length{}, planned_.rise_height())};
    view_.bay = planned_.bay_at(view_.at.x);
  }

  SpotView tell() {
    const Limits& limits = state_.plan->limits;
    view_.dose_min = limits.dose_min.value;
    view_.dose_max = limits.dose_max.value;
    view_.judged = planned_.has_rows(view_.side);
    view_.rating = planned_.form_rating;
    view_.opening =
        std::any_of(planned_.openings.begin(), planned_.openings.end(), [&](const Patch& p) {
          return trade::holds_x(p, view_.at.x) && trade::holds_z(p, view_.at.z);
        });
    blemishes();
    shaken();
    if (!view_.came) return std::move(view_);
    loads();
    lift();
    inserted();
    head();
    return std::move(view_);
  }

 private:
  void shaken() {
    const auto ran = shaking(state_, index_, state_.last, Unended::to_next_event);
    sets_ = set_steps(state_, index_);
    const trade::Face face = face_of(state_, index_, {view_.side}, ran, sets_);
    const auto story = trade::spot_story(face, 0, view_.at.x, view_.at.z);
    if (!story) return;
    came_ = story->came;
    view_.came = state_.moment(story->came);
    view_.dose = story->dose;
    const auto places = places_of(planned_, view_.side);
    for (const auto& piece : story->shaken) {
      SpotShaken told{
          state_.moment(piece.when.from), state_.moment(piece.when.to), piece.when.work, {}};
      for (const std::size_t i : piece.shakers) {
        if (told.rows.empty() || !(told.rows.back() == places[i])) told.rows.push_back(places[i]);
      }
      join(std::move(told));
    }
    const trade::Face whole =
        face_of(state_, index_, {view_.side}, ran, set_steps(state_, index_, SetSide::hard));
    view_.workable = state_.moment(story->sets);
    if (const auto to_set = trade::spot_story(whole, 0, view_.at.x, view_.at.z)) {
      view_.sets = state_.moment(to_set->sets);
      view_.after = std::max(to_set->dose - story->dose, Seconds{0});
    }
  }

  // One motor's end inside a row's run is no other stretch to who reads it by rows.
  void join(SpotShaken piece) {
    if (!view_.shaken.empty()) {
      SpotShaken& last = view_.shaken.back();
      if (last.to == piece.from && last.rows == piece.rows && last.counts == piece.counts) {
        last.to = piece.to;
        return;
      }
    }
    view_.shaken.push_back(std::move(piece));
  }

  void loads() {
    for (const std::size_t index : loads_at(state_, index_, came_)) {
      const TruckState& truck = state_.trucks[index];
      SpotLoad load{.ticket = truck.ticket};
      if (truck.what) load.age = came_ - state_.told(*truck.ref, truck.what->batched);
      for (const TestState& test : state_.tests) {
        if (test.what.ticket != truck.ticket) continue;
        if (test.what.slump) load.slump = test.what.slump;
        if (test.what.temp) load.temp = test.what.temp;
      }
      view_.loads.push_back(std::move(load));
    }
  }

  void lift() {
    const auto& lifts = state_.elements[index_].lifts;
    const auto of = std::find_if(lifts.rbegin(), lifts.rend(),
                                 [&](const LiftState& l) { return l.started <= came_; });
    if (of != lifts.rend()) {
      view_.lift = of->lift;
      view_.start_missing = of->start_missing(view_.bay);
    }
    for (const CoverBand& band : cover_bands(state_, index_)) {
      if (band.bay != view_.bay || view_.at.z > band.to || view_.at.z < band.from) continue;
      view_.covered.reset();
      view_.cover_age.reset();
      if (!band.covered || band.last) continue;
      view_.covered = state_.moment(*band.covered);
      view_.cover_age = band.age(state_.last);
      view_.covered_late = *band.covered >= band.sets;
    }
  }

  void inserted() {
    for (const InsertState& insert : state_.inserts) {
      if (insert.element != index_ || (insert.bay && *insert.bay != view_.bay)) continue;
      const auto band = worked_by(state_, insert, view_.bay, sets_);
      const bool counts = band && view_.at.z >= band->from && view_.at.z <= band->to;
      if (!counts && insert.what.lift != view_.lift) continue;
      view_.inserted.push_back({state_.moment(insert.at), insert.what.each, counts});
    }
  }

  void head() {
    const auto spans = head_spans(state_, index_, view_.side);
    for (const HeadBand& band : heads_until(state_.elements[index_], spans, state_.last)) {
      if (band.bay != view_.bay || view_.at.z < band.from || view_.at.z > band.to) continue;
      const double share = (view_.at.z - band.from) / (band.to - band.from);
      const Pressure head = band.low + (band.high - band.low) * share;
      if (view_.head && *view_.head >= head) continue;
      view_.head = head;
      view_.head_at = state_.moment(state_.runs[band.run].to.value_or(state_.last));
    }
    if (view_.head) view_.head_over = judge_head(planned_, *view_.head) == HeadVerdict::over;
  }

  void blemishes() {
    int number = 0;  // as in the record's list, which has those of all faces
    for (const EventRef ref : state_.blemishes) {
      const auto* seen = std::get_if<event::Blemish>(&state_.log[ref].event.what);
      if (seen == nullptr) continue;
      ++number;
      const Patch& box = seen->patch;
      const bool here = seen->element == planned_.id && seen->side == view_.side &&
                        view_.at.x >= box.x && view_.at.x <= box.x + box.w && view_.at.z >= box.z &&
                        view_.at.z <= box.z + box.h;
      if (here) view_.blemishes.push_back({number, ref, seen->kind});
    }
  }

  const PourState& state_;
  std::size_t index_;
  const Element& planned_;
  SpotView view_;
  Seconds came_{};
  std::vector<trade::SetStep> sets_;
};

}  // namespace

SpotView make_spot_view(const PourState& state, std::size_t element, Side side, Spot spot) {
  return Telling{state, element, side, spot}.tell();
}

}  // namespace rb::screens
