// A hand that knows nothing: seeded random taps, wipes, palms and Escape on every screen. Nothing
// breaks, no event is lost or doubled, and there is always a way back.
#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "pour/log/event.h"
#include "pour/outlook/gates.h"
#include "screens/book/showcase.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

constexpr int kTaps = 10000;
constexpr int kTapsAtOnce = 70;  // then the next screen is begun from
constexpr unsigned kSeed = 20260302;

struct Place {
  std::vector<Event> events;
  Moment now;
};

std::vector<Place> places() {
  const std::string root = RISEBOOK_SOURCE_DIR;
  const auto at = [](const char* text) { return *parse_moment(text); };
  std::vector<Place> all;
  for (const char* moment : {"2026-03-02T05:09:00.000Z", "2026-03-02T06:16:10.000Z"}) {
    all.push_back({events_of(root + "/assets/demo-pour.jsonl", at(moment)), at(moment)});
  }
  const Moment both = at("2026-05-04T06:30:00.000Z");
  all.push_back({events_of(root + "/tests/ui/both-sides.jsonl", both), both});
  const Moment dawn = at("2026-03-02T05:00:00.000Z");
  all.push_back({ready_pour(dawn), dawn + 1min});
  return all;
}

bool begins(const std::string& text, const char* with) {
  return text.rfind(with, 0) == 0;
}

// Whether a tap on this target must keep an event, whatever else stands; what a panel asks first
// is told by the panel it opened.
bool must_keep(const std::string& id, const Dialog& open, bool on_hold, bool in_order) {
  if (id == "close now") return true;
  if (id == "lift-start") return in_order;
  if (std::holds_alternative<GateDraft>(open) && begins(id, "gate ")) return id != "gate 3";
  if (id == "hang fixed" || id == "hang open" || id == "take down") return true;
  if (begins(id, "take-back ") || begins(id, "ok ") || begins(id, "not-ok ")) return true;
  if (id == "hold") return on_hold;
  if (std::holds_alternative<HoldDraft>(open)) return begins(id, "hold ") && id != "hold 5";
  if (std::holds_alternative<NoteDraft>(open)) return begins(id, "note ") && id != "note typed";
  if (std::holds_alternative<PadDraft>(open)) return id == "keep";
  if (std::holds_alternative<CorrectDraft>(open)) return begins(id, "why ") && id != "why typed";
  return false;
}

class Monkey {
 public:
  Monkey(Tablet& tablet, std::mt19937& dice) : tablet_(tablet), dice_(dice) {}

  void once() {
    if (tablet_.ui.wiping()) tablet_.unlock();
    const double what = chance();
    if (what < 0.72) {
      tap(on_a_target());
    } else if (what < 0.84) {
      tap(anywhere());
    } else if (what < 0.86) {
      const Point at = on_a_target();
      tap(at);
      tap(at, Seconds{0.02});  // a glove's echo
    } else if (what < 0.92) {
      wipe();
    } else if (what < 0.95) {
      press(on_a_target(), Seconds{3.5});  // a palm
    } else if (what < 0.97) {
      tablet_.type(chance() < 0.3 ? "\b" : "\u00F1");
    } else if (what < 0.98) {
      tablet_.escape();
    } else {
      tablet_.wait(Seconds{chance() * 900});
    }
    look();
  }
  int taps = 0;

