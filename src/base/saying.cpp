#include "base/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <string_view>

namespace rb {

namespace {

// "0.5 m" as it may stand in braces; none when it is a name.
std::optional<Amount> figure_in(std::string_view text) {
  double value = 0;
  const auto [rest, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{}) return std::nullopt;
  std::string_view unit{rest, static_cast<std::size_t>(text.data() + text.size() - rest)};
  while (!unit.empty() && unit.front() == ' ') unit.remove_prefix(1);
  if (unit == "mm") return Amount{Measure::small_length, value / 1000};
  if (unit == "min") return Amount{Measure::age, value * 60};
  if (unit == "h") return Amount{Measure::long_span, value * 3600};
  const auto measure = measure_of_unit(unit);
  return measure ? std::optional{Amount{*measure, value}} : std::nullopt;
}

// As a script writes it, where it differs from print.
const char* plain_unit(const Amount& figure, Units units) {
  const std::string_view print = unit_text(figure.measure, units);
  if (print == "m\u00B3") return "m3";
  if (print == "yd\u00B3") return "yd3";
  if (print == "\u00B0C") return "degC";
  if (print == "\u00B0F") return "degF";
  if (print == "kN/m\u00B3") return "kN/m3";
  if (print == "kg/m\u00B3") return "kg/m3";
  if (print == "lb/ft\u00B3") return "lb/ft3";
  if (print == "kg/m\u00B2") return "kg/m2";
  if (print == "lb/ft\u00B2") return "lb/ft2";
  return print.data();
}

// A terminal breaks lines where it likes.
std::string without_ties(std::string text) {
  constexpr std::string_view kTie = "\u00A0";
  for (auto at = text.find(kTie); at != std::string::npos; at = text.find(kTie, at)) {
    text.replace(at, kTie.size(), " ");
  }
  return text;
}

std::string as_typed(const Amount& figure, const Manner& manner) {
  if (figure.measure == Measure::number || figure.measure == Measure::any_span) {
    return amount_text(figure, manner);
  }
  const double value = shown(figure.si, figure.measure, manner.units);
  std::string number =
      manner.units == Units::si ? fmt::format("{:.6g}", value) : fmt::format("{:.4g}", value);
  const std::string_view unit =
      manner.plain ? plain_unit(figure, manner.units) : unit_text(figure.measure, manner.units);
  if (unit.empty()) return number;
  return number + (manner.plain ? " " : "\u00A0") + std::string{unit};
}

std::string told_fact(const Fact& fact, char mark, const Manner& manner) {
  if (const auto* name = std::get_if<std::string>(&fact.value)) return *name;
  if (const auto* term = std::get_if<Term>(&fact.value)) {
    return manner.told ? manner.told(term->english) : term->english;
  }
  if (const auto* moment = std::get_if<Moment>(&fact.value)) {
    return manner.plain ? to_text(*moment) : clock_text(*moment, manner.utc_offset);
  }
  if (const auto* clause = std::get_if<Clause>(&fact.value)) return fill(clause->inner(), manner);
  const Amount& figure = std::get<Amount>(fact.value);
  if (mark == '~') return as_typed(figure, manner);
  std::string text = amount_text(figure, manner, fact.rounding);
  if (mark == '+' && figure.si > 0) text.insert(0, "+");
  return text;
}

}  // namespace

std::string amount_text(const Amount& figure, const Manner& manner, Rounding rounding) {
  if (!manner.plain) return amount_text(figure, manner.units, rounding);
  if (figure.measure == Measure::number || figure.measure == Measure::any_span) {
    return without_ties(amount_text(figure, manner.units, rounding));
  }
  const std::string number = shown_text(figure.si, figure.measure, manner.units, rounding);
  const std::string_view unit = plain_unit(figure, manner.units);
  return unit.empty() ? number : number + ' ' + std::string{unit};
}

std::string fill(const char* sentence, const Facts& facts, const Manner& manner) {
  const std::string_view text = manner.told ? manner.told(sentence) : sentence;
  std::string out;
  std::size_t at = 0;
  while (at < text.size()) {
    const auto open = text.find('{', at);
    const auto close = open == std::string_view::npos ? open : text.find('}', open);
    if (close == std::string_view::npos) break;
    out += text.substr(at, open - at);
    std::string_view name = text.substr(open + 1, close - open - 1);
    at = close + 1;
    if (const auto figure = figure_in(name)) {
      out += amount_text(*figure, manner);
      continue;
    }
    const char mark = name.ends_with('+') || name.ends_with('~') ? name.back() : ' ';
    if (mark != ' ') name.remove_suffix(1);
    const auto fact =
        std::find_if(facts.begin(), facts.end(), [&](const Fact& f) { return f.name == name; });
    if (fact == facts.end()) {
      out += text.substr(open, close - open + 1);
    } else {
      out += told_fact(*fact, mark, manner);
    }
  }
  out += text.substr(at);
  return out;
}

std::string fill(const Saying& saying, const Manner& manner) {
  if (*saying.english() == '\0') return saying.verbatim();
  return fill(saying.english(), saying.facts(), manner);
}

Clause::Clause(Saying inner) : inner_(std::make_shared<const Saying>(std::move(inner))) {}

bool Clause::operator==(const Clause& other) const {
  return inner() == other.inner();
}

std::string Saying::text() const {
  return fill(*this, Manner{});
}

bool Saying::operator==(const Saying& other) const {
  return std::string_view{english_} == other.english_ && facts_ == other.facts_ &&
         verbatim_ == other.verbatim_;
}

Saying inside(Saying whole, Saying step) {
  if (whole.empty()) return step;
  return {said("{whole}, {step}"),
          {{"whole", Clause{std::move(whole)}}, {"step", Clause{std::move(step)}}}};
}

Saying beside(Saying one, Saying other) {
  return {said("{one}; {other}"),
          {{"one", Clause{std::move(one)}}, {"other", Clause{std::move(other)}}}};
}

Saying followed(Saying one, Saying other) {
  if (one.empty()) return other;
  if (other.empty()) return one;
  return {said("{one}. {other}"),
          {{"one", Clause{std::move(one)}}, {"other", Clause{std::move(other)}}}};
}

}  // namespace rb
