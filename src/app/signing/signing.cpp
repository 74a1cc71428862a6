#include "app/signing/signing.h"

#include "pour/log/fold.h"
#include "sign/claim.h"

namespace rb {

namespace {

std::string listed(const std::vector<std::string>& keys) {
  constexpr std::size_t kTold = 5;
  std::string text;
  for (std::size_t i = 0; i < keys.size() && i < kTold; ++i) {
    text += (i == 0 ? "" : ", ") + keys[i];
  }
  return keys.size() > kTold ? text + ", ..." : text;
}

}  // namespace

Result<Event> make_enrolment(const PourState& state, const EnrolWish& wish, const sign::Pin& pin,
                             Moment now) {
  const auto key = sign::make_key(pin, wish.cost);
  if (!key) return Failed{key.error()};
  return make_enrolment(state, wish, *key, now);
}

Result<Event> make_enrolment(const PourState& state, const EnrolWish& wish,
                             const sign::SealedKey& key, Moment now) {
  event::Enrol enrol{.person = wish.person, .role = wish.role, .made = now};
  sign::put_key(key, enrol);
  if (wish.witness) sign::witness_with(wish.witness->key, wish.witness->person, enrol);
  Event event{.at = now, .by = wish.person, .what = std::move(enrol)};
  if (auto may = admissible(state, event); !may) return Failed{may.error()};
  return event;
}

Result<Event> make_signature(const PourState& state, const Review& review, const SignWish& wish,
                             const sign::PersonKey& key, const SignedBook& book, Moment now) {
  event::Sign sign{.role = wish.role, .verdict = wish.verdict, .comment = wish.comment};
  sign.book = book.uuid;
  sign.number = static_cast<int>(book.head.seq);
  sign.hash = Hex{book.head.hash};
  sign.events = static_cast<int>(state.log.size());
  sign.open = wish.open;
  if (const auto left = unnamed(review, sign); !left.empty()) {
    return fail(Error::Kind::refused, said("the signature"),
                {said("neither accepts nor names what was found: {findings}"),
                 {{"findings", listed(left)}}},
                said("Accept each, or sign with it named as open"));
  }
  Event event{.at = now, .by = wish.person, .what = std::move(sign)};
  sign::sign_with(key, state.pour, event);
  if (auto may = admissible(state, event); !may) return Failed{may.error()};
  return event;
}

}  // namespace rb
