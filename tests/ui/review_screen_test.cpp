// Looking at a pour by touch: its face as a map, as it was at any moment; from a finding to its
// taps in one, from a blemish to its spot's story in two.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "check/review.h"
#include "pour/log/log_entry.h"
#include "screens/review/review_memory.h"
#include "screens/review/spot_panel.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;
using namespace rb::screens;

namespace {

Tablet demo() {
  const auto events = events_of(RISEBOOK_SOURCE_DIR "/assets/demo-pour.jsonl",
                                Moment{} + std::chrono::hours{24 * 365 * 100});
  return Tablet{events, events.back().at + std::chrono::hours{8}};
}

void open_review(Tablet& tablet) {
  tablet.tap_id("more");
  tablet.tap_id("review");
}

const ReviewDraft& draft(Tablet& tablet) {
  const auto* open = std::get_if<ReviewDraft>(&tablet.ui.drafts().dialog);
  REQUIRE(open != nullptr);
  return *open;
}

Box box_of(const Tablet& tablet, const std::string& id) {
  const SeenTarget* target = tablet.find_id(id);
  REQUIRE_MESSAGE(target != nullptr, "no target ", id);
  return target->target.box;
}

}  // namespace

TEST_CASE("from a finding to the taps it rests on in one tap, and back to where it stood") {
  Tablet tablet = demo();
  tablet.tap_id("attention");
  const Finding& finding = tablet.report.findings.front();
  const auto behind = taps_behind(*tablet.state, finding);
  REQUIRE_FALSE(behind.empty());
  const int before = tablet.taps;
  tablet.tap_id("see 0");
  CHECK(tablet.taps == before + 1);
  CHECK(draft(tablet).cause == finding.group);
  CHECK(tablet.find_id("tap " + tablet.state->log[behind.front()].event.id.text) != nullptr);
  CHECK(tablet.says(fmt::format("taps it rests on: {}", behind.size())));
  // Its moment, too.
  if (finding.to && *finding.to < tablet.state->last) CHECK(draft(tablet).at == finding.to);
  tablet.tap_id("back");
  CHECK(std::holds_alternative<FindingsDraft>(tablet.ui.drafts().dialog));
}

TEST_CASE("from a blemish to its spot's story in two taps, by the table and on the face") {
  Tablet tablet = demo();
  open_review(tablet);
  const int before = tablet.taps;
  for (int page = 0; page < 9 && tablet.find_id("blemish 1") == nullptr; ++page) {
    tablet.tap_id("marks page-down");
  }
  tablet.tap_id("blemish 1");
  CHECK(tablet.taps - before <= 2);
  REQUIRE(draft(tablet).spot);
  const SpotView story = make_spot_view(*tablet.state, 0, Side::near_side, *draft(tablet).spot);
  REQUIRE(story.blemishes.size() == 1);
  CHECK(story.blemishes.front().number == 1);
  CHECK(tablet.says("Blemish 1: honeycomb"));
  tablet.tap_id("back");
  CHECK_FALSE(draft(tablet).spot);
  CHECK(tablet.find_id("blemish 1") != nullptr);
}

TEST_CASE("a touch on the face tells the story of the spot under the finger") {
  Tablet tablet = demo();
  open_review(tablet);
  const Box face = box_of(tablet, "face");
  tablet.tap_at({face.x0 + face.w() * 0.4F, face.y0 + face.h() * 0.7F});
  REQUIRE(draft(tablet).spot);
  const SpotView story = make_spot_view(*tablet.state, 0, Side::near_side, *draft(tablet).spot);
  REQUIRE(story.came);
  CHECK(story.at.x > metres(0));
  CHECK(story.at.x < tablet.state->plan->elements[0].length);
  const Say say{tablet.ui.settings().language, Units::si, std::chrono::minutes{0}};
  const auto lines = spot_lines(say, story, {});
  REQUIRE(lines.size() >= 5);
  CHECK(tablet.says(lines.front().text));
  CHECK(tablet.says(spot_title(say, story)));
}

