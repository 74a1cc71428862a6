// The whole program without a window: real screens over a real book, its threads and its second
// copy; taps by the id of what is tapped.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <fstream>
#include <initializer_list>
#include <memory>
#include <string>
#include <thread>

#include "app/beside.h"
#include "app/photo_desk.h"
#include "app/session.h"
#include "cli/commands.h"
#include "pour/log/script.h"
#include "temp_folder.h"

namespace rb::test {

/// The demo pour's script without its events of some kinds.
inline std::string demo_without(std::initializer_list<const char*> kinds) {
  std::ifstream in{RISEBOOK_SOURCE_DIR "/assets/demo-pour.jsonl"};
  std::string script;
  for (std::string line; std::getline(in, line);) {
    const bool left_out = std::any_of(kinds.begin(), kinds.end(), [&](const char* kind) {
      return line.find("\"do\": \"" + std::string{kind} + "\"") != std::string::npos;
    });
    if (!left_out) script += line + "\n";
  }
  return script;
}

/// A book looked at from outside: sound, and how many people's signatures hold in it.
inline std::size_t people_who_signed(const Path& path) {
  const auto book = Logbook::open(path, Access::read);
  REQUIRE(book);
  const auto looked = book->verify();
  REQUIRE(looked);
  CHECK(looked->sound());
  return looked->people.size();
}

class Glass {
 public:
  /// A book made of a script, opened at a moment.
  Glass(const std::string& script, Moment at) : now(at) {
    auto read = read_script(script, "test");
    REQUIRE_MESSAGE(read, (read ? "" : to_text(read.error())));
    auto made = Logbook::open_or_create(book);
    REQUIRE(made);
    REQUIRE(made->append_script(*read, {now, now.time_since_epoch(), "boot"}));
    pour = read->pour;
  }
  void open(Beside::Hooks hooks = {}) {
    auto opened = Session::open(
        book,
        [this] {
          return Entry{now, now.time_since_epoch(), "boot"};
        },
        std::chrono::minutes{0});
    REQUIRE_MESSAGE(opened, (opened ? "" : to_text(opened.error())));
    session = std::move(*opened);
    session->count_tries_in(folder.path / "pin-tries");
    session->on_beside = [this](const screens::Intent& wish) {
      beside.act(wish);
      photos.act(wish, pour);
    };
    beside.begin(book, {}, std::move(hooks));
    std::filesystem::create_directories(folder.path / "Camera");
    photos.begin(book, folder.path / "Camera", {});
    REQUIRE(session->settle());
    if (session->pour() == nullptr) session->go_to(pour);
    REQUIRE(session->settle());
    for (int i = 0; i < 3; ++i) frame();
  }

  void frame(const std::optional<screens::Touch>& touch = {},
             const std::vector<std::string>& typed = {}) {
    screens::World world = session->look();
    world.mirror = beside.seen();
    world.photos = photos.seen();
    const auto out =
        ui.frame({.width_px = 1280, .height_px = 800, .touch = touch, .typed = typed}, world);
    for (const screens::Intent& wish : out.intents) {
      if (const auto* change = std::get_if<screens::ChangeSettings>(&wish))
        ui.set(change->settings);
    }
    session->act(out.intents);
    for (screens::KeepEvent& photo : photos.taken(pour)) session->act({std::move(photo)});
  }
  /// A finger drawn over a target, between corners told in shares of it.
  void draw(const std::string& id, screens::Point from, screens::Point to) {
    using Kind = screens::Touch::Kind;
    const screens::SeenTarget* target = find(id);
    REQUIRE_MESSAGE(target != nullptr, "no target ", id, "; on the screen: ", all());
    const screens::Box box = target->target.box;
    const auto touch = [&](Kind kind, screens::Point at) {
      const screens::Point there{box.x0 + at.x * box.w(), box.y0 + at.y * box.h()};
      frame(screens::Touch{kind, there, now, now.time_since_epoch()});
      now += std::chrono::milliseconds(400);
    };
    touch(Kind::down, from);
    touch(Kind::move, to);
    touch(Kind::up, to);
    frame();
    now += std::chrono::milliseconds(600);
    frame();
    ++taps;
  }
  void tap_at(screens::Point at) {
    using Kind = screens::Touch::Kind;
    frame(screens::Touch{Kind::down, at, now, now.time_since_epoch()});
    now += std::chrono::milliseconds(80);
    frame(screens::Touch{Kind::up, at, now, now.time_since_epoch()});
    frame();
    now += std::chrono::milliseconds(500);
    // The clock here runs ahead of the disk: taps that wait would be told over the head of the
    // screen.
    REQUIRE(session->settle());
    frame();
    ++taps;
  }
  void tap(const std::string& id) {
    const screens::SeenTarget* target = find(id);
    REQUIRE_MESSAGE(target != nullptr, "no target ", id, "; on the screen: ", all());
    REQUIRE_MESSAGE(target->target.enabled, "not enabled: ", id);
    tap_at(target->target.box.middle());
  }
  void type(const std::string& letters) { frame({}, {letters}); }
  void pin(const std::string& digits) {
    for (const char digit : digits) tap(std::string{"pin "} + digit);
    tap("pin keep");
  }
  /// Frames until the screen says so, ten seconds at most.
  bool comes(const std::string& words) {
    for (int i = 0; i < 1000; ++i) {
      if (says(words)) return true;
      std::this_thread::sleep_for(std::chrono::milliseconds(10));
      frame();
    }
    return false;
  }
  [[nodiscard]] bool says(const std::string& words) const {
    for (const screens::SeenText& text : ui.probe().texts) {
      if (text.text.find(words) != std::string::npos) return true;
    }
    return false;
  }
  [[nodiscard]] const screens::SeenTarget* find(const std::string& id) const {
    for (const screens::SeenTarget& target : ui.probe().targets) {
      if (target.target.id == id) return &target;
    }
    return nullptr;
  }
  [[nodiscard]] std::string all() const {
    std::string text;
    for (const screens::SeenTarget& target : ui.probe().targets) text += target.target.id + " | ";
    return text;
  }
  [[nodiscard]] const PourState& state() const {
    REQUIRE(session->pour() != nullptr);
    return *session->pour();
  }

  TempFolder folder;
  Path book = folder.path / "a.risebook";
  Moment now;
  PourId pour;
  screens::Ui ui;
  Beside beside;
  PhotoDesk photos;
  std::unique_ptr<Session> session;
  int taps = 0;
};

}  // namespace rb::test
