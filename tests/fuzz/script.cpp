// Any text taken for a pour script: it is refused with a reason, or read, folded, checked and
// foreseen, and written so that it reads the same again.
#include "pour/log/script.h"

#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

#include "check/check.h"
#include "must.h"
#include "pour/log/fold.h"
#include "pour/outlook/forecast.h"
#include "pour/outlook/next_steps.h"

using namespace rb;
using fuzz::must;

namespace {

/// What the tablet works out while the pour goes on.
void look_live(const PourState& state, CheckMemory& memory) {
  const Moment now = state.moment(state.last);
  (void)check(state, AsOf::now(state, now), memory);
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    (void)forecast(state, e, state.last);
    (void)rows_to_run(state, e, state.last);
    (void)motors_to_move(state, e, state.last);
  }
}

/// Tapped one after the other, the events give the state that folding them all gives.
void tap_one_by_one(const std::vector<Event>& events, const PourState& whole) {
  auto state = fold(std::vector{events.front()});
  must(state.has_value(), "a script's first line opens the pour");
  CheckMemory memory;
  for (std::size_t i = 1; i < events.size(); ++i) {
    extend(*state, events[i]);
    if (i % 4 == 1) look_live(*state, memory);
  }
  must(*state == whole, "events added one by one give the state of all");
  const auto remembered = check(whole, AsOf::end(whole), memory);
  must(to_json(whole, remembered) == to_json(whole, check(whole, AsOf::end(whole))),
       "a check that remembers says what one without memory says");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  const auto script = read_script(text, "fuzz.jsonl");
  if (!script) {
    must(!to_text(script.error()).empty(), "a refusal says why");
    return 0;
  }
  const auto again = read_script(write_script(script->events), "again.jsonl");
  must(again && again->events == script->events, "a script reads the same when written");
  const auto state = fold(script->events);
  must(state.has_value(), "what read_script gives can be folded");
  const auto report = check(*state, AsOf::end(*state));
  must(!to_text(*state, report).empty(), "a check has words");
  if (script->events.size() <= 40) tap_one_by_one(script->events, *state);
  return 0;
}
