// Every screen in every theme, language, unit and size: can it be hit with a glove and read?
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "base/contrast.h"
#include "pour/log/event.h"
#include "screens/book/showcase.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;

namespace {

struct Size {
  int width, height;
};
constexpr Size kSizes[] = {{1280, 800}, {1920, 1200}, {1024, 768}, {800, 1280}};

Rgb rgb_of(Colour c) {
  return {c.r, c.g, c.b};
}

struct Scene {
  const char* name;
  std::vector<Event> events;
  Moment now;
};

// Moments of the demo pour, and a plan with rows on both sides and several elements.
std::vector<Scene> scenes() {
  const std::string demo = std::string(RISEBOOK_SOURCE_DIR) + "/assets/demo-pour.jsonl";
  const std::string both = std::string(RISEBOOK_SOURCE_DIR) + "/tests/ui/both-sides.jsonl";
  const auto at = [](const char* text) { return *parse_moment(text); };
  std::vector<Scene> all;
  for (const char* moment : {"2026-03-02T05:09:00.000Z", "2026-03-02T06:16:10.000Z",
                             "2026-03-02T06:59:00.000Z", "2026-03-03T00:00:00.000Z"}) {
    all.push_back({moment, events_of(demo, at(moment)), at(moment)});
  }
  // What stands before STRIPPED at its wordiest: too soon, too weak and without leave.
  Scene asks{"asks for leave to strip", all[1].events, all[1].now};
  auto& open = std::get<event::PourOpen>(asks.events.front().what);
  Plan plan = *open.plan;
  plan.elements.front().strip_permit = true;
  plan.elements.front().strip_strength = megapascals(12);
  plan.elements.front().strength_curve = {{hours(10), megapascals(4)},
                                          {hours(20), megapascals(10)}};
  open.plan = std::make_shared<const Plan>(plan);
  all.push_back(std::move(asks));
  for (const char* moment : {"2026-05-04T06:30:30.000Z"}) {
    all.push_back({moment, events_of(both, at(moment)), at(moment)});
  }
  return all;
}

// A mirror by the wordiest of its lights, and the folders to choose from.
MirrorSeen mirror_at(Moment now, std::size_t turn) {
  MirrorSeen seen{.folder = "/media/foreman/STICK", .behind = 0};
  seen.places = {{"/media/foreman/STICK", false},
                 {"/mnt/office", true},
                 {"/media/foreman/A card with a long name", false}};
  seen.since = now;
  if (turn % 5 == 0) seen.behind = 10'234;
  if (turn % 5 == 1) seen.behind = 1;
  if (turn % 5 == 2) seen.trouble = MirrorSeen::Trouble::gone;
  if (turn % 5 == 3) seen.behind.reset();
  if (turn % 5 == 4) seen.places.clear();
  if (turn % 4 == 0) seen.copy = {CopySeen::State::failed, 0, "there is no room left on it"};
  if (turn % 4 == 1) seen.copy = {CopySeen::State::under_way, 1, {}};
  if (turn % 7 == 0) seen.folder.clear();
  seen.note_stuck = turn % 3 == 0;
  seen.record.state = static_cast<CopySeen::State>(turn % 4);
  seen.record.says = "/media/foreman/STICK/records/consolidation-2026-03-02-K3F7Q.pdf";
  return seen;
}

// A signature asked for, in each of its ends by turns.
SigningSeen signing_at(std::size_t turn) {
  SigningSeen seen;
  seen.state = static_cast<SigningSeen::State>(turn % 6);
  if (seen.state == SigningSeen::State::refused) {
    seen.why = Error{Error::Kind::refused,
                     said("the PIN"),
                     {said("was wrong too often; the next try in {wait}"),
                      {{"wait", amount(Seconds{1800}, Measure::any_span)}}},
                     {}};
  }
  return seen;
}

// Photos in each of the states one can be in.
PhotosSeen photos_at(Moment now, std::size_t turn) {
  PhotosSeen seen{.folder = "/home/inspector/Pictures/Camera",
                  .looked = true,
                  .state = static_cast<PhotosSeen::State>(turn % 4),
                  .name = "IMG_20260305_091233.jpg",
                  .says =
                      "/home/inspector/Pictures/Camera/IMG_20260305_091233.jpg: is cut off: "
                      "its end is missing. Wait until the camera has written it"};
  if (turn % 5 == 0) return seen;
  for (int i = 0; i < 20; ++i) {
    const std::string name = "IMG_20260305_0912" + std::to_string(33 - i) + ".jpg";
    seen.files.push_back({seen.folder + "/" + name, name, 4'200'000, now});
  }
  return seen;
}

// Everything wrong with what was drawn, in words.
std::vector<std::string> faults(const Probe& probe, const Scale& scale) {
  std::vector<std::string> found;
  const Box glass{0, 0, static_cast<float>(scale.width_px()),
                  static_cast<float>(scale.height_px())};
  const auto mm = [&](float px) { return px / scale.px_per_mm(); };
  for (std::size_t i = 0; i < probe.targets.size(); ++i) {
    const SeenTarget& a = probe.targets[i];
    const std::string& id = a.target.id;
    if (mm(a.target.box.w()) < kTargetMm - 1e-3 || mm(a.target.box.h()) < kTargetMm - 1e-3) {
      found.push_back(
          fmt::format("{} is {:.1f} x {:.1f} mm", id, mm(a.target.box.w()), mm(a.target.box.h())));
    }
    if (!glass.holds(a.target.box)) found.push_back(id + " is off the glass");
    if (!a.clip.holds(a.target.box)) found.push_back(id + " is clipped");
    for (std::size_t j = i + 1; j < probe.targets.size(); ++j) {
      const SeenTarget& b = probe.targets[j];
      if (mm(gap_between(a.target.box, b.target.box)) < kGapMm - 1e-3) {
        found.push_back(fmt::format("{} and {} are {:.1f} mm apart", id, b.target.id,
                                    mm(gap_between(a.target.box, b.target.box))));
      }
      if (id == b.target.id) found.push_back(id + " is there twice");
    }
  }
  for (const SeenText& text : probe.texts) {
    if (!text.fits && !text.free_text) found.push_back("clipped: " + text.text);
    if (!glass.holds(text.box)) found.push_back("off the glass: " + text.text);
    const double contrast = contrast_ratio(rgb_of(text.ink), rgb_of(text.ground));
    if (contrast < kContrastTextBest) {
      found.push_back(fmt::format("contrast {:.2f}: {}", contrast, text.text));
    }
  }
  return found;
}

}  // namespace

