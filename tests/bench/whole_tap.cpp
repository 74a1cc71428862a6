// What a tap costs by how much was tapped before it: admitted and folded, checked, and shown, at
// 5,000 events of one element against 300 of the same. Both stand at the same point of a lift, so
// that the tap touches as much. Keeping it in the book has benches of its own.
#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <utility>

#include "bench/bench.h"
#include "bench/pours.h"
#include "check/check.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "screens/view/pour_view.h"

using namespace rb;

namespace {

constexpr std::size_t kLift = 214;  // events
constexpr std::size_t kFew = kLift + 86, kMany = kFew + 22 * kLift;

class Tapped {
 public:
  explicit Tapped(std::size_t events) {
    std::vector<Event> all = bench::long_pour(24 * kLift);
    all.resize(events);
    state_ = *fold(all);
    const RunState& run = state_.runs.back();
    row_ = {state_.plan->elements[run.element].id, Side::near_side, state_.row_of(run).id};
    at_ = state_.moment(state_.last);
    (void)check(state_, AsOf::now(state_, at_), memory_);
  }

  // A run or a rest of the row that ran last, and the frame after it.
  void tap() {
    at_ += std::chrono::seconds{20};
    const bool running = state_.running(0, state_.runs.back().row) != nullptr;
    Happening what = event::Run{row_, vibrations_per_minute(6000)};
    if (running) what = event::Rest{row_};
    const EventId id{fmt::format("tap{}", state_.log.size())};
    const double began = bench::cpu_seconds();
    if (!admit(state_, {id, at_, PersonId{"f"}, what, {}, std::nullopt})) {
      throw bench::Trouble("a tap was refused");
    }
    const double folded = bench::cpu_seconds();
    const CheckReport report = check(state_, AsOf::now(state_, at_), memory_);
    const double checked = bench::cpu_seconds();
    const auto view = screens::make_pour_view(state_, report, 0, at_);
    const double shown = bench::cpu_seconds();
    if (view.rows.empty()) throw bench::Trouble("nothing is shown");
    if (!running) return;  // a rest adds to the dose: the dearer tap
    least(folding, folded - began);
    least(checking, checked - folded);
    least(showing, shown - checked);
    least(whole, shown - began);
  }

  // A reading of the top a while ago, entered late: what happened since happens anew.
  void correct() {
    at_ += std::chrono::seconds{20};
    EventRef wrong = state_.log.size() - 1;
    const auto is_note = [](const LogEntry& e) {
      return std::holds_alternative<event::Note>(e.event.what) && !e.struck;
    };
    while (!is_note(std::as_const(state_.log)[wrong])) --wrong;
    const Event strike{EventId{fmt::format("tap{}", state_.log.size())},
                       at_,
                       PersonId{"f"},
                       event::Strike{std::as_const(state_.log)[wrong].event.id, "wrong"},
                       {},
                       std::nullopt};
    const double began = bench::cpu_seconds();
    if (!admit(state_, strike)) throw bench::Trouble("a strike was refused");
    least(correction, bench::cpu_seconds() - began);
  }

  static constexpr double kNone = std::numeric_limits<double>::max();
  double folding = kNone, checking = kNone, showing = kNone, whole = kNone, correction = kNone;

 private:
  static void least(double& best, double seconds) { best = std::min(best, seconds); }
  PourState state_;
  CheckMemory memory_;
  RowPlace row_;
  Moment at_;
};

struct Both {
  Tapped few{kFew}, many{kMany};
  Both() {
    for (int i = 0; i < 60; ++i) {
      few.tap();
      many.tap();
    }
    for (int i = 0; i < 8; ++i) {
      few.correct();
      many.correct();
    }
    for (const auto* one : {&few, &many}) {
      fmt::print(
          "{} events: a tap {:.1f} us: fold {:.1f}, check {:.1f}, view {:.1f}; a strike {:.1f} "
          "us\n",
          one == &few ? kFew : kMany, one->whole * 1e6, one->folding * 1e6, one->checking * 1e6,
          one->showing * 1e6, one->correction * 1e6);
    }
  }
};

const Both& both() {
  static const Both measured;
  return measured;
}

const bench::Bench whole{"whole-tap-5000-to-300", 1.3,
                         [] { return both().many.whole / both().few.whole; }};
const bench::Bench correction{"correction-5000-to-300", 1.3,
                              [] { return both().many.correction / both().few.correction; }};

}  // namespace
