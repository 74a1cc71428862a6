// cable-open, run-unended, ready-open, unsigned and clock-step: what the log says of cables, hands
// and clocks.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

Pour hung_lift() {
  return Pour{PlanText{}}.placed(1, 0, 600, 0.6);
}

// A note tapped at a moment, `step` off the steady clock by the wall's.
std::string tapped(double at, double step, const std::string& boot = "b1") {
  const Pour pour;
  return fmt::format(R"("do":"note","text":"n","entered":"{}","mono":{},"boot":"{}")",
                     pour.moment(at + step), 1000 + at, boot);
}

Checked stepped(double step, const std::string& boot = "b1") {
  return Pour{}.at(100, tapped(100, 0)).at(200 + step, tapped(200, step, boot)).checked();
}

}  // namespace

TEST_CASE("a row may run while a hang with every cable confirmed stands") {
  CHECK_FALSE(hung_lift().at(650, hang("R1")).ran("R1", 700, 800).checked().has("cable-open"));
  CHECK_FALSE(hung_lift().at(700, hang("R1")).ran("R1", 700, 800).checked().has("cable-open"));
  const Finding f = hung_lift().ran("R1", 700, 800).checked().only("cable-open");
  CHECK(f.severity == Severity::stop);
  CHECK(f.row == 0);
  CHECK(f.side == Side::near_side);
  CHECK(f.from == seconds(700));
  CHECK(f.to == seconds(800));
  CHECK_FALSE(f.measured);
}

TEST_CASE("a hang counts when its cables were confirmed, before the run, on this row and side") {
  CHECK(hung_lift().at(650, hang("R1", {}, false)).ran("R1", 700, 800).checked().has("cable-open"));
  CHECK(hung_lift().at(701, hang("R1")).ran("R1", 700, 800).checked().has("cable-open"));
  PlanText plan;
  plan.rows = {full_row("R1", 0.6), full_row("R1", 0.6, "[1]", "far"), full_row("R2", 0.6)};
  const auto hung = [&](const std::string& what) {
    return Pour{plan}.at(10, what).placed(1, 0, 600, 0.6).ran("R1", 700, 800, "far").checked();
  };
  CHECK(hung(hang("R1")).has("cable-open"));
  CHECK(hung(hang("R2")).has("cable-open"));
  CHECK_FALSE(hung(hang("R1", {}, true, "far")).has("cable-open"));
}

TEST_CASE("a hang no longer counts when it was taken down, or hung anew without its cables") {
  Pour pour = hung_lift().at(10, hang("R1")).at(650, take_down("R1")).ran("R1", 700, 800);
  CHECK(pour.checked().has("cable-open"));
  CHECK_FALSE(pour.at(660, hang("R1")).checked().has("cable-open"));
  CHECK(pour.at(670, hang("R1", {}, false)).checked().has("cable-open"));
}

TEST_CASE("a row hung anew while it runs must have its cables confirmed again") {
  Pour pour = hung_lift().at(10, hang("R1")).ran("R1", 700, 800);
  CHECK_FALSE(Pour{pour}.at(750, hang("R1")).checked().has("cable-open"));
  CHECK(Pour{pour}.at(750, hang("R1", {}, false)).checked().only("cable-open").from ==
        seconds(700));
  CHECK_FALSE(Pour{pour}.at(800, hang("R1", {}, false)).checked().has("cable-open"));
}

TEST_CASE("a row running without its cables is told of at once") {
  CHECK(hung_lift().at(700, run("R1")).live(701).has("cable-open"));
}

TEST_CASE("a run has a rest of its own") {
  CHECK_FALSE(hung_lift().ran("R1", 700, 800).checked().has("run-unended"));
  const Finding open =
      hung_lift().at(700, run("R1")).at(900, lift_start(2)).checked().only("run-unended");
  CHECK(open.severity == Severity::mend);
  CHECK(open.from == seconds(700));
  CHECK_FALSE(open.to);
  CHECK(open.measured->si == about(200));
  CHECK(open.row == 0);
  // Its motors taken down end it, but nobody rested it.
  Pour pour = hung_lift().at(10, hang("R1")).at(700, run("R1")).at(750, take_down("R1"));
  CHECK(pour.checked().only("run-unended").measured->si == about(50));
  // A second run of a row that runs says nothing new: one rest ends both.
  CHECK_FALSE(hung_lift().at(690, run("R1")).ran("R1", 700, 800).checked().has("run-unended"));
}

TEST_CASE("a live look takes a run for forgotten after three times the band") {
  const Pour pour = hung_lift().at(700, run("R1"));
  CHECK_FALSE(pour.live(1059).has("run-unended"));
  CHECK_FALSE(pour.live(1060).has("run-unended"));
  CHECK(pour.live(1061).only("run-unended").measured->si == about(361));
  CHECK(Pour{pour}.at(800, kClose).live(801).has("run-unended"));
}

