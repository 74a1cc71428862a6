// Signatures of people, looked at offline: each that does not hold is named, with whose it is and
// which event it is about; one who makes the whole chain anew is told all the same.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include "pour/log/fold.h"
#include "pour/outlook/signatures.h"
#include "signed_pour.h"
#include "store/file/chain.h"

using namespace rb;
using namespace rb::samples;

namespace {

const PourId kPour{"N1"};

bool tells(const VerifyReport& report, const std::string& words) {
  return std::any_of(report.faults.begin(), report.faults.end(), [&](const std::string& fault) {
    return fault.find(words) != std::string::npos;
  });
}

std::string all_of(const VerifyReport& report) {
  std::string text;
  for (const std::string& fault : report.faults) text += fault + '\n';
  return text;
}

/// Changes the line of an event and makes every hash behind it anew, as somebody would who wants
/// the book to look untouched and has no key.
void forge(const fs::path& path, std::int64_t seq, const std::string& old,
           const std::string& with) {
  SQLite::Database raw(path.string(), SQLite::OPEN_READWRITE);
  std::vector<std::string> triggers;
  SQLite::Statement named(raw, "SELECT name FROM sqlite_master WHERE type = 'trigger'");
  while (named.executeStep()) triggers.push_back(named.getColumn(0).getString());
  named.reset();
  for (const std::string& trigger : triggers) raw.exec("DROP TRIGGER " + trigger);
  SQLite::Statement rows(raw,
                         "SELECT seq, pour, id, line, entered, steady, boot, kept, prev_hash FROM "
                         "events ORDER BY seq");
  store::Hash previous{};
  bool changed = false;
  while (rows.executeStep()) {
    store::Row row;
    row.seq = rows.getColumn(0).getInt64();
    row.pour = rows.getColumn(1).getString();
    row.id = rows.getColumn(2).getString();
    row.line = rows.getColumn(3).getString();
    row.entered = rows.getColumn(4).getInt64();
    row.steady = rows.getColumn(5).getDouble();
    row.boot = rows.getColumn(6).getString();
    row.kept = rows.getColumn(7).getInt64();
    const auto before = rows.getColumn(8);
    std::copy_n(static_cast<const unsigned char*>(before.getBlob()), row.previous.size(),
                row.previous.begin());
    if (changed) row.previous = previous;
    if (row.seq == seq) {
      const auto at = row.line.find(old);
      REQUIRE(at != std::string::npos);
      row.line.replace(at, old.size(), with);
      changed = true;
    }
    previous = store::hash_of(row);
    SQLite::Statement put(raw, "UPDATE events SET line = ?, prev_hash = ?, hash = ? WHERE seq = ?");
    put.bind(1, row.line);
    put.bind(2, row.previous.data(), static_cast<int>(row.previous.size()));
    put.bind(3, previous.data(), static_cast<int>(previous.size()));
    put.bind(4, row.seq);
    put.exec();
  }
  SQLite::Statement head(raw, "UPDATE head SET hash = ?");
  head.bind(1, previous.data(), static_cast<int>(previous.size()));
  head.exec();
}

VerifyReport looked(const fs::path& path) {
  return got(got(Logbook::open(path, Access::read)).verify());
}

}  // namespace

TEST_CASE("signatures that hold are told with key, person, role and what they are over") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  keep_signed_pour(book);
  const auto report = got(book.verify());
  CAPTURE(all_of(report));
  CHECK(report.sound());
  REQUIRE(report.people.size() == 2);
  CHECK(report.people[0].by == PersonId{"fm"});
  CHECK(report.people[0].role == event::Role::foreman);
  CHECK(report.people[0].number == 7);
  CHECK(report.people[0].event.text == book.tag() + "-8");
  CHECK_FALSE(report.people[0].elsewhere);
  CHECK(report.people[1].by == PersonId{"qi"});
  CHECK(got(book.verify({kPour})).people == report.people);
  const auto state = got(fold(got(book.events(kPour))));
  const auto signatures = signatures_of(state);
  REQUIRE(signatures.size() == 2);
  CHECK(signatures[0].after == 2);  // the inspector signed, the face was stripped
  CHECK(signatures[0].unsettled == 0);
  CHECK(signatures[1].after == 1);
}