 private:
  double chance() { return std::uniform_real_distribution<double>(0, 1)(dice_); }
  Point anywhere() {
    const Box& all = tablet_.glass();
    return {static_cast<float>(chance()) * all.x1, static_cast<float>(chance()) * all.y1};
  }
  Point on_a_target() {
    const auto& targets = tablet_.ui.probe().targets;
    if (targets.empty()) return anywhere();
    const auto i = static_cast<std::size_t>(chance() * static_cast<double>(targets.size()));
    const Box& box = targets[std::min(i, targets.size() - 1)].target.box;
    return {box.x0 + static_cast<float>(chance()) * box.w(),
            box.y0 + static_cast<float>(chance()) * box.h()};
  }
  void tap(Point at, Seconds before = Seconds{0.4}) {
    tablet_.now = after(tablet_.now, before);
    press(at, Seconds{0.03 + chance() * 0.2});
    ++taps;
  }
  void wipe() {
    touch(Touch::Kind::down, on_a_target());
    for (int i = 0; i < 3; ++i) touch(Touch::Kind::move, anywhere());
    touch(Touch::Kind::up, anywhere());
  }
  void press(Point at, Seconds held) {
    touch(Touch::Kind::down, at);
    tablet_.now = after(tablet_.now, held);
    touch(Touch::Kind::up, at);
  }

  // Whether a tap tells why a run is entered afterwards; the rows beside that panel go on working.
  static bool ran_earlier(const std::string& id, const Dialog& dialog) {
    if (std::holds_alternative<RanEarlierDraft>(dialog)) return id.starts_with("why ");
    const auto* typing = std::get_if<TypeDraft>(&dialog);
    return typing != nullptr && typing->use == TypeDraft::Use::ran_earlier && id == "keep";
  }

  // Every touch is judged twice: by the screens, and here by the targets that were seen.
  void touch(Touch::Kind kind, Point at) {
    tablet_.now += 5ms;
    std::vector<Target> seen;
    for (const SeenTarget& target : tablet_.ui.probe().targets) seen.push_back(target.target);
    const auto tap = hand_.feed({kind, at, tablet_.now, tablet_.now.time_since_epoch()}, seen,
                                tablet_.scale().px_per_mm());
    const bool in_pour = tablet_.in_pour;
    const bool on_hold = !tablet_.state->holds.empty() && !tablet_.state->holds.back().to;
    const bool in_order = not_passed(gates_of_lift(*tablet_.state, tablet_.ui.drafts().element,
                                                   tablet_.state->clock(tablet_.now)))
                              .empty();
    const bool must =
        tap && in_pour && must_keep(tap->id, tablet_.ui.drafts().dialog, on_hold, in_order);
    // A run entered afterwards is a run, a rest and why it comes late; a ticket goes with its load.
    const bool ran = tap && ran_earlier(tap->id, tablet_.ui.drafts().dialog);
    const auto* correct = std::get_if<CorrectDraft>(&tablet_.ui.drafts().dialog);
    const auto along = correct != nullptr ? std::ssize(correct->along) : std::ptrdiff_t{0};
    const std::ptrdiff_t most = ran ? 3 : 1 + along;
    const int wanted = tablet_.wanted;
    tablet_.touch(kind, at);
    const int more = tablet_.wanted - wanted;
    INFO("tap on ", tap ? tap->id : std::string("nothing"));
    // Not without a tap, not twice for one, and not lost; what is gone on over is kept beside it.
    const auto gates = std::count_if(
        tablet_.events.end() - std::min<std::ptrdiff_t>(more, std::ssize(tablet_.events)),
        tablet_.events.end(),
        [](const Event& e) { return std::holds_alternative<event::Override>(e.what); });
    CHECK(more - gates <= (tap ? most : 0));
    if (ran) CHECK((more == 0 || more == 3));
    if (must) CHECK(more - gates == 1);
  }

  void look() {
    // The screens catch what they cannot draw and say so: here that is a fault.
    const std::string fault = word(tablet_.ui.settings().language, Word::trouble);
    for (const SeenText& text : tablet_.ui.probe().texts) {
      CHECK(text.text != fault);
      CHECK_MESSAGE(text.text.find('{') == std::string::npos, "a gap left open: ", text.text);
    }
  }

  Tablet& tablet_;
  std::mt19937& dice_;
  TapReader hand_;
};

bool nothing_open(const Tablet& tablet) {
  return std::holds_alternative<std::monostate>(const_cast<Tablet&>(tablet).ui.drafts().dialog);
}

