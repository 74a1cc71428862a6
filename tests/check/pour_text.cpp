#include "pour_text.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <limits>
#include <regex>
#include <set>

#include "pour/log/fold.h"
#include "pour/log/script.h"

namespace rb::test {

namespace {

// "near" is left out, as a script may.
std::string side_text(const std::string& side) {
  return side == "near" ? std::string{} : fmt::format(R"(,"side":"{}")", side);
}
std::string bay_text(int bay) {
  return bay == 0 ? std::string{} : fmt::format(R"(,"bay":{})", bay);
}
std::string also(const std::string& fields) {
  return fields.empty() ? fields : "," + fields;
}

}  // namespace

std::string row_text(const std::string& id, double z, const std::vector<MotorText>& motors,
                     const std::string& serves, const std::string& side) {
  std::vector<std::string> list;
  list.reserve(motors.size());
  for (const MotorText& m : motors) {
    list.push_back(fmt::format(R"({{"id":"{}","x":{},"reach_x":{},"reach_z":{}}})", m.id, m.x,
                               m.reach_x, m.reach_z));
  }
  return fmt::format(R"({{"id":"{}","side":"{}","z":{},"motors":[{}]{}}})", id, side, z,
                     fmt::join(list, ","),
                     serves.empty() ? std::string{} : R"(,"serves":)" + serves);
}

std::string full_row(const std::string& id, double z, const std::string& serves,
                     const std::string& side, double reach_z) {
  return row_text(id, z, {{id + "-1", 1, 1, reach_z}, {id + "-2", 3, 1, reach_z}}, serves, side);
}

std::string PlanText::json() const {
  return fmt::format(
      R"({{"site":"Yard","name":"Trial","units":"si",)"
      R"("people":[{}],"mixes":[{{"id":"A",{}}}],)"
      R"("elements":[{{"id":"W1","kind":"{}","length":{},"height":{},"thickness":{},"bays":{},)"
      R"("openings":{},"lifts":{},"rows":[{}]{}}}{}],"limits":{{{}}}{}}})",
      people, mix, kind, length, height, thickness, bays, openings, lifts, fmt::join(rows, ","),
      also(element), also(other), limits, also(more));
}

std::string unit_of(const Finding& finding) {
  const auto& figure = finding.measured ? finding.measured : finding.limit;
  return figure ? script_unit(figure->measure) : "";
}

std::vector<Finding> Checked::of(const std::string& rule) const {
  std::vector<Finding> some;
  std::copy_if(report.findings.begin(), report.findings.end(), std::back_inserter(some),
               [&](const Finding& f) { return f.rule == rule; });
  return some;
}

Finding Checked::only(const std::string& rule) const {
  const auto some = of(rule);
  INFO(to_text(state, report));
  REQUIRE_MESSAGE(some.size() == 1, rule, " was found ", some.size(), " times");
  return some.front();
}

LiftReport Checked::lift(int lift) const {
  for (const LiftReport& l : report.lifts) {
    if (l.lift == lift) return l;
  }
  FAIL("there is no lift ", lift);
  return {};
}

std::vector<std::string> Checked::rules() const {
  std::set<std::string> ids;
  for (const Finding& f : report.findings) ids.insert(f.rule);
  return {ids.begin(), ids.end()};
}

Pour::Pour(PlanText text, std::string opened) : plan(std::move(text)), opened_(std::move(opened)) {}

// What happened before a signature was in the book when it was signed.
Pour& Pour::at(double seconds, const std::string& what) {
  const auto signed_later = std::find_if(events_.begin(), events_.end(), [&](const auto& event) {
    return event.first > seconds && event.second.find(R"("do":"sign")") != std::string::npos;
  });
  events_.emplace(signed_later, seconds, what);
  return *this;
}

Pour& Pour::placed(int lift, double from, double to, double top) {
  return at(from, lift_start(lift)).at(to, lift_end(lift, top));
}

Pour& Pour::ran(const std::string& row, double from, double to, const std::string& side) {
  return at(from, run(row, side)).at(to, rest(row, side));
}

Pour& Pour::load(const std::string& ticket, double volume, double batched, double from, double to) {
  at(from, fmt::format(R"("do":"truck","ticket":"{}","mix":"A","volume":{},"batched":"{}",)"
                       R"("arrived":"{}")",
                       ticket, volume, moment(batched), moment(from)));
  return at(from, fmt::format(R"("do":"discharge","ticket":"{}","element":"W1","ended":"{}")",
                              ticket, moment(to)));
}

Pour& Pour::without(const std::string& text) {
  const auto gone = std::erase_if(
      events_, [&](const auto& event) { return event.second.find(text) != std::string::npos; });
  REQUIRE_MESSAGE(gone > 0, "no line holds ", text);
  return *this;
}

Pour& Pour::changed(const std::string& line, const std::string& old, const std::string& with) {
  bool any = false;
  for (auto& [seconds, what] : events_) {
    if (what.find(line) == std::string::npos) continue;
    const auto at = what.find(old);
    if (at == std::string::npos) continue;
    what.replace(at, old.size(), with);
    any = true;
  }
  REQUIRE_MESSAGE(any, "no line holds ", line, " and ", old);
  return *this;
}

Pour& Pour::later(double from, double by) {
  const std::regex told{R"([0-9]{4}-[0-9-]+T[0-9:.]+Z)"};
  for (auto& [seconds, what] : events_) {
    if (seconds < from) continue;
    seconds += by;
    std::string shifted;
    std::string rest = what;
    for (std::smatch found; std::regex_search(rest, found, told); rest = found.suffix().str()) {
      shifted += found.prefix().str() + to_text(after(*parse_moment(found.str()), Seconds{by}));
    }
    what = shifted + rest;
  }
  return *this;
}

std::string Pour::moment(double seconds) const {
  const auto opened = parse_moment(opened_);
  REQUIRE(opened);
  return to_text(after(*opened, Seconds{seconds}));
}

std::string Pour::line(double seconds, const std::string& what) const {
  const bool told = what.find(R"("by":)") != std::string::npos;
  return fmt::format(R"({{"at":"{}",{}{}}})", moment(seconds), told ? "" : R"("by":"f1",)", what) +
         '\n';
}

std::string Pour::script() const {
  std::string text = line(0, R"("do":"pour-open","pour":"P1","plan":)" + plan.json());
  for (const auto& [seconds, what] : events_) text += line(seconds, what);
  return text;
}

PourState Pour::state(double until) const {
  Pour known = *this;
  std::erase_if(known.events_, [&](const auto& event) { return event.first > until; });
  const auto script = read_script(known.script(), "the test's pour");
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  auto events = script->events;
  if (in_book) in_book(events);
  auto state = fold(events);
  REQUIRE(state);
  return *std::move(state);
}

Checked Pour::checked() const {
  PourState all = state(std::numeric_limits<double>::infinity());
  CheckReport report = check(all, AsOf::end(all));
  return {std::move(all), std::move(report)};
}

Checked Pour::live(double seconds) const {
  PourState known = state(seconds);
  CheckReport report = check(known, AsOf::now(known, *parse_moment(moment(seconds))));
  return {std::move(known), std::move(report)};
}

std::string ready(const std::string& item, bool ok) {
  return fmt::format(R"("do":"ready","item":"{}","ok":{})", item, ok);
}
std::string hang(const std::string& row, const std::vector<std::string>& motors, bool cables,
                 const std::string& side) {
  std::vector<std::string> list;
  for (const std::string& motor : motors) list.push_back('"' + motor + '"');
  return fmt::format(R"("do":"hang","element":"W1","row":"{}","motors":[{}],"cables":{}{})", row,
                     fmt::join(list, ","), cables, side_text(side));
}
std::string take_down(const std::string& row, const std::string& side) {
  return fmt::format(R"("do":"take-down","element":"W1","row":"{}"{})", row, side_text(side));
}
std::string lift_start(int lift) {
  return fmt::format(R"("do":"lift-start","element":"W1","lift":{})", lift);
}
std::string top(double height, int bay) {
  return fmt::format(R"("do":"top","element":"W1","height":{}{})", height, bay_text(bay));
}
std::string bay_start(int lift, int bay) {
  return fmt::format(R"("do":"bay-start","element":"W1","lift":{},"bay":{})", lift, bay);
}
std::string lift_end(int lift, double height, int bay) {
  return fmt::format(R"("do":"lift-end","element":"W1","lift":{},"height":{}{})", lift, height,
                     bay_text(bay));
}
std::string run(const std::string& row, const std::string& side, double vpm) {
  return fmt::format(R"("do":"run","element":"W1","row":"{}","vpm":{}{})", row, vpm,
                     side_text(side));
}
std::string rest(const std::string& row, const std::string& side) {
  return fmt::format(R"("do":"rest","element":"W1","row":"{}"{})", row, side_text(side));
}
std::string insert(int lift, int bay, double spacing, double depth_below, int group) {
  return fmt::format(
      R"("do":"insert","element":"W1","lift":{},"group":{},"spacing":{},"seconds":10,)"
      R"("depth_below":{}{})",
      lift, group, spacing, depth_below, bay_text(bay));
}
std::string temp(double degrees) {
  return fmt::format(R"("do":"test","ticket":"T1","temp":{})", degrees);
}
std::string sign(const std::string& role, const std::string& by) {
  const std::string who = !by.empty()           ? by
                          : role == "foreman"   ? "f1"
                          : role == "inspector" ? "q1"
                                                : "s1";
  return fmt::format(R"("by":"{}","do":"sign","role":"{}","verdict":"accepted")", who, role);
}

Pour good_pour() {
  PlanText plan;
  plan.rows = {full_row("R1", 0.3, "[1]"), full_row("R2", 0.9, "[2]"), full_row("R3", 1.5, "[3]")};
  plan.element = R"("form_rating_kpa":60,"rise_limit":2)";
  plan.more =
      R"("power":[{"id":"I1","volts":42,"max_amps":20,"motors":["R1-1","R1-2","R2-1","R2-2",)"
      R"("R3-1","R3-2"],"cable":{"mm2":4,"length":25}}],)"
      R"("motor_type":{"amps":7.5,"force_kn":4,"vpm_max":6000})";
  Pour pour{plan};
  pour.at(60, ready("form braced", true));
  for (const char* row : {"R1", "R2", "R3"}) pour.at(120, hang(row));
  pour.load("T1", 1.8, -600, 500, 4800).at(520, temp(18));
  pour.placed(1, 600, 1500, 0.6).ran("R1", 1500, 1600);
  pour.placed(2, 2400, 3300, 1.2).ran("R2", 3300, 3400);
  pour.placed(3, 4200, 5100, 1.8).ran("R3", 5100, 5200);
  return pour.at(5400, kClose).at(5500, sign("foreman")).at(5600, sign("inspector"));
}

}  // namespace rb::test
