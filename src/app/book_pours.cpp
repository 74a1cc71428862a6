#include "app/book_pours.h"

#include <fmt/format.h>

#include <cstdio>
#include <unordered_set>

#include "pour/log/event.h"
#include "pour/log/fold.h"
#include "store/file/damage.h"

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
  return fail(Error::Kind::input, book.file().string(),
              {said("holds no pour {pour}"), {{"pour", pour}}},
              known.empty() ? Saying{said("It holds no pour yet")}
                            : Saying{said("It holds {pours}"), {{"pours", known}}});
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

Result<ReadPour> read_pour(const Logbook& book, const PourId& pour,
                           const std::vector<Tapped>& waiting) {
  auto found = book.read(pour);
  if (!found) return Failed{found.error()};
  ReadPour read{pour, std::nullopt, found->events.size(), {}, ids_text(found->damaged)};
  for (const DamagedEvent& event : found->damaged) {
    read.unread.damaged.push_back({event.id, what_of(event)});
  }
  for (const SetAside& event : found->set_aside) {
    read.unread.set_aside.push_back(
        {event.id, fmt::format("of the kind \"{}\", which this Risebook does not know: kept, not "
                               "judged",
                               event.kind)});
  }
  if (!waiting.empty()) {
    std::unordered_set<EventId> there;
    for (const Event& event : found->events) there.insert(event.id);
    for (const Tapped& tap : waiting) {
      if (tap.pour == pour && !there.contains(tap.event.id)) found->events.push_back(tap.event);
    }
  }
  auto state = fold(found->events);
  if (!state && read.unread.damaged.empty()) return Failed{state.error()};
  if (state) read.state = std::move(*state);
  return read;
}

bool tell_unread(const Path& book, const ReadPour& read) {
  const auto tell = [&](std::size_t count, const char* what, const std::string& which) {
    if (count == 0) return;
    fmt::print(stderr, "{}: pour {}: {} {}{}: {}\n", book.string(), read.pour.text, count,
               count == 1 ? "event is " : "events are ", what, which);
  };
  std::string aside;
  for (const UnreadEvent& event : read.unread.set_aside) {
    aside += (aside.empty() ? "" : ", ") + event.id.text;
  }
  tell(read.unread.damaged.size(), "damaged and left out", read.damaged_ids);
  tell(read.unread.set_aside.size(), "of a kind this Risebook does not know and left out", aside);
  return !read.unread.damaged.empty();
}

Failed no_plan(const Path& book, const ReadPour& read) {
  return fail(BookTrouble::damaged, book.string(),
              {said("the event that opens pour {pour} is damaged, and its plan with it; {whole} "
                    "events of it "
                    "are whole"),
               {{"pour", read.pour.text}, {"whole", counted(read.whole)}}},
              said("risebook record prints what reads of them"));
}

}  // namespace rb
