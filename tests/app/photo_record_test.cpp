// The whole way of a photo: taken by the command, kept beside the book, shown in the record; and
// named there when its file is gone or another. ImageMagick makes the photo.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <iterator>

#include "cli/commands.h"
#include "cli/write_day.h"
#include "pour/log/script.h"
#include "store/book/logbook.h"
#include "store/photos/photo.h"
#include "temp_folder.h"

using namespace rb;
namespace fs = std::filesystem;

namespace {

const char* const kBlemishedPour =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"day","do":"pour-open","pour":"P1","plan":{)"
    R"("people":[{"id":"day","name":"D","role":"foreman"}],)"
    R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","length":6,"height":3,"thickness":0.3,"bays":[3,3],"rows":[]}]}})"
    "\n"
    R"({"at":"2026-03-02T06:00:00.000Z","by":"day","do":"strip","element":"W1","side":"near"})"
    "\n"
    R"({"at":"2026-03-02T07:00:00.000Z","by":"day","do":"blemish","element":"W1","side":"near",)"
    R"("kind":"honeycomb","x":1,"z":1,"w":0.4,"h":0.3,"note":"behind a tie"})"
    "\n";

struct PhotoShot {
  test::TempFolder folder;
  fs::path file = folder.path / "a.risebook";
  fs::path photo{};

  PhotoShot() {
    const auto script = read_script(kBlemishedPour, "test");
    REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
    std::string blemish, tag;
    {
      auto book = Logbook::open_or_create(file);
      REQUIRE(book);
      const Moment now = *parse_moment("2026-03-02T08:00:00.000Z");
      REQUIRE(book->append_script(*script, script_entry({now, now.time_since_epoch(), "boot"})));
      blemish = book->events(PourId{"P1"})->back().id.text;
      tag = book->verify()->tag;
    }
    const fs::path taken = folder.path / "face.jpg";
    REQUIRE(std::system(fmt::format("convert -size 400x300 gradient:red-blue '{}'", taken.string())
                            .c_str()) == 0);
    PhotoCommand wish;
    wish.book = file;
    wish.event = blemish;
    wish.file = taken;
    wish.by = "day";
    REQUIRE(run_photo(wish) == Exit::fine);
    for (const auto& entry : fs::directory_iterator{store::photos_folder(folder.path, tag)}) {
      photo = entry.path();
    }
    REQUIRE(fs::file_size(photo) == fs::file_size(taken));
  }

  // What the record says now, in one form.
  [[nodiscard]] std::string record(Format format, Language language = {}) const {
    const auto book = Logbook::open(file, Access::read);
    REQUIRE(book);
    const auto day = plain_day(*parse_day("2026-03-02"), std::chrono::minutes{0});
    const auto written = write_day(*book, day, folder.path, {format}, language);
    REQUIRE_MESSAGE(written, (written ? "" : to_text(written.error())));
    std::ifstream in{written->files.front(), std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
  }
};

bool record_says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a photo taken by the command is shown in the record; one lost or altered is named") {
  const PhotoShot shot;
  const std::string hash = shot.photo.stem().string();
  const std::string json = shot.record(Format::json);
  CHECK(record_says(json, "\"sha256\": \"" + hash + "\""));
  CHECK(record_says(json, "\"standing\": \"whole\""));
  CHECK(record_says(shot.record(Format::html), "data:image/jpeg;base64,"));
  const std::string spanish = shot.record(Format::html, *Language::of_code("es"));
  CHECK(record_says(spanish, "Defecto 1: "));
  CHECK(record_says(shot.record(Format::pdf), "/DCTDecode"));
  const std::string was = [&] {
    std::ifstream in{shot.photo, std::ios::binary};
    return std::string{std::istreambuf_iterator<char>{in}, {}};
  }();
  std::ofstream{shot.photo, std::ios::binary} << was << "more";
  CHECK(record_says(shot.record(Format::json), "\"standing\": \"altered\""));
  std::string page = shot.record(Format::html);
  CHECK(record_says(page, "This photo was altered"));
  CHECK_FALSE(record_says(page, "data:image/jpeg"));
  fs::remove(shot.photo);
  CHECK(record_says(shot.record(Format::json), "\"standing\": \"missing\""));
  CHECK(record_says(shot.record(Format::html), "This photo is missing"));
  CHECK_FALSE(record_says(shot.record(Format::pdf), "/DCTDecode"));
  CHECK(record_says(shot.record(Format::html, *Language::of_code("es")), "Falta esta foto"));
}
