#include "record/sheet/sheet_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/feet_inches.h"
#include "pour/plan/row_reach.h"
#include "pour/planner/planned_vibrators.h"
#include "record/model/clean_text.h"

namespace rb {

SheetWords::SheetWords(const PlannedPour& planned, RunSheetManner manner)
    : planned_(planned), manner_(manner) {
  manner_.voice.plain = false;
}

std::string SheetWords::say(const Saying& saying) const {
  return words_of(saying, manner_.voice);
}
std::string SheetWords::told_as(Said text) const {
  return told(manner_.voice.language, text);
}
std::string SheetWords::amount_in(const Amount& figure, Rounding r) const {
  return amount_text(figure, manner_.voice, r);
}

std::string SheetWords::length(Length length) const {
  if (manner_.voice.units == Units::us) return feet_and_inches(length);
  return fmt::format("{:.2f}\u00A0m", in_metres(length));
}

std::string SheetWords::span(Seconds span) const {
  return amount_in(amount(span, Measure::any_span));
}

std::string SheetWords::clock(Seconds at) const {
  // A hair, so that a whole minute is not told as the one before.
  auto minutes = static_cast<long>(std::floor(in_minutes(at + std::chrono::milliseconds(1))));
  if (!manner_.start) {
    const char* sign = minutes < 0 ? "\u2212" : "";
    minutes = std::labs(minutes);
    return fmt::format("{}{}:{:02}", sign, minutes / 60, minutes % 60);
  }
  minutes += static_cast<long>(manner_.start->count());
  const long day = minutes >= 0 ? minutes / 1440 : -((-minutes + 1439) / 1440);
  minutes -= day * 1440;
  std::string text = fmt::format("{:02}:{:02}", minutes / 60, minutes % 60);
  if (day != 0) text += fmt::format("\u00A0({:+})", day);
  return text;
}

std::string SheetWords::row_name(std::size_t row) const {
  const Row& r = element().rows[row];
  if (!element().has_rows(Side::far_side)) return r.id.text;
  return r.id.text + "\u00A0" + told(manner_.voice.language, to_text(r.side));
}

std::string SheetWords::motors(std::size_t row) const {
  std::vector<MotorId> ids;
  for (const Motor& motor : element().rows[row].motors) ids.push_back(motor.id);
  return motors_of(ids);
}

std::string SheetWords::motors_of(const std::vector<MotorId>& motors) {
  if (motors.empty()) return "\u2013";
  if (motors.size() == 1) return motors.front().text;
  return motors.front().text + "\u2013" + motors.back().text;
}

Pressure SheetWords::head_on(std::size_t row, const LiftStep& lift, const PlanWish& wish) const {
  Length pressed = lift.top;
  for (const BayReached& bay : bays_reached(element(), element().rows[row])) {
    pressed = std::min(pressed, bay.pressed);
  }
  return wish.mix.unit_weight * (lift.top - pressed);
}

std::optional<Velocity> SheetWords::most_rise(const PlanWish& wish) const {
  std::optional<Velocity> most = planned_.rise_allowed;
  if (wish.rise_limit) most = std::min(most.value_or(*wish.rise_limit), *wish.rise_limit);
  return most;
}

std::string SheetWords::rows_of(const LiftStep& lift) const {
  std::string rows;
  for (const std::size_t row : lift.rows) rows += (rows.empty() ? "" : ", ") + row_name(row);
  return rows;
}

std::string SheetWords::tell_move(const MotorsMove& move) const {
  const Facts facts{{"motors", motors(move.to)},
                    {"from", move.from ? row_name(*move.from) : std::string{}},
                    {"to", row_name(move.to)},
                    {"takes", amount(move.takes, Measure::any_span), Rounding::up}};
  return say(move.from
                 ? Saying{said("Move {motors} from {from} to {to}, cables on: {takes}"), facts}
                 : Saying{said("Hang {motors} on {to}, cables on: {takes}"), facts});
}

std::string SheetWords::tell_insert(const LiftStep& lift, const PlanWish& wish) const {
  std::string bays;
  for (const InsertStep& insert : lift.inserts) {
    bays += (bays.empty() ? "" : "; ") + say({said("bay {bay} {points} points, {heads} at once"),
                                              {{"bay", count(static_cast<double>(insert.bay) + 1)},
                                               {"points", count(insert.points)},
                                               {"heads", count(insert.heads)}}});
  }
  const auto& least = lift.inserts.front();
  const bool alike = std::all_of(lift.inserts.begin(), lift.inserts.end(), [&](const auto& i) {
    return i.points == least.points && i.heads == least.heads;
  });
  if (alike) {
    bays = say({said("each bay {points} points, {heads} at once"),
                {{"points", count(least.points)}, {"heads", count(least.heads)}}});
  }
  return say({said("Insert, {deep} into the lift below, points {apart} apart at most: {bays}"),
              {{"deep", length(wish.limits.knit_depth.value)},
               {"apart", points_apart(wish), Rounding::down},
               {"bays", bays}}});
}

Amount SheetWords::points_apart(const PlanWish& wish) {
  return {Measure::small_length, in_metres(planned_spacing(wish.limits))};
}

// What is told otherwise than on a form with rows.
SheetStep SheetWords::tell_deck_step(const RunStep& step, const PlanWish& wish) const {
  const LiftStep& lift = planned_.lifts[step.lift];
  const InsertStep& in = lift.inserts[step.bay];
  const Fact bay{"bay", counted(in.bay + 1)};
  if (step.kind == RunStepKind::lift) {
    return {say({said("LAYER {lift}: place to {top}, {volume}, in {takes}, bay by bay"),
                 {{"lift", count(lift.lift)},
                  {"top", length(lift.top)},
                  {"volume", amount(lift.concrete)},
                  {"takes", amount(lift.place, Measure::any_span)}}})};
  }
  if (step.kind == RunStepKind::bay) {
    return {say({said("Concrete in bay {bay}: {volume}, full by {by}"),
                 {bay,
                  {"volume", amount(element().volume(in.bay, lift.bottom, lift.top))},
                  {"by", clock(in.filled)}}})};
  }
  if (step.kind == RunStepKind::insert) {
    const Facts facts{bay,
                      {"points", count(in.points)},
                      {"apart", points_apart(wish), Rounding::down},
                      {"heads", count(in.heads)},
                      {"by", clock(in.begins + in.takes)},
                      {"deep", length(wish.limits.knit_depth.value)}};
    return {say(step.lift == 0
                    ? Saying{said("Insert bay {bay}: {points} points, {apart} apart at most, "
                                  "{heads} at once, done by {by}"),
                             facts}
                    : Saying{said("Insert bay {bay}, {deep} into the layer below: {points} "
                                  "points, {apart} apart at most, {heads} at once, done by {by}"),
                             facts})};
  }
  if (step.kind == RunStepKind::knit_by) {
    return {
        say({said("HOLD: layer {lift} is worked into the one below bay by bay, bay 1 by {by}; "
                  "later, stop and ask the engineer"),
             {{"lift", count(lift.lift)}, {"by", clock(*joint_sets(planned_, step.lift - 1))}}}),
        true};
  }
  return {
      say(said("All bays are inserted. Level, finish and start curing before the surface dries"))};
}

SheetStep SheetWords::tell_step(const RunStep& step, const PlanWish& wish) const {
  const bool alike = step.kind == RunStepKind::test || step.kind == RunStepKind::load;
  if (of_deck() && !alike) return tell_deck_step(step, wish);
  const LiftStep& lift = planned_.lifts[step.lift];
  const Fact number{"lift", count(lift.lift)};
  switch (step.kind) {
    case RunStepKind::move:
      return {tell_move(step.move)};
    case RunStepKind::hung:
      return {
          say({said("HOLD: lift {lift} does not begin before the motors of {rows} hang, cables on"),
               {number, {"rows", rows_of(lift)}}}),
          true};
    case RunStepKind::test:
      return {say(said("HOLD: test the first load, temperature and slump, before it goes in")),
              true};
    case RunStepKind::load: {
      const PlannedLoad& load = planned_.loads[step.load];
      return {say({said("Truck {number}: {volume}, empty by {by}"),
                   {{"number", counted(step.load + 1)},
                    {"volume", amount(load.volume)},
                    {"by", clock(load.ends)}}})};
    }
    case RunStepKind::lift:
      return {say({said("LIFT {lift}: place to {top}, {volume}, in {takes}; head then {head}, the "
                        "form bears {rating}"),
                   {number,
                    {"top", length(lift.top)},
                    {"volume", amount(lift.concrete)},
                    {"takes", amount(lift.place, Measure::any_span)},
                    {"head", amount(lift.head), Rounding::up},
                    {"rating", amount(wish.form_rating), Rounding::down}}})};
    case RunStepKind::placed:
      return {say({said("HOLD: read the top of lift {lift} before a row runs"), {number}}), true};
    case RunStepKind::knit_by:
      return {say({said("HOLD: the joint under lift {lift} is knitted by {by}; later, stop and ask "
                        "the engineer"),
                   {number, {"by", clock(*joint_sets(planned_, step.lift - 1))}}}),
              true};
    case RunStepKind::insert:
      return {tell_insert(lift, wish)};
    case RunStepKind::run:
      return {say({said("Run {row} {takes}"),
                   {{"row", row_name(step.row)}, {"takes", amount(lift.run), Rounding::nearest}}})};
    case RunStepKind::wait:
      return {say({said("Wait {takes} before the next lift: motors are being moved"),
                   {{"takes", amount(lift.pause, Measure::any_span), Rounding::up}}})};
    case RunStepKind::bay:  // of a deck alone
    case RunStepKind::last_rest:
      break;
  }
  return {say(said("All rows rest. Keep clear of the form until the concrete has set"))};
}

}  // namespace rb
