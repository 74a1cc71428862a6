// The note of the head beside a book tells what a shortened chain cannot.
#include "store/book/head_note.h"

#include <doctest/doctest.h>

#include <fstream>

#include "rows.h"
#include "samples.h"

using namespace rb;
using namespace rb::samples;
using store::HeadNoteFile;
using store::NoteRead;
using store::plain_disk;

namespace {

struct Noted {
  Folder folder;
  store::BookName name = some_name();
  std::vector<KeptRow> rows = some_rows(name, 78);
  fs::path book = folder / "pours.risebook";

  HeadNoteFile open() {
    return got(HeadNoteFile::open(plain_disk(), book, name.uuid, hashes_of(name, rows)));
  }
  void write(std::size_t from, std::size_t to) {
    auto note = open();
    for (auto i = from; i <= to; ++i) {
      REQUIRE(note.write(static_cast<std::int64_t>(i), rows[i - 1].hash));
    }
  }
  store::NoteVerdict judge() {
    return got(store::judge_notes(store::read_notes(plain_disk(), book), name,
                                  static_cast<std::int64_t>(rows.size()), hashes_of(name, rows)));
  }
  NoteRead read() { return store::read_note(plain_disk(), store::note_path(book)); }
};

}  // namespace

TEST_CASE("the note tells the last acknowledged number and hash") {
  Noted noted;
  CHECK(noted.read().state == NoteRead::State::none);
  noted.write(1, 5);
  CHECK(noted.read().note == store::HeadNote{noted.name.uuid, 5, noted.rows[4].hash});
  noted.write(6, 6);  // opened again
  CHECK(noted.read().note.seq == 6);
  CHECK(!noted.read().one_damaged);
}

TEST_CASE("a book cut off behind its note misses events by name") {
  Noted noted;
  noted.write(76, 78);
  CHECK(noted.judge().faults.empty());
  CHECK(noted.judge().vouched == 78);
  noted.rows.resize(68);
  const auto faults = noted.judge().faults;
  REQUIRE(faults.size() == 1);
  CHECK(faults[0] ==
        "Events 7K3MD-69 to 7K3MD-78 were acknowledged and are not here (pours.risebook.head)");
}

TEST_CASE("what a note tells of a cut-off book is not written over by the taps that follow") {
  Noted noted;
  noted.write(76, 78);
  noted.rows.resize(68);
  noted.rows.push_back(next_row(noted.name, noted.rows, "after"));
  noted.write(69, 69);
  const auto verdict = noted.judge();
  REQUIRE(verdict.faults.size() == 1);
  CHECK(verdict.faults[0].find("7K3MD-70 to 7K3MD-78") != std::string::npos);
  CHECK(verdict.vouched == 69);
  while (noted.rows.size() < 80) noted.rows.push_back(next_row(noted.name, noted.rows, "after"));
  noted.write(80, 80);
  REQUIRE(noted.judge().faults.size() == 1);
  CHECK(noted.judge().faults[0].find("7K3MD-78 is not the one that was acknowledged") !=
        std::string::npos);
}

TEST_CASE("any one byte changed in the note costs one step of it or is told") {
  Noted noted;
  noted.write(10, 11);
  const auto path = store::note_path(noted.book);
  const auto whole = bytes_of(path);
  REQUIRE(whole.size() == 4096 + 256);
  for (std::size_t at = 0; at < whole.size(); ++at) {
    if (at >= 256 && at < 4096) continue;  // between the two lines: never written
    auto changed = whole;
    changed[at] = static_cast<char>(changed[at] ^ 0x10);
    std::ofstream(path, std::ios::binary) << changed;
    const auto read = noted.read();
    CAPTURE(at);
    REQUIRE(read.state == NoteRead::State::whole);
    CHECK(read.one_damaged);
    CHECK(read.note.seq == (at < 256 ? 11 : 10));
  }
  std::ofstream(path, std::ios::binary) << "not a note at all";
  CHECK(noted.read().state == NoteRead::State::damaged);
  CHECK(noted.judge().damaged);
  CHECK(!noted.judge().vouched);
}

TEST_CASE("a note that is a link or another book's is left as it is") {
  Noted noted;
  const auto path = store::note_path(noted.book);
  const auto other = noted.folder / "other.txt";
  std::ofstream(other) << "of someone else";
  SUBCASE("symbolic link") {
    fs::create_symlink(other, path);
  }
  SUBCASE("hard link") {
    fs::create_hard_link(other, path);
  }
  SUBCASE("another book's") {
    auto note = got(HeadNoteFile::open(plain_disk(), noted.book, std::string(36, 'b'),
                                       hashes_of(noted.name, noted.rows)));
    REQUIRE(note.write(3, noted.rows[2].hash));
  }
  const auto was = bytes_of(path);
  noted.write(1, 4);
  CHECK(noted.read().note.seq == 4);
  CHECK(noted.read().note.uuid == noted.name.uuid);
  CHECK(bytes_of(other) == "of someone else");
  CHECK(bytes_of(noted.folder / "pours.risebook.head.1") == was);
}
