#include "screens/glass/pictures.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::screens;

namespace {

std::vector<Target> one(const char* id) {
  return {{.id = id, .box = {0, 0, 100, 100}}};
}

}  // namespace

TEST_CASE("a moment finds the picture that was on the glass then") {
  Pictures pictures;
  pictures.drawn(one("a"));
  pictures.shown(Seconds{10});
  pictures.drawn(one("b"));
  pictures.shown(Seconds{12});
  CHECK(pictures.at(Seconds{11.9}).front().id == "a");
  CHECK(pictures.at(Seconds{12}).front().id == "b");
  CHECK(pictures.at(Seconds{1}).front().id == "a");  // the oldest known
}

TEST_CASE("a picture that was drawn and never shown was seen by nobody") {
  Pictures pictures;
  pictures.drawn(one("a"));
  pictures.shown(Seconds{10});
  pictures.drawn(one("b"));
  CHECK(pictures.at(Seconds{20}).front().id == "a");
  CHECK(pictures.latest().front().id == "b");
  pictures.drawn(one("c"));
  pictures.shown(Seconds{21});
  CHECK(pictures.at(Seconds{20}).front().id == "a");
  CHECK(pictures.at(Seconds{21}).front().id == "c");
}

TEST_CASE("a picture drawn again the same is the same, from when it first came up") {
  Pictures pictures;
  pictures.drawn(one("a"));
  pictures.shown(Seconds{10});
  for (int frame = 1; frame < 1000; ++frame) {
    pictures.drawn(one("a"));
    pictures.shown(Seconds{10.0 + frame});
  }
  pictures.drawn(one("b"));
  pictures.shown(Seconds{2000});
  CHECK(pictures.at(Seconds{1999}).front().id == "a");
}

TEST_CASE("where nothing tells what is shown, the last picture drawn is what was seen") {
  Pictures pictures;
  pictures.drawn(one("a"));
  pictures.drawn(one("b"));
  CHECK(pictures.at(Seconds{0}).front().id == "b");
}
