// The touch screens, in a window.
#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <csignal>

#include <fcntl.h>
#include <unistd.h>

#include "app/battery.h"
#include "app/beside.h"
#include "app/clock_asker.h"
#include "app/commands.h"
#include "app/device.h"
#include "app/failure_window.h"
#include "app/last_book.h"
#include "app/local_time.h"
#include "app/look_beside.h"
#include "app/mirror_places.h"
#include "app/press_log.h"
#include "app/session.h"
#include "app/settings_file.h"
#include "app/sound.h"
#include "app/window.h"
#include "store/entry_now.h"

namespace rb {

namespace {

std::atomic<bool> g_stop{false};
constexpr Seconds kBatteryEvery{30};
constexpr Seconds kMoment{0.2};  // to wait for the disk before the user is asked
constexpr Seconds kLastTaps{5};  // to wait for it when the program ends

// Written before the screen says it: what stands there must be in the book whatever comes next.
std::function<void(const BookHead&)> tell_kept(const Path& path) {
  if (path.empty()) return {};
  const int file = open(path.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  return [file](const BookHead& head) {
    const auto line = fmt::format("kept {}\n", head.seq);
    if (write(file, line.data(), line.size()) < 0) std::perror("--tell-kept");
  };
}

// When the newest event of a book was entered; none where it has none or cannot be read.
std::optional<Moment> last_entry_of(const Path& path) {
  const auto book = Logbook::open(path, Access::read);
  if (!book) return std::nullopt;
  const auto head = book->head();
  if (!head || head->seq == 0) return std::nullopt;
  const auto event = book->event(head->seq);
  if (!event || !event->entry) return std::nullopt;
  return event->entry->wall;
}

void ask_to_stop(int) {
  g_stop = true;
}

// What stands against the book, before the first tap.
void tell_of_book(Session& session, const Path& book, const LastBook& before,
                  const std::optional<Error>& no_key) {
  if (auto lacking = note_trouble(book)) session.tell(std::move(*lacking));
  if (auto missing = missed_book(before, session.book())) session.tell(std::move(*missing));
  if (no_key && session.keeper() != nullptr) {
    session.tell({.text = to_text(*no_key), .word = screens::Word::key_none});
  }
}

// A book that is only read is followed by nothing.
void follow(Beside& beside, Session& session, const Path& book, const Path& settings) {
  if (session.keeper() == nullptr) return;
  session.on_second_copy = [&beside](const screens::Intent& wish) { beside.act(wish); };
  beside.begin(book, mirror_folder(settings),
               {.changed = app::wake_window,
                .chosen = [settings](const Path& folder) { keep_mirror_folder(settings, folder); },
                .roots = places_roots()});
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
  const std::chrono::minutes offset = system_utc_offset(entry_now().wall);
  const LastBook before = read_last_book(last_book_path());
  Beside beside;
  Keeper::Hooks hooks{.on_kept =
                          [tell = tell_kept(wish.tell_kept), &beside](const BookHead& head) {
                            if (tell) tell(head);
                            beside.kept(head);
                          },
                      .wake = app::wake_window};
  const Path settings_file = settings_path();
  screens::Settings settings = read_settings(settings_file);
  if (wish.diagonal_inches > 0) settings.diagonal_inches = wish.diagonal_inches;
  app::WindowSpec spec;
  spec.width = wish.width;
  spec.height = wish.height;
  spec.full_screen = wish.full_screen;
  std::signal(SIGINT, ask_to_stop);
  std::signal(SIGTERM, ask_to_stop);
  ClockAsker clock{program_made(), last_entry_of(book), offset};
  const auto key = store::DeviceKey::ready(data_folder());
  const auto open_book = [&] {
    return Session::open(book, entry_now, offset, hooks, key ? std::optional(*key) : std::nullopt);
  };
  auto session = open_book();
  while (!session) {
    const auto after = show_failure(session.error(), spec, settings, &g_stop);
    if (!after || *after == AfterFailure::leave) return report(session.error());
    session = open_book();
  }
  screens::Ui ui{settings};
  (*session)->held_by(settings.holder);
  tell_of_book(**session, book, before, key ? std::nullopt : std::optional(key.error()));
  write_last_book(last_book_path(), (*session)->book());
  (*session)->on_settings = [&](const screens::Settings& changed) {
    ui.set(changed);
    write_settings(settings_file, changed);
  };
  app::Program program;
  app::Sound sound;
  std::optional<screens::Battery> battery = read_battery();
  Moment battery_at = entry_now().wall;
  program.look = [&](Moment now) {
    if (between(battery_at, now) > kBatteryEvery || now < battery_at) {
      battery = read_battery();
      battery_at = now;
    }
    for (std::string& what : beside.take_told()) (*session)->tell({.text = std::move(what)});
    screens::World world = (*session)->look();
    world.mirror = beside.seen();
    world.battery = battery;
    world.sound_works = sound.works();
    ui.drafts().clock = clock.question(entry_now().wall);
    return world;
  };
  program.sound = [&](Weight weight) { sound.sound(weight); };
  program.act = [&](const screens::Intents& intents) {
    const auto is_right = [](const screens::Intent& intent) {
      return std::holds_alternative<screens::ClockIsRight>(intent);
    };
    if (std::any_of(intents.begin(), intents.end(), is_right)) {
      clock.answered(entry_now().wall);
      return true;  // no other target stands beside the question
    }
    return (*session)->act(intents);
  };
  program.may_leave = [&] { return !(*session)->would_lose() || (*session)->settle(kMoment); };
  app::PressLog presses{wish.log_presses};
  program.pressed = [&](const screens::Press& press) { presses.add(press); };
  program.stop = &g_stop;
  follow(beside, **session, book, settings_file);
  const auto shown = app::show(spec, ui, program);
  if (!shown) {
    beside.end();
    return report(shown.error());
  }
  write_last_book(last_book_path(), (*session)->book());
  // What is still on its way gets its time; a disk that does not answer is not waited for for ever.
  const bool settled = (*session)->settle(kLastTaps);
  beside.end();
  if (!settled && (*session)->waiting() > 0) {
    return report({Error::Kind::book, book.string(),
                   fmt::format("{} taps waited for the disk and are LOST", (*session)->waiting()),
                   "Enter them again"});
  }
  return Exit::fine;
}

}  // namespace rb
