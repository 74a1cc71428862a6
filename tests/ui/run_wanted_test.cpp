// The same on the glass: a RUN that is drawn in its green, on a card or in the panel of what is
// next, stands over a row that hangs and concrete that has not set; every other says why in words.
#include <doctest/doctest.h>

#include <algorithm>

#include "../pour/random_placing.h"
#include "../pour/run_truth.h"
#include "pour/log/event.h"
#include "screens/glass/theme.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;

namespace {

constexpr unsigned kFirst = 9001;
constexpr unsigned kPours = 300;
constexpr int kEvents = 60;
constexpr int kEvery = 15;  // one picture in so many events

struct Drawn {
  int pictures = 0, green = 0, grey = 0, next_green = 0, next_urged = 0, hang_first = 0;
  int set = 0, unhung = 0, empty = 0;  // said so in words
};

bool inside(const Box& box, const Box& in) {
  const Point m = box.middle();
  return m.x >= in.x0 && m.x <= in.x1 && m.y >= in.y0 && m.y <= in.y1;
}

bool run_is_green(const Tablet& tablet, const SeenTarget& button) {
  const auto& texts = tablet.ui.probe().texts;
  return std::any_of(texts.begin(), texts.end(), [&](const SeenText& text) {
    return text.ground == theme(tablet.ui.settings().theme).run.ground &&
           inside(text.box, button.target.box);
  });
}

bool names(const std::string& words, const std::string& row) {
  return words.find(row) != std::string::npos;
}

class Watch {
 public:
  Watch(Tablet& tablet, Drawn& drawn)
      : tablet_(tablet),
        drawn_(drawn),
        urging_(until_the_gap(Word::next_run)),
        hanging_(until_the_gap(Word::next_hang_first)) {}

  void look() {
    const PourState& state = *tablet_.state;
    for (std::size_t e = 0; e < state.elements.size(); ++e) {
      tablet_.ui.drafts() = Drafts{};
      tablet_.ui.drafts().element = e;
      for (const Side side : {Side::near_side, Side::far_side}) {
        tablet_.ui.drafts().rows_side = side;
        tablet_.frame();
        ++drawn_.pictures;
        rows(e);
      }
      tablet_.ui.drafts().dialog = NextDraft{};
      tablet_.frame();
      next(e);
    }
    tablet_.ui.drafts() = Drafts{};
  }

 private:
  [[nodiscard]] RowTruth truth(std::size_t e, std::size_t r) const {
    return row_truth(*tablet_.state, e, r, tablet_.state->clock(tablet_.now));
  }

  [[nodiscard]] bool says(const SeenTarget& button, Word what) const {
    return names(button.text, word(tablet_.ui.settings().language, what));
  }

  void rows(std::size_t e) {
    const auto& planned = tablet_.state->plan->elements[e].rows;
    for (std::size_t r = 0; r < planned.size(); ++r) {
      const std::string id = "row " + planned[r].id.text + " " + to_text(planned[r].side);
      const SeenTarget* button = tablet_.find_id(id);
      if (button == nullptr || tablet_.state->running(e, r) != nullptr) continue;
      CAPTURE(id);
      CAPTURE(button->text);
      const RowTruth is = truth(e, r);
      const bool green = run_is_green(tablet_, *button);
      (green ? drawn_.green : drawn_.grey) += 1;
      if (green) {
        CHECK(is.may_run());
        continue;
      }
      if (tablet_.state->closed) continue;
      // In words, on the button: the row's name and RUN are not all that is written there.
      const bool set = says(*button, Word::wait_set);
      const bool unhung = says(*button, Word::caution_not_hung);
      const bool empty = says(*button, Word::wait_empty) || says(*button, Word::wait_unread);
      drawn_.set += set ? 1 : 0;
      drawn_.unhung += unhung ? 1 : 0;
      drawn_.empty += empty ? 1 : 0;
      CHECK((set || unhung || empty || says(*button, Word::wait_cleared) ||
             names(button->text, "kPa") || says(*button, Word::wait_not_served) ||
             says(*button, Word::enough)));
      for (const SeenText& text : tablet_.ui.probe().texts) {
        CAPTURE(text.text);
        if (inside(text.box, button->target.box)) CHECK(text.fits);
      }
    }
    for (const SeenText& text : tablet_.ui.probe().texts) urges(e, text.text);
  }

