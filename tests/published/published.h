// Outside checks: what others printed, laid beside what we compute. A sheet is one publication's
// values from one place; every row of it is one value. Marks are kept truthfully:
//   read         the figure was seen in a public text of an agency, an institute or a journal
//   second_hand  the standard's own print was not seen; the figure is as others tell it
//   memory       own knowledge of the publication, not confirmed
//   computed     worked out apart from the product from the publication's formula, not printed
// Of ACI, ASTM, CIRIA, DIN and IEC texts hardly one was at hand; only what is marked `read` counts
// as an outside check, the others hold the figures where they are.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"

namespace rb::published {

enum class Mark { read, second_hand, memory, computed };

/// Whether a row checks a formula of ours or a table that we copied.
enum class Kind { worked_out, transcribed };

struct Row {
  std::string what;
  double ours;
  double theirs;
  double tolerance;  ///< absolute; mostly the rounding of the print
};

struct Sheet {
  std::string publication;  ///< the standard, book or text
  std::string place;        ///< clause or page, and how it is known
  Mark mark;
  Kind kind;
  std::vector<Row> rows;
};

/// The number inside a result, in the unit of its reader; no number at all where it failed, so that
/// the row fails.
template <class Quantity, class Reader>
double in(const Result<Quantity>& result, Reader reader) {
  return result ? static_cast<double>(reader(*result)) : std::numeric_limits<double>::quiet_NaN();
}

/// Ours within the tolerance of theirs.
bool agrees(const Row& row);

/// One CHECK a row.
void check(const std::vector<Sheet>& sheets);

/// Puts a maker of sheets on the list that count_test.cpp adds up.
using Maker = std::vector<Sheet> (*)();
struct Enlist {
  explicit Enlist(Maker maker);
};
std::vector<Maker>& enlisted();

}  // namespace rb::published

/// PUBLISHED(name, "claim") { return {sheets}; }: a test case of the claim, on the list.
#define PUBLISHED(name, claim)                            \
  static std::vector<rb::published::Sheet> name();        \
  static const rb::published::Enlist enlist_##name{name}; \
  TEST_CASE(claim) {                                      \
    rb::published::check(name());                         \
  }                                                       \
  static std::vector<rb::published::Sheet> name()
