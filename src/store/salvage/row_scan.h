// Rows of a book found in its pages by their shape alone: a record's header (ten columns, the last
// two of 32 bytes) is looked for at every byte, its content judged by the row's own hash. Neither
// the tree of pages nor a page's own list of cells is asked, so that damage there hides no row.
#pragma once

#include <cstdint>
#include <functional>
#include <set>
#include <string>
#include <vector>

#include "store/file/chain.h"
#include "store/file/keeping.h"
#include "store/salvage/page_images.h"

namespace rb::store {

/// A row as it was found.
struct FoundRow {
  Row row;  ///< its number is the one its id tells, or its cell where that cannot be read
  Hash hash{};
  bool holds = false;    ///< the row's own hash fits it
  bool current = false;  ///< on a page SQLite itself would read
};

struct FoundHead {
  Head head;
  bool current = false;
};

/// A line of the index that tells which pour an event belongs to.
struct FoundPlace {
  std::int64_t seq = 0;
  std::string pour;
};

struct Scan {
  std::vector<FoundRow> rows;  ///< each once, by its hash as stored and whether it holds
  std::vector<FoundHead> heads;
  std::vector<BookName> names;
  std::size_t split_whole = 0, split_lost = 0;  ///< rows over several pages that hold, that do not
};

Scan scan_rows(const PageImages& pages);

/// The index's lines for the events asked about, for naming the pour of one that is lost.
std::vector<FoundPlace> scan_places(const PageImages& pages, const std::set<std::int64_t>& asked);

}  // namespace rb::store