TEST_CASE("a finger along the axis goes through the pour as it was") {
  Tablet tablet = demo();
  open_review(tablet);
  CHECK_FALSE(draft(tablet).at);
  const Box axis = box_of(tablet, "axis");
  const float y = axis.middle().y;
  tablet.touch(Touch::Kind::down, {axis.x1 - 5, y});
  std::optional<Seconds> last;
  for (float share = 0.9F; share > 0.35F; share -= 0.05F) {
    tablet.now = after(tablet.now, seconds(0.05));
    tablet.touch(Touch::Kind::move, {axis.x0 + axis.w() * share, y + 30});  // not straight
    REQUIRE(draft(tablet).at);
    if (last) CHECK(*draft(tablet).at < *last);
    last = draft(tablet).at;
  }
  // Longer than a palm rests, farther than a wipe: it is what the axis is for.
  tablet.now = after(tablet.now, seconds(4));
  tablet.touch(Touch::Kind::up, {axis.x0 + axis.w() * 0.3F, y + 30});
  REQUIRE(tablet.last_press);
  CHECK(tablet.last_press->end == PressEnd::taken);
  CHECK(*draft(tablet).at < *last);  // where it was let go of
  last = draft(tablet).at;
  tablet.frame();
  CHECK(draft(tablet).at == last);
  CHECK(tablet.wanted == 0);
  // Step by step to the next tap of the pour, and to the end.
  tablet.tap_id("axis later");
  CHECK(*draft(tablet).at > *last);
  tablet.tap_at({axis.x1 - 1, y});
  CHECK_FALSE(draft(tablet).at);
  CHECK(tablet.says("as it stands"));
}

TEST_CASE("the map is chosen by a tile, and each tells what its looks stand for") {
  Tablet tablet = demo();
  open_review(tablet);
  struct Map {
    const char* tile;
    const char* says;
  };
  for (const Map map :
       {Map{"map cover", "Age when covered"}, Map{"map head", "Head while rows ran"},
        Map{"map load", "Age of the load"}, Map{"map dose", "Vibrated while"}}) {
    tablet.wait(seconds(1));
    tablet.tap_id(map.tile);
    CHECK(tablet.says(map.says));
  }
  CHECK(draft(tablet).side == Side::near_side);
  tablet.tap_id("side");
  CHECK(draft(tablet).side == Side::far_side);
}

TEST_CASE("a corrected tap tells the original, who changed it, when and why") {
  Tablet tablet = demo();
  tablet.tap_id("more");
  tablet.tap_id("all taps");
  const auto corrected = std::find_if(
      tablet.state->corrections.begin(), tablet.state->corrections.end(),
      [&](const Correction& c) { return tablet.state->log[c.target].as_entered.has_value(); });
  REQUIRE(corrected != tablet.state->corrections.end());
  const std::string id = "tap " + tablet.state->log[corrected->target].event.id.text;
  for (int page = 0; page < 40 && tablet.find_id(id) == nullptr; ++page) {
    tablet.tap_id("taps page-down");
  }
  const SeenTarget* line = tablet.find_id(id);
  REQUIRE(line != nullptr);
  const Event& made_by = tablet.state->log[corrected->made_by].event;
  CHECK(line->text.find("was ") != std::string::npos);
  CHECK(line->text.find(tablet.state->plan->find(made_by.by)->name) != std::string::npos);
  CHECK(line->text.find("read the tape from the wrong end") != std::string::npos);
}

