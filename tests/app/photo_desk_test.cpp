// Photos beside the screens: the newest are found, the one chosen is kept, and only then named.
#include "app/photo_desk.h"

#include <doctest/doctest.h>

#include <fstream>
#include <thread>

#include "app/camera_folder.h"
#include "pour/log/script.h"
#include "store/book/logbook.h"
#include "store/photos/photo.h"
#include "temp_folder.h"

using namespace rb;
using namespace std::chrono_literals;
namespace fs = std::filesystem;

namespace {

const char* const kPhotoPour =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"day","do":"pour-open","pour":"P1","plan":{)"
    R"("people":[{"id":"day","name":"D","role":"foreman"}],)"
    R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","length":6,"height":3,"thickness":0.3,"bays":[3,3],"rows":[]}]}})"
    "\n";

fs::path photo_at(const fs::path& file, const std::string& inside) {
  std::ofstream(file, std::ios::binary) << "\xFF\xD8\xFF" << inside << "\xFF\xD9";
  return file;
}

struct Desk {
  test::TempFolder folder;
  fs::path book = folder.path / "a.risebook";
  fs::path camera = folder.path / "Camera";
  PhotoDesk desk;

  Desk() {
    fs::create_directories(camera);
    auto script = read_script(kPhotoPour, "test");
    REQUIRE(script);
    auto fresh = Logbook::open_or_create(book);
    REQUIRE(fresh);
    const Moment now = *parse_moment("2026-03-02T05:10:00.000Z");
    REQUIRE(fresh->append_script(*script, script_entry({now, now.time_since_epoch(), "boot"})));
    desk.begin(book, camera, {});
  }
  ~Desk() { desk.end(); }
  template <class Is>
  bool comes(Is&& is) {
    const auto end = std::chrono::steady_clock::now() + 20s;
    while (!is(*desk.seen())) {
      if (std::chrono::steady_clock::now() > end) return false;
      std::this_thread::sleep_for(5ms);
    }
    return true;
  }
};

using screens::PhotosSeen;

}  // namespace

TEST_CASE("the newest photos of the camera's folder stand first; what is no photo is not there") {
  Desk at;
  photo_at(at.camera / "old.jpg", "1");
  fs::last_write_time(at.camera / "old.jpg", fs::file_time_type::clock::now() - 1h);
  fs::create_directory(at.camera / "2026-03");
  photo_at(at.camera / "2026-03" / "new.JPEG", "2");
  photo_at(at.camera / ".hidden.jpg", "3");
  photo_at(at.camera / "film.mp4", "4");
  at.desk.act(screens::FindPhotos{}, PourId{"P1"});
  REQUIRE(at.comes([](const PhotosSeen& seen) { return seen.looked; }));
  const auto files = at.desk.seen()->files;
  REQUIRE(files.size() == 2);
  CHECK(files[0].name == "new.JPEG");
  CHECK(files[1].name == "old.jpg");
  CHECK(files[1].bytes == 6);
  CHECK(newest_photos(at.camera, 1).size() == 1);
  CHECK(newest_photos(at.camera / "gone", 9).empty());
}

TEST_CASE("a photo is named by an event once it is on the disk, of its own pour only") {
  Desk at;
  const auto file = photo_at(at.camera / "face.jpg", "honeycomb");
  const Moment when = *parse_moment("2026-03-05T09:00:00.000Z");
  at.desk.act(screens::TakePhoto{file.string(), EventId{"b1"}, when, Voice{}}, PourId{"P1"});
  REQUIRE(at.comes([](const PhotosSeen& seen) { return seen.state == PhotosSeen::State::taken; }));
  CHECK(at.desk.taken(PourId{"other"}).empty());
  const auto events = at.desk.taken(PourId{"P1"});
  REQUIRE(events.size() == 1);
  CHECK(events[0].at == when);
  const auto& photo = std::get<event::Photo>(events[0].what);
  CHECK(photo.target == EventId{"b1"});
  CHECK(photo.name == "face.jpg");
  CHECK(at.desk.taken(PourId{"P1"}).empty());
  const auto book = Logbook::open(at.book, Access::read);
  REQUIRE(book);
  const auto folder = store::photos_folder(at.folder.path, book->verify()->tag);
  CHECK(store::look_at_photo(folder, photo.sha256) == store::PhotoState::whole);
}

TEST_CASE("a photo that cannot be kept says why, and nothing names it") {
  Desk at;
  std::ofstream(at.camera / "half.jpg", std::ios::binary) << "\xFF\xD8\xFF half";
  at.desk.act(screens::TakePhoto{(at.camera / "half.jpg").string(), EventId{"b1"}, {}, Voice{}},
              PourId{"P1"});
  REQUIRE(at.comes([](const PhotosSeen& seen) { return seen.state == PhotosSeen::State::failed; }));
  CHECK(at.desk.seen()->says.find("is cut off") != std::string::npos);
  CHECK(at.desk.taken(PourId{"P1"}).empty());
}

TEST_CASE("the camera's folder is the one set, else the user's pictures") {
  const test::TempFolder folder;
  const auto settings = folder.path / "screens.json";
  std::ofstream(settings) << R"({"camera_folder":"/data/DCIM"})";
  CHECK(camera_folder(settings) == "/data/DCIM");
  std::ofstream(settings) << R"({"camera_folder":"not whole"})";
  CHECK(camera_folder(settings) != "not whole");
}