// By what is written on the glass alone: the way back of each panel, then ALL POURS.
int taps_to_the_list(Tablet& tablet) {
  int taps = 0;
  tablet.wait(Seconds{1});
  while (taps < 9 && !nothing_open(tablet)) {
    tablet.tap_id("back");
    ++taps;
  }
  if (tablet.in_pour) {
    tablet.tap_id("pours");
    ++taps;
  }
  return taps;
}

bool escape_leads_out(Tablet& tablet) {
  for (int i = 0; i < 9 && !nothing_open(tablet); ++i) tablet.escape();
  return nothing_open(tablet);
}

}  // namespace

TEST_CASE("ten thousand random taps: nothing breaks, no event lost or doubled, always a way back") {
  const std::vector<Place> from = places();
  std::mt19937 dice(kSeed);
  std::vector<std::unique_ptr<Tablet>> tablets;
  int taps = 0, kept = 0, refused = 0, farthest = 0;
  std::size_t episode = 0;
  const TabletSpec specs[] = {
      {},
      {.width = 800, .height = 1280, .settings = {.language = *Language::of_code("es")}},
      {.width = 1024, .height = 768, .settings = {.theme = ThemeName::night, .units = Units::us}}};
  // One tablet after the other: the drawing library has one context.
  for (const TabletSpec& spec : specs) {
    Tablet tablet(from.front().events, from.front().now, spec);
    tablet.refusing = true;
    tablet.checking = false;
    const int until = taps + kTaps / 3 + 1;
    while (taps < until) {
      const Place& scene = from[episode % from.size()];
      const ShowcaseScreen& screen = showcase()[episode % showcase().size()];
      ++episode;
      tablet.ui.set(spec.settings);
      tablet.restart(scene.events, scene.now);
      tablet.in_pour = screen.of_pour;
      tablet.ui.drafts() = screen.drafts(*tablet.state);
      // What is asked before the screens (a book not opened, an odd clock) has tests of its own.
      if (tablet.ui.drafts().failure || tablet.ui.drafts().clock) continue;
      tablet.frame();
      CAPTURE(screen.name);
      CAPTURE(episode);
      const std::size_t before = tablet.events.size();
      const int wanted = tablet.wanted, could_not = tablet.refused;
      tablet.others.clear();
      Monkey monkey(tablet, dice);
      while (monkey.taps < kTapsAtOnce) monkey.once();
      taps += monkey.taps;
      if (tablet.ui.wiping()) tablet.unlock();

      // What was asked for is in the book once, or was refused with words.
      const int more = static_cast<int>(tablet.events.size() - before);
      // A pour opened on the way begins an account of its own.
      const bool opened = std::any_of(
          tablet.others.begin(), tablet.others.end(),
          [](const Intent& intent) { return std::holds_alternative<OpenPour>(intent); });
      if (!opened) CHECK(more == tablet.wanted - wanted - (tablet.refused - could_not));
      const auto folded = fold(tablet.events);
      REQUIRE(folded);
      CHECK(folded->log.size() == tablet.events.size());
      CHECK(*folded == *tablet.state);
      for (std::size_t i = before + 1; i < tablet.events.size(); ++i) {
        const Event& a = tablet.events[i - 1];
        const Event& b = tablet.events[i];
        CHECK_FALSE((a.at == b.at && a.what == b.what));
        CHECK(b.at <= b.entry->wall);
      }
      kept += more;
      refused += tablet.refused - could_not;

      if (episode % 2 == 0) {
        farthest = std::max(farthest, taps_to_the_list(tablet));
        CHECK(nothing_open(tablet));
        CHECK_FALSE(tablet.in_pour);
      } else {
        CHECK(escape_leads_out(tablet));
      }
    }
  }
  MESSAGE(taps, " taps, ", kept, " events kept, ", refused, " refused, at most ", farthest,
          " taps to the list of pours");
  CHECK(taps >= kTaps);
  CHECK(kept > 300);
  CHECK(farthest <= 5);
}
