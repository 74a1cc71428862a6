#include "app/signing/sign_desk.h"

#include <algorithm>
#include <utility>

#include "app/signing/pin_tries.h"
#include "pour/log/fold.h"

namespace rb {

namespace {

using SigningState = screens::SigningSeen::State;

}  // namespace

SignDesk::SignDesk(Path tries, std::function<void()> changed)
    : tries_(std::move(tries)), changed_(std::move(changed)) {}

bool SignDesk::busy() const {
  return seen_.state == SigningState::trying || seen_.state == SigningState::waiting ||
         seen_.state == SigningState::keeping;
}

void SignDesk::found(std::vector<event::Enrol> keys) {
  carried_ = std::move(keys);
  seen_.looked = true;
  seen_.carried.clear();
  for (const event::Enrol& key : carried_) seen_.carried.push_back(key.person);
}

const event::Enrol* SignDesk::elsewhere(const PersonId& person) const {
  const auto known = std::find_if(carried_.begin(), carried_.end(),
                                  [&](const event::Enrol& key) { return key.person == person; });
  return known == carried_.end() ? nullptr : &*known;
}

void SignDesk::start(KeyWish wish) {
  wish.tries = tries_;
  seen_.state = SigningState::trying;
  seen_.why.reset();
  job_ = std::make_unique<KeyJob>(std::move(wish), changed_);
}

void SignDesk::refuse(const Error& why) {
  put_away();
  seen_.state = SigningState::refused;
  seen_.why = why;
}

void SignDesk::begin(const screens::SignPour& wish, const PourState& state, Moment now) {
  if (busy()) return;
  const EnrolState* own = enrolled(state, wish.person);
  const event::Enrol* key = own != nullptr ? &own->what : elsewhere(wish.person);
  if (key == nullptr) {
    return refuse({Error::Kind::refused, wish.person.text, said("has no key in this pour"),
                   said("Enrol first")});
  }
  sign_ = wish;
  sign_->pin.wipe();
  start({.own = *key, .pin = wish.pin, .now = now});
}

void SignDesk::begin(const screens::EnrolPerson& wish, const PourState& state, Moment now) {
  if (busy()) return;
  std::optional<event::Enrol> witness;
  if (!wish.witness.empty()) {
    const EnrolState* theirs = enrolled(state, wish.witness);
    if (theirs == nullptr) {
      return refuse({Error::Kind::refused, wish.witness.text, said("has no key in this pour"),
                     said("Enrol first")});
    }
    witness = theirs->what;
  }
  enrol_ = wish;
  enrol_->pin.wipe();
  enrol_->witness_pin.wipe();
  start({.own = {},
         .pin = wish.pin,
         .witness = std::move(witness),
         .witness_pin = wish.witness_pin,
         .now = now});
}

void SignDesk::put_away() {
  sign_.reset();
  enrol_.reset();
  key_.reset();
  job_.reset();
  seen_.state = SigningState::idle;
  seen_.why.reset();
}

void SignDesk::forget() {
  put_away();
  carried_.clear();
  seen_ = {};
}

// Behind the PIN: the enrolment that was asked for, or that of a key carried from another pour.
Result<Event> SignDesk::event_of(KeysReady keys, const PourState& state, Moment now) {
  if (enrol_) {
    EnrolWish wish{.person = enrol_->person, .role = enrol_->role};
    if (keys.witness) wish.witness = Witness{enrol_->witness, std::move(*keys.witness)};
    return make_enrolment(state, wish, *keys.made, now);
  }
  Event event{.at = now, .by = sign_->person, .what = *elsewhere(sign_->person)};
  if (auto may = admissible(state, event); !may) return Failed{may.error()};
  return event;
}

std::optional<Event> SignDesk::step(const PourState& state, const CheckReport& report,
                                    const BookNow& book, Moment now) {
  // Made is what stands on the disk, and nothing before.
  if (seen_.state == SigningState::keeping && book.waiting == 0) {
    put_away();
    seen_.state = SigningState::made;
    return std::nullopt;
  }
  if (job_) {
    auto came = job_->take();
    if (!came) return std::nullopt;
    job_.reset();
    if (!*came) {
      refuse(came->error());
      return std::nullopt;
    }
    const bool enrols = enrol_ || enrolled(state, sign_->person) == nullptr;
    if (sign_) key_ = (*came)->own;
    seen_.state = SigningState::waiting;
    if (enrols) {
      auto event = event_of(std::move(**came), state, now);
      if (event) return *std::move(event);
      refuse(event.error());
      return std::nullopt;
    }
  }
  if (!sign_ || !key_ || seen_.state != SigningState::waiting || book.waiting > 0)
    return std::nullopt;
  const SignWish wish{sign_->person, sign_->role, sign_->verdict, sign_->comment, sign_->open};
  auto event = make_signature(state, review_of(state, report), wish, *key_, book.book, now);
  if (!event) {
    refuse(event.error());
    return std::nullopt;
  }
  return *std::move(event);
}

void SignDesk::kept(const Result<void>& done, const Happening& what) {
  if (!done) return refuse(done.error());
  // A key carried over is kept before what it signs.
  if (sign_ && std::holds_alternative<event::Enrol>(what)) return;
  put_away();
  seen_.state = SigningState::keeping;
}

}  // namespace rb
