// Curing, temperatures of the hardening concrete, leave to strip and specimens: they read, write,
// fold and are put right; a bad field is refused by its name.
#include <doctest/doctest.h>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "pour/outlook/hardening.h"
#include "pour/plan/plan_json.h"

using namespace rb;

namespace {

std::string plan(const std::string& element = {}, const std::string& mix = {}) {
  return R"({"mixes":[{"id":"A","unit_weight":24,"slump":0.12,"initial_set_h":5)" + mix +
         R"(}],"elements":[{"id":"W1","length":4,"height":3,"thickness":0.3,"bays":[2,2])" +
         element + "}]}";
}

std::string line(const std::string& at, const std::string& what) {
  return R"({"at":"2026-03-02T)" + at + R"(:00.000Z","by":"f1",)" + what + "}\n";
}
std::string opened(const std::string& planned = plan()) {
  return line("05:00", R"("do":"pour-open","pour":"P","plan":)" + planned);
}

PourState folded(const std::string& lines, const std::string& planned = plan()) {
  const auto script = read_script(opened(planned) + lines, "a.jsonl");
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  const auto again = read_script(write_script(script->events), "again.jsonl");
  REQUIRE_MESSAGE(again, (again ? "" : to_text(again.error())));
  CHECK(again->events == script->events);
  auto state = fold(script->events);
  REQUIRE(state);
  return *std::move(state);
}

std::string refused(const std::string& lines) {
  const auto script = read_script(opened() + lines, "a.jsonl");
  REQUIRE_FALSE(script);
  return to_text(script.error());
}
bool has(const std::string& text, const char* part) {
  return text.find(part) != std::string::npos;
}

const std::string kClosed = line("08:00", R"("do":"pour-close")");
const std::string kTaken = line("06:00", R"("do":"test","ticket":"T1","specimens":["S1","S2"])");

std::string concrete(const std::string& at, double temp, const std::string& place = {}) {
  return line(at, R"("do":"concrete-temp","element":"W1","temp":)" + std::to_string(temp) + place);
}

}  // namespace

TEST_CASE("curing begins and ends, after the close too, and is taken back") {
  const std::string start = R"("id":"c1","do":"cure-start","element":"W1","how":"wet burlap")";
  const std::string end = R"("id":"c2","do":"cure-end","element":"W1")";
  const PourState state = folded(kClosed + line("09:00", start) + line("12:00", end));
  REQUIRE(state.cures.size() == 1);
  CHECK(state.cures[0].from == hours(4));
  CHECK(state.cures[0].to == hours(7));
  CHECK(state.cures[0].how == "wet burlap");
  CHECK(state.curing(0) == nullptr);
  const std::string strike = R"("do":"strike","why":"wrong tap","target":)";
  const PourState on = folded(kClosed + line("09:00", start) + line("12:00", end) +
                              line("12:01", strike + R"("c2")"));
  CHECK(on.curing(0) != nullptr);
  const PourState none = folded(kClosed + line("09:00", start) + line("12:00", end) +
                                line("12:01", strike + R"("c1")"));
  CHECK(none.cures.empty());
  CHECK(none.log[3].sense == LogEntry::Sense::repeats);  // nothing was there to end
}

TEST_CASE("a second start of a curing, or an end of none, says nothing new") {
  const std::string start = R"("do":"cure-start","element":"W1")";
  const PourState state = folded(line("09:00", R"("do":"cure-end","element":"W1")") +
                                 line("09:10", start) + line("09:20", start));
  CHECK(state.cures.size() == 1);
  CHECK(state.log[1].sense == LogEntry::Sense::repeats);
  CHECK(state.log[3].sense == LogEntry::Sense::repeats);
}

TEST_CASE("temperatures, leave to strip and weather are kept with all they tell") {
  const PourState state =
      folded(concrete("09:00", 31, R"(,"z":1.5,"x":2)") +
             line("09:01", R"("do":"permit-strip","element":"W1","side":"far","why":"engineer")") +
             line("09:02", R"("do":"air-temp","temp":12)") +
             line("09:03", R"("do":"air-temp","temp":13,"humidity":40,"wind":6.5)"));
  REQUIRE(state.concrete_temps.size() == 1);
  CHECK(state.concrete_temps[0].what.temp == celsius(31));
  CHECK(state.concrete_temps[0].what.z == metres(1.5));
  REQUIRE(state.permits.size() == 1);
  CHECK(state.permits[0].what.side == Side::far_side);
  CHECK(state.air.size() == 2);
  REQUIRE(state.weather.size() == 1);
  CHECK(state.weather[0].what.humidity == 40);
  CHECK(in_metres_per_second(*state.weather[0].what.wind) == doctest::Approx(6.5));
}

TEST_CASE("a specimen's result belongs to the load whose test took it") {
  const PourState state =
      folded(kTaken + kClosed +
             line("09:00", R"("do":"specimen","specimen":"S2","age_days":7,"strength_mpa":21.5)"));
  REQUIRE(state.specimens.size() == 1);
  CHECK(state.specimens[0].ticket == TicketId{"T1"});
  CHECK(in_megapascals(state.specimens[0].what.strength) == doctest::Approx(21.5));
  // A line's id names the specimen where nothing else does.
  const PourState by_id = folded(
      kTaken + line("09:00", R"("id":"S1","do":"specimen","age_days":28,"strength_mpa":40)"));
  REQUIRE(by_id.specimens.size() == 1);
  CHECK(by_id.specimens[0].what.specimen == SpecimenId{"S1"});
}

