#include "store/file/trouble.h"

#include <sqlite3.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include <algorithm>
#include <array>

namespace rb::store {

namespace {

struct Words {
  int code;
  const char* why;
  const char* remedy;
  BookTrouble kind;
};

constexpr std::array kWords{
    Words{SQLITE_FULL, "the disk is full", "Free some space and try again", BookTrouble::disk_full},
    Words{SQLITE_IOERR, "the disk could not be read or written",
          "Try again; if it fails again, copy the book to another disk", BookTrouble::no_answer},
    Words{SQLITE_BUSY, "another program is writing to the book", "Close it and try again",
          BookTrouble::second_start},
    Words{SQLITE_LOCKED, "another program is writing to the book", "Close it and try again",
          BookTrouble::second_start},
    Words{SQLITE_READONLY, "the book is write-protected",
          "Copy it to a folder that may be written to", BookTrouble::read_only},
    Words{SQLITE_PERM, "the book may not be read by this user", "Check who owns the file",
          BookTrouble::no_permission},
    Words{SQLITE_CANTOPEN, "the file cannot be opened",
          "Check that it is there and that its folder may be written to", BookTrouble::none},
    Words{SQLITE_CORRUPT, "the file is damaged", "Keep it, and go on from the last copy",
          BookTrouble::damaged},
    Words{SQLITE_NOTADB, "the file is not a book of Risebook, or its beginning is damaged",
          "Name another file", BookTrouble::not_a_book},
    Words{SQLITE_NOMEM, "the tablet is out of memory", "Close other programs and try again",
          BookTrouble::none},
};

/// Why a file was not opened: SQLite does not tell, the file does.
BookTrouble why_not_opened(const std::string& where) {
  if (euidaccess(where.c_str(), F_OK) != 0) return BookTrouble::not_there;
  const auto slash = where.rfind('/');
  const std::string folder = slash == std::string::npos ? "." : where.substr(0, slash + 1);
  const bool may =
      euidaccess(where.c_str(), R_OK | W_OK) == 0 && euidaccess(folder.c_str(), W_OK | X_OK) == 0;
  return may ? BookTrouble::no_answer : BookTrouble::no_permission;
}

/// SQLite tells some writes that found no room as failures of the disk.
bool no_room(const std::string& where) {
  const auto slash = where.rfind('/');
  struct statvfs disk {};
  return statvfs(slash == std::string::npos ? "." : where.substr(0, slash + 1).c_str(), &disk) ==
             0 &&
         disk.f_blocks > 0 && disk.f_bavail == 0;
}

int code_of(const std::string& where, const SQLite::Exception& thrown) {
  const int code = thrown.getErrorCode() & 0xFF;
  return code == SQLITE_IOERR && no_room(where) ? SQLITE_FULL : code;
}

}  // namespace

Error trouble(const std::string& where, const std::string& doing, const SQLite::Exception& thrown) {
  const int code = code_of(where, thrown);
  const auto* const words = std::find_if(kWords.begin(), kWords.end(),
                                         [&](const Words& row) { return row.code == code; });
  if (words == kWords.end()) {
    return {Error::Kind::book, where, doing + ": " + thrown.what(), {}, BookTrouble::none};
  }
  const bool not_opened = words->code == SQLITE_CANTOPEN;
  return {Error::Kind::book, where, doing + ": " + words->why, words->remedy,
          not_opened ? why_not_opened(where) : words->kind};
}

}  // namespace rb::store
