// A row of the book, and the book's own name, as one line of text each: what a mirror is made of.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "store/chain.h"

namespace rb::store {

/// A row and its hash as the book holds it.
struct KeptRow {
  Row row;
  Hash hash{};
  [[nodiscard]] bool holds() const { return hash_of(row) == hash; }
};

/// One JSON object of all columns, hashes in hex, ended by a newline.
std::string line_of(const KeptRow& row);
std::string line_of(const BookName& book);

/// What a line without its newline holds. None unless it is whole: its hash fits all the rest.
std::optional<KeptRow> read_row(std::string_view line);
std::optional<BookName> read_name(std::string_view line);

/// 64 hex digits; none for any other text.
std::optional<Hash> read_hash(std::string_view hex);

}  // namespace rb::store