TEST_CASE("what cannot be is refused by its field, with what to do") {
  const auto specimen = [](const std::string& fields) {
    return line("09:00", R"("do":"specimen",)" + fields);
  };
  const std::string unknown =
      refused(kTaken + specimen(R"("specimen":"S9","age_days":7,"strength_mpa":20)"));
  CHECK(has(unknown, "line 3 (specimen)"));
  CHECK(has(unknown, "field specimen (or id): no test by then took a specimen S9"));
  CHECK(has(unknown, "log it with the test that took it"));
  CHECK(has(refused(specimen(R"("age_days":7,"strength_mpa":20)")), "field specimen: is missing"));
  CHECK(has(refused(specimen(R"("specimen":"S1","age_days":0,"strength_mpa":20)")),
            "field age_days"));
  CHECK(has(refused(specimen(R"("specimen":"S1","age_days":7,"strength_mpa":2000)")),
            "field strength_mpa"));
  CHECK(has(refused(kTaken + line("06:30", R"("do":"test","ticket":"T2","specimens":["S1"])")),
            "S1 was already taken"));
  CHECK(has(refused(concrete("09:00", 140)), "field temp"));
  CHECK(has(refused(concrete("09:00", 20, R"(,"z":4)")), "off the face of W1"));
  CHECK(has(refused(line("09:00", R"("do":"permit-strip","element":"W1")")), "field why"));
  CHECK(has(refused(line("09:00", R"("do":"cure-start","element":"W9")")),
            "element W9 is not in the plan"));
  CHECK(
      has(refused(line("09:00", R"("do":"air-temp","temp":12,"humidity":140)")), "field humidity"));
  CHECK(has(refused(line("09:00", R"("do":"air-temp","temp":12,"wind":-1)")), "field wind"));
}

TEST_CASE("what is asked after the pour is read from a plan and written as it was") {
  const std::string element =
      R"(,"strip_after_s":57600,"strip_strength_mpa":12.5,"strength_curve":[[12,4],[24.5,11]],)"
      R"("cure_start_within_s":1800,"cure_for_s":604800,"strip_permit":true)";
  const auto read = parse_plan(plan(element, R"(,"strength_mpa":40)"), "plan");
  REQUIRE(read);
  CHECK(in_megapascals(*read->elements[0].strip_strength) == doctest::Approx(12.5));
  REQUIRE(read->elements[0].strength_curve.size() == 2);
  CHECK(read->elements[0].strength_curve[1].age == hours(24.5));
  CHECK(read->elements[0].cure_for == seconds(604800));
  CHECK(read->elements[0].strip_permit);
  CHECK(in_megapascals(*read->mixes[0].strength) == doctest::Approx(40));
  const std::string written = to_json(*read);
  CHECK(has(written, R"("strength_curve":[[12.0,4.0],[24.5,11.0]])"));
  const auto again = parse_plan(written, "again");
  REQUIRE(again);
  CHECK(*again == *read);
  CHECK(read->extra.empty());
  for (const char* bad :
       {R"(,"strength_curve":[[12,4],[11,5]])", R"(,"strength_curve":[[12,4],[13,3]])",
        R"(,"strength_curve":[12])", R"(,"strength_curve":[["a",4]])", R"(,"strength_curve":5)",
        R"(,"strength_curve":[[12,400]])"}) {
    const std::string given = bad;
    CAPTURE(given);
    const auto no = parse_plan(plan(given), "plan");
    REQUIRE_FALSE(no);
    CHECK(has(to_text(no.error()), "strength_curve"));
  }
}

TEST_CASE("maturity counts from the last concrete to the last reading of each place, no longer") {
  const std::string planned = plan(R"(,"strength_curve":[[1,2],[5,10]])", R"(,"set_q_k":5000)");
  const std::string placed = line("06:00", R"("do":"lift-start","element":"W1","lift":1)") +
                             line("07:00", R"("do":"lift-end","element":"W1","lift":1,"height":1)");
  // One probe read before the concrete came and on; one without a place, begun late.
  const PourState state =
      folded(placed + concrete("06:00", 20, R"(,"z":0.5)") + concrete("10:00", 20, R"(,"z":0.5)") +
                 concrete("09:00", 20) + concrete("10:30", 20) + concrete("20:00", 20),
             planned);
  const auto places = maturity(state, 0, state.clock(*parse_moment("2026-03-02T12:00:00Z")));
  REQUIRE(places.size() == 2);
  CHECK(in_hours(places[0].equivalent_age) == doctest::Approx(3));
  CHECK(in_hours(places[1].equivalent_age) == doctest::Approx(1.5));
  CHECK(trade::in_degree_hours(places[1].nurse_saul) == doctest::Approx(30));
  CHECK(in_megapascals(*places[0].strength) == doctest::Approx(6));
  const auto shown = strength_shown(state, 0, hours(7));
  CHECK(in_megapascals(*shown.by_maturity) == doctest::Approx(3));  // the least hardened
  CHECK_FALSE(shown.by_specimens);
  // Air is no concrete.
  const PourState air = folded(placed + line("08:00", R"("do":"air-temp","temp":30)"), planned);
  CHECK(maturity(air, 0, air.last).empty());
  CHECK_FALSE(strength_shown(air, 0, air.last).counts());
}
