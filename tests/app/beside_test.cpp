// The second copy while a book is written: chosen, followed, copied; and what the note of the head
// says when the book is opened again.
#include "app/beside.h"

#include <doctest/doctest.h>

#include <fstream>
#include <thread>

#include "app/mirror_places.h"
#include "app/session.h"
#include "app/settings_file.h"
#include "base/short_code.h"
#include "cli/look_beside.h"
#include "pour/log/script.h"
#include "store/book/head_note.h"
#include "store/copies/against.h"
#include "temp_folder.h"

using namespace rb;
using namespace std::chrono_literals;
namespace fs = std::filesystem;

namespace {

const char* const kScript =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"day","do":"pour-open","pour":"P1","plan":{)"
    R"("people":[{"id":"day","name":"D","role":"foreman"}],)"
    R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","length":6,"height":3,"thickness":0.3,"bays":[3,3],"rows":[]}]}})"
    "\n";

Entry clock_now() {
  const Moment now = *parse_moment("2026-03-02T05:10:00.000Z");
  return {now, now.time_since_epoch(), "boot"};
}

struct Tablet {
  test::TempFolder folder;
  fs::path book = folder.path / "a.risebook";
  fs::path settings = folder.path / "screens.json";
  fs::path stick = folder.path / "plugged" / "STICK";
  Beside beside;
  std::unique_ptr<Session> session;

  explicit Tablet(bool has_stick = true) {
    if (has_stick) fs::create_directories(stick);
    auto script = read_script(kScript, "test");
    REQUIRE(script);
    auto fresh = Logbook::open_or_create(book);
    REQUIRE(fresh);
    REQUIRE(fresh->append_script(*script, script_entry(clock_now())));
  }
  ~Tablet() { beside.end(); }
  void open() {
    auto opened = Session::open(book, clock_now, 0min,
                                {.on_kept = [this](const BookHead& head) { beside.kept(head); }});
    REQUIRE_MESSAGE(opened, (opened ? "" : to_text(opened.error())));
    session = std::move(*opened);
    session->on_beside = [this](const screens::Intent& wish) { beside.act(wish); };
    beside.begin(book, mirror_folder(settings),
                 {.chosen = [this](const fs::path& to) { keep_mirror_folder(settings, to); },
                  .roots = {stick.parent_path()}});
    REQUIRE(session->settle());
  }
  // As the program does: what follows the book goes first, so that its log is brought in.
  void close() {
    beside.end();
    session.reset();
  }
  void tap() {
    session->act({screens::KeepEvent{event::Note{"x", {}, {}}, clock_now().wall}});
    REQUIRE(session->settle());
  }
  template <class Is>
  bool comes(Is&& is) {
    const auto end = std::chrono::steady_clock::now() + 20s;
    while (!is(*beside.seen())) {
      if (std::chrono::steady_clock::now() > end) return false;
      std::this_thread::sleep_for(5ms);
    }
    return true;
  }
};

using screens::CopySeen;
using screens::MirrorSeen;

}  // namespace

TEST_CASE("a folder that is chosen is followed at once and after a restart, and left when told") {
  Tablet tablet;
  tablet.open();
  CHECK(tablet.beside.seen()->folder.empty());
  tablet.session->act({screens::FindPlaces{}});
  REQUIRE(tablet.comes([&](const MirrorSeen& seen) { return seen.places.size() == 1; }));
  const auto place = tablet.beside.seen()->places.front();
  CHECK(place.folder == tablet.stick.string());
  CHECK(place.same_disk);
  tablet.session->act({screens::UseMirror{place.folder}});
  tablet.tap();
  REQUIRE(tablet.comes([](const MirrorSeen& seen) { return seen.behind == 0; }));
  CHECK(mirror_folder(tablet.settings) == tablet.stick);
  const auto mirrors = std::distance(fs::directory_iterator{tablet.stick}, {});
  CHECK(mirrors == 1);
  // Other settings leave it where it is.
  write_settings(tablet.settings, screens::Settings{.sound = false});
  CHECK(mirror_folder(tablet.settings) == tablet.stick);
  tablet.close();
  CHECK_FALSE(tablet.beside.seen());
  tablet.open();
  CHECK(tablet.beside.seen()->folder == tablet.stick.string());
  tablet.session->act({screens::UseMirror{}});
  CHECK(tablet.beside.seen()->folder.empty());
  CHECK(mirror_folder(tablet.settings).empty());
  CHECK_FALSE(read_settings(tablet.settings).sound);
}

