#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "cli/commands.h"
#include "cli/plan_inputs.h"
#include "cli/plan_text.h"
#include "store/book/logbook.h"
#include "temp_folder.h"

using namespace rb;

namespace {

PlanTexts wall() {
  return {{"length", "12 m"}, {"height", "4.8 m"}, {"thickness", "300 mm"}, {"rating", "60 kPa"},
          {"force", "4 kN"},  {"amps", "4.2 A"},   {"initial-set", "5 h"}};
}

}  // namespace

TEST_CASE("a plan asks for what has no honest default, by name") {
  for (const auto& [name, text] : wall()) {
    const auto& tried = name;
    CAPTURE(tried);
    PlanTexts given = wall();
    given.erase(name);
    const auto request = read_plan_request(given);
    REQUIRE_FALSE(request);
    CHECK(to_text(request.error()).find("--" + name + ": is missing") == 0);
  }
}

TEST_CASE("every default of a plan can be read, and is told with its source") {
  const auto request = read_plan_request(wall());
  REQUIRE_MESSAGE(request, (request ? std::string{} : to_text(request.error())));
  for (const PlanInput& input : plan_inputs()) {
    const bool told =
        std::find(request->taken.begin(), request->taken.end(), &input) != request->taken.end();
    CAPTURE(input.name);
    CHECK(told == (*input.fallback != '\0'));
    CHECK((*input.fallback == '\0' || *input.source != '\0'));
  }
  CHECK_FALSE(request->wish.both_sides);
  PlanTexts thick = wall();
  thick["thickness"] = "500 mm";
  CHECK(read_plan_request(thick)->wish.both_sides);
  thick["sides"] = "near";
  CHECK_FALSE(read_plan_request(thick)->wish.both_sides);
}

TEST_CASE("the command's defaults are the planner's own") {
  const auto request = read_plan_request(wall());
  REQUIRE(request);
  PlanWish usual;
  usual.length = metres(12);
  usual.height = metres(4.8);
  usual.thickness = request->wish.thickness;
  usual.form_rating = request->wish.form_rating;
  usual.motor.force = request->wish.motor.force;
  usual.motor.amps = request->wish.motor.amps;
  usual.mix = request->wish.mix;  // a mix is the plan's: none is usual
  usual.limits = request->wish.limits;
  CHECK(request->wish == usual);
  CHECK(usual.limits.dose_min.value == Limits{}.dose_min.value);
  CHECK(usual.limits.dose_max.value == Limits{}.dose_max.value);
  CHECK(usual.limits.load_age_max.value == Limits{}.load_age_max.value);
}

TEST_CASE("a number without its unit, or a word that is none of the choices, is refused by name") {
  for (const auto& [name, text] : PlanTexts{{"length", "12"},
                                            {"rise", "1.5 m"},
                                            {"trucks", "4"},
                                            {"motors", "16 A"},
                                            {"crew", "0"},
                                            {"load", "6 t"},
                                            {"form-mass", "60 kg"},
                                            {"sides", "left"},
                                            {"cement", "grey"},
                                            {"kind", "slab"},
                                            {"units", "metric"},
                                            {"cord-length", "25 m"},
                                            {"dose-max", "30 s"}}) {
    const auto& tried = name;
    CAPTURE(tried);
    PlanTexts given = wall();
    given[name] = text;
    const auto request = read_plan_request(given);
    REQUIRE_FALSE(request);
    CHECK(to_text(request.error()).find("--" + name) != std::string::npos);
  }
}

TEST_CASE("SI and US give the same plan") {
  const auto si = read_plan_request(wall());
  PlanTexts us = wall();
  us["length"] = "39.37007 ft";
  us["thickness"] = "11.81102 in";
  us["rating"] = "1253.1261 psf";
  us["force"] = "899.236 lbf";
  const auto other = read_plan_request(us);
  REQUIRE(si);
  REQUIRE(other);
  const auto a = plan_pour(si->wish);
  const auto b = plan_pour(other->wish);
  REQUIRE(a);
  REQUIRE(b);
  CHECK(a->motors == b->motors);
  CHECK(a->lifts.size() == b->lifts.size());
  CHECK(in_hours(a->duration) == doctest::Approx(in_hours(b->duration)).epsilon(1e-4));
}

TEST_CASE("a plan that replay would refuse is refused before a file is made") {
  const test::TempFolder folder;
  for (const auto& [name, text] : PlanTexts{{"load-age", "48 h"},
                                            {"volts", "2000 V"},
                                            {"speed", "100000 vpm"},
                                            {"reference", "80 C"},
                                            {"site", "\xff"}}) {
    const auto& tried = name;
    CAPTURE(tried);
    PlanCommand command;
    command.given = wall();
    command.given["inverter-amps"] = "40 A";
    command.given[name] = text;
    command.to = folder.path / "open.jsonl";
    CHECK(run_plan(command) == Exit::usage);
    CHECK(std::filesystem::is_empty(folder.path));
  }
}

