// What goes on around the lift while it is placed, by taps: trucks and tests, insertions, motors
// moved up, the rise, the joints and the one who holds the tablet.
#include <doctest/doctest.h>

#include <algorithm>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {
const Moment kEarly = *parse_moment("2026-03-02T05:00:00.000Z");

template <class Kind>
const Kind& last(const Tablet& tablet) {
  const auto* found = std::get_if<Kind>(&tablet.events.back().what);
  REQUIRE(found);
  return *found;
}

// Ticket 7001 entered, arrived at a quarter past five, 25 min on the way.
void enter_a_truck(Tablet& tablet) {
  tablet.tap("MORE");
  tablet.tap("TRUCKS");
  tablet.tap("NEW TRUCK");
  tablet.tap_id("ticket");
  keys(tablet, "7001");
  tablet.tap("KEEP");
  tablet.tap_id("volume");
  keys(tablet, "6.5");
  tablet.tap("KEEP");
  for (int i = 0; i < 5; ++i) tablet.tap_id("batched -1");
  tablet.tap("KEEP");
}

}  // namespace

TEST_CASE("a truck is entered, discharged and tested by taps") {
  Tablet tablet(ready_pour(kEarly), kEarly + 15min);
  enter_a_truck(tablet);
  const auto& truck = last<event::Truck>(tablet);
  CHECK(truck.ticket == TicketId{"7001"});
  CHECK(truck.mix == MixId{"A"});
  CHECK(in_cubic_metres(truck.volume) == doctest::Approx(6.5));
  CHECK(in_seconds(between(truck.batched, truck.arrived)) == doctest::Approx(25 * 60));
  CHECK(in_seconds(between(kEarly + 15min, truck.arrived)) < 5);
  CHECK(tablet.says("7001"));
  CHECK(tablet.says("age 25 min of 1 h 30 min"));

  tablet.wait(seconds(600));
  CHECK(tablet.says("age 35 min of 1 h 30 min"));
  CHECK(tablet.says("54 min left"));  // 90 min less 35 min and some seconds
  tablet.tap("DISCHARGE 7001");
  const auto began = last<event::Discharge>(tablet);
  CHECK(began.ticket == TicketId{"7001"});
  CHECK(began.element == ElementId{"W1"});
  CHECK_FALSE(began.ended);
  CHECK(tablet.says("discharging"));

  tablet.wait(seconds(1200));
  tablet.tap("END DISCHARGE 7001");
  REQUIRE(tablet.state->trucks.size() == 1);
  const TruckState& there = tablet.state->trucks.front();
  REQUIRE(there.ended());
  CHECK(in_seconds(*there.ended() - *there.discharged()) == doctest::Approx(1200).epsilon(0.01));
  CHECK(tablet.find("END DISCHARGE 7001") == nullptr);

  tablet.tap("TEST 7001");
  CHECK_FALSE(tablet.find_id("keep")->target.enabled);  // nothing measured yet
  tablet.tap_id("slump");
  CHECK_FALSE(tablet.find_id("keep")->target.enabled);
  keys(tablet, "130");
  tablet.tap("KEEP");
  tablet.tap_id("temp");
  keys(tablet, "18.5");
  tablet.tap("KEEP");
  tablet.tap("KEEP");
  const auto& test = last<event::Test>(tablet);
  CHECK(in_millimetres(*test.slump) == doctest::Approx(130));
  CHECK(test.temp == celsius(18.5));
  CHECK_FALSE(test.air);
  CHECK_FALSE(test.density);
  CHECK(tablet.says("tested"));
}

TEST_CASE("a load that is here discharges by one tap on the pour's own screen, and ends by one") {
  Tablet tablet(ready_pour(kEarly), kEarly + 15min);
  enter_a_truck(tablet);
  while (tablet.find_id("back") != nullptr) tablet.tap_id("back");
  const int taps = tablet.taps;
  tablet.tap_id("discharge 7001");
  CHECK(tablet.taps == taps + 1);
  CHECK(last<event::Discharge>(tablet).ticket == TicketId{"7001"});
  CHECK_FALSE(last<event::Discharge>(tablet).ended);
  tablet.wait(seconds(600));
  tablet.tap_id("end discharge 7001");
  CHECK(last<event::Discharge>(tablet).ended);
  CHECK(tablet.find_id("trucks") == nullptr);  // no load is here any more
}

