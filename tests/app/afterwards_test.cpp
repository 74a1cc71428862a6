// What is done about a pour after it, from its review to its record, by taps alone on the real
// screens over a real book.
#include <fstream>
#include <iterator>

#include "app/local_time.h"
#include "app/signing/record_seal.h"
#include "check/review.h"
#include "cli/write_day.h"
#include "glass.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/signatures.h"

using namespace rb;
using namespace rb::test;

namespace {

// The demo pour as it stood when it was closed: nobody has signed, nothing is stripped.
std::string script_to_the_close() {
  return demo_without({"sign", "strip", "blemish", "repair", "inspect", "permit-strip"});
}

Result<std::string> record_of(const Path& book, const screens::MakeRecord& wish,
                              const Path& folder) {
  const auto opened = Logbook::open(book, Access::read);
  if (!opened) return Failed{opened.error()};
  const auto made = write_day(*opened, plain_day(wish.day, wish.voice.utc_offset), folder,
                              {Format::json, Format::pdf});
  if (!made) return Failed{made.error()};
  return made->files.front().string();
}

std::string person_in(const PourState& state, const char* role) {
  for (const Person& person : state.plan->people) {
    if (person.has_role(role)) return person.id.text;
  }
  return {};
}

void review(Glass& glass) {
  glass.tap("attention");
  glass.tap("of cause 0");
  glass.tap("review accept");
  glass.tap("of cause 1");
  glass.tap("review send-back");
  glass.type("CORES WANTED");
  glass.tap("keep");
  glass.tap("findings page-down");
  glass.tap("of cause 2");
  glass.tap("review accept");
  CHECK(glass.says("0 open, 2 accepted, 1 sent back"));
}

void choose_pin(Glass& glass, const std::string& who, const char* role, const char* digits) {
  glass.tap("sign " + who + " " + role);
  if (glass.find("pin 1") == nullptr) {
    glass.tap("witness " + person_in(glass.state(), "foreman"));
    glass.pin("204816");
  }
  glass.pin(digits);
  glass.pin(digits);
  REQUIRE(glass.comes("The PIN is kept."));
  glass.tap("sign on");
}

void sign_by_two(Glass& glass) {
  glass.tap("more");
  glass.tap("sign");
  choose_pin(glass, person_in(glass.state(), "foreman"), "foreman", "204816");
  CHECK_FALSE(glass.find("verdict 0")->target.enabled);
  glass.tap("verdict 1");  // but for what was sent back
  glass.pin("204816");
  REQUIRE(glass.comes("Signed."));
  glass.tap("back");
  choose_pin(glass, person_in(glass.state(), "inspector"), "inspector", "771305");
  glass.tap("verdict 1");
  glass.pin("204816");
  REQUIRE(glass.comes("is not the right one"));
  glass.tap("sign on");
  glass.pin("771305");
  REQUIRE(glass.comes("Signed."));
  glass.tap("back");
}

void strip_and_repair(Glass& glass) {
  const std::string jpeg = "\xFF\xD8\xFF a face \xFF\xD9";
  std::ofstream(glass.folder.path / "Camera" / "face.jpg", std::ios::binary) << jpeg;
  glass.tap("more");
  glass.tap("after pour");
  glass.tap("face near");
  glass.tap("strip near");
  // Over what is not shown it is gone on with a reason, else by a second tap.
  glass.tap(glass.find("gate 0") != nullptr ? "gate 0" : "strip near");
  glass.tap("more");
  glass.tap("after pour");
  glass.tap("face near");
  REQUIRE(glass.state().strips.size() == 1);
  glass.draw("face", {0.4F, 0.5F}, {0.6F, 0.7F});
  glass.tap("defect honeycomb");
  glass.tap("keep");
  REQUIRE(glass.state().blemishes.size() == 1);
  glass.draw("face", {0.5F, 0.6F}, {0.5F, 0.6F});  // its spot's story: the second tap
  CHECK(glass.says("1 \u00B7 honeycomb"));
  glass.tap("blemish photo");
  const std::string photo = "photo " + (glass.folder.path / "Camera" / "face.jpg").string();
  for (int i = 0; i < 300 && glass.find(photo) == nullptr; ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
    glass.frame();
  }
  glass.tap(photo);
  for (int i = 0; i < 300 && glass.state().photos.empty(); ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
    glass.frame();
  }
  REQUIRE(glass.state().photos.size() == 1);
  if (glass.find("blemish repair") == nullptr) glass.tap("back");
  glass.tap("blemish repair");
  glass.tap("repair method");
  glass.type("CUT BACK AND FILLED");
  glass.tap("keep");
  glass.tap("keep");
  REQUIRE(glass.state().repairs.size() == 1);
  glass.tap("blemish accept");
  REQUIRE(glass.state().reinspections.size() == 1);
}

}  // namespace

TEST_CASE(
    "by taps: reviewed, signed by two, stripped, a blemish with photo, repair accepted, recorded") {
  Glass glass(script_to_the_close(), *parse_moment("2026-03-06T09:00:00.000Z"));
  glass.open({.record = record_of});
  review(glass);
  sign_by_two(glass);
  strip_and_repair(glass);
  const PourState& state = glass.state();
  for (const SignatureState& made : signatures_of(state)) CHECK(made.unsettled == 0);
  REQUIRE(glass.session->settle());
  glass.ui.drafts() = {};
  glass.frame();
  glass.tap("more");
  glass.tap("record");
  for (int i = 0; i < 4; ++i) glass.tap("day before");
  glass.tap("record now");
  REQUIRE(glass.comes("Made: "));
  const auto seen = glass.beside.seen();
  REQUIRE(seen);
  std::ifstream in{seen->record.says, std::ios::binary};
  const std::string json{std::istreambuf_iterator<char>{in}, {}};
  CHECK(json.find("CORES WANTED") != std::string::npos);
  CHECK(json.find("CUT BACK AND FILLED") != std::string::npos);
  const auto look = look_at_record(json);
  REQUIRE_MESSAGE(look, (look ? "" : to_text(look.error())));
  CHECK(look->sound());
  CHECK(look->people.size() == 2);
  glass.session.reset();
  const auto book = Logbook::open(glass.book, Access::read);
  REQUIRE(book);
  CHECK(held_to_book(*look, *book).empty());
  CHECK(people_who_signed(glass.book) == 2);
}
