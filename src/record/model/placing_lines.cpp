#include "record/model/placing_lines.h"

#include <algorithm>

#include "pour/outlook/form.h"
#include "pour/outlook/knit.h"
#include "record/model/names.h"

namespace rb {

namespace {

// Adds a line, or lengthens the one before where the next bay fared the same.
template <class Line>
void join(std::vector<Line>& lines, Line line) {
  if (!lines.empty() && lines.back().bay_to + 1 == line.bay) {
    Line longer = lines.back();
    longer.bay = line.bay;
    longer.bay_to = line.bay_to;
    if (longer == line) {
      lines.back().bay_to = line.bay_to;
      return;
    }
  }
  lines.push_back(std::move(line));
}

class Joints {
 public:
  Joints(PourRecord& record, const PourState& state, std::size_t element)
      : record_(record),
        state_(state),
        names_(state),
        element_(element),
        face_(face_of(state, element, judged_sides(state.plan->elements[element]))) {}

  void put() {
    for (const LiftState& lift : state_.elements[element_].lifts) {
      for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
        if (!lift.empty(bay)) put(lift, bay);
      }
    }
  }

 private:
  void put(const LiftState& lift, std::size_t bay) {
    const trade::TopCurve& top = state_.elements[element_].tops[bay];
    const Length z = lift.top[bay];
    const auto came = top.reached(z);
    const auto covered = top.covered(z);
    if (!came || !covered) return;
    const Knitting knit =
        knitting(face_, bay, z, *covered, first_deep_insert(state_, element_, bay, z, *covered));
    if (!knit.spots) return;
    const Seconds sets = face_.sets_at(*came);
    const int number = static_cast<int>(bay) + 1;
    join(record_.joints,
         {names_.element(element_), lift.lift, number, number, z, names_.moment(*came),
          names_.moment(*covered), names_.moment(sets), names_.moment(knit.when),
          knit.when && *knit.when < sets, joint_decided(state_, element_, lift.lift, bay)});
  }

  PourRecord& record_;
  const PourState& state_;
  Names names_;
  std::size_t element_;
  trade::Face face_;
};

}  // namespace

std::optional<int> lift_at(const PourState& state, std::size_t element, Seconds at) {
  const auto& lifts = state.elements[element].lifts;
  const auto found = std::find_if(lifts.rbegin(), lifts.rend(),
                                  [at](const LiftState& lift) { return lift.started <= at; });
  return found == lifts.rend() ? std::nullopt : std::optional{found->lift};
}

void put_tops(PourRecord& record, const PourState& state) {
  const Names names{state};
  std::vector<TopLine> lines;
  for (const TopReading& top : state.readings) {
    const int bay = static_cast<int>(top.bay) + 1;
    lines.push_back({names.moment(top.at), names.element(top.element), bay, bay, top.read,
                     top.fell(), names.by(top.ref)});
  }
  std::stable_sort(lines.begin(), lines.end(),
                   [](const TopLine& a, const TopLine& b) { return a.at < b.at; });
  for (TopLine& line : lines) join(record.tops, std::move(line));
}

void put_joints(PourRecord& record, const PourState& state) {
  for (std::size_t e = 0; e < state.elements.size(); ++e) Joints{record, state, e}.put();
}

}  // namespace rb
