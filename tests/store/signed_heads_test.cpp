// Heads signed with the key of the device, and a book held against what was told of it elsewhere.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>
#include <sys/stat.h>

#include <chrono>
#include <fstream>
#include <sstream>
#include <thread>

#include "base/short_code.h"
#include "samples.h"
#include "store/book/head_note.h"
#include "store/copies/against.h"
#include "store/copies/copy_book.h"
#include "store/copies/mirror.h"
#include "store/copies/mirror_keeper.h"
#include "store/file/device_key.h"
#include "store/keep/note_keeper.h"

using namespace rb;
using namespace rb::samples;
using store::DeviceKey;

namespace {

DeviceKey key_in(const fs::path& folder) {
  return got(DeviceKey::ready(folder));
}

/// A book whose pour was closed and signed, then noted in.
Logbook closed_book(const fs::path& path, const DeviceKey& key) {
  auto book = book_with_pour(path);
  got(book.append(PourId{"N1"}, note("rain"), entry_at(1)));
  REQUIRE(book.sign_with(key));
  got(book.append(PourId{"N1"}, happening(event::PourClose{}, 3), entry_at(3)));
  got(book.append(PourId{"N1"}, happening(event::Sign{event::Role::foreman, "accepted", ""}, 4),
                  entry_at(4)));
  got(book.append(PourId{"N1"}, note("after", 5), entry_at(5)));
  return book;
}

std::string answer(const fs::path& book, const std::string& given, bool had) {
  const auto answers = got(store::hold_against(book, {given}));
  REQUIRE(answers.size() == 1);
  CAPTURE(answers[0].says);
  CHECK(answers[0].had == had);
  return answers[0].says;
}

void tamper(const fs::path& path, const std::string& sql) {
  SQLite::Database raw(path.string(), SQLite::OPEN_READWRITE);
  for (const char* trigger : {"events_never_change", "events_never_go", "heads_never_change"}) {
    raw.exec(std::string("DROP TRIGGER ") + trigger);
  }
  raw.exec(sql);
}

bool tells(const VerifyReport& report, const std::string& words) {
  return std::any_of(report.faults.begin(), report.faults.end(), [&](const std::string& fault) {
    return fault.find(words) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("the key of the device is made once, private to the user, and stays") {
  const Folder folder;
  const auto key = key_in(folder / "data");
  const auto again = key_in(folder / "data");
  CHECK(again.public_key() == key.public_key());
  struct stat is {};
  REQUIRE(stat((folder / "data/device.key").c_str(), &is) == 0);
  CHECK((is.st_mode & 0777U) == 0600U);
  CHECK(key_in(folder / "other").public_key() != key.public_key());
  const store::HeadClaim claim{std::string(36, 'a'), 7, {}, 1};
  const auto signature = key.sign(claim);
  CHECK(store::holds(claim, again.public_key(), signature));
  auto other = claim;
  other.seq = 8;
  CHECK(!store::holds(other, key.public_key(), signature));
}

TEST_CASE("a key file that is no key, a link, or open to others is left as it is and not used") {
  const Folder folder;
  const auto file = folder / "device.key";
  SUBCASE("no key") {
    std::ofstream(file) << "something else\n";
  }
  SUBCASE("empty") {
    std::ofstream(file) << "";
  }
  SUBCASE("a link") {
    key_in(folder / "other");
    fs::create_symlink(folder / "other/device.key", file);
  }
  SUBCASE("open to others") {
    key_in(folder.path());
    fs::permissions(file, fs::perms::group_read, fs::perm_options::add);
  }
  const auto before = bytes_of(file);
  const auto key = DeviceKey::ready(folder.path());
  REQUIRE(!key);
  CHECK(key.error().remedy.text().find("kept all the same") != std::string::npos);
  CHECK(bytes_of(file) == before);
}

TEST_CASE("the head is signed at each close and each signature, also of a script's") {
  const Folder folder;
  const auto key = key_in(folder / "data");
  auto book = closed_book(folder / "pours.risebook", key);
  auto closed = script("N2");
  closed.events.push_back(happening(event::PourClose{}, 3000));
  got(book.append_script(closed, entry_at(3000)));
  const auto report = got(book.verify());
  CHECK(report.sound());
  REQUIRE(report.signed_heads.size() == 3);
  CHECK(report.signed_heads[0].seq == 3);
  CHECK(report.signed_heads[1].seq == 4);
  CHECK(report.signed_heads[2].seq == 16);
  CHECK(report.signed_heads[0].key == store::to_hex(key.public_key()));
  CHECK(report.signed_heads[2].hash == got(book.head_hash()));
  CHECK(report.last == 16);
}

TEST_CASE("a book without a key is kept unsigned") {
  const Folder folder;
  auto book = book_with_pour(folder / "pours.risebook");
  got(book.append(PourId{"N1"}, happening(event::PourClose{}, 3), entry_at(3)));
  const auto report = got(book.verify());
  CHECK(report.sound());
  CHECK(report.signed_heads.empty());
}

TEST_CASE("a signature that was tampered with, or does not fit the event, is a fault") {
  const Folder folder;
  const auto path = folder / "pours.risebook";
  { const auto book = closed_book(path, key_in(folder / "data")); }
  SUBCASE("signature") {
    tamper(path, "UPDATE heads SET signature = zeroblob(64) WHERE seq = 3");
  }
  SUBCASE("moment") {
    tamper(path, "UPDATE heads SET made = made + 1 WHERE seq = 3");
  }
  SUBCASE("number") {
    tamper(path, "UPDATE heads SET seq = 2 WHERE seq = 3");
  }
  SUBCASE("hash") {
    tamper(path, "UPDATE heads SET hash = zeroblob(32) WHERE seq = 3");
  }
  const auto report = got(got(Logbook::open(path, Access::read)).verify());
  CHECK(tells(report, "signature of the head"));
  CHECK(report.signed_heads.size() == 1);
}

TEST_CASE("an event changed behind a signature, its chain made anew, is shown by the signature") {
  const Folder folder;
  const auto path = folder / "pours.risebook";
  { const auto book = closed_book(path, key_in(folder / "data")); }
  tamper(path, "UPDATE events SET hash = zeroblob(32) WHERE seq = 3");
  const auto report = got(got(Logbook::open(path, Access::read)).verify());
  CHECK(tells(report, "is not the one that device"));
}

TEST_CASE("verify tells what the note beside the book knows") {
  const Folder folder;
  const auto path = folder / "pours.risebook";
  {
    auto book = book_with_pour(path);
    CHECK(!got(book.verify()).vouched);
    { const store::NoteKeeper note(path); }
    CHECK(got(book.verify()).vouched == 1);
    got(book.append(PourId{"N1"}, note("rain"), entry_at(1)));
    CHECK(got(book.verify()).vouched == 1);
    got(book.append(PourId{"N1"}, note("more rain"), entry_at(1)));
    { const store::NoteKeeper note(path); }
    CHECK(got(book.verify()).vouched == 3);
    CHECK(got(book.verify()).sound());
  }
  SUBCASE("events cut off") {
    tamper(
        path,
        "DELETE FROM events WHERE seq > 1; DROP TRIGGER head_only_follows; UPDATE head SET seq = "
        "1, hash = (SELECT hash FROM events WHERE seq = 1)");
    const auto report = got(got(Logbook::open(path, Access::read)).verify());
    CHECK(tells(report, "were acknowledged and are not here"));
  }
  SUBCASE("damaged note") {
    std::ofstream(store::note_path(path), std::ios::binary) << "nothing";
    const auto report = got(got(Logbook::open(path, Access::read)).verify());
    CHECK(report.note_damaged);
    CHECK(!report.vouched);
    CHECK(report.sound());
  }
}

TEST_CASE("a hash, code, record, note or copy of an earlier head is known by the book") {
  const Folder folder;
  const auto path = folder / "pours.risebook";
  auto book = book_with_pour(path);
  got(book.append(PourId{"N1"}, note("rain"), entry_at(1)));
  const auto hash = got(book.head_hash());
  const auto copy = got(store::copy_book(path, folder / "copies")).file;
  { const store::NoteKeeper note(path); }
  fs::copy_file(store::note_path(path), folder / "earlier.head");
  std::ofstream(folder / "record.csv") << "head," << hash << "\nother," << std::string(64, '0');
  for (int i = 0; i < 3; ++i) got(book.append(PourId{"N1"}, note("more"), entry_at(2)));
  const std::string words = ": the book's event 2 of 5 had it; 3 were added since";
  std::string upper = hash;
  for (char& c : upper) c = static_cast<char>(std::toupper(c));
  for (const auto& given : {hash, upper, short_code(hash), copy.string(),
                            (folder / "record.csv").string(), (folder / "earlier.head").string()}) {
    CHECK(answer(path, given, true) == given + words);
  }
  auto spaced = short_code(hash);
  std::replace(spaced.begin(), spaced.end(), '-', ' ');
  for (char& c : spaced) c = static_cast<char>(std::tolower(c));
  CHECK(answer(path, spaced, true) == spaced + words);
  CHECK(answer(path, got(book.head_hash()), true).find("none was added since") !=
        std::string::npos);
}

TEST_CASE("what this book never had is told, and what is no hash at all is asked for again") {
  const Folder folder;
  const auto path = folder / "pours.risebook";
  auto book = book_with_pour(path);
  const auto copy = got(store::copy_book(path, folder / "copies")).file;
  auto other = book_with_pour(folder / "other.risebook");
  CHECK(answer(path, got(other.head_hash()), false).find("never had it") != std::string::npos);
  CHECK(answer(path, short_code(got(other.head_hash())), false).find("never had it") !=
        std::string::npos);
  CHECK(answer(path, (folder / "other.risebook").string(), false).find("another book") !=
        std::string::npos);
  {
    auto fork = got(Logbook::open(copy, Access::write));
    got(fork.append(PourId{"N1"}, note("on the other tablet"), entry_at(1)));
  }
  CHECK(answer(path, copy.string(), false).find("-2 is in it and not here") != std::string::npos);
  got(book.append(PourId{"N1"}, note("on this tablet"), entry_at(1)));
  CHECK(answer(path, copy.string(), false).find("never had its event") != std::string::npos);
  std::ofstream(folder / "letter.txt") << "no hash here";
  for (const auto& nothing : {std::string("7K3MD"), (folder / "letter.txt").string()}) {
    const auto answers = store::hold_against(path, {nothing});
    REQUIRE(!answers);
    CHECK(answers.error().kind == Error::Kind::input);
  }
}

namespace {

/// The book's mirror, once it has all of it.
fs::path mirror_of(const fs::path& book, const fs::path& folder, std::int64_t last) {
  fs::create_directories(folder);
  store::MirrorKeeper keeper(book, folder, {});
  for (int i = 0; i < 1000 && keeper.status().mirrored != last; ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds{10});
  }
  REQUIRE(keeper.status().mirrored == last);
  return keeper.status().file;
}

}  // namespace

TEST_CASE("the mirror carries signed heads, and a book restored from it has them again") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  const auto book = closed_book(path, key_in(folder.path()));
  const auto mirror = mirror_of(path, folder / "stick", 5);
  const auto content = got(store::read_mirror(store::plain_disk(), mirror));
  CHECK(content.rows.size() == 5);
  CHECK(content.heads.size() == 2);
  CHECK(content.damaged.empty());
  CHECK(answer(path, mirror.string(), true).find("event 5 of 5") != std::string::npos);
  const auto report = got(store::restore_book(mirror, folder / "again.risebook"));
  CHECK(report.lacks.empty());
  const auto again = got(got(Logbook::open(folder / "again.risebook", Access::read)).verify());
  CHECK(again.sound());
  CHECK(again.signed_heads == got(book.verify()).signed_heads);
  // A second keeper finds nothing to add.
  const auto before = bytes_of(mirror);
  CHECK(mirror_of(path, folder / "stick", 5) == mirror);
  CHECK(bytes_of(mirror) == before);
}

TEST_CASE("a head that the mirror was cut short of is written again") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  {
    auto book = book_with_pour(path);
    REQUIRE(book.sign_with(key_in(folder.path())));
    got(book.append(PourId{"N1"}, happening(event::PourClose{}, 3), entry_at(3)));
  }
  const auto mirror = mirror_of(path, folder / "stick", 2);
  auto text = bytes_of(mirror);
  const auto head = text.find("{\"head\"");
  REQUIRE(head != std::string::npos);
  fs::resize_file(mirror, head + 20);
  CHECK(mirror_of(path, folder / "stick", 2) == mirror);
  for (int i = 0; i < 100 && got(store::read_mirror(store::plain_disk(), mirror)).heads.empty();
       ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds{10});
  }
  CHECK(got(store::read_mirror(store::plain_disk(), mirror)).heads.size() == 1);
}

