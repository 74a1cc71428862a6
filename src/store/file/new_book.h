// Where a new book may stand, and how it is begun and put there (base/unfinished.h) with errors of
// kind book.
#pragma once

#include <filesystem>

#include "base/result.h"
#include "base/unfinished.h"

namespace rb::store {

/// An error unless the place is free: nothing by that name, and nothing beside it that another book
/// left.
Result<void> nothing_stands(const std::filesystem::path& to);

/// An empty file private to the user, to be filled as a database; its folder is made if missing.
Result<Unfinished> begin_book(const std::filesystem::path& to);

/// Its bytes and its name are on the disk when this returns; nothing is written over. No SQLite
/// handle may be open on it.
Result<void> put_book(Unfinished& book);

}  // namespace rb::store