  // What urges a run in words names no row but such as may run.
  void urges(std::size_t e, const std::string& words) {
    if (words.rfind(urging_, 0) != 0) return;
    CAPTURE(words);
    const auto& planned = tablet_.state->plan->elements[e].rows;
    int named = 0;
    for (std::size_t r = 0; r < planned.size(); ++r) {
      if (!names(words, planned[r].id.text)) continue;
      ++named;
      CHECK(truth(e, r).may_run());
    }
    CHECK(named > 0);
    ++drawn_.next_urged;
  }

  void next(std::size_t e) {
    for (const SeenText& text : tablet_.ui.probe().texts) {
      urges(e, text.text);
      drawn_.hang_first += text.text.rfind(hanging_, 0) == 0 ? 1 : 0;
    }
    const auto& planned = tablet_.state->plan->elements[e].rows;
    for (std::size_t r = 0; r < planned.size(); ++r) {
      const SeenTarget* button =
          tablet_.find_id("next row " + planned[r].id.text + " " + to_text(planned[r].side));
      if (button == nullptr || tablet_.state->running(e, r) != nullptr) continue;
      CAPTURE(planned[r].id.text);
      if (!run_is_green(tablet_, *button)) continue;
      ++drawn_.next_green;
      CHECK(truth(e, r).may_run());
    }
  }

  [[nodiscard]] std::string until_the_gap(Word what) const {
    const std::string words = word(tablet_.ui.settings().language, what);
    return words.substr(0, words.find('{'));
  }

  Tablet& tablet_;
  Drawn& drawn_;
  std::string urging_, hanging_;
};

void watch_pours(const TabletSpec& spec, unsigned from, unsigned pours, Drawn& drawn) {
  RandomPlacing first(from);
  Tablet tablet({first.opening}, first.opening.at, spec);
  tablet.checking = false;
  for (unsigned seed = from; seed < from + pours; ++seed) {
    CAPTURE(seed);
    RandomPlacing placing(seed);
    std::vector<Event> events{placing.opening};
    Watch watch(tablet, drawn);
    for (int i = 1; i <= kEvents; ++i) {
      CAPTURE(i);
      events.push_back(placing.next());
      if (i % kEvery != 0) continue;
      const auto folded = fold(events);
      REQUIRE(folded);
      const Seconds wait = placing.whole(0, 3) == 0 ? seconds(60 * placing.whole(20, 400))
                                                    : seconds(placing.whole(0, 200));
      tablet.restart(events, after(folded->moment(folded->last), wait));
      watch.look();
    }
  }
}

}  // namespace

TEST_CASE("on the glass no RUN is green and none is urged but over fresh concrete on a hung row") {
  Drawn drawn;
  watch_pours({}, kFirst, kPours, drawn);
  MESSAGE("seeds ", kFirst, " to ", kFirst + kPours - 1, ": ", drawn.pictures, " pictures, green ",
          drawn.green, ", not ", drawn.grey, " (may have set ", drawn.set, ", not hung ",
          drawn.unhung, ", no concrete ", drawn.empty, "), urged ", drawn.next_urged,
          ", green in the panel of what is next ", drawn.next_green, ", to be hung first ",
          drawn.hang_first);
  CHECK(drawn.green > 300);
  CHECK(drawn.next_green > 50);
  CHECK(drawn.next_urged > 100);
  CHECK(drawn.hang_first > 50);
  CHECK(drawn.set > 100);
  CHECK(drawn.unhung > 100);
  CHECK(drawn.empty > 100);
}

TEST_CASE("nor in Spanish on a small glass held upright, nor at night on an old one") {
  Drawn drawn;
  watch_pours({.width = 800, .height = 1280, .settings = {.language = *Language::of_code("es")}},
              kFirst + kPours, 60, drawn);
  watch_pours({.width = 1024, .height = 768, .settings = {.theme = ThemeName::night}},
              kFirst + kPours + 60, 60, drawn);
  MESSAGE(drawn.pictures, " pictures, green ", drawn.green, ", not ", drawn.grey, ", urged ",
          drawn.next_urged);
  for (const int seen : {drawn.green, drawn.next_urged, drawn.set, drawn.unhung, drawn.empty}) {
    CHECK(seen > 20);
  }
}
