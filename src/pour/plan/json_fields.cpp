#include "pour/plan/json_fields.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

#include "base/hex.h"

namespace rb {

Saying field_of(const Saying& where, const std::string& field) {
  return inside(where, {said("field {field}"), {{"field", field}}});
}

namespace {

// A bound or a value of a field, in the field's unit. A size that no pour has is quoted as it came.
FactValue figure(double value, const Span& span) {
  constexpr double kGreatest = 1e7;
  const std::string_view unit = span.unit;
  const auto measure = unit == "degrees"       ? Measure::angle
                       : unit == "per cent"    ? Measure::percent
                       : unit.starts_with("(") ? Measure::number
                                               : measure_of_unit(unit);
  if (measure && std::abs(value) < kGreatest) return Amount{*measure, value};
  return fmt::format("{:g}{}{}", value, *span.unit ? " " : "", span.unit);
}

Saying text_expected(const Json& value) {
  return {said("is {given}; a text was expected"), {{"given", quoted(value)}}};
}

}  // namespace

void Fields::refuse(const std::string& field, Saying what, Saying remedy) const {
  throw BadField{Error{Error::Kind::input, field.empty() ? where_ : field_of(where_, field),
                       std::move(what), std::move(remedy)}};
}

const Json& Fields::get(const char* field) {
  if (!has(field)) refuse(field, said("is missing"));
  return object_.at(field);
}

double Fields::checked(const std::string& field, const Json& value, const Span& span) const {
  const auto expected = [&](FactValue given) {
    return Saying{span.open_least
                      ? said("is {given~}; a number above {least~} and up to {most~} was expected")
                      : said("is {given~}; a number from {least~} to {most~} was expected"),
                  {{"given", std::move(given)},
                   {"least", figure(span.least, span)},
                   {"most", figure(span.most, span)}}};
  };
  if (!value.is_number()) refuse(field, expected(quoted(value)));
  const double number = value.get<double>();
  const bool low = span.open_least ? number <= span.least : number < span.least;
  if (!std::isfinite(number) || low || number > span.most) {
    const bool finite = std::isfinite(number);
    refuse(field, expected(finite ? figure(number, span) : FactValue{quoted(value)}),
           *span.unit ? said("Check the sign and the unit") : said("Check the sign and the size"));
  }
  return number;
}

double Fields::number(const char* field, const Span& span) {
  return checked(field, get(field), span);
}

std::optional<double> Fields::maybe_number(const char* field, const Span& span) {
  if (!has(field)) return std::nullopt;
  return number(field, span);
}

long Fields::integer(const char* field, long least, long most) {
  const Json& value = get(field);
  if (!value.is_number_integer() || value.get<double>() < static_cast<double>(least) ||
      value.get<double>() > static_cast<double>(most)) {
    refuse(field, {said("is {given}; a whole number from {least} to {most} was expected"),
                   {{"given", quoted(value)},
                    {"least", count(static_cast<double>(least))},
                    {"most", count(static_cast<double>(most))}}});
  }
  return value.get<long>();
}

std::size_t Fields::one_of(const char* field, std::span<const char* const> words) {
  const std::string word = text(field);
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (word == words[i]) return i;
    all += (i == 0 ? "" : ", ") + std::string{words[i]};
  }
  refuse(field,
         {said("is \"{given}\"; one of {words} was expected"), {{"given", word}, {"words", all}}});
}

Side Fields::side() {
  const std::string side = maybe_text("side");
  if (side.empty() || side == to_text(Side::near_side)) return Side::near_side;
  if (side != to_text(Side::far_side)) {
    refuse("side", {said("is \"{given}\"; near or far was expected"), {{"given", side}}});
  }
  return Side::far_side;
}

std::optional<long> Fields::maybe_integer(const char* field, long least, long most) {
  if (!has(field)) return std::nullopt;
  return integer(field, least, most);
}

