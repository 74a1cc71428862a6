#include "app/session.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "app/book_pours.h"
#include "app/signing/pin_tries.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/planner/plan_draft.h"

namespace rb {

namespace {

// Findings that come with time alone (a knit deadline passed) show within this.
constexpr Seconds kRecheck{5};
// Entries up to this far ahead of the clock are taken for the wobble of clocks.
constexpr Seconds kClockBehind{60};

// A name no pour of the book has.
Result<PourId> free_name(const Logbook& book, const screens::OpenPour& wish, const std::string& day,
                         std::vector<PourId> taken) {
  for (;;) {
    PourId id = new_pour_id(wish.plan->name, day, taken);
    const auto mark = book.mark(id);
    if (!mark) return Failed{mark.error()};
    if (!*mark) return id;
    taken.push_back(std::move(id));
  }
}

}  // namespace

/// A pour read and checked on the reader's thread.
struct Session::Arrival {
  int renumbered = 0;     ///< of the keeper, before it was read
  std::size_t whole = 0;  ///< events
  screens::DamageSeen damage{};
  std::optional<PourState> state{};  ///< none where the event that opens it is damaged
  CheckReport report{};
  CheckMemory memory{};
};

Session::Session(std::filesystem::path book, ClockFn clock, std::chrono::minutes utc_offset,
                 std::function<void()> wake)
    : clock_(std::move(clock)),
      utc_offset_(utc_offset),
      head_(std::make_shared<Head>()),
      lists_(std::make_shared<PourList>(utc_offset)),
      reader_(std::move(book), std::move(wake)) {}

Session::~Session() = default;

namespace {

std::optional<Moment> last_entry_of(const Logbook& book) {
  const auto head = book.head();
  if (!head || head->seq == 0) return std::nullopt;
  const auto event = book.event(head->seq);
  return event && event->entry ? std::optional(event->entry->wall) : std::nullopt;
}

}  // namespace

Result<std::unique_ptr<Session>> Session::open(const std::filesystem::path& book, ClockFn clock,
                                               std::chrono::minutes utc_offset, Keeper::Hooks hooks,
                                               std::optional<store::DeviceKey> key) {
  auto opened = Logbook::open_or_create(book);
  std::unique_ptr<Session> session{new Session(book, std::move(clock), utc_offset, hooks.wake)};
  if (opened) {
    session->head_->set(opened->head());
    session->last_entry_ = last_entry_of(*opened);
  }
  const auto wake = hooks.wake;
  hooks.on_kept = [head = session->head_, told = std::move(hooks.on_kept)](const BookHead& kept) {
    head->set(kept);
    if (told) told(kept);
  };
  if (opened && !opened->writable()) {
    const auto head = opened->head();
    session->book_ = {opened->file(), opened->uuid(), head ? head->seq : 0};
    session->reading_only_ = opened->read_only_reason().value_or(
        Error{Error::Kind::book, book.string(), said("the book is open for reading only"), {}});
  } else if (opened) {
    session->book_ = {opened->file(), opened->uuid(), 0};
    if (key) (void)opened->sign_with(*key);  // unsigned is told by verify
    auto keeper = Keeper::start(std::move(*opened), std::move(hooks));
    if (!keeper) return Failed{keeper.error()};
    session->keeper_ = std::move(*keeper);
    session->kept_ = session->keeper_->status().kept;
    session->rest_look_ = std::make_unique<store::RestLook>(book, wake);
    session->desk_ = std::make_unique<SignDesk>(pin_tries_path(), wake);
  } else if (const auto reading = Logbook::open(book, Access::read)) {
    const auto head = reading->head();
    session->head_->set(head);
    session->last_entry_ = last_entry_of(*reading);
    session->book_ = {reading->file(), reading->uuid(), head ? head->seq : 0};
    session->reading_only_ = opened.error();
  } else {
    return Failed{opened.error()};
  }
  session->begin();
  return session;
}

// The open pour that came last is where the tablet was.
void Session::begin() {
  asked_list_ = asked_ = 1;
  list_.part.coming = true;
  reader_.ask([this, lists = lists_](const Result<Logbook>& book) -> Reader::Delivery {
    auto part =
        book ? lists->part(*book, {.count = 1}, false) : Result<ListPart>(Failed{book.error()});
    return [this, part = std::move(part)] {
      list_.part.coming = false;
      if (!part) return fail_with(part.error(), false);
      list_ = *part;
      if (asked_ != 1) return;
      if (list_.cards.empty() || list_.cards.front().closed) return ask_list(wanted_);
      go_to(list_.cards.front().id);
      beginning_ = true;
    };
  });
}

void Session::fail_with(const Error& error, bool not_kept) {
  trouble_ = screens::Trouble{.text = to_text(error), .not_kept = not_kept, .error = error};
}

void Session::refuse_reading() {
  trouble_ = screens::Trouble{
      .text = to_text(*reading_only_), .not_kept = true, .word = screens::Word::keep_refused};
}

void Session::ask_list(const ListWish& wish) {
  wanted_ = wish;
  list_.part.coming = true;
  // The marks at once; what is read of the pours themselves after them.
  ++asked_list_;
  for (const bool folded : {false, true}) {
    reader_.ask([this, lists = lists_, wish, folded,
                 mine = asked_list_](const Result<Logbook>& book) -> Reader::Delivery {
      auto part = book ? lists->part(*book, wish, folded) : Result<ListPart>(Failed{book.error()});
      return [this, mine, part = std::move(part)] {
        if (mine != asked_list_) return;
        list_.part.coming = false;
        if (!part) return fail_with(part.error(), false);
        list_ = *part;
      };
    });
  }
}

void Session::go_to(const PourId& pour) {
  trouble_.reset();
  beginning_ = false;
  going_ = pour;
  reader_.ask([this, pour, mine = ++asked_, tapped = tapped_,
               renumbered = keeper_ ? keeper_->status().renumbered : 0,
               waiting = keeper_ ? keeper_->waiting() : std::vector<Tapped>{},
               now = clock_().wall](const Result<Logbook>& book) -> Reader::Delivery {
    auto read = book ? read_pour(*book, pour, waiting) : Result<ReadPour>(Failed{book.error()});
    auto arrived = std::make_shared<Result<Arrival>>(Failed{Error{}});
    if (!read) {
      *arrived = Failed{read.error()};
    } else {
      Arrival arrival{.renumbered = renumbered, .whole = read->whole, .damage = damage_seen(*read)};
      arrival.state = std::move(read->state);
      if (arrival.state) {
        arrival.report = check(*arrival.state, AsOf::now(*arrival.state, now), arrival.memory);
      }
      *arrived = std::move(arrival);
    }
    return [this, pour, mine, tapped, arrived] {
      if (mine == asked_) arrive(pour, std::move(*arrived), tapped);
    };
  });
}

void Session::arrive(const PourId& pour, Result<Arrival> arrived, std::size_t tapped) {
  going_.reset();
  const bool beginning = std::exchange(beginning_, false);
  if (!arrived) return fail_with(arrived.error(), false);
  if (!arrived->state) {
    trouble_ = screens::Trouble{
        .text = {}, .word = screens::Word::damaged_opening, .number = arrived->whole};
    if (beginning) ask_list(wanted_);
    return;
  }
  // Its mark did not know that it is closed: the list stays.
  if (beginning && arrived->state->closed) return ask_list(wanted_);
  // Taps made while it was read are not in it.
  if (tapped != tapped_) return go_to(pour);
  memory_ = std::move(arrived->memory);
  renumbered_ = arrived->renumbered;
  const bool news = !state_ || state_->pour != pour || damage_ != arrived->damage;
  shown(std::move(*arrived->state));
  damage_ = std::move(arrived->damage);
  if (news && damage_.events > 0 && keeper_) {
    tell({.text = {}, .word = screens::Word::damaged_judged, .number = damage_.events});
  }
  report_ = std::move(arrived->report);
  checked_at_ = now();
}

void Session::shown(PourState state) {
  if (desk_ && (!state_ || state_->pour != state.pour)) desk_->forget();
  state_ = std::move(state);
  damage_ = {};
  report_.reset();
  // A clock set back since then would put every tap before what was tapped already.
  const Seconds behind = state_->last - state_->clock(now());
  if (!state_->closed && behind > kClockBehind && !trouble_) {
    trouble_ = screens::Trouble{
        .text =
            fmt::format("The tablet's clock is {:.0f} min before the last entry of this pour ({} "
                        "UTC). Set the clock before you log anything.",
                        behind.count() / 60, to_text(state_->moment(state_->last)))};
  }
}

Seconds Session::stepped() const {
  if (!state_) return Seconds{};
  const Entry now = clock_();
  for (EventRef ref = state_->log.size(); ref-- > 0;) {
    const LogEntry& past = std::as_const(state_->log)[ref];
    const auto& entry = past.event.entry;
    if (!entry || entry->boot != now.boot) continue;
    const Seconds before = past.event.at - past.when;
    return before + (between(entry->wall, now.wall) - (now.steady - entry->steady));
  }
  return Seconds{};
}

Moment Session::now() const {
  return after(clock_().wall, -stepped());
}

void Session::hear_keeper() {
  if (!keeper_) return;
  const auto kept = keeper_->status().kept;
  if (kept != kept_ && !state_ && !list_.part.coming) ask_list(wanted_);
  kept_ = kept;
  for (const RefusedTap& refused : keeper_->take_refused()) {
    fail_with(refused.why, true);
    if (desk_) desk_->put_away();  // what it waited for may be this one, or is signed for
    ++tapped_;
    // What stands on the screen counts it, and ids behind it have changed.
    if (state_) {
      const auto told = trouble_;
      go_to(state_->pour);
      trouble_ = told;
    }
  }
}

void Session::recheck() {
  const Moment at = now();
  if (report_ && between(checked_at_, at) < kRecheck && at >= checked_at_) return;
  report_ = check(*state_, AsOf::now(*state_, at), memory_);
  checked_at_ = at;
}

screens::World Session::look() {
  reader_.deliver();
  hear_keeper();
  hear_look();
  screens::World world;
  world.now = now();
  world.utc_offset = utc_offset_;
  world.pours = &list_.cards;
  world.part = list_.part;
  world.opening = going_.has_value() || opening_;
  world.keeping = keeping();
  world.head = head();
  world.trouble = trouble_;
  if (!trouble_ && !told_.empty()) world.trouble = told_.front();
  if (state_) {
    recheck();
    hear_desk();
    if (!report_) recheck();
    if (desk_) world.signing = desk_->seen();
    world.state = &*state_;
    world.report = &*report_;
    world.damage = damage_;
  }
  return world;
}

PersonId Session::holder() const {
  const Person* person = screens::holder_of(*state_->plan, holder_);
  return person == nullptr ? PersonId{"foreman"} : person->id;
}

void Session::keep(const screens::KeepEvent& wish) {
  if (!state_) return;
  if (!keeper_) return refuse_reading();
  Event event;
  event.what = wish.what;
  event.by = holder();
  event.at = wish.at;  // by the wall clock, as its entry is: fold() takes steps out of both
  event.uncertain = wish.uncertain;
  if (const auto done = keep_as_it_is(std::move(event)); !done)
    return fail_with(done.error(), true);
  trouble_.reset();
}

Result<void> Session::keep_as_it_is(Event event) {
  if (auto may = admissible(*state_, event); !may) return may;
  rest_look_->tapped();
  const auto kept = keeper_->keep(state_->pour, std::move(event), clock_(), renumbered_);
  if (!kept) return Failed{kept.error()};
  ++tapped_;
  extend(*state_, *kept);
  report_.reset();
  return {};
}

// A name of its own: the book is asked which are taken.
void Session::open_pour(const screens::OpenPour& wish) {
  if (!keeper_) return refuse_reading();
  if (opening_) return;
  opening_ = true;
  std::vector<PourId> taken;
  for (const Tapped& tap : keeper_->waiting()) taken.push_back(tap.pour);
  reader_.ask([this, wish, taken, day = day_text(wish.at, utc_offset_)](
                  const Result<Logbook>& book) -> Reader::Delivery {
    const auto id =
        book ? free_name(*book, wish, day, taken) : Result<PourId>(Failed{book.error()});
    return [this, wish, id] {
      opening_ = false;
      if (!id) return fail_with(id.error(), true);
      open_pour_as(wish, *id);
    };
  });
}

void Session::open_pour_as(const screens::OpenPour& wish, const PourId& id) {
  Event event;
  event.at = wish.at;
  const auto foreman = std::find_if(wish.plan->people.begin(), wish.plan->people.end(),
                                    [](const Person& p) { return p.role == "foreman"; });
  event.by = foreman == wish.plan->people.end() ? PersonId{"foreman"} : foreman->id;
  event.what = event::PourOpen{id, wish.plan};
  rest_look_->tapped();
  renumbered_ = keeper_->status().renumbered;
  const auto kept = keeper_->keep(id, std::move(event), clock_());
  if (!kept) return fail_with(kept.error(), true);
  trouble_.reset();
  ++asked_;  // whatever was being read is not wanted any more
  going_.reset();
  ++tapped_;
  auto state = fold(std::span{&*kept, 1});
  if (!state) return fail_with(state.error(), true);
  shown(std::move(*state));
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
    } else if (const auto* part = std::get_if<screens::ShowPours>(&intent)) {
      ask_list({part->find, part->first, part->count});
    } else if (std::holds_alternative<screens::LeavePour>(intent)) {
      leave_pour();
    } else if (const auto* change = std::get_if<screens::ChangeSettings>(&intent)) {
      holder_ = change->settings.holder;
      if (on_settings) on_settings(change->settings);
    } else if (std::holds_alternative<screens::PutTroubleAway>(intent)) {
      if (!trouble_ && !told_.empty()) told_.pop_front();
      trouble_.reset();
    } else if (screens::wants_beside(intent)) {
      if (on_beside) on_beside(intent);
    } else if (!sign(intent)) {
      stay = false;
    }
  }
  return stay;
}

}  // namespace rb
