// Enrolling and signing: the events a PIN makes, to be kept as any other. A signature proves that
// whoever made it knew this PIN on a tablet with this book.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "check/review.h"
#include "sign/person_key.h"
#include "store/book/logbook.h"

namespace rb {

struct Witness {
  PersonId person;
  sign::PersonKey key;
};

struct EnrolWish {
  PersonId person;
  std::optional<event::Role> role{};
  std::optional<Witness> witness{};
  sign::PinCost cost{};
};

/// A new key for a person, made by the person. An error where the pour does not take it (somebody
/// of another role who has a key must witness it). Takes as long as Argon2id does.
Result<Event> make_enrolment(const PourState& state, const EnrolWish& wish, const sign::Pin& pin,
                             Moment now);
/// The same with a key made already: at once.
Result<Event> make_enrolment(const PourState& state, const EnrolWish& wish,
                             const sign::SealedKey& key, Moment now);

struct SignWish {
  PersonId person;
  event::Role role = event::Role::foreman;
  std::string verdict, comment;
  std::vector<std::string> open;  ///< what is signed in spite of: keys of groups of findings
};

/// The book a pour is signed in, as it stands: nothing may wait for the disk.
struct SignedBook {
  std::string uuid;
  BookHead head;
};

/// A signature over the book as it stands. An error where the pour does not take it, or where
/// findings are neither accepted nor named.
Result<Event> make_signature(const PourState& state, const Review& review, const SignWish& wish,
                             const sign::PersonKey& key, const SignedBook& book, Moment now);

}  // namespace rb
