// The mirror and the note follow a real book while it is written.
#include "store/copies/mirror_keeper.h"

#include <doctest/doctest.h>

#include <chrono>
#include <thread>

#include "samples.h"
#include "store/book/head_note.h"
#include "store/keep/note_keeper.h"

using namespace rb;
using namespace rb::samples;
using store::MirrorKeeper;
using store::MirrorStatus;
using store::plain_disk;

namespace {

template <class Is>
bool within(std::chrono::seconds most, Is&& is) {
  const auto end = std::chrono::steady_clock::now() + most;
  while (!is()) {
    if (std::chrono::steady_clock::now() > end) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds{5});
  }
  return true;
}

struct Kept {
  Folder folder;
  fs::path file = folder / "pours.risebook";
  fs::path stick = folder / "stick";
  Logbook book = book_with_pour(file);
  std::int64_t seq = 1;

  Kept() { fs::create_directory(stick); }
  MirrorKeeper keeper() {
    return {file, stick, {.now = [] { return five_past(0); }, .changed = {}}};
  }
  void tap(MirrorKeeper& keeper) {
    got(book.append(PourId{"N1"}, note("tap", static_cast<int>(seq)),
                    entry_at(static_cast<int>(seq))));
    ++seq;
    keeper.note_kept(seq, five_past(static_cast<int>(seq) - 1));
  }
  store::MirrorContent content(const MirrorKeeper& keeper) {
    return got(store::read_mirror(plain_disk(), keeper.status().file));
  }
};

}  // namespace

TEST_CASE("every tap goes to the mirror as it is kept") {
  Kept kept;
  auto keeper = kept.keeper();
  for (int i = 0; i < 20; ++i) kept.tap(keeper);
  REQUIRE(within(std::chrono::seconds{10}, [&] { return keeper.status().mirrored == kept.seq; }));
  CHECK(keeper.status().behind() == 0);
  CHECK(!keeper.status().since);
  CHECK(keeper.status().same_disk);
  const auto content = kept.content(keeper);
  CHECK(content.rows.size() == 21);
  CHECK(content.damaged.empty());
  CHECK(content.name->uuid == kept.book.uuid());
  CHECK(store::to_hex(content.rows.back().hash) == got(kept.book.head_hash()));
}

TEST_CASE("a stick pulled is waited for, told of, and caught up with") {
  Kept kept;
  auto keeper = kept.keeper();
  REQUIRE(within(std::chrono::seconds{10}, [&] { return keeper.status().mirrored == 1; }));
  fs::rename(kept.stick, kept.folder / "pulled");
  for (int i = 0; i < 3; ++i) kept.tap(keeper);
  REQUIRE(within(std::chrono::seconds{10}, [&] { return keeper.status().trouble.has_value(); }));
  const auto status = keeper.status();
  CHECK(status.trouble->kind == store::MirrorTrouble::Kind::folder_gone);
  CHECK(status.behind() == 3);
  CHECK(status.since == five_past(1));
  CHECK(!fs::exists(kept.stick));  // no folder of its name is made in its place
  fs::rename(kept.folder / "pulled", kept.stick);
  REQUIRE(within(std::chrono::seconds{10}, [&] { return keeper.status().mirrored == kept.seq; }));
  CHECK(!keeper.status().trouble);
  CHECK(kept.content(keeper).missing().empty());
}

TEST_CASE("a stick pulled while nobody taps is noticed too") {
  Kept kept;
  auto keeper = kept.keeper();
  REQUIRE(within(std::chrono::seconds{10}, [&] { return keeper.status().mirrored == 1; }));
  fs::rename(kept.stick, kept.folder / "pulled");
  CHECK(within(std::chrono::seconds{10}, [&] { return keeper.status().trouble.has_value(); }));
}

TEST_CASE("what was kept while no program ran the mirror is caught up with at the next start") {
  Kept kept;
  {
    auto keeper = kept.keeper();
    kept.tap(keeper);
  }
  for (int i = 0; i < 300; ++i) {
    got(kept.book.append(PourId{"N1"}, note("tap", 5), entry_at(5)));
    ++kept.seq;
  }
  auto keeper = kept.keeper();
  REQUIRE(within(std::chrono::seconds{10}, [&] { return keeper.status().mirrored == kept.seq; }));
  CHECK(kept.content(keeper).rows.size() == 302);
}

TEST_CASE("the program's end waits for the mirror to have the last tap") {
  Kept kept;
  fs::path file;
  {
    auto keeper = kept.keeper();
    REQUIRE(within(std::chrono::seconds{10}, [&] { return keeper.status().mirrored == 1; }));
    file = keeper.status().file;
    kept.tap(keeper);
  }
  CHECK(got(store::read_mirror(plain_disk(), file)).rows.size() == 2);
}

TEST_CASE("a mirror goes to another folder when told, and to none") {
  Kept kept;
  const auto other = kept.folder / "other";
  fs::create_directory(other);
  auto keeper = kept.keeper();
  REQUIRE(within(std::chrono::seconds{10}, [&] { return keeper.status().mirrored == 1; }));
  keeper.use(other);
  kept.tap(keeper);
  REQUIRE(within(std::chrono::seconds{10}, [&] { return keeper.status().mirrored == 2; }));
  CHECK(keeper.status().file.parent_path() == other);
  keeper.use({});
  kept.tap(keeper);
  std::this_thread::sleep_for(std::chrono::milliseconds{100});
  CHECK(keeper.status().folder.empty());
  CHECK(got(store::read_mirror(plain_disk(),
                               other / fs::path("pours-" + kept.book.tag() + ".riseline")))
            .rows.size() == 2);
}

TEST_CASE("the note of the head follows each tap") {
  Kept kept;
  auto mirror = kept.keeper();
  store::NoteKeeper note(kept.file);
  for (int i = 0; i < 10; ++i) {
    kept.tap(mirror);
    note.note_kept();
    REQUIRE(within(std::chrono::seconds{10}, [&] { return note.status().noted == kept.seq; }));
    const auto read = store::read_note(plain_disk(), store::note_path(kept.file));
    CHECK(read.note.seq == kept.seq);
    CHECK(store::to_hex(read.note.hash) == got(kept.book.head_hash()));
  }
}