TEST_CASE("the next truck is guessed: the ticket after, its mix, volume and way; KEEP enters it") {
  Tablet tablet(ready_pour(kEarly), kEarly + 15min);
  enter_a_truck(tablet);
  tablet.wait(seconds(900));
  tablet.tap("NEW TRUCK");
  tablet.tap("KEEP");
  const auto& truck = last<event::Truck>(tablet);
  CHECK(truck.ticket == TicketId{"7002"});
  CHECK(in_cubic_metres(truck.volume) == doctest::Approx(6.5));
  CHECK(in_seconds(between(truck.batched, truck.arrived)) == doctest::Approx(25 * 60));
}

TEST_CASE("a ticket that was entered already is refused before it is kept") {
  Tablet tablet(ready_pour(kEarly), kEarly + 15min);
  enter_a_truck(tablet);
  tablet.tap("NEW TRUCK");
  tablet.tap_id("ticket");
  for (int i = 0; i < 4; ++i) tablet.tap_id("key erase");
  keys(tablet, "7001");
  tablet.tap("KEEP");
  CHECK(tablet.says("Ticket 7001 was already entered"));
  CHECK_FALSE(tablet.find_id("keep")->target.enabled);
}

TEST_CASE("figures in feet and Fahrenheit are kept in SI, and what cannot be is refused in words") {
  Tablet tablet(ready_pour(kEarly), kEarly + 15min, {.settings = {.units = Units::us}});
  tablet.tap("MORE");
  tablet.tap("TRUCKS");
  tablet.tap_id("air temp");
  keys(tablet, "-4");
  CHECK(tablet.says("-4 \u00B0F"));
  tablet.tap("KEEP");
  tablet.tap("KEEP");  // humidity and wind were not read
  CHECK(last<event::AirTemp>(tablet).temp.degrees == doctest::Approx(-20));
  tablet.tap_id("air temp");
  keys(tablet, "400");
  CHECK(tablet.says("Between -40 and 140 \u00B0F"));
  CHECK_FALSE(tablet.find_id("keep")->target.enabled);
}

TEST_CASE("insertions are logged for the lift, and the same again is two taps") {
  Tablet tablet(ready_pour(kEarly), kEarly + 1min);
  CHECK_FALSE(tablet.find_id("insert")->target.enabled);  // no lift yet
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(300));
  tablet.tap("INSERT");
  tablet.tap_id("bay 2");
  tablet.tap_id("group 3");
  tablet.tap_id("figure 0");
  keys(tablet, "300");
  tablet.tap("KEEP");
  tablet.tap_id("figure 1");
  keys(tablet, "12");
  tablet.tap("KEEP");
  tablet.tap_id("figure 2");
  keys(tablet, "200");
  tablet.tap("KEEP");
  tablet.tap("KEEP");
  const event::Insert once = last<event::Insert>(tablet);
  CHECK(once == event::Insert{ElementId{"W1"}, 1, 2, 3, metres(0.3), seconds(12), metres(0.2)});
  tablet.wait(seconds(120));
  const int taps = tablet.taps;
  tablet.tap("INSERT");
  tablet.tap("KEEP");
  CHECK(tablet.taps == taps + 2);
  CHECK(last<event::Insert>(tablet) == once);
  CHECK(tablet.state->inserts.size() == 2);
}

TEST_CASE("the card names the rows to run, then the motors to move, and leads to both by taps") {
  Tablet tablet(ready_pour(kEarly), kEarly + 1min);
  place_lift_1(tablet);
  CHECK(tablet.find_id("do run R1 near") != nullptr);  // R1 alone serves lift 1
  tablet.tap_id("next");
  tablet.tap_id("next row R1 near");
  CHECK(last<event::Run>(tablet).place.row == RowId{"R1"});
  CHECK(tablet.says("RUNNING: R1"));
  tablet.wait(seconds(100));
  tablet.tap_id("row R1 near");
  CHECK(tablet.says("Every row with concrete in reach has run enough."));
  CHECK(tablet.says("No motors to move now."));  // R1 serves lift 2 as well
}

