// speed-out: a row was run outside the motor's speeds.
#include <algorithm>

#include "check/rule.h"
#include "pour/log/log_entry.h"
#include "pour/plan/verdicts.h"

namespace rb {

namespace {

// The inverter whose setting a run turned at; none: it was told with the run, or nobody knows.
std::optional<InverterId> set_by(const Look& look, const RunState& run, Frequency speed) {
  const auto piece = std::find_if(run.speeds.begin(), run.speeds.end(),
                                  [&](const RunSpeed& s) { return s.speed == speed; });
  if (piece == run.speeds.end()) return std::nullopt;
  const auto* began = std::get_if<event::Run>(&look.state.log[run.ref].event.what);
  if (piece->from == run.from && began != nullptr && began->speed) return std::nullopt;
  const auto& motors = look.state.row_of(run).motors;
  const auto& all = look.state.speeds;
  for (auto set = all.rbegin(); set != all.rend(); ++set) {
    if (set->at > piece->from || set->what.speed != speed) continue;
    const Inverter& inverter = look.plan().power[set->inverter];
    if (std::any_of(motors.begin(), motors.end(),
                    [&](const Motor& motor) { return feeds(inverter, motor.id); })) {
      return inverter.id;
    }
  }
  return std::nullopt;
}

void look_speed_out(const Look& look, const Rule& rule, Findings& out) {
  const auto& type = look.plan().motor_type;
  for (const std::size_t r : look.runs_at_issue) {
    const RunState& run = look.state.runs[r];
    const auto fastest = run.fastest();
    const auto slowest = run.slowest();
    if (!fastest || !slowest) continue;
    const bool fast = judge_speed(*fastest, type) == SpeedVerdict::fast;
    const bool slow = judge_speed(*slowest, type) == SpeedVerdict::slow;
    if (!fast && !slow) continue;
    const Frequency speed = fast ? *fastest : *slowest;
    const Row& row = look.state.row_of(run);
    Finding f = found(rule);
    f.element = run.element;
    f.row = run.row;
    f.side = row.side;
    f.from = run.from;
    f.to = look.run_end(run);
    f.measured = amount(speed);
    f.limit = amount(fast ? type->top_speed : kSlowestSpeed);
    f.source = fast ? Source{.code = Source::Code::plan, .field = "motor_type.vpm_max"}
                    : Source{.code = Source::Code::standard,
                             .words = said("form vibrators work at 3000 to 6000 vpm and up: common "
                                           "practice, no source")};
    f.ref = run.ref;
    f.inverter = set_by(look, run, speed);
    if (f.inverter) {
      f.sentence =
          fast
              ? said("{element} row {row}: inverter {inverter} is set to {measured}, above {limit}")
              : said(
                    "{element} row {row}: inverter {inverter} is set to {measured}, below {limit}");
    } else {
      f.sentence = fast ? said("{element} row {row}: {measured}, above {limit}")
                        : said("{element} row {row}: {measured}, below {limit}");
    }
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kSpeedOut{
    {"speed-out", said("Motor speed out"), Severity::mend, Cost::perhaps,
     "a motor overdriven until it fails, or too slow to move the concrete",
     said("plan; the least speed: common practice, no source"), "3000 vpm to motor_type.vpm_max",
     "plan, by the motor's maker",
     said("Set the inverter to the planned speed; force falls with the square of speed")},
    look_speed_out};

}  // namespace rb
