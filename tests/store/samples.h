// An invented small pour, and a folder of its own for each test.
#pragma once

#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "pour/log/event_json.h"
#include "pour/log/script.h"
#include "store/book/logbook.h"

namespace rb::samples {

namespace fs = std::filesystem;

/// A folder that goes with the test.
class Folder {
 public:
  Folder() {
    auto name = (fs::temp_directory_path() / "pourbook-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  [[nodiscard]] fs::path operator/(const char* name) const { return path_ / name; }
  [[nodiscard]] const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

/// The value of a Result, or the test ends with its words.
template <class T>
T got(Result<T>&& result) {
  if (!result) FAIL(to_text(result.error()));
  return std::move(*result);
}

inline Moment five_past(int minutes) {
  return *parse_moment("2026-03-02T05:00:00.000Z") + std::chrono::minutes{minutes};
}

inline Entry entry_at(int minutes) {
  return {five_past(minutes), seconds(1000.25 + 60.0 * minutes), "a-start-of-the-tablet"};
}

inline std::string open_line(const std::string& pour) {
  return R"({"at":"2026-03-02T05:00:00.000Z","by":"fm","do":"pour-open","pour":")" + pour +
         R"(","plan":{"site":"Yard","name":"Test wall","units":"si",
"people":[{"id":"fm","name":"A. Foreman","role":"foreman"}],
"mixes":[{"id":"A","unit_weight":24,"slump":0.15,"initial_set_h":5}],
"elements":[{"id":"W1","kind":"wall","length":6,"height":3,"thickness":0.3,"lifts":[0.6,1.2],
"rows":[{"id":"R1","side":"near","z":0.45,"motors":[{"id":"M1","x":1.5,"reach_x":0.9,"reach_z":0.75}]}]}]}})";
}

inline Event event_of(const std::string& line) {
  std::string one_line = line;
  std::replace(one_line.begin(), one_line.end(), '\n', ' ');
  return got(parse_event(one_line, "sample"));
}

inline Event open_event(const std::string& pour) {
  return event_of(open_line(pour));
}

/// So many letters of four bytes each: the longest text a note may have fills pages.
inline std::string wide(std::size_t letters) {
  std::string text;
  for (std::size_t i = 0; i < letters; ++i) text += "\U00010348";
  return text;
}

inline Event note(const std::string& text, int minutes = 1) {
  return {.id = {},
          .at = five_past(minutes),
          .by = PersonId{"fm"},
          .what = event::Note{.text = text, .element = {}, .lift = {}},
          .extra = {},
          .entry = {}};
}

inline Event happening(Happening what, int minutes = 2) {
  auto event = note("", minutes);
  event.what = std::move(what);
  return event;
}

/// A book with the pour "N1" open in it.
inline Logbook book_with_pour(const fs::path& path, const std::string& pour = "N1") {
  auto book = got(Logbook::create(path));
  got(book.append(PourId{pour}, open_event(pour), entry_at(0)));
  return book;
}

/// A short script with corrections, its line ids chosen to mislead.
inline Script script(const std::string& pour) {
  std::string text = open_line(pour);
  std::replace(text.begin(), text.end(), '\n', ' ');
  text += R"(
{"at":"2026-03-02T05:10:00.000Z","by":"fm","do":"lift-start","element":"W1","lift":1,"id":"a"}
{"at":"2026-03-02T05:20:00.000Z","by":"fm","do":"top","element":"W1","height":0.5,"id":"b"}
{"at":"2026-03-02T05:21:00.000Z","by":"fm","do":"fix","target":"b","set":{"height":0.55},"why":"misread","id":"c"}
{"at":"2026-03-02T05:30:00.000Z","by":"fm","do":"note","text":"rain","id":"d","entered":"2026-03-02T06:00:00.000Z","mono":12.5,"boot":"another"}
{"at":"2026-03-02T05:31:00.000Z","by":"fm","do":"strike","target":"d","why":"wrong pour"}
{"at":"2026-03-03T05:00:00.000Z","by":"fm","do":"blemish","element":"W1","side":"near","kind":"honeycomb","x":1,"z":0.2,"w":0.3,"h":0.2,"id":"e"}
{"at":"2026-03-03T05:01:00.000Z","by":"fm","do":"blemish","element":"W1","side":"near","kind":"bug holes","x":2,"z":0.2,"w":0.3,"h":0.2,"id":"f"}
{"at":"2026-03-03T05:02:00.000Z","by":"fm","do":"repair","target":"e","note":"chipped and patched","id":"g"}
{"at":"2026-03-03T05:03:00.000Z","by":"fm","do":"fix","target":"g","set":{"target":"f","note":"rubbed"},"why":"the other one"}
)";
  return got(read_script(text, "sample.jsonl"));
}

inline std::string bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream all;
  all << file.rdbuf();
  return all.str();
}

}  // namespace rb::samples
