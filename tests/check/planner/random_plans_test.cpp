// Pours drawn at random are planned, followed to the second, replayed and judged; and walked
// through with the motors there are.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

#include "check/check.h"
#include "follow_sheet.h"
#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "pour/planner/run_steps.h"
#include "random_wish.h"

using namespace rb;

namespace {

constexpr std::size_t kPlans = 300;
constexpr unsigned kSeed = 20260302;

// Motors and where each is: a row, or in the air until it hangs again. Those that were never hung
// lie on the ground.
class MotorsOnForm {
 public:
  explicit MotorsOnForm(const Element& element) : element_(element) {
    for (const Row& row : element.rows) {
      for (const Motor& motor : row.motors) there_.insert(motor.id.text);
    }
  }
  [[nodiscard]] std::size_t count() const { return there_.size(); }

  // By the moment: a run may begin when what hung its motors has ended.
  void walk(const RunStep& step) {
    land(step.at);
    if (step.kind == RunStepKind::move) {
      for (const Motor& motor : element_.rows[step.move.to].motors) {
        const auto at = where_.find(motor.id.text);
        CHECK_MESSAGE((at != where_.end()) == step.move.from.has_value(), motor.id.text);
        if (step.move.from && at != where_.end()) CHECK(at->second == *step.move.from);
        CHECK(air_.count(motor.id.text) == 0);
        where_.erase(motor.id.text);
        air_[motor.id.text] = {step.move.ends(), step.move.to};
      }
      // Side by side with nothing that shakes.
      const auto shook = step.move.from ? shakes_until_.find(*step.move.from) : shakes_until_.end();
      if (shook != shakes_until_.end()) CHECK(step.at >= shook->second);
    }
    if (step.kind == RunStepKind::run) {
      shakes_until_[step.row] = step.at + step.takes;
      for (const Motor& motor : element_.rows[step.row].motors) {
        const auto at = where_.find(motor.id.text);
        CHECK_MESSAGE(at != where_.end(), motor.id.text);
        if (at != where_.end()) CHECK(at->second == step.row);
      }
    }
  }

 private:
  void land(Seconds now) {
    for (auto it = air_.begin(); it != air_.end();) {
      if (it->second.first > now) {
        ++it;
        continue;
      }
      where_[it->first] = it->second.second;
      it = air_.erase(it);
    }
  }
  const Element& element_;
  std::set<std::string> there_;
  std::map<std::string, std::size_t> where_;
  std::map<std::string, std::pair<Seconds, std::size_t>> air_;
  std::map<std::size_t, Seconds> shakes_until_;
};

void walk_through(const PlannedPour& plan, const PlanWish& wish) {
  MotorsOnForm motors{plan.plan.elements.front()};
  CHECK(motors.count() == plan.motors);
  if (wish.motors_at_hand) CHECK(plan.motors <= *wish.motors_at_hand);
  Seconds hands = seconds(-1e9);
  Seconds vibrators = seconds(-1e9);
  for (const RunStep& step : run_steps(plan)) {
    if (step.kind == RunStepKind::move) {
      CHECK(step.at >= hands - seconds(1e-6));  // one crew
      hands = step.move.ends();
    }
    motors.walk(step);
    if (wish.kind != ElementKind::deck || step.kind != RunStepKind::insert) continue;
    // A bay is full before it is worked, by vibrators that have left the one before.
    const InsertStep& in = plan.lifts[step.lift].inserts[step.bay];
    CHECK(step.at >= in.filled);
    CHECK(step.at >= vibrators - seconds(1e-6));
    CHECK(in.heads <= wish.crew);
    vibrators = step.at + step.takes;
  }
}

void judge(const PlannedPour& plan, const PlanWish& wish) {
  const auto script = read_script(write_script(follow_sheet(plan, wish)), "followed.jsonl");
  REQUIRE_MESSAGE(script, (script ? std::string{} : to_text(script.error())));
  const PourState state = *fold(script->events);
  for (const LogEntry& entry : state.log) {
    CAPTURE(entry.why_not.text());
    CHECK(entry.sense == LogEntry::Sense::counts);
  }
  const CheckReport report = check(state, AsOf::end(state));
  INFO(to_text(state, report));
  CHECK(report.findings.empty());
  // Of inverters whose cords nobody gave the loss of volts is not judged, and that is told.
  for (const NotJudged& gap : report.not_judged) {
    CHECK(gap.what == "cord");
    CHECK_FALSE(wish.cable);
    CHECK_FALSE(wish.trunk);
  }
}

void loads_make_sense(const PlannedPour& plan, const PlanWish& wish) {
  Volume sum;
  for (const PlannedLoad& load : plan.loads) {
    sum += load.volume;
    CHECK(load.ends > load.begins);
    CHECK(load.ends - load.begins + wish.haul <= wish.limits.load_age_max.value + seconds(1e-3));
    // None is a short one by silence.
    const bool last = &load == &plan.loads.back();
    const bool told =
        std::any_of(plan.guesses.begin(), plan.guesses.end(), [](const GuessTold& guess) {
          return guess.changed && guess.words.text().find("last load of only") != std::string::npos;
        });
    CHECK((plan.loads.size() == 1 || load.volume >= kLeastLoad || (last && told)));
  }
  CHECK(in_cubic_metres(sum) == doctest::Approx(in_cubic_metres(plan.concrete)));
}

}  // namespace

TEST_CASE("300 plans drawn at random, followed to the second, break nothing and can be walked") {
  std::mt19937 draw{kSeed};
  std::size_t planned = 0;
  std::size_t refused = 0;
  std::size_t waited = 0;
  std::size_t changed = 0;
  std::map<ElementKind, std::size_t> kinds;
  while (planned < kPlans) {
    const Units units = (planned + refused) % 2 == 0 ? Units::si : Units::us;
    const PlanWish wish = random_wish(draw, units);
    auto plan = plan_pour(wish);
    if (!plan) {
      // Numbers that make no sense are not drawn: whatever is not planned is refused by a limit.
      CHECK_MESSAGE(plan.error().kind == Error::Kind::refused, to_text(plan.error()));
      REQUIRE(++refused < 4 * kPlans);
      continue;
    }
    plan->plan.units = units;
    CAPTURE(planned);
    CAPTURE(in_metres(wish.length));
    CAPTURE(in_metres(wish.height));
    CAPTURE(in_metres(wish.thickness));
    CAPTURE(kSeed);
    CAPTURE(wish.batter_deg);
    CAPTURE(wish.openings.size());
    CAPTURE(wish.bays.size());
    judge(*plan, wish);
    walk_through(*plan, wish);
    loads_make_sense(*plan, wish);
    if (plan->waits > Seconds{}) ++waited;
    if (!plan->forced.empty()) ++changed;
    ++kinds[wish.kind];
    ++planned;
  }
  MESSAGE("planned " << planned << ", refused " << refused << ", with waits " << waited
                     << ", with guesses changed " << changed << "; walls "
                     << kinds[ElementKind::wall] << ", columns " << kinds[ElementKind::column]
                     << ", decks " << kinds[ElementKind::deck]);
  for (const ElementKind kind : {ElementKind::wall, ElementKind::column, ElementKind::deck}) {
    CHECK(kinds[kind] > 30);
  }
  CHECK(waited > 10);
  CHECK(changed > 10);
}
