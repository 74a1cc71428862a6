// The touch screens, in a window.
#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <csignal>

#include <fcntl.h>
#include <unistd.h>

#include "app/beside.h"
#include "app/camera_folder.h"
#include "app/clock_asker.h"
#include "app/device.h"
#include "app/last_book.h"
#include "app/leaving.h"
#include "app/local_time.h"
#include "app/mirror_places.h"
#include "app/opening.h"
#include "app/photo_desk.h"
#include "app/session.h"
#include "app/settings_file.h"
#include "cli/commands.h"
#include "cli/look_beside.h"
#include "cli/write_day.h"
#include "pour/log/event_json.h"
#include "store/file/entry_now.h"
#include "tablet/battery.h"
#include "tablet/press_log.h"
#include "tablet/sound.h"
#include "tablet/window.h"

namespace rb {

namespace {

std::atomic<bool> g_stop{false};
constexpr Seconds kBatteryEvery{30};
constexpr Seconds kMoment{0.2};      // to wait for the disk before the user is asked
constexpr Seconds kLastTaps{15};     // for the disk to keep one more, when the program ends
constexpr Seconds kMostLeaving{15};  // for the last taps, note, mirror and closing the book

// Written before the screen says it: what stands there must be in the book whatever comes next.
std::function<void(const BookHead&)> tell_kept(const Path& path) {
  if (path.empty()) return {};
  const int file = open(path.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  return [file](const BookHead& head) {
    const auto line = fmt::format("kept {}\n", head.seq);
    if (write(file, line.data(), line.size()) < 0) std::perror("--tell-kept");
  };
}

void ask_to_stop(int) {
  g_stop = true;
}

// On a thread of its own, with a reader of its own.
Result<std::string> make_record(const Path& book, const screens::MakeRecord& wish,
                                const Path& folder) {
  const auto opened = Logbook::open(book, Access::read);
  if (!opened) return Failed{opened.error()};
  std::vector<Format> formats{Format::pdf};
  if (wish.all_forms) {
    formats.insert(formats.end(), {Format::xlsx, Format::csv, Format::json, Format::html});
  }
  const auto offset = wish.voice.utc_offset;
  const auto day = system_day(day_text(wish.day, offset)).value_or(plain_day(wish.day, offset));
  const auto written = write_day(*opened, day, folder, formats, wish.voice.language);
  if (!written) return Failed{written.error()};
  return written->files.front().string();
}

// What stands against the book, before the first tap.
std::vector<screens::Trouble> told_of(const Session& session, const Path& book,
                                      const LastBook& before, const std::optional<Error>& no_key) {
  std::vector<screens::Trouble> told;
  if (auto lacking = note_trouble(book)) told.push_back(std::move(*lacking));
  if (auto missing = missed_book(before, session.book())) told.push_back(std::move(*missing));
  if (no_key && session.keeper() != nullptr) {
    told.push_back({.text = to_text(*no_key), .word = screens::Word::key_none});
  }
  return told;
}

Exit report_lost(const Path& book, const Session* session) {
  const auto waiting = session != nullptr && session->keeper() != nullptr
                           ? session->keeper()->waiting()
                           : std::vector<Tapped>{};
  if (waiting.empty()) {
    return report(
        {Error::Kind::book, book.string(), "its disk does not answer", {}, BookTrouble::no_answer});
  }
  for (const Tapped& tap : waiting) {
    fmt::print(stderr, "not kept: pour {}: {}\n", tap.pour.text, to_line(tap.event));
  }
  return report({Error::Kind::book, book.string(),
                 fmt::format("{} of the last taps waited for the disk and are NOT KEPT: they are "
                             "printed above",
                             waiting.size()),
                 "Look whether they are in the book before you enter them again",
                 BookTrouble::no_answer});
}

/// The screens from the first frame to the last.
class Screens {
 public:
  explicit Screens(const ScreensWish& wish, Path book)
      : wish_(wish),
        book_(std::move(book)),
        offset_(system_utc_offset(entry_now().wall)),
        settings_file_(settings_path()),
        ui_(settings_of(wish, settings_file_)),
        presses_(wish.log_presses) {}

  Exit run();

 private:
  static screens::Settings settings_of(const ScreensWish& wish, const Path& file) {
    screens::Settings settings = read_settings(file);
    if (wish.diagonal_inches > 0) settings.diagonal_inches = wish.diagonal_inches;
    return settings;
  }
  void begin_opening();
  Result<Opening::Opened> open_book();
  void take_opened(Result<Opening::Opened> opened);
  void follow();
  screens::World look(Moment now);
  bool act(const screens::Intents& intents);
  void keep_photos();
  bool act_early(const screens::Intents& intents);
  void changed(const screens::Settings& settings);
  [[nodiscard]] app::Program program();
  void bound_leaving();
  Exit end();

  const ScreensWish& wish_;
  const Path book_;
  const std::chrono::minutes offset_;
  const Path settings_file_;
  screens::Ui ui_;
  app::PressLog presses_;
  app::Sound sound_;
  std::optional<screens::Battery> battery_ = read_battery();
  Moment battery_at_ = entry_now().wall;
  std::optional<ClockAsker> clock_;        ///< once the book is open
  std::optional<screens::Trouble> early_;  ///< told before the book is there
  std::optional<Error> failure_;           ///< why it could not be opened
  std::optional<Leaving> leaving_;
  Beside beside_;
  PhotoDesk photos_;
  std::unique_ptr<Session> session_;
  std::unique_ptr<Opening> opening_;
};

void Screens::begin_opening() {
  failure_.reset();
  opening_.reset();
  opening_ = std::make_unique<Opening>([this] { return open_book(); }, app::wake_window);
}

// On the opening's thread.
Result<Opening::Opened> Screens::open_book() {
  const LastBook before = read_last_book(last_book_path());
  const auto key = store::DeviceKey::ready(data_folder());
  Keeper::Hooks hooks{.on_kept =
                          [tell = tell_kept(wish_.tell_kept), this](const BookHead& head) {
                            if (tell) tell(head);
                            beside_.kept(head);
                          },
                      .wake = app::wake_window};
  auto session = Session::open(book_, entry_now, offset_, std::move(hooks),
                               key ? std::optional(*key) : std::nullopt);
  if (!session) return Failed{session.error()};
  auto told = told_of(**session, book_, before, key ? std::nullopt : std::optional(key.error()));
  write_last_book(last_book_path(), (*session)->book());
  return Opening::Opened{std::move(*session), std::move(told)};
}

void Screens::take_opened(Result<Opening::Opened> opened) {
  if (!opened) {
    failure_ = opened.error();
    return;
  }
  session_ = std::move(opened->session);
  for (screens::Trouble& one : opened->told) session_->tell(std::move(one));
  session_->held_by(ui_.settings().holder);
  session_->on_settings = [this](const screens::Settings& settings) { changed(settings); };
  clock_.emplace(program_made(), session_->last_entry(), offset_);
  follow();
}

// A book that is only read is followed by nothing.
void Screens::follow() {
  if (session_->keeper() == nullptr) return;
  session_->on_beside = [this](const screens::Intent& wish) {
    beside_.act(wish);
    if (const PourState* pour = session_->pour()) photos_.act(wish, pour->pour);
  };
  beside_.begin(
      book_, mirror_folder(settings_file_),
      {.changed = app::wake_window,
       .chosen = [this](const Path& folder) { keep_mirror_folder(settings_file_, folder); },
       .record = make_record,
       .roots = places_roots()});
  photos_.begin(book_, camera_folder(settings_file_), app::wake_window);
}

screens::World Screens::look(Moment now) {
  if (between(battery_at_, now) > kBatteryEvery || now < battery_at_) {
    battery_ = read_battery();
    battery_at_ = now;
  }
  if (!session_ && opening_) {
    if (auto opened = opening_->take()) take_opened(std::move(*opened));
  }
  ui_.drafts().failure.reset();
  if (failure_) {
    ui_.drafts().failure =
        screens::FailureDraft{failure_->trouble, failure_->where.text(), to_text(*failure_), false};
  }
  screens::World world{.now = now, .utc_offset = offset_, .opening = true, .trouble = early_};
  if (session_) {
    for (std::string& what : beside_.take_told()) session_->tell({.text = std::move(what)});
    keep_photos();
    world = session_->look();
    world.mirror = beside_.seen();
    world.photos = photos_.seen();
    ui_.drafts().clock = clock_->question(entry_now().wall);
  }
  world.battery = battery_;
  world.sound_works = sound_.works();
  world.leaving = g_stop;
  return world;
}

// What names a photo, once its file is on the disk.
void Screens::keep_photos() {
  const PourState* pour = session_->pour();
  if (pour == nullptr) return;
  screens::Intents kept;
  for (screens::KeepEvent& photo : photos_.taken(pour->pour)) kept.emplace_back(std::move(photo));
  if (!kept.empty()) (void)session_->act(kept);
}

// Before the book is there.
bool Screens::act_early(const screens::Intents& intents) {
  for (const screens::Intent& intent : intents) {
    if (const auto* change = std::get_if<screens::ChangeSettings>(&intent)) {
      changed(change->settings);
    } else if (std::holds_alternative<screens::OpenPour>(intent)) {
      early_ = screens::Trouble{.text = {}, .not_kept = true, .word = screens::Word::still_opening};
    } else if (std::holds_alternative<screens::PutTroubleAway>(intent)) {
      early_.reset();
    }
  }
  return true;
}

void Screens::changed(const screens::Settings& settings) {
  ui_.set(settings);
  write_settings(settings_file_, settings);
}

bool Screens::act(const screens::Intents& intents) {
  const auto any = [&]<class Kind>(const Kind&) {
    return std::any_of(intents.begin(), intents.end(), [](const screens::Intent& intent) {
      return std::holds_alternative<Kind>(intent);
    });
  };
  if (any(screens::TryAgain{})) {
    begin_opening();
    return true;
  }
  if (!session_) return act_early(intents) && !any(screens::Quit{});
  if (any(screens::ClockIsRight{})) {
    clock_->answered(entry_now().wall);
    return true;  // no other target stands beside the question
  }
  return session_->act(intents);
}

app::Program Screens::program() {
  app::Program made;
  made.look = [this](Moment now) { return look(now); };
  made.act = [this](const screens::Intents& intents) { return act(intents); };
  made.sound = [this](Severity severity) { sound_.sound(severity); };
  made.pressed = [this](const screens::Press& press) { presses_.add(press); };
  made.would_lose = [this] { return session_ ? session_->waiting() : 0; };
  made.may_leave = [this] {
    return !session_ || !session_->would_lose() || session_->settle(kMoment);
  };
  made.stop = &g_stop;
  made.patience = kLastTaps;
  return made;
}

// From here on nobody waits for a disk for ever.
void Screens::bound_leaving() {
  leaving_.emplace(kMostLeaving, [this] { return report_lost(book_, session_.get()); });
}

Exit Screens::run() {
  app::WindowSpec spec;
  spec.width = wish_.width;
  spec.height = wish_.height;
  spec.full_screen = wish_.full_screen;
  begin_opening();
  const auto shown = app::show(spec, ui_, program());
  if (!session_) bound_leaving();
  if (!shown) {
    // Without a display what ails the book is still told.
    if (opening_) take_opened(opening_->wait());
    beside_.end();
    return report(failure_ ? *failure_ : shown.error());
  }
  return end();
}

Exit Screens::end() {
  if (failure_) return report(*failure_);
  if (!session_) {  // left before it was open
    const auto late = opening_->take();
    return late && !*late ? report(late->error()) : Exit::fine;
  }
  // What is still on its way gets its time; a disk that does not answer is not waited for for ever.
  const Seconds patience = g_stop ? kMoment : kLastTaps;
  for (std::size_t left = session_->waiting(); !session_->settle(patience);) {
    const std::size_t now = session_->waiting();
    if (now > 0 && now >= left) leave_now(report_lost(book_, session_.get()));
    if (now == 0) break;  // something is still being read: nobody will look at it
    left = now;
  }
  bound_leaving();
  write_last_book(last_book_path(), session_->book());
  photos_.end();
  beside_.end();
  return Exit::fine;
}

}  // namespace

Exit run_screens(const ScreensWish& wish) {
  const auto own = wish.book.empty() ? default_book() : Result<Path>{wish.book};
  if (!own) return report(own.error());
  const Path& book = *own;
  if (!wish.book.empty() && !std::filesystem::exists(book) && book.extension() != ".risebook") {
    return report({Error::Kind::input, book.string(), "is neither a command nor a book",
                   "risebook --help lists the commands; a new book's name ends in .risebook"});
  }
  std::signal(SIGINT, ask_to_stop);
  std::signal(SIGTERM, ask_to_stop);
  std::signal(SIGHUP, ask_to_stop);
  return Screens(wish, book).run();
}

}  // namespace rb