TEST_CASE("COPY puts a whole copy beside the mirror and says its name") {
  Tablet tablet;
  tablet.open();
  tablet.session->act({screens::CopyNow{}});
  CHECK(tablet.beside.seen()->copy.state == CopySeen::State::none);  // nowhere to copy to
  tablet.session->act({screens::UseMirror{tablet.stick.string()}});
  tablet.tap();
  tablet.session->act({screens::CopyNow{}});
  REQUIRE(tablet.comes([](const MirrorSeen& seen) {
    return seen.copy.state == CopySeen::State::made || seen.copy.state == CopySeen::State::failed;
  }));
  const CopySeen copy = tablet.beside.seen()->copy;
  CAPTURE(copy.says);
  REQUIRE(copy.state == CopySeen::State::made);
  const auto copied = Logbook::open(tablet.stick / copy.says, Access::read);
  REQUIRE(copied);
  CHECK(copied->head()->seq == 2);
}

TEST_CASE("with the stick pulled no folder of its name is made for a copy") {
  Tablet tablet(false);
  keep_mirror_folder(tablet.settings, tablet.stick);
  tablet.open();
  REQUIRE(tablet.comes(
      [](const MirrorSeen& seen) { return seen.trouble == MirrorSeen::Trouble::gone; }));
  tablet.session->act({screens::CopyNow{}});
  CHECK(tablet.beside.seen()->copy.state == CopySeen::State::failed);
  CHECK_FALSE(tablet.beside.seen()->copy.says.empty());
  CHECK_FALSE(fs::exists(tablet.stick));
}

TEST_CASE("what is plugged in is found by folders that may be written to, and nothing else") {
  const test::TempFolder folder;
  fs::create_directories(folder.path / "b");
  fs::create_directories(folder.path / "a");
  std::ofstream{folder.path / "file"} << "x";
  const auto places =
      mirror_places({folder.path / "none", folder.path}, folder.path / "x.risebook");
  REQUIRE(places.size() == 2);
  CHECK(places[0].folder == (folder.path / "a").string());
  CHECK(places[1].folder == (folder.path / "b").string());
}

TEST_CASE("the short code on the screen is of the last event on the disk, and the book knows it") {
  Tablet tablet;
  tablet.open();
  REQUIRE(tablet.session->look().head);
  CHECK(tablet.session->look().head->event == 1);
  tablet.tap();
  const auto head = *tablet.session->look().head;
  CHECK(head.event == 2);
  const auto book = Logbook::open(tablet.book, Access::read);
  REQUIRE(book);
  CHECK(head.code == short_code(book->head()->hash));
  const auto held = store::hold_against(tablet.book, {head.code});
  REQUIRE(held);
  CHECK(held->front().had);
}

TEST_CASE("a book shorter than the note beside it is told of before the first tap, until read") {
  Tablet tablet;
  const auto short_one = tablet.folder.path / "short";
  fs::copy_file(tablet.book, short_one);
  tablet.open();
  CHECK_FALSE(note_trouble(tablet.book));
  for (int i = 0; i < 3; ++i) tablet.tap();
  tablet.close();
  CHECK_FALSE(note_trouble(tablet.book));
  fs::copy_file(short_one, tablet.book, fs::copy_options::overwrite_existing);
  const auto trouble = note_trouble(tablet.book);
  REQUIRE(trouble);
  CHECK(trouble->word == screens::Word::note_short);
  CHECK(trouble->number == 3);
  tablet.open();
  tablet.session->tell(*trouble);
  tablet.session->tell({.text = "second"});
  REQUIRE(tablet.session->pour() != nullptr);
  REQUIRE(tablet.session->look().trouble);
  CHECK(tablet.session->look().trouble->number == 3);
  tablet.tap();
  CHECK(tablet.session->look().trouble->number == 3);  // no tap puts it away
  tablet.session->act({screens::PutTroubleAway{}});
  CHECK(tablet.session->look().trouble->text == "second");
  tablet.session->act({screens::PutTroubleAway{}});
  CHECK_FALSE(tablet.session->look().trouble);
}
