// Signing, as far as a session has to do with it: keys looked for on the reader's thread, what the
// desk makes kept as a tap is.
#include "app/session.h"
#include "app/signing/carried_keys.h"

namespace rb {

void Session::count_tries_in(const Path& file) {
  if (desk_) desk_ = std::make_unique<SignDesk>(file, [] {});
}

bool Session::sign(const screens::Intent& wish) {
  const bool looks = std::holds_alternative<screens::LookForKeys>(wish);
  const auto* sign = std::get_if<screens::SignPour>(&wish);
  const auto* enrol = std::get_if<screens::EnrolPerson>(&wish);
  const bool away = std::holds_alternative<screens::PutSigningAway>(wish);
  if (!looks && sign == nullptr && enrol == nullptr && !away) return false;
  if (!state_ || !desk_) return true;
  const Moment at = clock_().wall;
  if (looks) look_for_keys();
  if (sign != nullptr) desk_->begin(*sign, *state_, at);
  if (enrol != nullptr) desk_->begin(*enrol, *state_, at);
  if (away) desk_->put_away();
  return true;
}

void Session::look_for_keys() {
  // A copy of what carried_keys() asks of it: the state goes on being tapped.
  auto state = std::make_shared<PourState>();
  state->pour = state_->pour;
  state->plan = state_->plan;
  state->enrolments = state_->enrolments;
  reader_.ask([this, state](const Result<Logbook>& book) -> Reader::Delivery {
    auto keys = book ? carried_keys(*book, *state)
                     : Result<std::vector<event::Enrol>>(Failed{book.error()});
    return [this, pour = state->pour, keys = std::move(keys)] {
      if (!desk_ || !state_ || state_->pour != pour) return;
      // Without them a key is made anew: no reason to stop anybody.
      desk_->found(keys ? *keys : std::vector<event::Enrol>{});
    };
  });
}

void Session::hear_desk() {
  if (!desk_ || !desk_->busy()) return;
  BookNow book{{book_.uuid, {}}, waiting()};
  {
    const std::lock_guard lock(head_->mutex);
    book.book.head = head_->last;
  }
  // The writer tells its head a moment after it counts a tap as kept.
  if (book.book.head.seq != keeper_->status().kept)
    book.waiting = std::max<std::size_t>(book.waiting, 1);
  if (auto event = desk_->step(*state_, *report_, book, clock_().wall)) {
    const Happening what = event->what;
    desk_->kept(keep_as_it_is(std::move(*event)), what);
  }
}

}  // namespace rb
