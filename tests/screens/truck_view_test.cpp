#include "screens/view/truck_view.h"

#include <doctest/doctest.h>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"

using namespace rb;
using namespace rb::screens;

namespace {

using TruckStage = TruckView::Stage;
using AgeWord = TruckView::AgeWord;

const char* kTruckPlan =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
    R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
    R"("limits":{"load_age_max_s":3600},)"
    R"("elements":[{"id":"W1","length":6,"height":3,"thickness":0.3,"bays":[6],"rows":[]}]}})";

PourState pour(const std::vector<std::string>& lines) {
  std::vector<Event> events;
  const auto add = [&](const std::string& line) {
    auto event = parse_event(line, "test");
    REQUIRE_MESSAGE(event, (event ? "" : to_text(event.error())));
    events.push_back(*event);
  };
  add(kTruckPlan);
  for (const std::string& line : lines) add(R"({"by":"f1",)" + line + "}");
  auto state = fold(events);
  REQUIRE(state);
  return *state;
}

std::string truck(const char* ticket, const char* batched) {
  return std::string{R"("at":"2026-03-02T05:10:00Z","do":"truck","ticket":")"} + ticket +
         R"(","mix":"C1","volume":6,"batched":"2026-03-02T)" + batched +
         R"(Z","arrived":"2026-03-02T05:10:00Z")";
}
std::string discharge(const char* ticket, const char* at, const char* ended = nullptr) {
  std::string line = std::string{R"("at":"2026-03-02T)"} + at +
                     R"(Z","do":"discharge","ticket":")" + ticket + "\"";
  if (ended != nullptr) line += std::string{R"(,"ended":"2026-03-02T)"} + ended + "Z\"";
  return line;
}
Moment at(const char* clock) {
  return *parse_moment(std::string{"2026-03-02T"} + clock + ".000Z");
}

}  // namespace

TEST_CASE("a load's age is told just below, at and just above its limit") {
  const PourState state = pour({truck("T1", "05:00:00")});  // limit: one hour
  const auto word = [&](const char* clock) {
    return make_truck_views(state, at(clock)).front().word;
  };
  CHECK(word("05:45:00") == AgeWord::young);   // 15 min left
  CHECK(word("05:45:01") == AgeWord::nearly);  // less
  CHECK(word("06:00:00") == AgeWord::nearly);  // at the limit it is not over it
  CHECK(word("06:00:01") == AgeWord::over);
}

TEST_CASE("a load grows no older once its discharge has ended") {
  const PourState state = pour({truck("T1", "05:00:00"), discharge("T1", "05:20:00", "05:40:00")});
  const auto late = make_truck_views(state, at("08:00:00")).front();
  CHECK(late.stage == TruckStage::done);
  CHECK(in_seconds(late.age) == doctest::Approx(2400));
  // Before its end has come it still discharges.
  CHECK(make_truck_views(state, at("05:30:00")).front().stage == TruckStage::discharging);
}

TEST_CASE("discharging stands first, then the oldest waiting, then what is done") {
  const PourState state =
      pour({truck("old", "04:40:00"), truck("young", "05:05:00"), truck("now", "04:50:00"),
            truck("done", "04:30:00"), discharge("done", "05:12:00", "05:20:00"),
            discharge("now", "05:21:00")});
  std::vector<std::string> order;
  for (const TruckView& view : make_truck_views(state, at("05:25:00"))) {
    order.push_back(view.ticket.text);
  }
  CHECK(order == std::vector<std::string>{"now", "old", "young", "done"});
}

TEST_CASE("a discharge without a truck is shown with its age unknown") {
  const PourState state = pour({discharge("X9", "05:12:00")});
  const auto view = make_truck_views(state, at("05:25:00")).front();
  CHECK_FALSE(view.entered);
  CHECK(view.word == AgeWord::unknown);
}
