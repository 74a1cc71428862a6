// The power goes, or the disk refuses, between any two steps of writing the mirror and the note of
// the head: what either had confirmed is there afterwards.
#include <doctest/doctest.h>

#include <fmt/format.h>

#include <cstdlib>

#include "../store/rows.h"
#include "../store/samples.h"
#include "plain_fault.h"
#include "soak.h"
#include "store/book/head_note.h"
#include "store/copies/mirror.h"

using namespace rb;
using namespace rb::faults;
using samples::got;
using samples::hashes_of;
using samples::KeptRow;
using samples::next_row;
using store::HeadNoteFile;
using store::Mirror;
using Fault = PlainFaultDisk::Fault;

namespace {

const std::filesystem::path kFolder = "stick", kBook = "book/pours.risebook";

unsigned first_seed() {
  const char* given = std::getenv("RISEBOOK_SEED");
  return given ? static_cast<unsigned>(std::strtoul(given, nullptr, 10)) : 20260302U;
}
int rounds() {
  return soak::rounds(1200);
}

struct Book {
  store::BookName name = samples::some_name();
  std::vector<KeptRow> rows;
  void tap(std::mt19937& random) {
    rows.push_back(next_row(name, rows, std::string(random() % 700, 'x')));
  }
};

/// Follows the book as the mirror's thread does, until a step fails; the last row confirmed.
std::int64_t follow(PlainFaultDisk& disk, Book& book, std::int64_t confirmed, int taps) {
  auto& random = disk.random();
  auto mirror = Mirror::open(disk, kFolder, "pours", book.name, hashes_of(book.name, book.rows));
  if (!mirror) return confirmed;
  auto synced = std::min(confirmed, mirror->last());  // the rest is written again
  for (int i = 0; i < taps; ++i) {
    for (auto n = random() % 3; n > 0; --n) book.tap(random);
    const auto from = static_cast<std::size_t>(synced);
    const auto to = std::min(book.rows.size(), from + 1 + random() % 5);
    if (!mirror->add(samples::part(book.rows, from, to))) return synced;
    synced = static_cast<std::int64_t>(to);
  }
  return synced;
}

void check_mirror(PlainFaultDisk& disk, const Book& book, std::int64_t confirmed) {
  // A file that came to hold nothing readable is left, and the next number begun.
  auto content = store::read_mirror(disk, kFolder / "pours-7K3MD.riseline");
  for (int n = 2; n < 9; ++n) {
    auto next = store::read_mirror(disk, kFolder / fmt::format("pours-7K3MD-{}.riseline", n));
    if (next) content = std::move(next);
  }
  if (!content) {
    CHECK(confirmed == 0);
    return;
  }
  std::int64_t next = 1;
  for (const auto& row : content->rows) {
    REQUIRE(row.row.seq <= static_cast<std::int64_t>(book.rows.size()));
    REQUIRE(row.hash == book.rows[static_cast<std::size_t>(row.row.seq) - 1].hash);
    if (row.row.seq == next) ++next;
  }
  REQUIRE(next > confirmed);  // every confirmed row, without a gap
  if (confirmed > 0) REQUIRE(content->name);
}

/// Writes notes until a step fails; the last number confirmed.
std::int64_t note(PlainFaultDisk& disk, Book& book, std::int64_t confirmed, int taps) {
  auto file = HeadNoteFile::open(disk, kBook, book.name.uuid, hashes_of(book.name, book.rows));
  if (!file) return confirmed;
  for (int i = 0; i < taps; ++i) {
    book.tap(disk.random());
    const auto seq = static_cast<std::int64_t>(book.rows.size());
    // Refused: written again, as its thread does, unless the power is gone.
    for (int tries = 3; tries > 0; --tries) {
      if (!file->write(seq, book.rows.back().hash)) continue;
      confirmed = seq;
      break;
    }
    if (confirmed != seq) return confirmed;
  }
  return confirmed;
}

void check_note(PlainFaultDisk& disk, const Book& book, std::int64_t confirmed) {
  const auto read = store::read_note(disk, store::note_path(kBook));
  if (confirmed == 0 && read.state != store::NoteRead::State::whole) return;
  REQUIRE(read.state == store::NoteRead::State::whole);
  REQUIRE(read.note.seq >= confirmed);
  REQUIRE(read.note.seq <= static_cast<std::int64_t>(book.rows.size()));
  REQUIRE(read.note.hash == book.rows[static_cast<std::size_t>(read.note.seq) - 1].hash);
}

/// One book after another lives through a dozen faults each, `rounds()` of them in all.
template <class Live, class Check>
void through_faults(const std::vector<Fault>& faults, Live live, Check check) {
  std::mt19937 random(first_seed());
  MESSAGE("seed " << first_seed() << ", " << rounds() << " faults");
  int met = 0;
  while (met < rounds()) {
    PlainFaultDisk disk(random);
    Book book;
    std::int64_t confirmed = 0;
    for (int life = 0; life < 12 && met < rounds(); ++life) {
      const auto fault = faults[random() % faults.size()];
      disk.fail(fault, 1 + static_cast<int>(random() % 24));
      confirmed = live(disk, book, confirmed, 12);
      met += disk.failed() ? 1 : 0;
      CAPTURE(met);
      if (fault == Fault::power) disk.power_up();
      disk.fail(Fault::io, 0);
      check(disk, book, confirmed);
    }
    confirmed = live(disk, book, confirmed, 3);  // and it goes on with nothing in the way
    check(disk, book, confirmed);
  }
}

}  // namespace

TEST_CASE("power lost between any two steps costs the mirror no confirmed event") {
  through_faults({Fault::power}, follow, check_mirror);
}

TEST_CASE("power lost between any two steps costs the note of the head nothing confirmed") {
  through_faults({Fault::power}, note, check_note);
}

TEST_CASE("a disk that refuses, is full or forgets costs the mirror no confirmed event") {
  through_faults({Fault::power, Fault::io, Fault::full}, follow, check_mirror);
}

TEST_CASE("a disk that refuses, is full or forgets costs the note nothing confirmed") {
  through_faults({Fault::power, Fault::io, Fault::full}, note, check_note);
}

TEST_CASE("the plain disk of these tests does lose what was not synced") {
  std::mt19937 random(7);
  int lost = 0;
  for (int i = 0; i < 100; ++i) {
    PlainFaultDisk disk(random);
    auto file = disk.make("stick/a");
    REQUIRE(file);
    REQUIRE((*file)->write(0, "0123456789"));
    REQUIRE(disk.sync_folder("stick"));
    disk.power_up();
    lost += (*disk.open("stick/a"))->size() == 10U ? 0 : 1;
  }
  CHECK(lost > 20);
  CHECK(lost < 100);
}
