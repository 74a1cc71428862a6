// One way of failing for what a user, a file or a plan can cause: a Result holds a value or an
// Error that names what, where and what to do. Exceptions are for a programmer or a broken disk.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <utility>

namespace rb {

struct Error {
  enum class Kind {
    input,    ///< what was given is wrong; exit code 2
    book,     ///< the book cannot be used as asked; exit code 3
    refused,  ///< a formula or a rule does not hold for these values
  };
  Kind kind = Kind::input;
  std::string where;   ///< "pour.jsonl line 12, field height"; may be empty
  std::string what;    ///< what is wrong
  std::string remedy;  ///< what to do about it; may be empty

  bool operator==(const Error&) const = default;
};

/// "where: what. remedy."
std::string to_text(const Error& error);

template <class T>
using Result = tl::expected<T, Error>;

using Failed = tl::unexpected<Error>;

inline Failed fail(Error::Kind kind, std::string where, std::string what, std::string remedy = {}) {
  return Failed{Error{kind, std::move(where), std::move(what), std::move(remedy)}};
}

}  // namespace rb
