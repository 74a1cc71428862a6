#include "published.h"

#include <doctest/doctest.h>

#include <cmath>

namespace rb::published {

bool agrees(const Row& row) {
  return std::abs(row.ours - row.theirs) <= row.tolerance;
}

void check(const std::vector<Sheet>& sheets) {
  for (const Sheet& sheet : sheets) {
    CHECK_FALSE(sheet.rows.empty());
    for (const Row& row : sheet.rows) {
      CAPTURE(sheet.publication);
      CAPTURE(sheet.place);
      CAPTURE(row.what);
      CAPTURE(row.ours);
      CAPTURE(row.theirs);
      CHECK(agrees(row));
    }
  }
}

std::vector<Maker>& enlisted() {
  static std::vector<Maker> makers;
  return makers;
}

Enlist::Enlist(Maker maker) {
  enlisted().push_back(maker);
}

}  // namespace rb::published
