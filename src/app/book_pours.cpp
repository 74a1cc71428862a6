#include "app/book_pours.h"

#include <fmt/format.h>

#include "pour/fold.h"

namespace rb {

namespace {

constexpr std::size_t kNamed = 20;  // pours a message names

Failed no_such_pour(const Logbook& book, const std::string& pour) {
  std::string known;
  const auto page = book.pours(PourQuery{.count = kNamed});
  if (!page) return Failed{page.error()};
  for (const PourMark& mark : page->pours) known += (known.empty() ? "" : ", ") + mark.pour.text;
  if (page->all > page->pours.size()) {
    known += fmt::format(" and {} more", page->all - page->pours.size());
  }
  return fail(Error::Kind::input, book.file().string(), "holds no pour " + pour,
              known.empty() ? "It holds no pour yet" : "It holds " + known);
}

}  // namespace

Result<std::vector<PourId>> chosen_pours(const Logbook& book,
                                         const std::optional<std::string>& pour) {
  if (!pour) return book.pour_ids();
  const auto mark = book.mark(PourId{*pour});
  if (!mark) return Failed{mark.error()};
  if (!*mark) return no_such_pour(book, *pour);
  return std::vector{PourId{*pour}};
}

Result<ReadPour> read_pour(const Logbook& book, const PourId& pour) {
  const auto found = book.read(pour);
  if (!found) return Failed{found.error()};
  ReadPour read{pour, std::nullopt, found->events.size(), {}};
  for (const DamagedEvent& event : found->damaged) {
    read.unread.damaged.push_back({event.id, what_of(event)});
  }
  for (const SetAside& event : found->set_aside) {
    read.unread.set_aside.push_back(
        {event.id, fmt::format("of the kind \"{}\", which this Risebook does not know: kept, not "
                               "judged",
                               event.kind)});
  }
  auto state = fold(found->events);
  if (!state && read.unread.damaged.empty()) return Failed{state.error()};
  if (state) read.state = std::move(*state);
  return read;
}

Result<PourState> folded(const Logbook& book, const PourId& pour) {
  const auto events = book.events(pour);
  if (!events) return Failed{events.error()};
  return fold(*events);
}

Result<std::vector<PourState>> pours_of(const Logbook& book,
                                        const std::optional<std::string>& pour) {
  const auto chosen = chosen_pours(book, pour);
  if (!chosen) return Failed{chosen.error()};
  std::vector<PourState> states;
  for (const PourId& one : *chosen) {
    auto state = folded(book, one);
    if (!state) return Failed{state.error()};
    states.push_back(std::move(*state));
  }
  return states;
}

}  // namespace rb
