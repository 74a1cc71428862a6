// A stripped face by touch: a blemish drawn on it, repaired, looked at again; and how it stands to
// the log.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::screens;
using namespace rb::test;
using namespace std::chrono_literals;

namespace {

const Moment kDawn = *parse_moment("2026-03-02T05:00:00.000Z");

void open_face(Tablet& tablet, const char* side = "near") {
  tablet.tap("MORE");
  tablet.tap_id("after pour");
  tablet.tap_id(std::string{"face "} + side);
}

// Lift 1 placed, the pour closed, four days gone, the face off by two taps.
void strip(Tablet& tablet) {
  place_lift_1(tablet);
  tablet.tap("MORE");
  tablet.tap_id("close pour");
  tablet.tap_id("close now");
  tablet.wait(hours(96));
  open_face(tablet);
  CHECK(tablet.says("NOT INSPECTED: not told as stripped"));
  CHECK_FALSE(tablet.find_id("face")->target.enabled);  // nothing can be seen of it yet
  tablet.tap_id("strip near");
  tablet.wait(seconds(2));
  tablet.tap_id("strip near");
  REQUIRE(kept<event::Strip>(tablet).size() == 1);
  tablet.wait(seconds(2));
}

// From one corner to the other, in shares of the target that is drawn on.
void draw(Tablet& tablet, float x0, float y0, float x1, float y1) {
  const SeenTarget* face = tablet.find_id("face");
  REQUIRE(face != nullptr);
  const Box box = face->target.box;
  const auto at = [&](float x, float y) {
    return Point{box.x0 + x * box.w(), box.y0 + y * box.h()};
  };
  tablet.touch(Touch::Kind::down, at(x0, y0));
  tablet.now = after(tablet.now, Seconds{0.4});
  tablet.touch(Touch::Kind::move, at((x0 + x1) / 2, (y0 + y1) / 2));
  tablet.now = after(tablet.now, Seconds{0.4});
  tablet.touch(Touch::Kind::up, at(x1, y1));
  tablet.frame();
  tablet.wait(seconds(1));
}

void type_in(Tablet& tablet, const std::string& id, const std::string& text) {
  tablet.tap_id(id);
  tablet.type(text);
  tablet.tap_id("keep");
}

}  // namespace