void Fields::hold_text(const std::string& field, const std::string& text) const {
  if (bounds_ == Bounds::as_it_is || text.size() <= most::kTextLetters) return;
  const std::size_t letters = letters_of(text);
  if (letters <= most::kTextLetters) return;
  refuse(field,
         {said("is {letters} characters long; a text may have {most}"),
          {{"letters", counted(letters)}, {"most", counted(most::kTextLetters)}}},
         said("Shorten it, or tell it in several notes"));
}

void Fields::hold_id(const std::string& field, const std::string& text) const {
  if (bounds_ == Bounds::as_it_is || text.size() <= most::kIdBytes) return;
  refuse(field,
         {said("is {bytes} bytes long; an id may have {most}"),
          {{"bytes", counted(text.size())}, {"most", counted(most::kIdBytes)}}},
         said("Give it a shorter id"));
}

void Fields::hold_texts(const std::string& field, const Json& value) const {
  if (value.is_string()) hold_text(field, value.get_ref<const std::string&>());
  if (!value.is_structured()) return;
  for (const auto& [key, inner] : value.items()) {
    hold_texts(fmt::format("{}.{}", field, key), inner);
  }
}

std::string Fields::id(const char* field) {
  const Json& value = get(field);
  if (!value.is_string() || value.get_ref<const std::string&>().empty()) {
    refuse(field, text_expected(value));
  }
  hold_id(field, value.get_ref<const std::string&>());
  return value.get<std::string>();
}

std::string Fields::maybe_id(const char* field) {
  std::string text = maybe_text(field);
  hold_id(field, text);
  return text;
}

std::string Fields::text(const char* field) {
  const Json& value = get(field);
  if (!value.is_string() || value.get_ref<const std::string&>().empty()) {
    refuse(field, text_expected(value));
  }
  hold_text(field, value.get_ref<const std::string&>());
  return value.get<std::string>();
}

std::string Fields::maybe_text(const char* field) {
  if (!has(field)) return {};
  const Json& value = object_.at(field);
  if (!value.is_string()) refuse(field, text_expected(value));
  hold_text(field, value.get_ref<const std::string&>());
  return value.get<std::string>();
}

bool Fields::boolean(const char* field) {
  const Json& value = get(field);
  if (!value.is_boolean()) {
    refuse(field, {said("is {given}; true or false was expected"), {{"given", quoted(value)}}});
  }
  return value.get<bool>();
}

Moment Fields::moment(const char* field) {
  const Json& value = get(field);
  const auto moment =
      value.is_string() ? parse_moment(value.get_ref<const std::string&>()) : std::nullopt;
  if (!moment) {
    refuse(field, {said("is {given}; a time such as 2026-03-02T05:10:00.000Z was expected"),
                   {{"given", quoted(value)}}});
  }
  return *moment;
}

std::optional<Moment> Fields::maybe_moment(const char* field) {
  if (!has(field)) return std::nullopt;
  return moment(field);
}

const Json& Fields::object(const char* field) {
  const Json& value = get(field);
  if (!value.is_object()) {
    refuse(field, {said("is {given}; an object {...} was expected"), {{"given", quoted(value)}}});
  }
  return value;
}

const Json& Fields::list(const char* field, std::size_t most) const {
  const Json& value = object_.at(field);
  if (!value.is_array()) refuse(field, said("a list [...] was expected"));
  if (bounds_ == Bounds::kept && value.size() > most) {
    refuse(field,
           {said("has {entries} entries; it may have {most}"),
            {{"entries", counted(value.size())}, {"most", counted(most)}}},
           said("Share the work out over several pours"));
  }
  return value;
}

std::vector<Fields> Fields::objects(const char* field, std::size_t most) {
  std::vector<Fields> items;
  if (!has(field)) return items;
  const Json& value = list(field, most);
  for (std::size_t i = 0; i < value.size(); ++i) {
    items.emplace_back(value[i], inside(where_, fmt::format("{}[{}]", field, i + 1)), bounds_);
  }
  return items;
}

