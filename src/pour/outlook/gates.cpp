#include "pour/outlook/gates.h"

#include <algorithm>
#include <array>
#include <map>

#include "pour/outlook/set_clock.h"
#include "pour/outlook/walk_down.h"

namespace rb {

namespace {

struct Card {
  Gate gate;
  const char* rule;
  Said words;
};
// In the order of Gate. Names stand in books: never changed.
constexpr std::array kCards{
    Card{Gate::walk_down, "ready-open", said("Walk-down not all in order")},
    Card{Gate::unrated, "form-unrated", said("Form not rated in the plan")},
    Card{Gate::untested, "load-untested", said("Temperature of the mix not measured")},
    Card{Gate::head_over, "head-high", said("Head over the form's rating")},
    Card{Gate::not_hung, "row-unhung", said("Row not logged as hung")},
    Card{Gate::cables_open, "cable-open", said("Safety cables not all seen fixed")},
    Card{Gate::over_set, "run-over-set", said("Concrete may have set")},
    Card{Gate::strip_early, "strip-early", said("Too early to strip")},
    Card{Gate::strip_leave, "strip-leave", said("No leave to strip")},
};

const Card& card_of(Gate gate) {
  return kCards[static_cast<std::size_t>(gate)];
}

// When the walk-down was last found not in order. None: every point is answered and in order.
std::optional<Seconds> not_ready(const PourState& state) {
  std::map<std::string_view, const ReadyState*> latest;
  for (const char* point : kWalkDown) latest[point] = nullptr;
  for (const ReadyState& answer : state.ready) latest[answer.what.item] = &answer;
  std::optional<Seconds> since;
  for (const auto& [item, answer] : latest) {
    if (answer != nullptr && answer->what.ok) continue;
    since = std::max(since.value_or(Seconds{}), answer == nullptr ? Seconds{} : answer->at);
  }
  return since;
}

bool tested(const PourState& state, const Mix& mix) {
  return std::any_of(state.tests.begin(), state.tests.end(), [&](const TestState& test) {
    const Mix* of = mix_of(state, test.what.ticket);
    return test.what.temp && (of == nullptr || of == &mix);
  });
}

bool passed(const PourState& state, Gate gate, Seconds since, std::size_t element,
            std::optional<std::size_t> row, std::optional<int> lift) {
  return std::any_of(state.overrides.begin(), state.overrides.end(), [&](const OverrideState& o) {
    return o.what.rule == rule_of(gate) && o.at >= since &&
           o.element.value_or(element) == element && (!row || o.row == row) &&
           (!lift || !o.what.lift || o.what.lift == lift);
  });
}

}  // namespace

const char* rule_of(Gate gate) {
  return card_of(gate).rule;
}

const char* words_of(Gate gate) {
  return card_of(gate).words;
}

const char* gate_words(std::string_view rule) {
  const auto* card =
      std::find_if(kCards.begin(), kCards.end(), [&](const Card& c) { return rule == c.rule; });
  return card == kCards.end() ? nullptr : card->words.english;
}

std::vector<Gate> not_passed(const std::vector<OpenGate>& gates) {
  std::vector<Gate> left;
  for (const OpenGate& open : gates) {
    if (!open.passed) left.push_back(open.gate);
  }
  return left;
}

std::vector<OpenGate> gates_of_lift(const PourState& state, std::size_t element, Seconds now) {
  const Element& planned = state.plan->elements[element];
  std::vector<OpenGate> gates;
  const auto open = [&](Gate gate, Seconds since) {
    gates.push_back({gate, passed(state, gate, since, element, std::nullopt, std::nullopt)});
  };
  if (const auto since = not_ready(state)) open(Gate::walk_down, *since);
  if (!planned.form_rating && planned.kind != ElementKind::deck) open(Gate::unrated, {});
  if (!tested(state, mix_at(state, element, now))) open(Gate::untested, {});
  return gates;
}

std::vector<OpenGate> gates_of_run(const PourState& state, std::size_t element, std::size_t row,
                                   const RunAnswer& answer) {
  const auto& lifts = state.elements[element].lifts;
  const int lift = lifts.empty() ? 1 : lifts.back().lift;
  const HangState* hung = state.hanging(element, row);
  std::vector<OpenGate> gates;
  const auto open = [&](Gate gate, Seconds since) {
    gates.push_back({gate, passed(state, gate, since, element, row, lift)});
  };
  if (answer.head.verdict == HeadVerdict::over) open(Gate::head_over, {});
  if (hung == nullptr) {
    open(Gate::not_hung, {});
  } else if (!hung->cables) {
    open(Gate::cables_open, hung->from);
  }
  if (answer.over_set) open(Gate::over_set, {});
  return gates;
}

std::vector<Gate> gates_of_strip(const StripVerdict& verdict) {
  std::vector<Gate> gates;
  if (verdict.early()) gates.push_back(Gate::strip_early);
  if (verdict.without_leave()) gates.push_back(Gate::strip_leave);
  return gates;
}

}  // namespace rb
