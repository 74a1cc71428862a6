// A part of the list of a book's pours, read and folded. Used on the reader's thread only.
#pragma once

#include <chrono>
#include <string>
#include <unordered_map>
#include <vector>

#include "base/result.h"
#include "screens/pours_view.h"
#include "store/logbook.h"

namespace rb {

struct ListWish {
  std::string find{};  ///< a name, a site or a day; empty = all
  std::size_t first = 0, count = 12;
};

struct ListPart {
  std::vector<screens::PourCard> cards;
  screens::PoursPart part;
};

class PourList {
 public:
  explicit PourList(std::chrono::minutes utc_offset) : utc_offset_(utc_offset) {}

  /// Open pours first, the latest first within each. Only the pours of the part are folded, and
  /// those only once for each state of theirs.
  Result<ListPart> part(const Logbook& book, const ListWish& wish);

 private:
  struct Known {
    std::size_t events = 0;
    screens::PourCard card;
  };
  const screens::PourCard* card_of(const Logbook& book, const PourSummary& pour);
  std::chrono::minutes utc_offset_;
  std::unordered_map<PourId, Known> known_;
};

}  // namespace rb