TEST_CASE("what plan writes opens a pour in a book, and no file is written over") {
  const test::TempFolder folder;
  PlanCommand command;
  command.given = wall();
  command.given["inverter-amps"] = "40 A";
  command.given["site"] = "Harbour Street";
  command.to = folder.path / "open.jsonl";
  CHECK(run_plan(command) == Exit::fine);
  CHECK(run_plan(command) == Exit::usage);
  const Path book = folder.path / "a.risebook";
  CHECK(run_replay(command.to, book) == Exit::fine);
  CHECK(run_check({book, std::nullopt, false}) == Exit::fine);
  const auto opened = Logbook::open(book, Access::read);
  REQUIRE(opened);
  const auto events = opened->events(PourId{"PLANNED-1"});
  REQUIRE(events);
  const auto& open = std::get<event::PourOpen>(events->front().what);
  CHECK(open.plan->site == "Harbour Street");
  CHECK(open.plan->elements.front().rows.size() == 5);
  CHECK(open.plan->power.size() == 4);
}

TEST_CASE("a plan that cannot work ends with exit code 2 and writes nothing") {
  const test::TempFolder folder;
  PlanCommand command;
  command.given = wall();
  command.given["rating"] = "20 kPa";
  command.to = folder.path / "open.jsonl";
  CHECK(run_plan(command) == Exit::usage);
  CHECK_FALSE(std::filesystem::exists(command.to));
}

TEST_CASE("the run sheet names every lift and every default taken") {
  const auto request = read_plan_request(wall());
  REQUIRE(request);
  const auto planned = plan_pour(request->wish);
  REQUIRE(planned);
  const std::string text = plan_text(*planned, *request);
  for (const LiftStep& step : planned->lifts) {
    CHECK(text.find("lift " + std::to_string(step.lift) + " at ") != std::string::npos);
  }
  for (const PlanInput* input : request->taken) {
    CHECK(text.find(std::string{"--"} + input->name) != std::string::npos);
  }
  CHECK(text.find("ft)") != std::string::npos);
  const std::string json = plan_json(*planned);
  CHECK(json.find("\"rise_allowed_mh\"") != std::string::npos);
}

TEST_CASE("the run sheet is written as PDF, never over a file, and its options are held to words") {
  const test::TempFolder folder;
  PlanCommand command;
  command.given = wall();
  command.sheet = folder.path / "sheet.pdf";
  command.paper = "letter";
  command.start = "05:30";
  command.language = "es";
  CHECK(run_plan(command) == Exit::fine);
  CHECK(std::filesystem::file_size(command.sheet) > 1000);
  CHECK(run_plan(command) == Exit::usage);
  command.sheet = folder.path / "other.pdf";
  command.start = "25:00";
  CHECK(run_plan(command) == Exit::usage);
  command.start.clear();
  command.language = "xx";
  CHECK(run_plan(command) == Exit::usage);
  CHECK_FALSE(std::filesystem::exists(command.sheet));
}

TEST_CASE("openings, bays, batter and section are read with their units") {
  PlanTexts given = wall();
  given["openings"] = "2 m, 1 m, 1.2 m, 1.5 m; 6 m, 1 m, 900 mm, 2.1 m";
  given["bays"] = "4 m, 3 m, 5 m";
  given["batter"] = "4 deg";
  const auto request = read_plan_request(given);
  REQUIRE_MESSAGE(request, (request ? std::string{} : to_text(request.error())));
  REQUIRE(request->wish.openings.size() == 2);
  CHECK(in_metres(request->wish.openings[1].w) == doctest::Approx(0.9));
  CHECK(request->wish.bays.size() == 3);
  CHECK(request->wish.batter_deg == 4);
  for (const auto& [name, text] : PlanTexts{{"openings", "2 m, 1 m"},
                                            {"openings", "2, 1, 1, 1"},
                                            {"bays", "4 m, 3"},
                                            {"batter", "4"},
                                            {"section", "oval"}}) {
    const auto& tried = name;
    CAPTURE(tried);
    PlanTexts wrong = wall();
    wrong[name] = text;
    const auto refused = read_plan_request(wrong);
    REQUIRE_FALSE(refused);
    CHECK(to_text(refused.error()).find("--" + name) != std::string::npos);
  }
  PlanTexts loads = wall();
  CHECK(read_plan_request(loads)->wish.given == GivenFigures{});
  loads["load"] = "6 m3";
  CHECK(read_plan_request(loads)->wish.given.load);
}
