#include "store/book/verify_people.h"

#include <fmt/format.h>

#include "sign/claim.h"
#include "store/book/verify_note.h"
#include "store/file/identity.h"
#include "store/file/keeping.h"

namespace rb::store {

PeopleLook::PeopleLook(const SQLite::Database& database, const BookName& book, bool some_lost)
    : at_(database, "SELECT hash FROM events WHERE seq = ?"), book_(book), some_lost_(some_lost) {}

void PeopleLook::look(const Row& row, const Event& event, VerifyReport& report) {
  if (std::holds_alternative<event::PourOpen>(event.what)) keys_[row.pour];
  if (const auto* sign = std::get_if<event::Sign>(&event.what)) {
    if (sign->key) look_at_sign(row, event, *sign, report);
  } else if (const auto* enrol = std::get_if<event::Enrol>(&event.what)) {
    look_at_enrol(row, *enrol, report);
  } else if (const auto* photo = std::get_if<event::Photo>(&event.what)) {
    look_at_photo(row, *photo, report);
  }
}

// Whether the event at the number that is signed for is not the one that was signed for.
bool PeopleLook::over_another(const Row& row, const event::Sign& sign) {
  if (*sign.number >= row.seq) return true;
  if (*sign.number == 0) return to_hex(hash_of(book_)) != sign.hash->digits;
  Use use(at_);
  use->bind(1, *sign.number);
  if (!use->executeStep()) return !some_lost_;
  return to_hex(hash_column(at_, 0)) != sign.hash->digits;
}

void PeopleLook::look_at_photo(const Row& row, const event::Photo& photo, VerifyReport& report) {
  report.photos.push_back({EventId{row.id}, PourId{row.pour}, photo.sha256, photo.name});
}

void PeopleLook::look_at_sign(const Row& row, const Event& event, const event::Sign& sign,
                              VerifyReport& report) {
  const EventId id{row.id};
  const std::string whose = fmt::format("{} as {}", event.by.text, to_text(sign.role));
  const bool elsewhere = sign.book != book_.uuid;
  if (!sign::holds(PourId{row.pour}, event)) {
    note(report, id, fmt::format("The signature of {} in event {} does not hold", whose, row.id));
  } else if (!elsewhere && over_another(row, sign)) {
    note(report, id,
         fmt::format("Event {} is not the one that {} signed for in event {}",
                     event_id(book_.tag, *sign.number).text, whose, row.id));
  } else if (!keys_[row.pour][event.by].contains(sign.key->digits)) {
    note(report, id,
         fmt::format("Event {} is signed with a key that {} had not enrolled in pour {}", row.id,
                     event.by.text, row.pour));
  } else {
    report.people.push_back(
        {id, PourId{row.pour}, event.by, sign.role, *sign.key, *sign.number, elsewhere});
  }
}

void PeopleLook::look_at_enrol(const Row& row, const event::Enrol& enrol, VerifyReport& report) {
  const EventId id{row.id};
  Keys& keys = keys_[row.pour];
  if (!sign::witness_holds(enrol)) {
    note(report, id,
         fmt::format("The signature of {}, who witnessed the key of {} in event {}, does not hold",
                     enrol.witness.text, enrol.person.text, row.id));
  } else if (enrol.from.empty() && enrol.witness_key &&
             !keys[enrol.witness].contains(enrol.witness_key->digits)) {
    note(report, id,
         fmt::format("Event {}: {}, who witnessed the key of {}, had no such key in pour {}",
                     row.id, enrol.witness.text, enrol.person.text, row.pour));
  } else if (const auto made = keys_.find(enrol.from.text);
             made != keys_.end() && !made->second[enrol.person].contains(enrol.key.digits)) {
    note(report, id,
         fmt::format("Event {} carries a key of {} that pour {} does not have", row.id,
                     enrol.person.text, enrol.from.text));
  }
  keys[enrol.person].insert(enrol.key.digits);
}

}  // namespace rb::store
