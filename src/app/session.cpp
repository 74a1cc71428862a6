#include "app/session.h"

#include <fmt/format.h>

#include <algorithm>

#include "pour/fold.h"
#include "pour/plan_draft.h"

namespace rb {

namespace {

// Findings that come with time alone (a knit deadline passed) show within this.
constexpr Seconds kRecheck{5};
// Entries up to this far ahead of the clock are taken for the wobble of clocks.
constexpr Seconds kClockBehind{60};

}  // namespace

Session::Session(Logbook book, ClockFn clock, std::chrono::minutes utc_offset)
    : book_(std::move(book)), clock_(std::move(clock)), utc_offset_(utc_offset) {}

Result<std::unique_ptr<Session>> Session::open(const std::filesystem::path& book, ClockFn clock,
                                               std::chrono::minutes utc_offset) {
  auto opened = Logbook::open_or_create(book);
  if (!opened) return Failed{opened.error()};
  std::unique_ptr<Session> session{new Session(std::move(*opened), std::move(clock), utc_offset)};
  session->load_cards();
  // The cards are ordered open pours first, the latest first: that is where the tablet was.
  if (!session->cards_.empty() && !session->cards_.front().closed) {
    session->go_to(session->cards_.front().id);
  }
  return session;
}

void Session::load_cards() {
  cards_.clear();
  const auto pours = book_.pours();
  if (!pours) {
    trouble_ = screens::Trouble{to_text(pours.error()), false};
    return;
  }
  for (const PourSummary& summary : *pours) {
    const auto events = book_.events(summary.pour);
    if (!events) {
      trouble_ = screens::Trouble{to_text(events.error()), false};
      continue;
    }
    if (const auto state = fold(*events)) cards_.push_back(screens::make_pour_card(*state));
  }
  screens::order_cards(cards_);
}

void Session::go_to(const PourId& pour) {
  trouble_.reset();
  const auto events = book_.events(pour);
  if (!events) {
    trouble_ = screens::Trouble{to_text(events.error()), false};
    return;
  }
  auto state = fold(*events);
  if (!state) {
    trouble_ = screens::Trouble{to_text(state.error()), false};
    return;
  }
  state_ = std::move(*state);
  report_.reset();
  // A clock set back since then would put every tap before what was tapped already.
  const Seconds behind = state_->last - state_->clock(now());
  if (!state_->closed && behind > kClockBehind) {
    trouble_ = screens::Trouble{
        fmt::format("The tablet's clock is {:.0f} min before the last entry of this pour ({} UTC). "
                    "Set the clock before you log anything.",
                    behind.count() / 60, to_text(state_->moment(state_->last))),
        false};
  }
}

Seconds Session::stepped() const {
  if (!state_) return Seconds{};
  const Entry now = clock_();
  for (auto past = state_->log.rbegin(); past != state_->log.rend(); ++past) {
    const auto& entry = past->event.entry;
    if (!entry || entry->boot != now.boot) continue;
    const Seconds before = past->event.at - past->when;
    return before + (between(entry->wall, now.wall) - (now.steady - entry->steady));
  }
  return Seconds{};
}

Moment Session::now() const {
  return after(clock_().wall, -stepped());
}

screens::World Session::look() {
  screens::World world;
  world.now = now();
  world.utc_offset = utc_offset_;
  world.pours = &cards_;
  world.trouble = trouble_;
  if (state_) {
    if (!report_ || between(checked_at_, world.now) >= kRecheck || world.now < checked_at_) {
      report_ = check(*state_, AsOf::now(*state_, world.now), memory_);
      checked_at_ = world.now;
    }
    world.state = &*state_;
    world.report = &*report_;
  }
  return world;
}

PersonId Session::holder() const {
  const Person* person = screens::holder_of(*state_->plan, holder_);
  return person == nullptr ? PersonId{"foreman"} : person->id;
}

void Session::keep(const screens::KeepEvent& wish) {
  if (!state_) return;
  Event event;
  event.what = wish.what;
  event.by = holder();
  event.at = wish.at;  // by the wall clock, as its entry is: fold() takes steps out of both
  if (const auto may = admissible(*state_, event); !may) {
    trouble_ = screens::Trouble{to_text(may.error()), true};
    return;
  }
  const auto kept = book_.append(state_->pour, std::move(event), clock_());
  if (!kept) {
    trouble_ = screens::Trouble{to_text(kept.error()), true};
    return;
  }
  extend(*state_, *kept);
  report_.reset();
  trouble_.reset();
}

void Session::open_pour(const screens::OpenPour& wish) {
  const auto pours = book_.pours();
  if (!pours) {
    trouble_ = screens::Trouble{to_text(pours.error()), true};
    return;
  }
  std::vector<PourId> taken;
  for (const PourSummary& summary : *pours) taken.push_back(summary.pour);
  Event event;
  event.at = wish.at;
  const auto foreman = std::find_if(wish.plan->people.begin(), wish.plan->people.end(),
                                    [](const Person& p) { return p.role == "foreman"; });
  event.by = foreman == wish.plan->people.end() ? PersonId{"foreman"} : foreman->id;
  const PourId id = new_pour_id(wish.plan->name, day_text(wish.at, utc_offset_), taken);
  event.what = event::PourOpen{id, wish.plan};
  const auto kept = book_.append(id, std::move(event), clock_());
  if (!kept) {
    trouble_ = screens::Trouble{to_text(kept.error()), true};
    return;
  }
  trouble_.reset();
  go_to(id);
}

bool Session::act(const screens::Intents& intents) {
  bool stay = true;
  for (const screens::Intent& intent : intents) {
    if (const auto* wish = std::get_if<screens::KeepEvent>(&intent)) {
      keep(*wish);
    } else if (const auto* to = std::get_if<screens::GoToPour>(&intent)) {
      go_to(to->pour);
    } else if (const auto* fresh = std::get_if<screens::OpenPour>(&intent)) {
      open_pour(*fresh);
    } else if (std::holds_alternative<screens::LeavePour>(intent)) {
      trouble_.reset();
      state_.reset();
      report_.reset();
      load_cards();
    } else if (const auto* change = std::get_if<screens::ChangeSettings>(&intent)) {
      holder_ = change->settings.holder;
      if (on_settings) on_settings(change->settings);
    } else if (std::holds_alternative<screens::PutTroubleAway>(intent)) {
      trouble_.reset();
    } else {
      stay = false;
    }
  }
  return stay;
}

}  // namespace rb
