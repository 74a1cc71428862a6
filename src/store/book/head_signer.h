// Signs heads of the book that is being written, inside the transaction that keeps the event.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>

#include "store/file/device_key.h"
#include "store/file/keeping.h"

namespace rb::store {

/// Whether a head is signed behind this event: a close of a pour, or a signature of a person.
bool calls_for_signing(const Happening& what);

class HeadSigner {
 public:
  HeadSigner(const SQLite::Database& database, DeviceKey key, std::string uuid);
  /// Inside the caller's transaction, the event at `head` being in it. Throws SQLite::Exception.
  void sign(const Head& head, Moment made);

 private:
  DeviceKey key_;
  std::string uuid_;
  SQLite::Statement has_key_, add_key_, add_head_;
};

}  // namespace rb::store
