// A row of the book, a signed head of it, and the book's own name, as one line of text each: what a
// mirror is made of. Version 1 had no signed heads; it is still read.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "store/file/chain.h"
#include "store/file/device_key.h"

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
std::string line_of(const Signed& head);

/// What a line without its newline holds. None unless it is whole: its hash fits all the rest.
std::optional<KeptRow> read_row(std::string_view line);
std::optional<BookName> read_name(std::string_view line);
/// Whether its signature holds is for whoever knows the book's name.
std::optional<Signed> read_head(std::string_view line);
/// The version a line that tells the book's name is of; none for any other line.
std::optional<int> version_of(std::string_view line);
inline constexpr int kMirrorVersion = 2;

/// 64 hex digits; none for any other text.
std::optional<Hash> read_hash(std::string_view hex);

}  // namespace rb::store