TEST_CASE(
    "an inverter is set and trips by taps; slow seconds and motors that stand still are said") {
  std::vector<Event> events = ready_pour(kEarly);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  const auto& motors = plan.elements.front().rows[0].motors;
  REQUIRE(motors.size() > 1);
  plan.power = {{InverterId{"I1"}, volts(42), amperes(30), {motors[0].id}, {}},
                {InverterId{"I2"}, volts(42), amperes(30), {motors[1].id}, {}}};
  plan.motor_type = MotorType{amperes(5), kilonewtons(4), vibrations_per_minute(6000)};
  open.plan = std::make_shared<const Plan>(plan);
  Tablet tablet(events, kEarly + 1min);
  place_lift_1(tablet);
  tablet.tap("MORE");
  tablet.tap("INVERTERS");
  CHECK(tablet.says("speed not told"));
  tablet.tap_id("speed I1");
  // At first only what the motors bear is quick to set.
  CHECK(tablet.find("6000") != nullptr);
  CHECK(tablet.find("4800") != nullptr);
  keys(tablet, "2400");
  CHECK(tablet.says("Under 3000"));
  CHECK(tablet.says("KEEP twice"));
  const int kept = tablet.wanted;
  tablet.tap("KEEP");
  CHECK(tablet.wanted == kept);  // no motor is set so slow by one slip
  tablet.tap("KEEP");
  CHECK(last<event::Speed>(tablet).inverter == InverterId{"I1"});
  CHECK(in_vibrations_per_minute(last<event::Speed>(tablet).speed) == doctest::Approx(2400));
  CHECK_FALSE(tablet.find_id("trip I1")->target.enabled);  // nothing runs on it
  // The second inverter as the first: two taps. Faster than the motors bear is asked for twice.
  tablet.tap_id("speed I2");
  keys(tablet, "7200");
  CHECK(tablet.says("Over 6000"));
  tablet.tap("KEEP");
  tablet.tap_id("choice 2400");
  tablet.tap("KEEP");  // another figure is asked for anew
  CHECK(tablet.wanted == kept + 1);
  tablet.tap_id("choice 6000");
  tablet.tap("KEEP");
  CHECK(last<event::Speed>(tablet).inverter == InverterId{"I2"});
  CHECK(in_vibrations_per_minute(last<event::Speed>(tablet).speed) == doctest::Approx(6000));
  tablet.tap("BACK");
  tablet.tap("RUN R1");
  tablet.wait(seconds(40));
  CHECK(tablet.says("slow: 1 s counts 0.25 s"));
  CHECK(tablet.says("320 s more"));  // 90 s less a quarter of 40
  const auto slow = std::find_if(tablet.report.findings.begin(), tablet.report.findings.end(),
                                 [](const Finding& f) { return f.rule == "speed-out"; });
  REQUIRE(slow != tablet.report.findings.end());
  CHECK(slow->inverter == InverterId{"I1"});
  tablet.tap("MORE");
  tablet.tap("INVERTERS");
  CHECK(tablet.says("1 motor on: 5.0"));
  tablet.tap_id("trip I1");
  CHECK(last<event::Trip>(tablet).inverter == InverterId{"I1"});
  CHECK(tablet.says("tripped"));
  CHECK_FALSE(tablet.find_id("trip I1")->target.enabled);
  tablet.tap("BACK");
  CHECK(tablet.says("TRIPPED: REST, RUN"));
  tablet.tap_id("row R1 near");  // REST
  tablet.tap_id("row R1 near");
  CHECK_FALSE(tablet.says("TRIPPED: REST, RUN"));
  CHECK(tablet.state->runs.size() == 2);
  // A run that is left without a motor is over, and the row is the next to run.
  tablet.tap("MORE");
  tablet.tap("INVERTERS");
  tablet.tap_id("trip I1");
  CHECK(tablet.state->runs[1].to == std::nullopt);
  tablet.tap_id("trip I2");
  CHECK(tablet.state->runs[1].to.has_value());
  tablet.tap("BACK");
  CHECK(tablet.find_id("do run R1 near") != nullptr);
  tablet.wait(seconds(130));
  tablet.report = check(*tablet.state, AsOf::now(*tablet.state, tablet.now));
  CHECK(has(tablet, "trip-open"));
}

