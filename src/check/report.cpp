// A check as JSON (the design's `check --json`) and as text for a terminal.
#include <fmt/format.h>

#include <algorithm>

#include <nlohmann/json.hpp>

#include "check/causes.h"
#include "check/check.h"
#include "check/report_unread.h"
#include "check/review.h"
#include "check/say_finding.h"
#include "pour/log/origin.h"

namespace rb {

namespace {

using Json = nlohmann::ordered_json;

template <class T, class Show>
Json maybe(const std::optional<T>& value, Show show) {
  return value ? Json(show(*value)) : Json(nullptr);
}

const char* code_text(Source::Code code) {
  switch (code) {
    case Source::Code::rule:
      return "rule";
    case Source::Code::plan:
      return "plan";
    case Source::Code::standard:
      return "default";
    case Source::Code::measured:
      return "measured";
  }
  return "";
}

Json fact_json(const FactValue& value) {
  if (const auto* figure = std::get_if<Amount>(&value)) {
    return {{"value", figure->si}, {"unit", script_unit(figure->measure)}};
  }
  if (const auto* term = std::get_if<Term>(&value)) return term->english;
  if (const auto* at = std::get_if<Moment>(&value)) return to_text(*at);
  if (const auto* clause = std::get_if<Clause>(&value)) return clause->inner().text();
  return std::get<std::string>(value);
}

// `group`: the one it stands in.
Json finding_json(const PourState& state, const Finding& f, const ReviewedGroup& group) {
  const Plan& plan = *state.plan;
  const auto moment = [&](Seconds at) { return to_text(state.moment(at)); };
  const auto row = [&](std::size_t r) { return plan.elements[*f.element].rows[r].id.text; };
  const auto number = [](const Amount& figure) { return figure.si; };
  const auto id = [](const auto& named) { return named.text; };
  const std::string unit =
      f.measured || f.limit ? script_unit((f.measured ? *f.measured : *f.limit).measure) : "";
  Json facts = Json::object();
  for (const Fact& fact : f.facts) facts[fact.name] = fact_json(fact.value);
  return {{"rule", f.rule},
          {"weight", to_text(f.severity)},
          {"element", maybe(f.element, [&](std::size_t e) { return plan.elements[e].id.text; })},
          {"lift", maybe(f.lift, [](int lift) { return lift; })},
          {"bay", maybe(f.bay, [](std::size_t bay) { return bay + 1; })},
          {"side", maybe(f.side, [](Side side) { return to_text(side); })},
          {"row", maybe(f.row, row)},
          {"ticket", maybe(f.ticket, id)},
          {"inverter", maybe(f.inverter, id)},
          {"from", maybe(f.from, moment)},
          {"to", maybe(f.to, moment)},
          {"measured", maybe(f.measured, number)},
          {"limit", maybe(f.limit, number)},
          {"unit", unit.empty() ? Json(nullptr) : Json(unit)},
          {"source", source_text(f.source, kTerminal)},
          {"source_code", code_text(f.source.code)},
          {"source_field", *f.source.field == '\0' ? Json(nullptr) : Json(f.source.field)},
          {"advice", advice_text(f, kTerminal)},
          {"facts", std::move(facts)},
          {"group", f.group},
          {"count", group.count},
          {"figures", group.figures.digits},
          {"standing", to_text(group.standing)},
          {"says", sentence(f, plan, kTerminal)}};
}

Json lift_json(const PourState& state, const LiftReport& lift) {
  const auto same = [](double v) { return v; };
  return {{"element", state.plan->elements[lift.element].id.text},
          {"lift", lift.lift},
          {"placed_from", to_text(state.moment(lift.placed_from))},
          {"placed_to", to_text(state.moment(lift.placed_to))},
          {"top", in_metres(lift.top)},
          {"rise_mean_mh", maybe(lift.rise_mean, in_metres_per_hour)},
          {"rise_window_mh", maybe(lift.rise_window, in_metres_per_hour)},
          {"rise_limit_mh", maybe(lift.rise_limit, in_metres_per_hour)},
          {"under_share", maybe(lift.under_share, same)},
          {"min_dose_s", maybe(lift.min_dose, in_seconds)},
          {"mean_dose_s", maybe(lift.mean_dose, in_seconds)}};
}

Json run_json(const PourState& state, const RunReport& report) {
  const RunState& run = state.runs[report.run];
  const Row& row = state.row_of(run);
  return {{"element", state.plan->elements[run.element].id.text},
          {"side", to_text(row.side)},
          {"row", row.id.text},
          {"from", to_text(state.moment(run.from))},
          {"to", maybe(run.to, [&](Seconds at) { return to_text(state.moment(at)); })},
          {"speed_vpm", maybe(run.slowest(), in_vibrations_per_minute)},
          {"head_kpa", in_kilopascals(report.head)}};
}

Json gap_json(const Plan& plan, const NotJudged& gap) {
  return {{"what", gap.what},
          {"element", maybe(gap.element, [&](std::size_t e) { return plan.elements[e].id.text; })},
          {"lift", maybe(gap.lift, [](int lift) { return lift; })},
          {"bay", maybe(gap.bay, [](std::size_t bay) { return bay + 1; })},
          {"why", sentence(gap, plan, kTerminal)}};
}

Json unread_json(const std::vector<UnreadEvent>& events) {
  Json json = Json::array();
  for (const UnreadEvent& event : events) {
    json.push_back({{"event", event.id.text}, {"what", event.what}});
  }
  return json;
}

// Damaged text may hold anything; JSON holds UTF-8 only.
std::string dumped(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace);
}

constexpr const char* kNoPlan =
    "the event that opens it is damaged and its plan with it: not judged";

std::string unread_text(const Unread& unread) {
  std::string text;
  if (!unread.damaged.empty()) {
    text += fmt::format("  DAMAGED: {} event{} of this pour, not in what follows\n",
                        unread.damaged.size(), unread.damaged.size() == 1 ? "" : "s");
  }
  for (const UnreadEvent& event : unread.damaged) {
    text += fmt::format("    {}: {}\n", event.id.text, event.what);
  }
  for (const UnreadEvent& event : unread.set_aside) {
    text += fmt::format("  set aside: {}: {}\n", event.id.text, event.what);
  }
  return text;
}

}  // namespace

