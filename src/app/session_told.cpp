// What a session tells of the book besides its pours: how taps stand with the disk, and its head;
// and waiting until all is kept and read.
#include "app/session.h"
#include "base/short_code.h"

namespace rb {

namespace {

Seconds steady_now() {
  return std::chrono::steady_clock::now().time_since_epoch();
}

}  // namespace

void Session::Head::set(const Result<BookHead>& head) {
  const std::lock_guard lock(mutex);
  if (head) last = *head;
}

void Session::hear_look() {
  if (!rest_look_) return;
  const auto found = rest_look_->take();
  if (!found || found->empty()) return;
  tell({.text = found->front(), .word = screens::Word::look_found, .number = found->size()});
}

screens::Keeping Session::keeping() const {
  using State = screens::Keeping::State;
  screens::Keeping out;
  if (!keeper_) {
    out.state = State::read_only;
    if (reading_only_) {
      out.why = reading_only_->what.text() + ".";
      out.trouble = reading_only_->trouble;
    }
    return out;
  }
  const KeeperStatus status = keeper_->status();
  switch (status.state) {
    case KeepState::kept:
      out.state = State::kept;
      break;
    case KeepState::keeping:
      out.state = State::keeping;
      break;
    case KeepState::waiting:
      out.state = State::waiting;
      break;
    case KeepState::moved_away:
      out.state = State::moved_away;
      break;
  }
  out.waiting = status.waiting;
  if (state_ && status.waiting > 0) out.here = keeper_->waiting_of(state_->pour);
  if (status.oldest) out.since = after(*status.oldest, -stepped());
  if (status.why) {
    out.why = status.why->what.text() + ".";
    out.trouble = status.why->trouble;
  }
  return out;
}

std::optional<screens::HeadSeen> Session::head() const {
  const std::lock_guard lock(head_->mutex);
  if (head_->last.seq == 0) return std::nullopt;
  return screens::HeadSeen{head_->last.seq, short_code(head_->last.hash)};
}

void Session::leave_pour() {
  trouble_.reset();
  state_.reset();
  report_.reset();
  ++asked_;
  going_.reset();
  ask_list(wanted_);
}

bool Session::would_lose() const {
  return keeper_ && keeper_->status().waiting > 0;
}

std::size_t Session::waiting() const {
  return keeper_ ? keeper_->status().waiting : 0;
}

bool Session::settle(Seconds at_most) {
  const Seconds until = steady_now() + at_most;
  for (;;) {
    const auto left = [&] { return std::max(until - steady_now(), Seconds{0}); };
    const bool kept = !keeper_ || keeper_->settle(left());
    const bool read = reader_.settle(left());
    reader_.deliver();
    hear_keeper();
    const bool idle = !going_ && !opening_ && !list_.part.coming;
    if (kept && read && idle && waiting() == 0) return true;
    if (steady_now() >= until) return false;
  }
}

LastBook Session::book() const {
  LastBook now = book_;
  if (keeper_) now.events = keeper_->status().kept;
  return now;
}

}  // namespace rb