TEST_CASE("stripped, a blemish drawn by finger, repaired and its repair accepted, by taps alone") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  strip(tablet);
  open_face(tablet);
  CHECK(tablet.says("NOT INSPECTED"));
  CHECK_FALSE(tablet.says("NOTHING FOUND"));
  draw(tablet, 0.4F, 0.5F, 0.6F, 0.7F);
  CHECK(tablet.says("What is it?"));
  CHECK_FALSE(tablet.find_id("keep")->target.enabled);
  tablet.tap_id("defect honeycomb");
  tablet.tap_id("blemish wide");
  keys(tablet, "400");
  tablet.tap_id("keep");
  tablet.tap_id("blemish high");
  keys(tablet, "250");
  tablet.tap_id("keep");
  tablet.tap_id("blemish deep");
  keys(tablet, "30");
  tablet.tap_id("keep");
  CHECK(tablet.says("400 mm"));
  tablet.tap_id("keep");
  REQUIRE(kept<event::Blemish>(tablet).size() == 1);
  const event::Blemish blemish = kept<event::Blemish>(tablet).front();
  CHECK(blemish.kind == "honeycomb");
  CHECK(blemish.side == Side::near_side);
  CHECK(in_metres(blemish.patch.w) == doctest::Approx(0.4));
  CHECK(in_metres(blemish.patch.h) == doctest::Approx(0.25));
  CHECK(in_metres(*blemish.depth) == doctest::Approx(0.03));
  // It was drawn in the middle of the face's length.
  CHECK(in_metres(blemish.patch.x + blemish.patch.w / 2.0) == doctest::Approx(2).epsilon(0.03));
  CHECK(tablet.says("INSPECTION NOT FINISHED"));
  tablet.tap_id("face inspected");
  REQUIRE(kept<event::Inspect>(tablet).size() == 1);
  CHECK(tablet.says("inspected by A. Reyes"));
  // One tap on the blemish: its story. Nothing was run: the checker had spoken of it.
  draw(tablet, 0.5F, 0.6F, 0.5F, 0.6F);
  CHECK(tablet.says("1 \u00B7 honeycomb"));
  CHECK(tablet.says("NOT REPAIRED"));
  CHECK(tablet.says("The checker had spoken: "));
  tablet.tap_id("blemish repair");
  CHECK_FALSE(tablet.find_id("keep")->target.enabled);
  type_in(tablet, "repair method", "CUT BACK AND FILLED");
  type_in(tablet, "repair product", "MORTAR R3");
  type_in(tablet, "repair who", "CREW B");
  tablet.tap_id("keep");
  REQUIRE(kept<event::Repair>(tablet).size() == 1);
  const event::Repair repair = kept<event::Repair>(tablet).front();
  CHECK(repair.method == "CUT BACK AND FILLED");
  CHECK(repair.product == "MORTAR R3");
  CHECK(repair.who == "CREW B");
  CHECK(tablet.says("REPAIRED, TO BE LOOKED AT AGAIN"));
  SUBCASE("accepted") {
    tablet.tap_id("blemish accept");
    REQUIRE(kept<event::Reinspect>(tablet).size() == 1);
    CHECK(kept<event::Reinspect>(tablet).front().ok);
    CHECK(tablet.says("ACCEPTED by A. Reyes"));
    CHECK_FALSE(tablet.find_id("blemish accept")->target.enabled);
  }
  SUBCASE("not accepted, with a reason, and repaired once more") {
    tablet.tap_id("blemish refuse");
    tablet.type("STILL HOLLOW");
    tablet.tap_id("keep");
    REQUIRE(kept<event::Reinspect>(tablet).size() == 1);
    CHECK_FALSE(kept<event::Reinspect>(tablet).front().ok);
    CHECK(kept<event::Reinspect>(tablet).front().note == "STILL HOLLOW");
    CHECK(tablet.says("NOT ACCEPTED: STILL HOLLOW by A. Reyes"));
    tablet.tap_id("blemish repair");
    type_in(tablet, "repair method", "AGAIN");
    tablet.tap_id("keep");
    CHECK(tablet.says("REPAIRED, TO BE LOOKED AT AGAIN"));
    tablet.tap_id("blemish accept");
    CHECK(kept<event::Reinspect>(tablet).back().ok);
    CHECK(kept<event::Reinspect>(tablet).back().target != kept<event::Reinspect>(tablet)[0].target);
  }
  // What was told too small is put right by a correction.
  tablet.tap_id("blemish wide");
  keys(tablet, "600");
  tablet.tap_id("keep");
  REQUIRE(kept<event::Fix>(tablet).size() == 1);
  CHECK(tablet.says("600 mm"));
  tablet.tap_id("back");
  CHECK(tablet.find_id("face") != nullptr);
}