TEST_CASE("a row served no more comes down and its motors go up, each by one tap") {
  // R2 takes the motors of R1, which serves lift 1 only.
  std::vector<Event> events = ready_pour(kEarly);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  auto& rows = plan.elements.front().rows;
  rows[0].serves = {1};
  for (std::size_t i = 0; i < 2; ++i) rows[1].motors[i].id = rows[0].motors[i].id;
  open.plan = std::make_shared<const Plan>(plan);
  Tablet tablet(events, kEarly + 1min);
  place_lift_1(tablet, {"R1"});
  tablet.tap("RUN R1");
  tablet.wait(seconds(100));
  tablet.tap_id("next");
  CHECK_FALSE(tablet.find_id("down R1 near")->target.enabled);  // it runs: rest it first
  tablet.tap_id("row R1 near");
  tablet.tap_id("down R1 near");
  CHECK(last<event::TakeDown>(tablet).place.row == RowId{"R1"});
  tablet.tap_id("up R2 near");
  const auto& hang = last<event::Hang>(tablet);
  CHECK(hang.place.row == RowId{"R2"});
  CHECK(hang.cables);
  CHECK(tablet.find_id("up R2 near") == nullptr);
  CHECK(tablet.says("No motors to move now."));
}

TEST_CASE("the rise is said against its limit in words: within, near and too fast") {
  // A form that bears the whole height, and a plan that allows 1 m/h: 0.6 m in 36 min.
  std::vector<Event> events = ready_pour(kEarly);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  plan.elements.front().form_rating = kilopascals(60);
  plan.elements.front().rise_limit = metres_per_hour(1);
  open.plan = std::make_shared<const Plan>(plan);
  const auto placed_in = [&](Seconds span) {
    auto tablet = std::make_unique<Tablet>(events, kEarly + 1min);
    tablet->tap("START LIFT 1");
    tablet->wait(span);
    tablet->tap("END LIFT 1");
    tablet->tap("KEEP");
    return tablet;
  };
  for (const auto& [share, words] :
       std::vector<std::pair<double, std::string>>{{0.5, "within limit"},
                                                   {0.88, "within limit"},
                                                   {0.95, "NEAR LIMIT"},
                                                   {1.05, "TOO FAST"}}) {
    const auto& tried = share;
    CAPTURE(tried);
    const auto tablet = placed_in(seconds(36 * 60 / share));
    std::string all;
    for (const SeenText& text : tablet->ui.probe().texts) all += text.text + " | ";
    CAPTURE(all);
    CHECK(tablet->says(words));
  }
}

TEST_CASE("while the pour is on hold the joint's clock runs on the screen") {
  Tablet tablet(ready_pour(kEarly), kEarly + 1min);
  place_lift_1(tablet);
  tablet.tap("HOLD");
  tablet.tap("Waiting for trucks");
  CHECK(tablet.says("ON HOLD for"));
  CHECK(tablet.says("knit by"));
  // Five hours to initial set, less the hour and a half a load nobody logged may be old: said
  // before, and said when it is gone.
  tablet.wait(hours(3));
  CHECK(tablet.says("min: bay 1"));
  tablet.wait(hours(1));
  CHECK(tablet.says("SET"));
}

TEST_CASE("the one who holds the tablet is chosen in three taps and shown") {
  std::vector<Event> events = ready_pour(kEarly);
  auto& open = std::get<event::PourOpen>(events.front().what);
  Plan plan = *open.plan;
  plan.people.push_back({PersonId{"night"}, "B. Okoro", "foreman"});
  open.plan = std::make_shared<const Plan>(plan);
  Tablet tablet(events, kEarly + 1min);
  tablet.tap("MORE");
  CHECK(tablet.says("A. Reyes"));
  tablet.tap_id("holder");
  tablet.tap("B. Okoro");
  CHECK(tablet.taps == 3);
  REQUIRE(tablet.ui.settings().holder);
  CHECK(tablet.ui.settings().holder->id == PersonId{"night"});
  tablet.tap("MORE");
  CHECK(tablet.says("B. Okoro"));
}

TEST_CASE("a motor out of work by one tap on the row's card: from then on it shakes nothing") {
  const Moment dawn = *parse_moment("2026-03-02T05:00:00.000Z");
  Tablet tablet(hung_pour(dawn), after(dawn, seconds(900)));
  const Row& row = tablet.state->plan->elements.front().rows.front();
  const std::size_t at = 0;
  const auto working = [&] {
    const HangState* hang = tablet.state->hanging(0, at);
    REQUIRE(hang != nullptr);
    return std::count(hang->places.begin(), hang->places.end(), true);
  };
  const auto before = working();
  tablet.tap_id("row-info " + row.id.text + " " + to_text(row.side));
  tablet.tap_id("motor out");
  tablet.tap_id("out " + row.motors.front().id.text);
  REQUIRE(tablet.state->motors_out.size() == 1);
  CHECK(working() == before - 1);
}