TEST_CASE("an item not in order as placing begins was left open") {
  const auto begun = [](const std::string& item, double at) {
    return hung_lift().at(at, item).checked();
  };
  CHECK_FALSE(begun(ready("ties tight", true), 0).has("ready-open"));
  CHECK_FALSE(begun(ready("ties tight", false), 1).has("ready-open"));  // after it began
  const Checked seen = begun(ready("ties tight", false), 0);
  const Finding f = seen.only("ready-open");
  CHECK(f.severity == Severity::mend);
  CHECK(seen.says(f).find("ties tight") != std::string::npos);
}

TEST_CASE("the latest word on an item before placing counts, item by item") {
  Pour pour;
  pour.at(10, ready("a", false)).at(20, ready("b", true)).at(30, ready("a", true));
  pour.placed(1, 100, 600, 0.6);
  CHECK_FALSE(pour.checked().has("ready-open"));
  Pour spoilt = pour;
  const Checked seen = spoilt.at(40, ready("b", false)).checked();
  CHECK(seen.says(seen.only("ready-open")).find("\"b\"") != std::string::npos);
  Pour late = pour;  // put in order only after placing had begun
  CHECK(late.at(50, ready("c", false)).at(150, ready("c", true)).checked().has("ready-open"));
}

TEST_CASE("an item may be open as long as nothing is placed") {
  CHECK_FALSE(Pour{}.at(10, ready("a", false)).checked().has("ready-open"));
  CHECK_FALSE(Pour{}.at(10, ready("a", false)).live(500).has("ready-open"));
  CHECK(Pour{}.at(10, ready("a", false)).at(20, lift_start(1)).live(20).has("ready-open"));
}

TEST_CASE("a closed pour is signed by its foreman and by an inspector") {
  const Pour open = hung_lift();
  CHECK_FALSE(open.checked().has("unsigned"));
  Pour closed = hung_lift().at(900, kClose);
  const auto found = closed.checked().of("unsigned");
  REQUIRE(found.size() == 2);
  CHECK(found[0].severity == Severity::note);
  CHECK(found[0].from == seconds(900));
  closed.at(1000, sign("superintendent"));
  CHECK(closed.checked().of("unsigned").size() == 2);
  closed.at(1000, sign("foreman"));
  const Checked once = closed.checked();
  CHECK(once.says(once.only("unsigned")).find("inspector") != std::string::npos);
  closed.at(1100, R"("id":"s",)" + sign("inspector"));
  CHECK_FALSE(closed.checked().has("unsigned"));
  closed.at(1200, R"("do":"strike","target":"s","why":"signed by mistake")");
  CHECK(closed.checked().has("unsigned"));
}

TEST_CASE("a wall clock that steps over 2 s against the steady one is told of, either way") {
  for (const double fine : {0., 1.9, 2., -1.9, -2.}) {
    CAPTURE(fine);
    CHECK_FALSE(stepped(fine).has("clock-step"));
  }
  for (const double step : {2.1, -2.1, 3600., -3600.}) {
    CAPTURE(step);
    const Finding f = stepped(step).only("clock-step");
    CHECK(f.severity == Severity::note);
    CHECK(f.measured->si == about(step));
    CHECK(f.limit->si == 2.);
    CHECK(unit_of(f) == "s");
    CHECK(*f.from == seconds(200));  // the step is taken out of its moment
  }
}

TEST_CASE("after the tablet was started anew nothing is known of a step") {
  CHECK_FALSE(stepped(3600, "b2").has("clock-step"));
}

TEST_CASE("events without clocks of their own show no step") {
  CHECK_FALSE(hung_lift().checked().has("clock-step"));
}

TEST_CASE("a form that moved or a motor that came loose stops the pour and holds it at once") {
  for (const auto& moved :
       {std::pair{"form", "the form moved. Clear the area"}, {"motor", "a motor came loose"}}) {
    const auto& [what, words] = moved;
    INFO(moved.first);
    Pour pour =
        Pour{}
            .at(0, lift_start(1))
            .at(300,
                fmt::format(R"("do":"moved","what":"{}","element":"W1","note":"tie 3")", what));
    const Checked seen = pour.live(400);
    const Finding f = seen.only("form-moved");
    CHECK(f.severity == Severity::stop);
    CHECK(*f.from == seconds(300));
    CHECK(*f.to == seconds(400));  // still true: it stays under attention
    CHECK(seen.says(f).find(words) != std::string::npos);
    REQUIRE(seen.state.holds.size() == 1);
    CHECK_FALSE(seen.state.holds.front().to);
    pour.at(900, R"("do":"resume","reason":"clear")");
    const Checked after = pour.live(2000);
    CHECK(*after.state.holds.front().to == seconds(900));
    CHECK(*after.only("form-moved").to == seconds(900));  // told in the record for good
  }
}

TEST_CASE("a form that moves while the pour is on hold opens no second hold") {
  Pour pour;
  pour.at(10, R"("do":"hold","reason":"rain")");
  pour.at(20, R"("do":"moved","what":"form","element":"W1")");
  const Checked seen = pour.checked();
  CHECK(seen.state.holds.size() == 1);
  CHECK(seen.has("form-moved"));
}
