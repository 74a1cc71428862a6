// Who signs stands for the role the plan gives him: refused when tapped or replayed, set aside when
// a book already holds it.
#include <doctest/doctest.h>

#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

Pour closed() {
  return Pour{good_pour().without(R"("do":"sign")")};
}

}  // namespace

TEST_CASE("the foreman cannot sign as inspector, nor can one who is not in the plan") {
  for (const char* by : {"f1", "nobody"}) {
    CAPTURE(std::string{by});
    const auto refused = read_script(
        closed().at(5500, sign("foreman")).at(5600, sign("inspector", by)).script(), "signed");
    REQUIRE_FALSE(refused);
    CHECK(to_text(refused.error()).find("cannot sign as inspector") != std::string::npos);
    CHECK(to_text(refused.error()).find("K. Lindqvist") != std::string::npos);  // who can
  }
}

TEST_CASE("a signature of another's role that a book already holds is set aside, and it is said") {
  Pour pour = good_pour();
  pour.in_book = [](std::vector<Event>& events) { events.back().by = PersonId{"f1"}; };
  const Checked seen = pour.checked();
  const LogEntry& entry = seen.state.log.back();
  CHECK(entry.sense == LogEntry::Sense::wrong);
  CHECK(entry.why_not.text().find("A. Reyes cannot sign as inspector") != std::string::npos);
  const Finding f = seen.only("unsigned");
  CHECK(f.ref);
  CHECK(seen.says(f).find("cannot sign as inspector") != std::string::npos);
  CHECK_FALSE(good_pour().checked().has("unsigned"));
}

TEST_CASE("two roles are signed by one person only where the plan gives both") {
  PlanText plan;
  plan.people = R"({"id":"f1","name":"A. Reyes","role":"Foreman, inspector"})";
  Pour pour{plan};
  pour.at(5400, kClose).at(5500, sign("foreman", "f1")).at(5600, sign("inspector", "f1"));
  CHECK_FALSE(pour.checked().has("unsigned"));
}

TEST_CASE("a plan that names nobody leaves it to the crew who signs") {
  PlanText plan;
  plan.people = "";
  Pour pour{plan};
  pour.at(5400, kClose).at(5500, sign("foreman", "x")).at(5600, sign("inspector", "x"));
  CHECK_FALSE(pour.checked().has("unsigned"));
}

TEST_CASE("signing and what else comes after the close changes no figure") {
  const auto figures = [](const Checked& seen) {
    std::vector<std::string> all;
    for (const Finding& f : seen.report.findings) {
      if (f.rule != "unsigned") all.push_back(seen.says(f));
    }
    for (const LiftReport& lift : seen.report.lifts) {
      all.push_back(std::to_string(lift.under_share.value_or(-1)) + " " +
                    std::to_string(lift.min_dose.value_or(Seconds{-1}).count()) + " " +
                    std::to_string(lift.mean_dose.value_or(Seconds{-1}).count()) + " " +
                    std::to_string(lift.rise_window.value_or(Velocity{}).value()) + " " +
                    std::to_string(lift.rise_limit.value_or(Velocity{}).value()));
    }
    for (const RunReport& run : seen.report.runs) all.push_back(std::to_string(run.head.value()));
    return all;
  };
  // A row left running at the close, and a pour that goes right.
  for (const bool left : {false, true}) {
    CAPTURE(left);
    Pour pour = closed();
    if (left) pour.without(R"("do":"rest","element":"W1","row":"R3")");
    const auto before = figures(pour.checked());
    for (const double later : {5500.0, 9000.0, 5400.0 + 86400}) {
      Pour after{pour};
      after.at(later, sign("foreman")).at(later + 10, sign("inspector"));
      after.at(later + 20, R"("do":"note","text":"all went well")");
      after.at(later + 172800, R"("do":"strip","element":"W1","side":"near")");
      after.at(later + 40, R"("do":"test","ticket":"T1","temp":31,"slump":0.12)");
      CHECK(figures(after.checked()) == before);
    }
  }
}
