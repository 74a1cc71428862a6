// A small pour with two people's keys, closed, signed by both, and stripped. PINs cheap to try.
#pragma once

#include "samples.h"
#include "sign/claim.h"

namespace rb::samples {

struct Signer {
  PersonId person;
  sign::SealedKey sealed;
  sign::PersonKey key;
};

inline Signer signer(const char* person, const char* digits) {
  const auto pin = got(sign::Pin::read(digits));
  const auto sealed = got(sign::make_key(pin, {1, 64}));
  return {PersonId{person}, sealed, got(sign::open_key(sealed, pin))};
}

inline Event enrol_event(const Signer& who, int minutes, const Signer* witness = nullptr) {
  event::Enrol enrol{.person = who.person, .made = five_past(minutes)};
  sign::put_key(who.sealed, enrol);
  if (witness != nullptr) sign::witness_with(witness->key, witness->person, enrol);
  auto event = happening(enrol, minutes);
  event.by = who.person;
  return event;
}

/// Over the book as it stands.
inline Event sign_event(const Logbook& book, const PourId& pour, const Signer& who,
                        event::Role role, int minutes) {
  const auto head = got(book.head());
  event::Sign sign{.role = role, .verdict = "accepted", .comment = {}};
  sign.book = book.uuid();
  sign.number = static_cast<int>(head.seq);
  sign.hash = Hex{head.hash};
  sign.events = static_cast<int>(got(book.events(pour)).size());
  auto event = happening(sign, minutes);
  event.by = who.person;
  sign::sign_with(who.key, pour, event);
  return event;
}

inline Event signed_open_event(const std::string& pour) {
  auto line = open_line(pour);
  const std::string one = R"("role":"foreman"})";
  line.insert(line.find(one) + one.size(),
              R"(,{"id":"qi","name":"B. Inspector","role":"inspector"})");
  return event_of(line);
}

/// Ten events of pour N1: 1 opens, 2 and 3 enrol, 4 to 6 are notes, 7 closes, 8 and 9 sign, 10
/// strips.
inline void keep_signed_pour(Logbook& book) {
  const PourId pour{"N1"};
  const auto foreman = signer("fm", "204816"), inspector = signer("qi", "112358");
  int minute = 0;
  const auto keep = [&](const Event& event) {
    got(book.append(pour, event, entry_at(minute)));
    ++minute;
  };
  keep(signed_open_event("N1"));
  keep(enrol_event(foreman, minute));
  keep(enrol_event(inspector, minute, &foreman));
  for (int i = 0; i < 3; ++i) keep(note("truck " + std::to_string(i), minute));
  keep(happening(event::PourClose{}, minute));
  keep(sign_event(book, pour, foreman, event::Role::foreman, minute));
  keep(sign_event(book, pour, inspector, event::Role::inspector, minute));
  keep(happening(event::Strip{ElementId{"W1"}, Side::near_side}, minute));
}

}  // namespace rb::samples
