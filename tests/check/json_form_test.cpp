// check --json: the names of the design, SI, unrounded, RFC 3339 UTC with milliseconds, absent =
// null.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "check/report_unread.h"
#include "pour_text.h"

using namespace rb;
using namespace rb::test;
using Json = nlohmann::json;

namespace {

Json json_of(const Checked& seen) {
  return Json::parse(to_json(seen.state, seen.report));
}

std::set<std::string> names(const Json& object) {
  std::set<std::string> all;
  for (const auto& [name, value] : object.items()) all.insert(name);
  return all;
}

Json finding(const Json& json, const std::string& rule) {
  for (const Json& f : json.at("findings")) {
    if (f.at("rule") == rule) return f;
  }
  FAIL("no finding of ", rule);
  return {};
}

}  // namespace

TEST_CASE("the check of a good pour has no findings, its lifts and its runs") {
  const Json json = json_of(good_pour().checked());
  CHECK(names(json) == std::set<std::string>{"pour", "damaged", "set_aside", "from_script",
                                             "findings", "review", "not_judged", "lifts", "runs"});
  CHECK(json.at("not_judged") == Json::array());
  CHECK(json.at("damaged") == Json::array());
  CHECK(json.at("set_aside") == Json::array());
  CHECK(json.at("pour") == "P1");
  CHECK(json.at("from_script").at("events") == 0);
  CHECK(json.at("findings") == Json::array());
  CHECK(json.at("lifts").size() == 3);
  CHECK(json.at("runs").size() == 3);
}

TEST_CASE("a lift's names, units and times") {
  const Json lift = json_of(good_pour().checked()).at("lifts").at(1);
  CHECK(names(lift) == std::set<std::string>{"element", "lift", "placed_from", "placed_to", "top",
                                             "rise_mean_mh", "rise_window_mh", "rise_limit_mh",
                                             "under_share", "min_dose_s", "mean_dose_s"});
  CHECK(lift.at("element") == "W1");
  CHECK(lift.at("lift") == 2);
  CHECK(lift.at("placed_from") == "2026-03-02T05:40:00.000Z");
  CHECK(lift.at("placed_to") == "2026-03-02T05:55:00.000Z");
  CHECK(lift.at("top") == 1.2);
  CHECK(lift.at("rise_mean_mh").get<double>() == doctest::Approx(2.4));
  CHECK(lift.at("rise_window_mh").get<double>() == doctest::Approx(1.2));
  CHECK(lift.at("rise_limit_mh").get<double>() == doctest::Approx(2));
  CHECK(lift.at("under_share") == 0.);
  CHECK(lift.at("min_dose_s").get<double>() == doctest::Approx(100));
  // R2 over all of it; R3 too from 0.9 m up.
  CHECK(lift.at("mean_dose_s").get<double>() == doctest::Approx(150));
}

TEST_CASE("a run's names, units and times") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.6), full_row("R1", 0.9, "[1]", "far")};
  Pour pour{plan};
  pour.placed(1, 0, 600, 0.6).ran("R1", 600.25, 700.125).at(800, run("R1", "far"));
  const Json runs = json_of(pour.checked()).at("runs");
  REQUIRE(runs.size() == 2);
  CHECK(names(runs[0]) ==
        std::set<std::string>{"element", "side", "row", "from", "to", "speed_vpm", "head_kpa"});
  CHECK(runs[0].at("element") == "W1");
  CHECK(runs[0].at("side") == "near");
  CHECK(runs[0].at("row") == "R1");
  CHECK(runs[0].at("from") == "2026-03-02T05:10:00.250Z");
  CHECK(runs[0].at("to") == "2026-03-02T05:11:40.125Z");
  CHECK(runs[0].at("head_kpa").get<double>() == doctest::Approx(14.4));
  CHECK(runs[1].at("side") == "far");
  CHECK(runs[1].at("to").is_null());
  CHECK(runs[1].at("head_kpa").get<double>() == doctest::Approx(24 * 0.6));  // down to the base
}

TEST_CASE("a finding's names, units and times") {
  PlanText plan;
  plan.rows = {row_text("R1", 0.6, {{"M1", 1}}, "[1]", "far")};
  plan.openings = R"([{"x":3,"z":0,"w":1,"h":0.6}])";
  const Json json = json_of(Pour{plan}
                                .placed(1, 0, 600, 0.6)
                                .ran("R1", 700, 800, "far")
                                .at(650, insert(1, 2, 0.5))
                                .checked());
  const Json f = finding(json, "dose-low");
  for (const char* name : {"rule", "weight", "element", "lift", "bay", "side", "row", "from", "to",
                           "measured", "limit", "unit", "source", "advice"}) {
    CHECK(f.contains(name));
  }
  CHECK(f.at("weight") == "mend");
  CHECK(f.at("element") == "W1");
  CHECK(f.at("lift") == 1);
  CHECK(f.at("bay") == 2);  // counted from 1
  CHECK(f.at("side") == "far");
  CHECK(f.at("row").is_null());
  CHECK(f.at("from") == "2026-03-02T05:00:00.000Z");
  CHECK(f.at("measured").get<double>() == doctest::Approx(1. / 3).epsilon(1e-12));
  CHECK(f.at("limit") == 0.02);
  CHECK(f.at("unit") == "1");
  CHECK(finding(json, "row-far").at("row") == "R1");
  CHECK(finding(json, "cable-open").at("weight") == "stop");
}