TEST_CASE("taps are narrowed to a row, a lift, a person, what came late and what was corrected") {
  Tablet tablet = demo();
  tablet.tap_id("more");
  tablet.tap_id("all taps");
  const auto filter = [&]() -> const TapFilter& {
    return std::get<TapsDraft>(tablet.ui.drafts().dialog).filter.set;
  };
  tablet.tap_id("filter");
  tablet.tap_id("filter corrected");
  tablet.tap_id("filter show");
  const auto corrected = filtered_taps(*tablet.state, filter());
  REQUIRE_FALSE(corrected.empty());
  CHECK(corrected.size() < tablet.state->taps.size());
  for (const EventRef ref : corrected) {
    const LogEntry& entry = tablet.state->log[ref];
    CHECK((entry.struck || entry.as_entered.has_value()));
  }
  const std::string first = "tap " + tablet.state->log[corrected.front()].event.id.text;
  CHECK(tablet.find_id(first) != nullptr);
  tablet.tap_id("filter");
  tablet.tap_id("filter row");
  tablet.wait(seconds(1));
  tablet.tap_id("choice 1");
  REQUIRE(filter().row);
  tablet.tap_id("filter show");
  for (const EventRef ref : filtered_taps(*tablet.state, filter())) {
    CHECK(lets_through(*tablet.state, {.row = filter().row}, ref));
  }
  tablet.wait(seconds(1));
  tablet.tap_id("filter");
  tablet.tap_id("filter off");
  CHECK_FALSE(filter().any());
  const auto of_lift = filtered_taps(*tablet.state, {.lift = 2});
  const auto all = tablet.state->taps.size();
  CHECK(of_lift.size() > 3);
  CHECK(of_lift.size() < all);
}

TEST_CASE("findings are narrowed by the row they name and by who tapped what they rest on") {
  Tablet tablet = demo();
  REQUIRE_FALSE(tablet.report.findings.empty());
  ReviewMemory memory;
  memory.look(*tablet.state, tablet.report);
  std::size_t through = 0;
  for (std::size_t i = 0; i < tablet.report.findings.size(); ++i) {
    const Finding& finding = tablet.report.findings[i];
    if (finding.lift) CHECK(memory.lets_through({.lift = finding.lift}, i));
    CHECK_FALSE(memory.lets_through({.lift = 99}, i));
    CHECK_FALSE(memory.lets_through({.person = PersonId{"nobody"}}, i));
    const auto& taps = memory.behind(i);
    if (taps.empty()) continue;
    const PersonId by = tablet.state->log[taps.front()].event.by;
    CHECK(memory.lets_through({.person = by}, i));
    ++through;
  }
  CHECK(through > 0);
  tablet.tap_id("attention");
  tablet.tap_id("filter");
  tablet.tap_id("filter lift");
  tablet.tap_id("choice 0");
  tablet.wait(seconds(1));
  tablet.tap_id("filter late");
  tablet.tap_id("filter show");
  CHECK(std::get<FindingsDraft>(tablet.ui.drafts().dialog).filter.set.late);
}

TEST_CASE("the marks of a face are narrowed as the taps are, on the face and in the table") {
  Tablet tablet = demo();
  open_review(tablet);
  const auto told = [&] {
    std::size_t marks = 0;
    for (const SeenTarget& seen : tablet.ui.probe().targets) {
      const std::string& id = seen.target.id;
      marks += static_cast<std::size_t>(id.starts_with("mark ") || id.starts_with("blemish "));
    }
    return marks;
  };
  const std::size_t all = told();
  REQUIRE(all > 0);
  tablet.tap_id("filter");
  tablet.tap_id("filter row");
  tablet.tap_id("choice 1");
  tablet.tap_id("filter show");
  CHECK(draft(tablet).filter.set.row);
  CHECK(told() < all);
}

TEST_CASE("the far face is seen from behind: what is right on the near one is left on it") {
  Tablet tablet = demo();
  open_review(tablet);
  const Box face = box_of(tablet, "face");
  const Point right{face.x0 + face.w() * 0.8F, face.middle().y};
  tablet.tap_at(right);
  REQUIRE(draft(tablet).spot);
  const double near_x = in_metres(draft(tablet).spot->x);
  tablet.tap_id("side");
  tablet.tap_at(right);
  REQUIRE(draft(tablet).spot);
  const double far_x = in_metres(draft(tablet).spot->x);
  CHECK(near_x + far_x == doctest::Approx(in_metres(tablet.state->plan->elements[0].length)));
  CHECK(near_x > far_x);
}