TEST_CASE("any one byte changed in a signed head's line is noticed or changes nothing") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  closed_book(path, key_in(folder.path()));
  const auto whole =
      got(store::read_mirror(store::plain_disk(), mirror_of(path, folder / "stick", 5)));
  REQUIRE(!whole.heads.empty());
  auto line = store::line_of(whole.heads.front());
  line.pop_back();
  REQUIRE(store::read_head(line) == whole.heads.front());
  for (std::size_t at = 0; at < line.size(); ++at) {
    for (const char to : {' ', 'x', '1', '"', '\0'}) {
      auto changed = line;
      changed[at] = to;
      const auto read = store::read_head(changed);
      CAPTURE(at);
      if (read) CHECK(*read == whole.heads.front());
    }
  }
  auto other = whole.heads.front();
  other.made += 1;
  const auto forged = folder / "forged.riseline";
  std::ofstream(forged) << store::line_of(*whole.name) << store::line_of(other);
  const auto content = got(store::read_mirror(store::plain_disk(), forged));
  CHECK(content.heads.empty());
  REQUIRE(content.damaged.size() == 1);
  CHECK(content.damaged[0].find("does not hold") != std::string::npos);
}

TEST_CASE("a mirror of the first version is read, and left as it is when a new one is begun") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  closed_book(path, key_in(folder.path()));
  const auto mirror = mirror_of(path, folder / "stick", 5);
  std::string old;
  std::istringstream lines(bytes_of(mirror));
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with("{\"head\"")) continue;
    const auto at = line.find("\"version\":2");
    if (at != std::string::npos) line[at + 10] = '1';
    old += line + "\n";
  }
  std::ofstream(mirror, std::ios::binary) << old;
  const auto content = got(store::read_mirror(store::plain_disk(), mirror));
  CHECK(content.rows.size() == 5);
  CHECK(content.damaged.empty());
  CHECK(got(store::restore_book(mirror, folder / "again.risebook")).lacks.empty());
  const auto fresh = mirror_of(path, folder / "stick", 5);
  CHECK(fresh != mirror);
  CHECK(bytes_of(mirror) == old);
  CHECK(got(store::read_mirror(store::plain_disk(), fresh)).heads.size() == 2);
}
