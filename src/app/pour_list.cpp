#include "app/pour_list.h"

#include <algorithm>
#include <cctype>

#include "pour/fold.h"

namespace rb {

namespace {

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

}  // namespace

const screens::PourCard* PourList::card_of(const Logbook& book, const PourSummary& pour) {
  Known& known = known_[pour.pour];
  if (known.events == pour.count) return &known.card;
  const auto events = book.events(pour.pour);
  if (!events) return nullptr;
  const auto state = fold(*events);
  if (!state) return nullptr;
  known = {pour.count, screens::make_pour_card(*state)};
  return &known.card;
}

Result<ListPart> PourList::part(const Logbook& book, const ListWish& wish) {
  const auto pours = book.pours();
  if (!pours) return Failed{pours.error()};
  const auto day = parse_day(wish.find, utc_offset_);
  const std::string find = lower(wish.find);
  std::vector<screens::PourCard> all;
  for (const PourSummary& summary : *pours) {
    if (day && (summary.last < *day || summary.first >= *day + std::chrono::hours{24})) continue;
    const screens::PourCard* card = card_of(book, summary);
    if (card == nullptr) continue;
    const std::string told = lower(card->name + "\n" + card->site + "\n" + card->id.text);
    if (day || told.find(find) != std::string::npos) all.push_back(*card);
  }
  screens::order_cards(all);
  ListPart answer{{}, {.first = wish.first, .total = all.size(), .find = wish.find}};
  const auto from = std::min(wish.first, all.size());
  const auto to = std::min(from + wish.count, all.size());
  answer.cards.assign(all.begin() + static_cast<std::ptrdiff_t>(from),
                      all.begin() + static_cast<std::ptrdiff_t>(to));
  return answer;
}

}  // namespace rb
