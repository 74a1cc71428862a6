// Names a book gives itself and its events.
#pragma once

#include <cstdint>
#include <string>

#include "base/ids.h"

namespace rb::store {

/// Five characters drawn at random from letters and digits that are not taken for one another
/// when written (no 0 O 1 I L) and spell no word (no vowels): 17 million of them.
std::string random_tag();

/// A random UUID (RFC 9562, version 4).
std::string random_uuid();

/// "<tag>-<seq>": distinct among all books, short enough to be said over a radio.
EventId event_id(const std::string& tag, std::int64_t seq);

/// The number in such an id; 0 for any other text.
std::int64_t seq_in(const EventId& id);

}  // namespace rb::store
