// This device's key, where the program keeps it.
#pragma once

#include "base/path.h"
#include "store/book/logbook.h"
#include "store/file/device_key.h"

namespace rb {

/// The folder of what the program keeps for the user: the key, the default book. Empty where the
/// user has none.
Path data_folder();

/// From now on heads of the book are signed at each close and signature. An error (heads go
/// unsigned, all else is kept) is for the user to be told.
Result<void> sign_heads(Logbook& book, const Path& folder);

}  // namespace rb
