// A part of the list of a book's pours, read and folded. Used on the reader's thread only.
#pragma once

#include <chrono>
#include <string>
#include <unordered_map>
#include <vector>

#include "app/book_pours.h"
#include "base/result.h"
#include "screens/view/pours_view.h"
#include "store/book/logbook.h"

namespace rb {

struct ListWish {
  std::string find{};  ///< a name, a site or a day; empty = all
  std::size_t first = 0, count = 12;
};

struct ListPart {
  std::vector<screens::PourCard> cards;
  screens::PoursPart part;
};

/// A pour of the list as it reads; as its mark tells it where its plan does not.
screens::PourCard card_of(const ReadPour& read, const PourMark& mark);
/// What the screens say of its damage.
screens::DamageSeen damage_seen(const ReadPour& read);

class PourList {
 public:
  explicit PourList(std::chrono::minutes utc_offset) : utc_offset_(utc_offset) {}

  /// Those not known to be closed first, the latest first within each, as the book's marks tell
  /// them. With `folded` the pours of the part are read too, each once for each state of its own:
  /// lifts, rows that run and the plan are known only then.
  Result<ListPart> part(const Logbook& book, const ListWish& wish, bool folded);

 private:
  struct Known {
    std::int64_t last = 0;  ///< number of the newest event
    screens::PourCard card;
  };
  screens::PourCard known_card(const Logbook& book, const PourMark& mark);
  std::chrono::minutes utc_offset_;
  std::unordered_map<PourId, Known> known_;
};

}  // namespace rb
