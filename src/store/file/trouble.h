// The boundary of the room: what SQLite throws becomes an Error in plain words.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <exception>
#include <string>
#include <utility>

#include "base/result.h"

namespace rb::store {

/// Why it went wrong, in words for a foreman, and what to do about it.
Error trouble(const std::string& where, const std::string& doing, const SQLite::Exception& thrown);

/// Calls `work` (which gives a Result); whatever it throws becomes an Error of kind book that reads
/// "<doing>: <why>".
template <class Work>
auto guarded(const std::string& where, const std::string& doing, Work&& work)
    -> decltype(std::forward<Work>(work)()) {
  try {
    return std::forward<Work>(work)();
  } catch (const SQLite::Exception& thrown) {
    return Failed{trouble(where, doing, thrown)};
  } catch (const std::exception& thrown) {
    return fail(Error::Kind::book, where, doing + ": " + thrown.what());
  }
}

}  // namespace rb::store
