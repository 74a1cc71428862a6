// Events in the log beside a book that SQLite no longer sees: it reads the log up to the first
// frame whose checksum fails and passes over the rest in silence.
#pragma once

#include <cstddef>

#include "store/file/keeping.h"
#include "store/salvage/page_images.h"

namespace rb::store {

/// How many events the log holds behind `head` that were kept one after the other, so that no cut
/// of power explains why SQLite does not see them (each is synced before the next is written); 0
/// when it is sound. `log` must have been read before the head was asked for.
std::size_t lost_in_log(Bytes log, const Head& head);

}  // namespace rb::store
