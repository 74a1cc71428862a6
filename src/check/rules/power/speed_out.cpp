// speed-out: a row was run outside the motor's speeds.
#include "check/rule.h"

namespace rb {

namespace {

constexpr Frequency kSlowest = vibrations_per_minute(3000);

void look_speed_out(const Look& look, const Rule& rule, Findings& out) {
  for (const std::size_t r : look.runs_at_issue) {
    const RunState& run = look.state.runs[r];
    const auto fastest = run.fastest();
    const auto slowest = run.slowest();
    if (!fastest || !slowest) continue;
    const auto& type = look.plan().motor_type;
    const bool fast = type && *fastest > type->top_speed * (1 + 1e-9);
    const bool slow = *slowest < kSlowest * (1 - 1e-9);
    if (!fast && !slow) continue;
    const Row& row = look.state.row_of(run);
    Finding f = found(rule);
    f.element = run.element;
    f.row = run.row;
    f.side = row.side;
    f.from = run.from;
    f.to = look.run_end(run);
    f.measured = amount(fast ? *fastest : *slowest);
    f.limit = amount(fast ? type->top_speed : kSlowest);
    f.source = fast ? Source{.code = Source::Code::plan, .field = "motor_type.vpm_max"}
                    : Source{.code = Source::Code::standard,
                             .words = said("form vibrators work at 3000 to 6000 vpm and up: common "
                                           "practice, no source")};
    f.ref = run.ref;
    f.sentence = fast ? said("{element} row {row}: {measured}, above {limit}")
                      : said("{element} row {row}: {measured}, below {limit}");
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
