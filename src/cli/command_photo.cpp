// A photo kept beside a book, and the event that names it.
#include <fmt/format.h>

#include "app/book_pours.h"
#include "app/device.h"
#include "app/photo_desk.h"
#include "cli/commands.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "store/file/entry_now.h"

namespace rb {

namespace {

// The pour that holds an event.
Result<PourState> pour_of(const Logbook& book, const EventId& event) {
  const auto pours = chosen_pours(book, std::nullopt);
  if (!pours) return Failed{pours.error()};
  for (const PourId& pour : *pours) {
    auto read = read_pour(book, pour);
    if (!read) return Failed{read.error()};
    if (!read->state) continue;
    for (const LogEntry& entry : read->state->log) {
      if (entry.event.id == event) return *std::move(read->state);
    }
  }
  return fail(Error::Kind::input, "--event",
              {said("there is no event {event} in this book"), {{"event", event.text}}},
              said("risebook script tells the ids of a pour's events"));
}

}  // namespace

Exit run_photo(const PhotoCommand& wish) {
  auto book = Logbook::open(wish.book, Access::write);
  if (!book) return report(book.error());
  if (const auto& why = book->read_only_reason()) return report(*why);
  if (auto done = sign_heads(*book, data_folder()); !done) (void)report(done.error());
  const EventId target{wish.event};
  const auto state = pour_of(*book, target);
  if (!state) return report(state.error());
  const Entry entry = entry_now();
  Event event;
  event.at = entry.wall;
  event.by = PersonId{wish.by};
  event.entry = entry;
  // Asked before the file is kept: what cannot be said of it leaves nothing behind.
  event::Photo likely;
  likely.target = target;
  likely.sha256.digits = std::string(64, '0');
  likely.name = wish.file.filename().string();
  likely.bytes = 1;
  event.what = likely;
  if (const auto may = admissible(*state, event); !may) return report(may.error());
  auto photo = take_photo(wish.book, wish.file, target);
  if (!photo) return report(photo.error());
  event.what = *photo;
  const auto kept = book->append(state->pour, std::move(event), entry);
  if (!kept) return report(kept.error());
  fmt::print("Event {}: photo {} of {}, {} bytes, SHA-256 {}\n", kept->id.text, photo->name,
             target.text, photo->bytes, photo->sha256.digits);
  return Exit::fine;
}

}  // namespace rb
