// A screen drawn into a file, with no window and no display.
#include <fmt/format.h>

#include "app/book_pours.h"
#include "app/local_time.h"
#include "app/pour_list.h"
#include "cli/commands.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "screens/book/showcase.h"
#include "tablet/picture.h"

namespace rb {

namespace {

// Fonts, layout and popups have settled after this many frames.
constexpr int kSettle = 6;

std::string known_screens() {
  std::string names;
  for (const auto& screen : screens::showcase()) {
    names += (names.empty() ? "" : ", ") + std::string{screen.name};
  }
  return names;
}

// The beginning of the list: no screen shows more at once.
constexpr std::size_t kCards = 24;

Result<std::vector<screens::PourCard>> first_cards(const Logbook& book) {
  const auto page = book.pours(PourQuery{.count = kCards});
  if (!page) return Failed{page.error()};
  std::vector<screens::PourCard> cards;
  for (const PourMark& mark : page->pours) {
    const auto read = read_pour(book, mark.pour);
    if (!read) return Failed{read.error()};
    cards.push_back(card_of(*read, mark));
  }
  screens::order_cards(cards);
  return cards;
}

// The pour named, or the one that came into the book last.
Result<ReadPour> shown_pour(const Logbook& book, const std::string& named) {
  const auto pours = chosen_pours(book, named.empty() ? std::nullopt : std::optional(named));
  if (!pours) return Failed{pours.error()};
  if (pours->empty()) {
    return fail(Error::Kind::input, book.file().string(), said("holds no pour yet"));
  }
  return read_pour(book, pours->back());
}

}  // namespace

Exit run_picture(const PictureWish& wish) {
  const screens::ShowcaseScreen* screen = screens::find_screen(wish.screen);
  if (screen == nullptr) {
    return report({Error::Kind::input, "the screen", "\"" + wish.screen + "\" is not known",
                   "Known screens: " + known_screens()});
  }
  const auto book = Logbook::open(wish.book, Access::read);
  if (!book) return report(book.error());
  const auto shown = shown_pour(*book, wish.pour);
  if (!shown) return report(shown.error());
  const Exit fine = tell_unread(book->file(), *shown) ? Exit::book : Exit::fine;
  if (!shown->state) return report(no_plan(book->file(), *shown).value());
  const PourState& state = *shown->state;
  const auto cards = first_cards(*book);
  if (!cards) return report(cards.error());
  Moment now = state.moment(state.last);
  if (!wish.at.empty()) {
    const auto at = parse_moment(wish.at);
    if (!at) {
      return report({Error::Kind::input, "--at", "is \"" + wish.at + "\"",
                     "Give a time such as 2026-03-02T05:10:00Z"});
    }
    now = *at;
  }
  const auto offset = read_utc_offset(wish.utc_offset);
  if (!offset) return report(offset.error());
  // What had happened by then.
  std::vector<Event> events;
  for (const LogEntry& entry : state.log) {
    if (entry.when <= now) events.push_back(entry.as_entered ? *entry.as_entered : entry.event);
  }
  const auto then = fold(events);
  if (!then) {
    return report({Error::Kind::input, "--at", "is before the pour was opened", {}});
  }
  const CheckReport checked = check(*then, AsOf::now(*then, now));

  screens::Settings settings;
  if (wish.theme == "night") settings.theme = screens::ThemeName::night;
  settings.language = Language::of_code(wish.language).value_or(Language{});
  screens::Ui ui{settings};
  auto painter = app::OffscreenPainter::make(wish.width, wish.height);
  if (!painter) return report(painter.error());
  screens::World world;
  world.now = now;
  world.utc_offset = offset->value_or(system_utc_offset(now));
  world.pours = &*cards;
  if (screen->of_pour) {
    world.state = &*then;
    world.report = &checked;
    world.damage = damage_seen(*shown);
  }
  ui.drafts() = screen->drafts(*then);
  if (std::holds_alternative<screens::MirrorDraft>(ui.drafts().dialog)) {
    world.mirror = screens::MirrorSeen{};  // as on a tablet where none was chosen yet
    world.signing = screens::SigningSeen{};
  }
  screens::UiInput input;
  input.width_px = wish.width;
  input.height_px = wish.height;
  input.passed = seconds(0.02);
  for (int frame = 0; frame < kSettle; ++frame) ui.frame(input, world);
  const auto written = app::write_png((*painter)->paint(ui), wish.to);
  if (!written) return report(written.error());
  fmt::print("{}\n", wish.to.string());
  return fine;
}

}  // namespace rb
