#include "store/trouble.h"

#include <sqlite3.h>

#include <algorithm>
#include <array>

namespace rb::store {

namespace {

struct Words {
  int code;
  const char* why;
  const char* remedy;
};

constexpr std::array kWords{
    Words{SQLITE_FULL, "the disk is full", "Free some space and try again"},
    Words{SQLITE_IOERR, "the disk could not be read or written",
          "Try again; if it fails again, copy the book to another disk"},
    Words{SQLITE_BUSY, "another program is writing to the book", "Close it and try again"},
    Words{SQLITE_LOCKED, "another program is writing to the book", "Close it and try again"},
    Words{SQLITE_READONLY, "the book is write-protected",
          "Copy it to a folder that may be written to"},
    Words{SQLITE_PERM, "the book may not be read by this user", "Check who owns the file"},
    Words{SQLITE_CANTOPEN, "the file cannot be opened",
          "Check that it is there and that its folder may be written to"},
    Words{SQLITE_CORRUPT, "the file is damaged", "Keep it, and go on from the last copy"},
    Words{SQLITE_NOTADB, "the file is not a book of Risebook, or its beginning is damaged",
          "Name another file"},
    Words{SQLITE_NOMEM, "the tablet is out of memory", "Close other programs and try again"},
};

}  // namespace

Error trouble(const std::string& where, const std::string& doing, const SQLite::Exception& thrown) {
  const auto* const words = std::find_if(kWords.begin(), kWords.end(), [&](const Words& row) {
    return row.code == (thrown.getErrorCode() & 0xFF);
  });
  if (words == kWords.end()) {
    return {Error::Kind::book, where, doing + ": " + thrown.what(), {}};
  }
  return {Error::Kind::book, where, doing + ": " + words->why, words->remedy};
}

}  // namespace rb::store
