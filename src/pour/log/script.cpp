#include "pour/log/script.h"

#include <unordered_map>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/plan/json_fields.h"

namespace rb {

namespace {

Saying line_of(const std::string& file, int number) {
  return {said("{file} line {line}"), {{"file", file}, {"line", count(number)}}};
}

}  // namespace

Result<Script> read_script(std::string_view text, const std::string& file) {
  Script script;
  std::vector<int> lines;
  std::unordered_map<std::string, int> ids;
  int number = 0;
  while (!text.empty()) {
    const auto end = text.find('\n');
    std::string_view line = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    ++number;
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    if (line.find_first_not_of(" \t") == std::string_view::npos) continue;
    const Saying where = line_of(file, number);
    auto event = parse_event(line, where);
    if (!event) return Failed{event.error()};
    const auto* open = std::get_if<event::PourOpen>(&event->what);
    if (script.events.empty() != (open != nullptr)) {
      return fail(Error::Kind::input, field_of(where, "do"),
                  script.events.empty() ? said("the first line of a script must be pour-open")
                                        : said("a script opens one pour only"),
                  said("Put each pour in a script of its own"));
    }
    if (open != nullptr) script.pour = open->pour;
    if (const EventId* target = target_of(event->what); target && !ids.contains(target->text)) {
      return fail(Error::Kind::input, field_of(where, "target"),
                  {said("names \"{given}\", which no earlier line has as its id"),
                   {{"given", target->text}}});
    }
    if (!event->id.empty() && !ids.emplace(event->id.text, number).second) {
      return fail(Error::Kind::input, field_of(where, "id"),
                  {said("\"{given}\" is already the id of line {line}"),
                   {{"given", event->id.text}, {"line", count(ids.at(event->id.text))}}});
    }
    script.events.push_back(std::move(*event));
    lines.push_back(number);
  }
  if (script.events.empty()) {
    return fail(Error::Kind::input, file, said("holds no events"),
                said("A script starts with a pour-open line"));
  }
  const auto state = fold(script.events);
  if (!state) return Failed{state.error()};
  for (std::size_t i = 0; i < state->log.size(); ++i) {
    if (state->log[i].sense == LogEntry::Sense::wrong) {
      return fail(Error::Kind::input,
                  Saying{said("{place} ({kind})"),
                         {{"place", Clause{line_of(file, lines[i])}},
                          {"kind", kind_text(script.events[i].what)}}},
                  state->log[i].why_not);
    }
  }
  return script;
}

std::string write_script(const std::vector<Event>& events) {
  std::string text;
  for (const Event& event : events) text += to_line(event) + '\n';
  return text;
}

}  // namespace rb