TEST_CASE("what a finding does not know is null, not left out") {
  Pour pour = good_pour();
  const Json f = finding(json_of(pour.without("inspector").checked()), "unsigned");
  for (const char* name :
       {"element", "lift", "bay", "side", "row", "to", "measured", "limit", "unit"}) {
    CAPTURE(name);
    REQUIRE(f.contains(name));
    CHECK(f.at(name).is_null());
  }
  CHECK(f.at("weight") == "note");
  CHECK(f.at("from") == "2026-03-02T06:30:00.000Z");
  CHECK_FALSE(f.at("advice").get<std::string>().empty());
}

TEST_CASE("what a lift cannot be judged by is null") {
  Pour pour{PlanText{.rows = {}}};
  const Json lift = json_of(pour.at(0, lift_start(1)).checked()).at("lifts").at(0);
  for (const char* name : {"rise_mean_mh", "rise_window_mh", "rise_limit_mh", "under_share",
                           "min_dose_s", "mean_dose_s"}) {
    CAPTURE(name);
    CHECK(lift.at(name).is_null());
  }
  CHECK(lift.at("top") == 0.);
}

TEST_CASE("numbers are not rounded: read back they are the checker's own") {
  const Checked seen = Pour{PlanText{}}.placed(1, 0, 617.123, 0.6).ran("R1", 300, 391.7).checked();
  const Json json = json_of(seen);
  CHECK(json.at("lifts").at(0).at("under_share").get<double>() == *seen.lift(1).under_share);
  CHECK(json.at("lifts").at(0).at("mean_dose_s").get<double>() ==
        in_seconds(*seen.lift(1).mean_dose));
  CHECK(finding(json, "dose-low").at("measured").get<double>() == *seen.lift(1).under_share);
}

TEST_CASE("moments past midnight carry their own day") {
  Pour pour{{}, "2026-03-02T23:55:00.000Z"};
  const Json json = json_of(pour.placed(1, 0, 600, 0.6).ran("R1", 700, 800).checked());
  CHECK(json.at("lifts").at(0).at("placed_to") == "2026-03-03T00:05:00.000Z");
  CHECK(json.at("runs").at(0).at("from") == "2026-03-03T00:06:40.000Z");
}

TEST_CASE("what could not be read of a pour stands in its check, in JSON and in words") {
  const auto seen = good_pour().checked();
  const Unread unread{{{EventId{"K7M2P-5"}, "nothing of it can be read"}},
                      {{EventId{"K7M2P-9"}, "a kind \"drone-scan\" this Risebook does not know"}}};
  const Json json = Json::parse(to_json(seen.state, seen.report, unread));
  CHECK(json.at("damaged").at(0).at("event") == "K7M2P-5");
  CHECK(json.at("set_aside").at(0).at("event") == "K7M2P-9");
  CHECK(json.at("lifts").size() == 3);
  const std::string text = to_text(seen.state, seen.report, unread);
  CHECK(text.find("DAMAGED: 1 event of this pour") != std::string::npos);
  CHECK(text.find("K7M2P-5: nothing of it can be read") != std::string::npos);
  CHECK(text.find("set aside: K7M2P-9") != std::string::npos);
}

TEST_CASE("a pour whose opening is damaged is named, counted and not judged") {
  const PourWithoutPlan lost{
      PourId{"N1"}, 41, {{{EventId{"K7M2P-1"}, "nothing of it can be read"}}, {}}};
  const Json json = Json::parse(to_json(lost));
  CHECK(json.at("pour") == "N1");
  CHECK(json.at("whole_events") == 41);
  CHECK(json.at("damaged").size() == 1);
  CHECK(json.at("findings") == Json::array());
  CHECK(json.at("not_judged").get<std::string>().find("not judged") != std::string::npos);
  const std::string text = to_text(lost);
  CHECK(text.find("Pour N1") != std::string::npos);
  CHECK(text.find("41 of its events are whole") != std::string::npos);
  CHECK(text.find("K7M2P-1") != std::string::npos);
}

TEST_CASE("findings of one cause share its group, and each tells how many they are") {
  Pour pour = good_pour();
  pour.without(R"("do":"run","element":"W1","row":"R1")");
  pour.without(R"("do":"rest","element":"W1","row":"R1")").without("inspector");
  const Checked seen = pour.checked();
  const Json json = json_of(seen);
  const Json cause = finding(json, "row-missed");
  const Json follows = finding(json, "dose-low");
  const Json apart = finding(json, "unsigned");
  CHECK(cause.at("group").get<std::string>().starts_with("row-missed/W1/1/near/R1"));
  CHECK(follows.at("group") == cause.at("group"));
  CHECK(cause.at("count") == 2);
  CHECK(follows.at("count") == 2);
  CHECK(apart.at("group") == "unsigned");
  CHECK(apart.at("count") == 1);
  const std::string text = to_text(seen.state, seen.report);
  CHECK(text.find("follows from: row-missed/W1/1/near/R1") != std::string::npos);
  CHECK(text.find("follows from: row-missed") == text.rfind("follows from:"));
}
