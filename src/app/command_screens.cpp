// The touch screens, in a window.
#include <atomic>
#include <csignal>

#include "app/battery.h"
#include "app/commands.h"
#include "app/local_time.h"
#include "app/session.h"
#include "app/settings_file.h"
#include "app/sound.h"
#include "app/window.h"
#include "store/entry_now.h"

namespace rb {

namespace {

std::atomic<bool> g_stop{false};
constexpr Seconds kBatteryEvery{30};

void ask_to_stop(int) {
  g_stop = true;
}

}  // namespace

Exit run_screens(const ScreensWish& wish) {
  const Path book = wish.book.empty() ? default_book() : wish.book;
  if (!wish.book.empty() && !std::filesystem::exists(book) && book.extension() != ".risebook") {
    return report({Error::Kind::input, book.string(), "is neither a command nor a book",
                   "risebook --help lists the commands; a new book's name ends in .risebook"});
  }
  const std::chrono::minutes offset = system_utc_offset(entry_now().wall);
  auto session = Session::open(book, entry_now, offset);
  if (!session) return report(session.error());
  const Path settings_file = settings_path();
  screens::Settings settings = read_settings(settings_file);
  if (wish.diagonal_inches > 0) settings.diagonal_inches = wish.diagonal_inches;
  screens::Ui ui{settings};
  (*session)->held_by(settings.holder);
  (*session)->on_settings = [&](const screens::Settings& changed) {
    ui.set(changed);
    write_settings(settings_file, changed);
  };
  std::signal(SIGINT, ask_to_stop);
  std::signal(SIGTERM, ask_to_stop);
  app::Program program;
  app::Sound sound;
  std::optional<screens::Battery> battery = read_battery();
  Moment battery_at = entry_now().wall;
  program.look = [&](Moment now) {
    if (between(battery_at, now) > kBatteryEvery || now < battery_at) {
      battery = read_battery();
      battery_at = now;
    }
    screens::World world = (*session)->look();
    world.battery = battery;
    world.sound_works = sound.works();
    return world;
  };
  program.sound = [&](Weight weight) { sound.sound(weight); };
  program.act = [&](const screens::Intents& intents) { return (*session)->act(intents); };
  program.stop = &g_stop;
  app::WindowSpec spec;
  spec.width = wish.width;
  spec.height = wish.height;
  spec.full_screen = wish.full_screen;
  const auto shown = app::show(spec, ui, program);
  if (!shown) return report(shown.error());
  return Exit::fine;
}

}  // namespace rb