std::vector<double> Fields::numbers(const char* field, const Span& span, std::size_t most) {
  std::vector<double> items;
  if (!has(field)) return items;
  const Json& value = list(field, most);
  for (std::size_t i = 0; i < value.size(); ++i) {
    items.push_back(checked(fmt::format("{}[{}]", field, i + 1), value[i], span));
  }
  return items;
}

template <class Hold>
std::vector<std::string> Fields::names(const char* field, std::size_t most, Hold hold) {
  std::vector<std::string> items;
  if (!has(field)) return items;
  const Json& value = list(field, most);
  for (std::size_t i = 0; i < value.size(); ++i) {
    const std::string place = fmt::format("{}[{}]", field, i + 1);
    if (!value[i].is_string() || value[i].get_ref<const std::string&>().empty()) {
      refuse(place, said("a text was expected"));
    }
    hold(place, value[i].get_ref<const std::string&>());
    items.push_back(value[i].get<std::string>());
  }
  return items;
}

std::vector<std::string> Fields::ids(const char* field, std::size_t most) {
  return names(field, most,
               [&](const std::string& place, const std::string& id) { hold_id(place, id); });
}

std::vector<std::string> Fields::texts(const char* field, std::size_t most) {
  return names(field, most,
               [&](const std::string& place, const std::string& text) { hold_text(place, text); });
}

std::string Fields::hex(const char* field, const Span& bytes) {
  std::string digits = text(field);
  const auto size = static_cast<double>(digits.size()) / 2;
  if (is_hex(digits) && size >= bytes.least && size <= bytes.most) return digits;
  refuse(field,
         {said("is no {bytes} bytes as hexadecimal digits, 0 to 9 and a to f"),
          {{"bytes", count(bytes.most)}}},
         said("Take it as it was made; it is not typed by hand"));
}

std::string Fields::unknown() const {
  Json rest = Json::object();
  for (const auto& [key, value] : object_.items()) {
    if (!asked_.contains(key)) rest[key] = value;
  }
  if (rest.empty()) return {};
  std::string text = rest.dump();
  hold_unknown(rest.items().begin().key(), text.size());
  return text;
}

void Fields::hold_unknown(const std::string& first, std::size_t bytes) const {
  if (bounds_ != Bounds::kept || bytes <= most::kExtraBytes) return;
  refuse(first,
         {said("and other fields this version does not know hold {bytes} bytes; they may hold "
               "{most}"),
          {{"bytes", counted(bytes)}, {"most", counted(most::kExtraBytes)}}},
         said("Keep what is so long in a file of its own"));
}

std::string quoted(const Json& value) {
  constexpr std::size_t kMost = 80;
  const std::string text = value.dump(-1, ' ', false, Json::error_handler_t::replace);
  const std::string_view head = first_letters(text, kMost);
  return head.size() == text.size() ? text : std::string{head} + "...";
}

double tidy(double value) {
  // Not stod: it throws where a number is too small to keep all its figures.
  return std::strtod(fmt::format("{:.12g}", value).c_str(), nullptr);
}

namespace {

constexpr int kDeepest = 100;  // nothing of ours is nested deeper than a few

int depth_of(std::string_view text) {
  int depth = 0;
  int deepest = 0;
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted && c == '\\') ++i;
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == '{' || c == '[') deepest = std::max(deepest, ++depth);
    if (c == '}' || c == ']') --depth;
  }
  return deepest;
}

}  // namespace

Json parse_json(std::string_view text, const Saying& where) {
  if (depth_of(text) > kDeepest) {
    throw BadField{
        Error{Error::Kind::input, where, said("is nested too deep to be a line of a pour"), {}}};
  }
  try {
    return Json::parse(text);
  } catch (const Json::exception& e) {
    std::string what = e.what();
    if (const auto at = what.find("] "); at != std::string::npos) what = what.substr(at + 2);
    throw BadField{
        Error{Error::Kind::input, where, {said("is not JSON: {fault}"), {{"fault", what}}}, {}}};
  }
}

}  // namespace rb
