// Any text taken for a plan (when it begins with a brace) or for what the planner is asked with
// (lines of NAME VALUE, as on the command line without its dashes; some are planned as well).
#include <cstdint>
#include <functional>
#include <sstream>
#include <string>

#include "check/check.h"
#include "cli/plan_inputs.h"
#include "cli/plan_text.h"
#include "must.h"
#include "pour/log/event_json.h"
#include "pour/plan/plan_json.h"
#include "pour/planner/planner.h"

using namespace rb;
using fuzz::must;

namespace {

void read_plan(const std::string& text) {
  const auto plan = parse_plan(text, "fuzz.json");
  if (!plan) {
    must(!to_text(plan.error()).empty(), "a refusal says why");
    return;
  }
  for (const bool indented : {false, true}) {
    const auto again = parse_plan(to_json(*plan, indented), "again.json");
    must(again && *again == *plan, "a plan reads the same when written");
  }
  (void)not_judged(*plan);
}

void plan_a_pour(const std::string& text) {
  PlanTexts given;
  std::istringstream lines(text);
  for (std::string name, value; lines >> name && std::getline(lines >> std::ws, value);) {
    given[name] = value;
  }
  const auto request = read_plan_request(given);
  // Planning takes thousands of times as long as reading: one input in 32, told by its bytes.
  constexpr std::size_t kOneIn = 32;
  if (!request || std::hash<std::string>{}(text) % kOneIn != 0) return;
  const auto planned = plan_pour(request->wish);
  if (!planned) return;
  must(!plan_text(*planned, *request).empty() && !plan_json(*planned).empty(), "a plan is told");
  const auto again = parse_plan(to_json(planned->plan), "planned.json");
  must(again.has_value(), "what the planner plans is a plan a pour can be opened with");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  if (text.starts_with('{')) {
    read_plan(text);
  } else {
    plan_a_pour(text);
  }
  return 0;
}
