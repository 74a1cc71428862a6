#include "pour/planner/in_time.h"

#include <algorithm>
#include <optional>

namespace rb {

namespace {

constexpr int kHungBefore = 2;  // rows of the first lifts hang before the pour: our own choice

struct Wanted {
  MotorsMove move;
  int after = 0;  // the lift that last needs the motors where they are; 0: none
  int due = 0;    // the lift that needs them where they go
  std::optional<Seconds> freed{};
  bool begun = false;
};

class Clockwork {
 public:
  Clockwork(PlannedPour& planned, const trade::Sizing& sized, const PlanWish& wish)
      : p_(planned), sized_(sized) {
    const std::size_t sides = wish.both_sides ? 2 : 1;
    const Seconds takes =
        wish.hang_time * static_cast<double>(sized.motors.size()) / static_cast<double>(wish.crew);
    for (std::size_t row = 0; row < sized.rows.size(); ++row) {
      for (std::size_t side = 0; side < sides; ++side) want(row, side, takes);
    }
    std::stable_sort(wanted_.begin(), wanted_.end(),
                     [](const Wanted& a, const Wanted& b) { return a.due < b.due; });
    Seconds from = takes * -static_cast<double>(p_.before.size());
    for (MotorsMove& move : p_.before) {
      move.begins = from;
      from += takes;
    }
  }

  double run() {
    free_after(0, Seconds{});
    Seconds now{};
    for (std::size_t i = 0; i < p_.lifts.size(); ++i) {
      LiftStep& step = p_.lifts[i];
      step.begins = now;
      step.pause = {};
      const Seconds rested = step.rested();
      begin_moves(step, rested, 0);
      free_after(step.lift, rested);
      if (i + 1 < p_.lifts.size()) wait(step, rested);
      now = rested + step.pause;
    }
    return busiest_;
  }

 private:
  void want(std::size_t row, std::size_t side, Seconds takes) {
    const std::size_t rows = sized_.rows.size();
    std::optional<std::size_t> from;
    for (std::size_t r = 0; r < row; ++r) {
      if (sized_.rows[r].set == sized_.rows[row].set) from = r;
    }
    Wanted wanted;
    wanted.move = {from ? std::optional{*from + side * rows} : std::nullopt, row + side * rows,
                   takes};
    wanted.after = from ? sized_.rows[*from].lifts.back() : 0;
    wanted.due = sized_.rows[row].lifts.front();
    if (!from && wanted.due <= kHungBefore) {
      p_.before.push_back(wanted.move);
    } else {
      wanted_.push_back(wanted);
    }
  }

  void free_after(int lift, Seconds at) {
    for (Wanted& wanted : wanted_) {
      if (wanted.after == lift) wanted.freed = at;
    }
  }

  // Begins what can begin before `until`, and what is due in lift `due` whenever that is.
  void begin_moves(LiftStep& step, Seconds until, int due) {
    for (Wanted& wanted : wanted_) {  // the first wanted first
      if (wanted.begun || !wanted.freed) continue;
      const Seconds begins = std::max(hands_, *wanted.freed);
      if (begins >= until && wanted.due != due) continue;
      wanted.begun = true;
      wanted.move.begins = begins;
      hands_ = wanted.move.ends();
      step.moves.push_back(wanted.move);
    }
  }

  void wait(LiftStep& step, Seconds rested) {
    const int next = step.lift + 1;
    begin_moves(step, rested, next);
    Seconds all = rested;
    for (const Wanted& wanted : wanted_) {
      if (wanted.due == next) all = std::max(all, wanted.move.ends());
    }
    step.pause = all - rested;
    for (const Wanted& wanted : wanted_) {
      if (wanted.due != next) continue;
      const Seconds window = rested - *wanted.freed;
      const Seconds needs = wanted.move.ends() - *wanted.freed;
      const bool none = window <= Seconds{};
      busiest_ = std::max(
          busiest_, none ? 1.0 + step.pause / (rested - step.begins) : double{needs / window});
    }
  }

  PlannedPour& p_;
  const trade::Sizing& sized_;
  std::vector<Wanted> wanted_;
  Seconds hands_{};  // from when the crew is free
  double busiest_ = 0;
};

}  // namespace

double put_in_time(PlannedPour& planned, const trade::Sizing& sized, const PlanWish& wish) {
  return Clockwork{planned, sized, wish}.run();
}

}  // namespace rb
