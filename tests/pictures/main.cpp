// Makes pictures of every screen in every theme, language and size from a pour script, to be looked
// at: pictures SCRIPT FOLDER [--at RFC3339] [--only NAME] [--size WxH] [--units us]
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "pour/log/fold.h"
#include "pour/log/script.h"
#include "screens/book/showcase.h"
#include "tablet/picture.h"

using namespace rb;
using namespace rb::screens;

namespace {

struct Size {
  int width, height;
};

std::string option(int argc, char** argv, const std::string& name) {
  for (int i = 3; i + 1 < argc; ++i) {
    if (name == argv[i]) return argv[i + 1];
  }
  return {};
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) return 2;
  std::ifstream file(argv[1]);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  auto script = read_script(text, argv[1]);
  if (!script) {
    std::fprintf(stderr, "%s\n", to_text(script.error()).c_str());
    return 2;
  }
  std::vector<Event> events = script->events;
  Moment now = events.back().at;
  if (const auto at = parse_moment(option(argc, argv, "--at"))) now = *at;
  std::erase_if(events, [&](const Event& e) { return e.at > now; });
  // As if they had been tapped: entered at once, in the book's own numbering.
  for (std::size_t i = 0; i < events.size(); ++i) {
    if (events[i].id.empty()) events[i].id = EventId{std::to_string(i + 1)};
    events[i].entry = Entry{events[i].at, events[i].at.time_since_epoch(), "demo"};
  }
  const auto state = fold(events);
  if (!state) {
    std::fprintf(stderr, "%s\n", to_text(state.error()).c_str());
    return 2;
  }
  const CheckReport report = check(*state, AsOf::now(*state, now));
  std::vector<PourCard> pours{make_pour_card(*state)};
  for (int i = 1; i < 4; ++i) {
    PourCard card = pours.front();
    card.id = PourId{"past" + std::to_string(i)};
    card.name = "Core wall CW2, level " + std::to_string(14 - i) + " to " + std::to_string(15 - i);
    card.opened -= std::chrono::hours(24 * 6 * i);
    card.closed = card.opened + std::chrono::hours(6);
    card.placing.clear();
    card.rows_running = 0;
    pours.push_back(card);
  }
  const std::string only = option(argc, argv, "--only");
  const std::string size_only = option(argc, argv, "--size");
  const std::string look_only = option(argc, argv, "--look");
  for (const Size size : {Size{1280, 800}, Size{1920, 1200}, Size{1024, 768}, Size{800, 1280}}) {
    const std::string size_name = std::to_string(size.width) + "x" + std::to_string(size.height);
    if (!size_only.empty() && size_only != size_name) continue;
    for (const ThemeName theme : {ThemeName::sun, ThemeName::night}) {
      for (const Language language : Language::all()) {
        const std::string look = std::string(theme == ThemeName::sun ? "sun" : "night") + "-" +
                                 std::string{language.code()};
        if (!look_only.empty() && look_only != look) continue;
        Settings settings{.theme = theme, .language = language};
        if (option(argc, argv, "--units") == "us") settings.units = Units::us;
        Ui ui(settings);
        auto painter = app::OffscreenPainter::make(size.width, size.height);
        if (!painter) {
          std::fprintf(stderr, "%s\n", to_text(painter.error()).c_str());
          return 3;
        }
        for (const ShowcaseScreen& screen : showcase()) {
          if (!only.empty() && only != screen.name) continue;
          World world{.now = now, .pours = &pours};
          if (screen.of_pour) {
            world.state = &*state;
            world.report = &report;
          }
          ui.drafts() = screen.drafts(*state);
          ui.frame({.width_px = size.width, .height_px = size.height}, world);
          const auto to = std::filesystem::path(argv[2]) /
                          (std::string(screen.name) + "-" + size_name + "-" + look + ".png");
          const auto wrote = app::write_png((*painter)->paint(ui), to);
          if (!wrote) std::fprintf(stderr, "%s\n", to_text(wrote.error()).c_str());
        }
        painter->reset();
      }
    }
  }
  return 0;
}
