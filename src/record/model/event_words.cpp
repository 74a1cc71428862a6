#include "record/model/event_words.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <set>

#include "pour/log/event_json.h"

namespace rb {

namespace {

using nlohmann::json;

json read(const std::string& line) {
  json value = json::parse(line, nullptr, false);
  return value.is_object() ? value : json::object();
}

// A kind's or a field's word, as a person writes it.
std::string plain(std::string word, Language language) {
  for (char& c : word) {
    if (c == '-' || c == '_') c = ' ';
  }
  return told(language, word.c_str());
}

std::string value_words(const json& value, Language language) {
  if (value.is_string()) return value.get<std::string>();
  if (value.is_boolean()) return told(language, value.get<bool>() ? said("yes") : said("no"));
  if (value.is_null()) return told(language, said("none"));
  if (value.is_array()) {
    std::string text;
    for (const json& part : value) text += (text.empty() ? "" : " ") + value_words(part, language);
    return text;
  }
  if (value.is_object()) return told(language, said("(changed)"));  // a plan: too long for a cell
  return value.dump(-1, ' ', false, json::error_handler_t::replace);
}

// Who, when and how it was entered are told in columns of their own.
bool tells(const std::string& key) {
  static const std::set<std::string> kUntold{"do",      "at",   "by",   "id",    "plan",
                                             "entered", "mono", "boot", "chosen"};
  return !kUntold.contains(key);
}

std::string kind_name(const json& fields, Language language) {
  const auto kind = fields.find("do");
  const bool named = kind != fields.end() && kind->is_string();
  return plain(named ? kind->get<std::string>() : std::string{said("event").english}, language);
}

}  // namespace

std::string line_words(const std::string& line, Language language) {
  const json fields = read(line);
  std::string text;
  for (const auto& [key, value] : fields.items()) {
    if (tells(key)) {
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", plain(key, language),
                          value_words(value, language));
    }
  }
  const std::string name = kind_name(fields, language);
  return text.empty() ? name : name + ": " + text;
}

std::string event_words(const Event& event, Language language) {
  return line_words(to_line(event), language);
}

std::string change_words(const std::string& before, const std::string& after, Language language) {
  const json was = read(before);
  const json now = read(after);
  std::string text;
  const auto tell = [&](const std::string& key, const json& from, const json& to) {
    text += fmt::format("{}{} {} → {}", text.empty() ? "" : ", ", plain(key, language),
                        value_words(from, language), value_words(to, language));
  };
  for (const auto& [key, value] : was.items()) {
    const auto found = now.find(key);
    const json to = found == now.end() ? json() : *found;
    if (to != value) tell(key, value, to);
  }
  for (const auto& [key, value] : now.items()) {
    if (!was.contains(key)) tell(key, json(), value);
  }
  std::string name = kind_name(was, language);
  const auto element = was.find("element");
  if (element != was.end()) name += " " + value_words(*element, language);
  return text.empty() ? name : name + ": " + text;
}

std::string repair_words(const event::Repair& repair) {
  std::string words;
  for (const std::string* part : {&repair.note, &repair.method, &repair.product, &repair.who}) {
    if (part->empty()) continue;
    if (!words.empty()) words += ", ";
    words += *part;
  }
  return words;
}

}  // namespace rb
