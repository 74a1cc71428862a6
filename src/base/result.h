// One way of failing for what a user, a file or a plan can cause: a Result holds a value or an
// Error that says, as data, what, where and what to do. Exceptions are for a programmer or a broken
// disk.
#pragma once

#include <tl/expected.hpp>
#include <utility>

#include "base/saying.h"

namespace rb {

/// What ails a book, for whoever words it in another language. Stable; only ever added to.
enum class BookTrouble {
  none,           ///< no trouble with a book, or one that has no kind of its own
  second_start,   ///< open for writing in another Risebook, or locked by another program
  no_permission,  ///< this user may not read or write it, or its folder
  read_only,      ///< the disk or the file is write-protected
  disk_full,
  no_answer,  ///< the disk did not read or write what it was asked to
  newer,      ///< of a version this program does not know
  older,      ///< of a version that must first be brought up to date
  damaged,
  not_a_book,
  not_there,
  no_folder,
  in_the_way,  ///< a file of somebody else stands where one of ours belongs
  many_names,  ///< the file has more than one hard link
};

struct Error {
  enum class Kind {
    input,    ///< what was given is wrong; exit code 2
    book,     ///< the book cannot be used as asked; exit code 3
    refused,  ///< a formula or a rule does not hold for these values
  };
  Kind kind = Kind::input;
  Saying where;   ///< "pour.jsonl line 12, field height"; may be empty
  Saying what;    ///< what is wrong
  Saying remedy;  ///< what to do about it; may be empty
  BookTrouble trouble = BookTrouble::none;

  bool operator==(const Error&) const = default;
};

/// What the system's number for a failed call (errno) means for a book.
BookTrouble trouble_of(int error);

/// "where: what. remedy", to stand in another sentence.
Saying as_saying(const Error& error);
/// "where: what. remedy."
std::string fill(const Error& error, const Manner& manner);
/// The same in English and SI.
std::string to_text(const Error& error);

template <class T>
using Result = tl::expected<T, Error>;

using Failed = tl::unexpected<Error>;

inline Failed fail(Error::Kind kind, Saying where, Saying what, Saying remedy = {}) {
  return Failed{Error{kind, std::move(where), std::move(what), std::move(remedy)}};
}

/// A book that cannot be used as asked (kind book), and why in a word a program knows.
inline Failed fail(BookTrouble trouble, Saying where, Saying what, Saying remedy = {}) {
  return Failed{
      Error{Error::Kind::book, std::move(where), std::move(what), std::move(remedy), trouble}};
}

}  // namespace rb
