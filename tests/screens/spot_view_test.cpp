// A spot's story, held to the dose, the loads and the findings that are reckoned elsewhere.
#include <doctest/doctest.h>

#include <fstream>
#include <iterator>

#include "pour/log/fold.h"
#include "pour/log/script.h"
#include "pour/outlook/form.h"
#include "pour/outlook/loads.h"
#include "screens/view/pour_view.h"
#include "screens/view/spot_view.h"

using namespace rb;
using namespace rb::screens;

namespace {

PourState demo() {
  std::ifstream file(RISEBOOK_SOURCE_DIR "/assets/demo-pour.jsonl");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  const auto script = read_script(text, "demo");
  REQUIRE(script);
  auto state = fold(script->events);
  REQUIRE(state);
  return *std::move(state);
}

}  // namespace

TEST_CASE("a spot's story has the dose, the set and the load that are reckoned of it elsewhere") {
  const PourState state = demo();
  const trade::Face face = face_of(state, 0, {Side::near_side});
  for (const double x : {0.3, 1.9, 4.2}) {
    for (const double z : {0.2, 0.9, 1.4, 2.2}) {
      CAPTURE(x);
      CAPTURE(z);
      const SpotView view = make_spot_view(state, 0, Side::near_side, {metres(x), metres(z)});
      const auto story = trade::spot_story(face, 0, metres(x), metres(z));
      REQUIRE(view.came.has_value() == story.has_value());
      if (!story) continue;
      CHECK(*view.came == state.moment(story->came));
      CHECK(view.dose == story->dose);
      CHECK(*view.workable == state.moment(story->sets));
      CHECK(view.loads.size() == loads_at(state, 0, story->came).size());
      double seconds_told = 0;
      for (const SpotShaken& piece : view.shaken) {
        CHECK_FALSE(piece.rows.empty());
        seconds_told += piece.span().count() * piece.counts;
      }
      CHECK(seconds_told == doctest::Approx(view.dose.count()).epsilon(1e-3));
      if (view.covered && view.cover_age) CHECK(*view.cover_age >= Seconds{0});
    }
  }
}

TEST_CASE("a spot above the concrete has no story, and one off the face is moved onto it") {
  const PourState state = demo();
  const SpotView off = make_spot_view(state, 0, Side::near_side, {metres(-3), metres(500)});
  CHECK(off.at.x == metres(0));
  CHECK(off.at.z == state.plan->elements[0].rise_height());
}

TEST_CASE("the blemish on a spot is told with its number in the record") {
  const PourState state = demo();
  const SpotView in = make_spot_view(state, 0, Side::near_side, {metres(4.2), metres(1.4)});
  REQUIRE(in.blemishes.size() == 1);
  CHECK(in.blemishes.front().number == 1);
  CHECK(in.blemishes.front().kind == "honeycomb");
  CHECK(make_spot_view(state, 0, Side::near_side, {metres(1), metres(1.4)}).blemishes.empty());
  CHECK(make_spot_view(state, 0, Side::far_side, {metres(4.2), metres(1.4)}).blemishes.empty());
}

TEST_CASE("a corrected tap keeps how it was entered; one that was not has nothing to tell") {
  const PourState state = demo();
  REQUIRE_FALSE(state.corrections.empty());
  const EventRef ref = state.corrections.front().target;
  const auto was = tap_was(state, ref);
  REQUIRE(was);
  CHECK(was->why == "read the tape from the wrong end");
  CHECK(std::holds_alternative<event::LiftEnd>(was->what));
  CHECK_FALSE(was->by.empty());
  CHECK_FALSE(tap_was(state, 0));
}