TEST_CASE("a photo is chosen among the camera's newest, and named once it is kept") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  strip(tablet);
  open_face(tablet);
  draw(tablet, 0.4F, 0.5F, 0.6F, 0.7F);
  tablet.tap_id("defect cold joint");
  tablet.tap_id("keep");
  draw(tablet, 0.5F, 0.6F, 0.5F, 0.6F);
  CHECK_FALSE(tablet.find_id("blemish photo")->target.enabled);  // the book is only read
  tablet.photos = PhotosSeen{.folder = "/home/qc/Pictures"};
  tablet.frame();
  tablet.tap_id("blemish photo");
  const auto asked = [](const Intent& i) { return std::holds_alternative<FindPhotos>(i); };
  CHECK(std::any_of(tablet.others.begin(), tablet.others.end(), asked));
  tablet.photos->looked = true;
  tablet.frame();
  CHECK(tablet.says("There is no JPEG or PNG in /home/qc/Pictures."));
  tablet.photos->files = {{"/home/qc/Pictures/IMG_2.jpg", "IMG_2.jpg", 4'200'000, tablet.now},
                          {"/home/qc/Pictures/IMG_1.jpg", "IMG_1.jpg", 3'900'000, tablet.now}};
  tablet.frame();
  CHECK(tablet.says("4.2\u00A0MB"));
  tablet.tap_id("photo /home/qc/Pictures/IMG_2.jpg");
  const auto* wish = std::get_if<TakePhoto>(&tablet.others.back());
  REQUIRE(wish != nullptr);
  CHECK(wish->path == "/home/qc/Pictures/IMG_2.jpg");
  REQUIRE(tablet.state->blemishes.size() == 1);
  CHECK(wish->target == tablet.events.back().id);
  CHECK(kept<event::Photo>(tablet).empty());  // not before the file is on the disk
  tablet.photos->state = PhotosSeen::State::taking;
  tablet.photos->name = "IMG_2.jpg";
  tablet.frame();
  CHECK(tablet.says("IMG_2.jpg is being kept"));
  CHECK_FALSE(tablet.find_id("photo /home/qc/Pictures/IMG_1.jpg")->target.enabled);
  tablet.photos->state = PhotosSeen::State::failed;
  tablet.photos->says = "is cut off";
  tablet.frame();
  CHECK(tablet.says("Not kept: is cut off"));
  tablet.tap_id("back");
  CHECK(tablet.says("0 kept"));
}

TEST_CASE("a face that was inspected and has nothing says so; a word of one's own is kept") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  strip(tablet);
  open_face(tablet);
  tablet.tap_id("face inspected");
  CHECK(tablet.says("NOTHING FOUND"));
  CHECK_FALSE(tablet.says("NOT INSPECTED"));
  // A tap where nothing is begins a blemish as well.
  draw(tablet, 0.5F, 0.8F, 0.5F, 0.8F);
  tablet.tap_id("defect other");
  tablet.type("RUST");
  tablet.tap_id("keep");
  tablet.tap_id("keep");
  REQUIRE(kept<event::Blemish>(tablet).size() == 1);
  CHECK(kept<event::Blemish>(tablet).front().kind == "RUST");
  CHECK_FALSE(tablet.says("NOTHING FOUND"));
  // Cancelled, nothing is kept.
  draw(tablet, 0.3F, 0.3F, 0.4F, 0.5F);
  tablet.tap_id("back");
  CHECK(kept<event::Blemish>(tablet).size() == 1);
}

TEST_CASE("the far face is drawn as one stands before it, and kept as the plan counts") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  strip(tablet);
  open_face(tablet);
  tablet.tap_id("other face");
  CHECK(tablet.says("bay 1 at the right"));
  tablet.tap_id("strip far");
  tablet.wait(seconds(2));
  tablet.tap_id("strip far");
  open_face(tablet, "far");
  draw(tablet, 0.95F, 0.6F, 0.99F, 0.9F);  // far right: bay 1
  tablet.tap_id("defect sand streak");
  tablet.tap_id("keep");
  REQUIRE(kept<event::Blemish>(tablet).size() == 1);
  const event::Blemish seen = kept<event::Blemish>(tablet).front();
  CHECK(seen.side == Side::far_side);
  CHECK(in_metres(seen.patch.x) < 1);
}

TEST_CASE("curing is begun from MORE while the pour is open") {
  Tablet tablet(ready_pour(kDawn), kDawn + 15min);
  place_lift_1(tablet);
  tablet.tap("MORE");
  tablet.tap_id("after pour");
  tablet.tap_id("cure start");
  CHECK(kept<event::CureStart>(tablet).size() == 1);
  CHECK_FALSE(tablet.state->closed);
}
