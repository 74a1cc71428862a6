#include "words/sentence.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
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

std::string told_fact(const Fact& fact, bool with_sign, const Voice& voice) {
  if (const auto* name = std::get_if<std::string>(&fact.value)) return *name;
  if (const auto* term = std::get_if<Term>(&fact.value)) {
    return told(voice.language, term->english);
  }
  if (const auto* moment = std::get_if<Moment>(&fact.value)) {
    return voice.plain ? to_text(*moment) : clock_text(*moment, voice.utc_offset);
  }
  const Amount& figure = std::get<Amount>(fact.value);
  std::string text = amount_text(figure, voice, fact.rounding);
  if (with_sign && figure.si > 0) text.insert(0, "+");
  return text;
}

}  // namespace

std::string amount_text(const Amount& figure, const Voice& voice, Rounding rounding) {
  if (!voice.plain) return amount_text(figure, voice.units, rounding);
  if (figure.measure == Measure::number || figure.measure == Measure::any_span) {
    return without_ties(amount_text(figure, voice.units, rounding));
  }
  const std::string number = shown_text(figure.si, figure.measure, voice.units, rounding);
  const std::string_view unit = plain_unit(figure, voice.units);
  return unit.empty() ? number : number + ' ' + std::string{unit};
}

std::string filled(const char* sentence, const Facts& facts, const Voice& voice) {
  const std::string_view text = told(voice.language, sentence);
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
      out += amount_text(*figure, voice);
      continue;
    }
    const bool with_sign = name.ends_with('+');
    if (with_sign) name.remove_suffix(1);
    const auto fact =
        std::find_if(facts.begin(), facts.end(), [&](const Fact& f) { return f.name == name; });
    if (fact == facts.end()) {
      out += text.substr(open, close - open + 1);
    } else {
      out += told_fact(*fact, with_sign, voice);
    }
  }
  out += text.substr(at);
  return out;
}

std::vector<std::string> names_in(const char* sentence) {
  const std::string_view text = sentence;
  std::vector<std::string> names;
  for (std::size_t open = text.find('{'); open != std::string_view::npos;
       open = text.find('{', open + 1)) {
    const auto close = text.find('}', open);
    if (close == std::string_view::npos) break;
    std::string name{text.substr(open + 1, close - open - 1)};
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  return names;
}

}  // namespace rb
