// Screen and checker must not disagree: over random states of random pours, what cards, buttons and
// lists say of head, rise and band is what the rules find.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <random>

#include "check/check.h"
#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/plan/verdicts.h"
#include "screens/view/pour_view.h"

using namespace rb;
using namespace rb::screens;

namespace {

class Chance {
 public:
  explicit Chance(unsigned seed) : engine_(seed) {}
  int of(int n) { return std::uniform_int_distribution{0, n - 1}(engine_); }
  double between(double a, double b) { return std::uniform_real_distribution{a, b}(engine_); }

 private:
  std::mt19937 engine_;
};

constexpr int kLifts = 4;
constexpr double kLift = 0.6;

// A wall of two bays. Ratings and limits of rise stand at figures that readings come out equal to,
// but for the rounding of a sum, as often as over and under them.
std::string opened(Chance& chance) {
  const double weight = 20 + chance.of(11) * 0.5;
  std::string rows;
  for (int r = 0; r < kLifts; ++r) {
    rows += fmt::format(
        R"({}{{"id":"R{}","z":{},"motors":[{{"id":"M{}a","x":1,"reach_x":1,"reach_z":0.6}},)"
        R"({{"id":"M{}b","x":3,"reach_x":1.0,"reach_z":0.5}}],"serves":[{},{}]}})",
        r == 0 ? "" : ",", r + 1, 0.3 + r * kLift, r, r, r + 1, std::min(r + 2, kLifts));
  }
  std::string element;
  if (chance.of(4) != 0) {
    element += fmt::format(R"("form_rating_kpa":{},)", weight * (0.6 + 0.1 * chance.of(18)));
  }
  if (chance.of(3) != 0) element += fmt::format(R"("rise_limit":{},)", 0.6 + 0.3 * chance.of(8));
  if (chance.of(3) == 0) element += fmt::format(R"("batter_deg":{},)", chance.of(20));
  return fmt::format(
      R"({{"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{{)"
      R"("mixes":[{{"id":"C1","unit_weight":{},"slump":0.12,"initial_set_h":{}}}],)"
      R"("limits":{{"dose_min_s":{},"dose_max_s":{}}},"elements":[{{"id":"W1","length":4,)"
      R"("height":2.4,"thickness":0.3,"bays":[2,2],{}"lifts":[0.6,1.2,1.8,2.4],"rows":[{}]}}]}}}})",
      weight, 2 + chance.of(5), 60 + 30 * chance.of(2), 90 + 30 * chance.of(3), element, rows);
}

// One more thing a crew might do, sensible or not; what cannot be does not count, as on a site.
std::string happened(Chance& chance, int& lift, double& top) {
  const std::string row = fmt::format(R"("element":"W1","row":"R{}")", 1 + chance.of(kLifts));
  switch (chance.of(8)) {
    case 0:
      return fmt::format(R"("do":"lift-start","element":"W1","lift":{})", ++lift);
    case 1:
      if (chance.of(3) == 0) {
        return fmt::format(R"("do":"bay-start","element":"W1","lift":{},"bay":{})",
                           std::max(lift, 1), 1 + chance.of(2));
      }
      [[fallthrough]];
    case 2:
      top = std::min(2.4, top + 0.1 * chance.of(6));
      return fmt::format(R"("do":"top","element":"W1","height":{},"bay":{})", top,
                         1 + chance.of(2));
    case 3:
      return fmt::format(R"("do":"hang",{},"motors":[],"cables":true)", row);
    case 4:
    case 5:
      return R"("do":"run",)" + row;
    case 6:
      return R"("do":"rest",)" + row;
    default:
      return fmt::format(R"("do":"lift-end","element":"W1","lift":{},"height":{})",
                         std::max(lift, 1), top);
  }
}

bool found(const CheckReport& report, const char* rule,
           const std::function<bool(const Finding&)>& at) {
  return std::any_of(report.findings.begin(), report.findings.end(),
                     [&](const Finding& f) { return rule == f.rule && at(f); });
}

// What was compared, so that a test which compares nothing fails.
struct Seen {
  int states = 0, held = 0, over = 0, borne = 0, fast = 0, slow = 0, past = 0;
};

void compare(const PourState& state, Moment now, Seen& seen) {
  const CheckReport report = check(state, AsOf::now(state, now));
  const PourView view = make_pour_view(state, report, 0, now);
  const Element& element = state.plan->elements[0];
  ++seen.states;
  for (const RowView& row : view.rows) {
    const bool over = row.caution == RowCaution::head_over;
    CHECK(over == (row.head && judge_head(element, *row.head) == HeadVerdict::over));
    (over ? seen.over : seen.borne) += 1;
    if (const RunState* run = state.running(0, row.row); run != nullptr && !row.head_about) {
      const bool told = found(report, "head-high", [&](const Finding& f) {
        return f.row == row.row && f.from == run->from;
      });
      CHECK(told == over);
    }
    for (const RunNowView& next : view.run_now) {
      if (next.place != row.place) continue;
      CHECK((next.wait == RunWait::head_over) == over);  // never RUN NOW under HEAD TOO HIGH
      seen.held += next.wait == RunWait::head_over ? 1 : 0;
    }
  }
  const auto& lifts = state.elements[0].lifts;
  if (lifts.empty()) return;
  const int latest = lifts.back().lift;
  CHECK(view.lift.fast == found(report, "rise-fast", [&](const Finding& f) {
          return f.lift == latest && f.ref == lifts.back().ref;
        }));
  CHECK(view.lift.no_rate == found(report, "form-short", [](const Finding&) { return true; }));
  (view.lift.fast || view.lift.no_rate ? seen.fast : seen.slow) += 1;
  for (const RowView& row : view.rows) {
    const auto& serves = element.rows[row.row].serves;
    if (std::find(serves.begin(), serves.end(), latest) == serves.end()) continue;
    const bool told = found(report, "run-long", [&](const Finding& f) {
      return f.lift == latest && f.row == row.row && f.ref == lifts.back().ref;
    });
    CAPTURE(in_seconds(row.ran));
    CHECK(told == (row.word == DoseWord::over));
    seen.past += told ? 1 : 0;
  }
}

}  // namespace

TEST_CASE("over 10,000 random states no card or button says other than the checker") {
  constexpr unsigned kSeed = 20260302;
  constexpr int kPours = 260;
  constexpr int kEvents = 40;
  Seen seen;
  for (unsigned pour = 0; pour < kPours; ++pour) {
    Chance chance(kSeed + pour);
    CAPTURE(kSeed + pour);
    std::vector<Event> events;
    const auto add = [&](const std::string& line) {
      auto event = parse_event(line, "test");
      REQUIRE_MESSAGE(event, to_text(event.error()));
      event->id = EventId{fmt::format("e{}", events.size())};
      events.push_back(*event);
    };
    add(opened(chance));
    Moment now = events.front().at;
    int lift = 0;
    double top = 0;
    for (int i = 0; i < kEvents; ++i) {
      now += std::chrono::seconds{5 + chance.of(300)};
      add(fmt::format(R"({{"by":"f1","at":"{}",{}}})", to_text(now), happened(chance, lift, top)));
      const auto state = fold(events);
      REQUIRE(state);
      compare(*state, now + std::chrono::seconds{chance.of(3)}, seen);
    }
  }
  MESSAGE("states ", seen.states, ", heads over ", seen.over, ", borne ", seen.borne, ", held ",
          seen.held, ", too fast ", seen.fast, ", not ", seen.slow, ", past the band ", seen.past);
  CHECK(seen.states >= 10000);
  for (const int compared : {seen.over, seen.borne, seen.held, seen.fast, seen.slow, seen.past}) {
    CHECK(compared > 100);
  }
}