TEST_CASE("the whole chain made anew over a changed event: the signatures over it tell") {
  const Folder folder;
  {
    auto book = got(Logbook::create(folder / "book.risebook"));
    keep_signed_pour(book);
  }
  forge(folder / "book.risebook", 5, "truck 1", "truck 7");
  const auto report = looked(folder / "book.risebook");
  CAPTURE(all_of(report));
  CHECK_FALSE(tells(report, "was changed after it was kept"));  // the chain fits
  CHECK(tells(report, "-7 is not the one that fm as foreman signed for in event"));
  CHECK(tells(report, "-8 is not the one that qi as inspector signed for in event"));
  CHECK(report.people.empty());
}

TEST_CASE("a changed signature, verdict or person is named with whose it is") {
  for (const auto& [old, with] : std::vector<std::pair<std::string, std::string>>{
           {R"("verdict":"accepted")", R"("verdict":"rejected")"},
           {R"("signature":")", R"("signature":"00)"},
           {R"("role":"foreman")", R"("role":"inspector")"}}) {
    const std::string& tried = old;
    CAPTURE(tried);
    const Folder folder;
    {
      auto book = got(Logbook::create(folder / "book.risebook"));
      keep_signed_pour(book);
    }
    std::string line = with;
    std::string was = old;
    if (old == R"("signature":")") {  // as long as before
      was += "..";
      auto book = got(Logbook::open(folder / "book.risebook", Access::read));
      const auto kept = got(book.event(8));
      was = old + std::get<event::Sign>(kept.what).signature->digits.substr(0, 2);
      if (was == with) line = R"("signature":"11)";
    }
    forge(folder / "book.risebook", 8, was, line);
    const auto report = looked(folder / "book.risebook");
    CAPTURE(all_of(report));
    CHECK(tells(report, "The signature of fm as "));
    CHECK(tells(report, "in event"));
    CHECK(report.first_bad->text.ends_with("-8"));
  }
}

TEST_CASE("a key nobody enrolled, and a witness that does not hold, are told") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  const auto stranger = signer("fm", "204816"), foreman = signer("fm", "112358"),
             inspector = signer("qi", "314159");
  got(book.append(kPour, signed_open_event("N1"), entry_at(0)));
  got(book.append(kPour, enrol_event(foreman, 1), entry_at(1)));
  got(book.append(kPour, enrol_event(inspector, 2, &stranger), entry_at(2)));
  got(book.append(kPour, sign_event(book, kPour, stranger, event::Role::foreman, 3), entry_at(3)));
  auto crooked = enrol_event(signer("qi", "271828"), 4, &foreman);
  std::get<event::Enrol>(crooked.what).person = PersonId{"fm"};
  got(book.append(kPour, crooked, entry_at(4)));
  const auto report = got(book.verify());
  CAPTURE(all_of(report));
  CHECK(tells(report, "fm, who witnessed the key of qi, had no such key in pour N1"));
  CHECK(tells(report, "is signed with a key that fm had not enrolled in pour N1"));
  CHECK(tells(report, "The signature of fm, who witnessed the key of fm in event"));
  CHECK(report.people.empty());
}

TEST_CASE(
    "a signed pour brought into another book keeps its signatures, and it is said where from") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  keep_signed_pour(book);
  const auto script = got(read_script(write_script(got(book.events(kPour))), "carried"));
  auto other = got(Logbook::create(folder / "other.risebook"));
  got(other.append(PourId{"N0"}, open_event("N0"), entry_at(0)));
  got(other.append_script(script, entry_at(50)));
  const auto report = got(other.verify());
  CAPTURE(all_of(report));
  CHECK(report.sound());
  REQUIRE(report.people.size() == 2);
  CHECK(report.people[0].elsewhere);
}

TEST_CASE("a key carried from one pour to the next is the one that pour has") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  keep_signed_pour(book);
  auto carried = got(book.event(2));
  carried.id = {};
  carried.entry = {};
  std::get<event::Enrol>(carried.what).from = kPour;
  const PourId next{"N2"};
  got(book.append(next, signed_open_event("N2"), entry_at(60)));
  got(book.append(next, carried, entry_at(61)));
  CHECK(got(book.verify()).sound());
  auto strange = enrol_event(signer("qi", "314159"), 62);
  std::get<event::Enrol>(strange.what).from = kPour;
  got(book.append(next, strange, entry_at(62)));
  const auto report = got(book.verify());
  CHECK(tells(report, "carries a key of qi that pour N1 does not have"));
}