std::string to_json(const PourState& state, const CheckReport& report) {
  return to_json(state, report, {});
}

std::string to_json(const PourWithoutPlan& pour) {
  return dumped({{"pour", pour.pour.text},
                 {"damaged", unread_json(pour.unread.damaged)},
                 {"set_aside", unread_json(pour.unread.set_aside)},
                 {"not_judged", kNoPlan},
                 {"whole_events", pour.events},
                 {"findings", Json::array()},
                 {"lifts", Json::array()},
                 {"runs", Json::array()}});
}

std::string to_text(const PourWithoutPlan& pour) {
  return fmt::format("Pour {}: {}; {} of its events {} whole and kept\n", pour.pour.text, kNoPlan,
                     pour.events, pour.events == 1 ? "is" : "are") +
         unread_text(pour.unread);
}

std::string to_json(const PourState& state, const CheckReport& report, const Unread& unread) {
  const Origin origin = origin_of(state);
  const Review review = review_of(state, report);
  Json json{
      {"pour", state.pour.text},
      {"damaged", unread_json(unread.damaged)},
      {"set_aside", unread_json(unread.set_aside)},
      {"from_script", {{"events", origin.brought}, {"of", state.log.size()}}},
      {"findings", Json::array()},
      {"review",
       {{"open", review.open}, {"accepted", review.accepted}, {"sent_back", review.sent_back}}},
      {"not_judged", Json::array()},
      {"lifts", Json::array()},
      {"runs", Json::array()}};
  for (const NotJudged& gap : report.not_judged) {
    json["not_judged"].push_back(gap_json(*state.plan, gap));
  }
  for (const ReviewedGroup& group : review.groups) {
    for (std::size_t i = 0; i < group.count; ++i) {
      json["findings"].push_back(finding_json(state, report.findings[group.first + i], group));
    }
  }
  for (const LiftReport& lift : report.lifts) json["lifts"].push_back(lift_json(state, lift));
  for (const RunReport& run : report.runs) json["runs"].push_back(run_json(state, run));
  return dumped(json);
}

std::string to_text(const PourState& state, const CheckReport& report) {
  return to_text(state, report, {});
}

std::string to_text(const PourState& state, const CheckReport& report, const Unread& unread) {
  std::string text = fmt::format("Pour {}: {} finding{}", state.pour.text, report.findings.size(),
                                 report.findings.size() == 1 ? "" : "s");
  const auto causes = by_cause(report.findings);
  const Review review = review_of(state, report);
  if (causes.size() < report.findings.size()) {
    text += fmt::format(" of {} cause{}", causes.size(), causes.size() == 1 ? "" : "s");
  }
  text += '\n';
  if (review.accepted + review.sent_back > 0) {
    text += fmt::format("  reviewed: {} open, {} accepted, {} sent back\n", review.open,
                        review.accepted, review.sent_back);
  }
  text += unread_text(unread);
  if (const Origin origin = origin_of(state); origin.from_script()) {
    text += fmt::format("  {} of {} events were brought in from a script, not tapped\n",
                        origin.brought, state.log.size());
  }
  for (const auto& same : causes) {
    for (const Finding& f : same) {
      const bool first = &f == same.data();
      text += fmt::format("{}{:4} {:14} {}\n", first ? "  " : "  + ", to_text(f.severity), f.rule,
                          sentence(f, *state.plan, kTerminal));
      const int in = first ? 20 : 22;
      if (follows(f)) text += fmt::format("{:{}} follows from: {}\n", "", in, f.group);
      text += fmt::format("{:{}} do: {}\n{:{}} limit from: {}\n", "", in, advice_text(f, kTerminal),
                          "", in, source_text(f.source, kTerminal));
    }
  }
  text += "  lift      placed (UTC)         top   rise mean  worst  limit   under  least   mean\n";
  for (const LiftReport& l : report.lifts) {
    const auto rise = [](const std::optional<Velocity>& v) {
      return v ? fmt::format("{:.2f}", in_metres_per_hour(*v)) : std::string{"-"};
    };
    const auto dose = [](const std::optional<Seconds>& s) {
      return s ? fmt::format("{:.0f} s", in_seconds(*s)) : std::string{"-"};
    };
    text += fmt::format(
        "  {:4} {:>2}   {} - {}  {:5.2f} m  {:>5}  {:>5}  {:>5} m/h  {:>5}  {:>5}  {:>5}\n",
        state.plan->elements[l.element].id.text, l.lift, clock_text(state.moment(l.placed_from)),
        clock_text(state.moment(l.placed_to)), in_metres(l.top), rise(l.rise_mean),
        rise(l.rise_window), rise(l.rise_limit),
        l.under_share ? fmt::format("{:.1f} %", *l.under_share * 100) : "-", dose(l.min_dose),
        dose(l.mean_dose));
  }
  for (const NotJudged& gap : report.not_judged) {
    text += "Not judged: " + sentence(gap, *state.plan, kTerminal) + "\n";
  }
  text += "These figures advise. Local codes, the form designer and licensed practice decide.\n";
  return text;
}

}  // namespace rb