TEST_CASE("targets are 15 mm with 3 mm between, text is whole and contrast is 7 to 1") {
  std::size_t looked = 0;
  for (const Scene& scene : scenes()) {
    const auto state = fold(scene.events);
    REQUIRE(state);
    const CheckReport report = check(*state, AsOf::now(*state, scene.now));
    std::vector<PourCard> pours(9, make_pour_card(*state));
    for (PourCard& card : pours) {
      card.id.text += "-" + std::to_string(&card - pours.data());
      if ((&card - pours.data()) % 2 == 1) card.damage = {3, "K3F7Q-5, K3F7Q-7, K3F7Q-8"};
    }
    for (const Size size : kSizes) {
      for (const ThemeName theme : {ThemeName::sun, ThemeName::night}) {
        for (const Language language : Language::all()) {
          for (const Units units : {Units::si, Units::us}) {
            if (units == Units::us && theme == ThemeName::night) continue;  // changes no words
            Settings settings{.theme = theme, .language = language, .units = units};
            Ui ui(settings);
            const Scale scale(size.width, size.height, settings.diagonal_inches);
            for (const ShowcaseScreen& screen : showcase()) {
              World world{.now = scene.now, .pours = &pours};
              // Low by day and very low, with no sound, by night: both must fit.
              world.battery = Battery{theme == ThemeName::sun ? 18 : 8, false};
              world.sound_works = theme == ThemeName::sun;
              world.mirror = mirror_at(scene.now, looked);
              world.signing = signing_at(looked);
              world.head = HeadSeen{10'234, "QC6RK-2KKSM"};
              world.photos = photos_at(scene.now, looked);
              if (screen.of_pour) {
                world.state = &*state;
                world.report = &report;
                if (looked % 3 == 0) world.damage = {1'204, "K3F7Q-5 to K3F7Q-1208"};
              }
              ui.drafts() = screen.drafts(*state);
              ui.frame({.width_px = size.width, .height_px = size.height}, world);
              ++looked;
              const auto wrong = faults(ui.probe(), scale);
              for (const std::string& fault : wrong) {
                MESSAGE(std::string(scene.name), " ", std::string(screen.name), " ", size.width,
                        "x", size.height, " ", std::string{language.code()} + " ",
                        units == Units::us ? "us " : "si ", fault);
              }
              CHECK(wrong.empty());
            }
          }
        }
      }
    }
  }
  CHECK(looked > 1000);
}

TEST_CASE("the measure notices a small target, a near one, cut text and faint ink") {
  const Scale scale(1280, 800);
  Probe probe;
  const float big = scale.target();
  probe.targets.push_back(
      {{.id = "small", .box = {100, 100, 100 + big - 2, 100 + big}}, "", {0, 0, 1280, 800}});
  probe.targets.push_back(
      {{.id = "near", .box = {110 + big, 100, 110 + 2 * big, 100 + big}}, "", {0, 0, 1280, 800}});
  probe.texts.push_back(
      {"cut", {0, 0, 10, 10}, {0, 0, 5, 10}, rgb(0), rgb(0xFFFFFF), false, false});
  probe.texts.push_back(
      {"faint", {0, 0, 10, 10}, {0, 0, 10, 10}, rgb(0x777777), rgb(0xFFFFFF), true, false});
  CHECK(faults(probe, scale).size() == 4);
}
