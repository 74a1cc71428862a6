// Events as JSON: the lines of a pour script and of the book.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "pour/log/event.h"
#include "pour/plan/most.h"

namespace rb {

/// Reads one line. Errors name the field and what was expected; `where` is put before the field
/// ("pour.jsonl line 12"). Unknown fields are kept in Event::extra; an unknown kind is refused.
/// What goes into a book is held to the bounds of most.h; what came out of one is read as it is.
Result<Event> parse_event(std::string_view line, const Saying& where, Bounds bounds = Bounds::kept);

/// One line without a newline; parse_event gives the same event back.
std::string to_line(const Event& event);

/// The event that stands after `fields` (a JSON object's text, as in a fix) replace its own.
/// `do` and `id` cannot be changed.
Result<Event> with_fields(const Event& event, const std::string& fields, const Saying& where);

/// The correction that makes one event of another: of the fields that differ, no more. Neither may
/// be a correction itself, and `after` keeps kind, id and entry.
event::Fix make_fix(const Event& before, const Event& after, std::string why,
                    std::optional<event::Chosen> chosen = {});

}  // namespace rb
