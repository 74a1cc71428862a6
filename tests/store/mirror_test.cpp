// The mirror: an append-only text file of the book's rows in another place.
#include "store/copies/mirror.h"

#include <doctest/doctest.h>

#include <fstream>

#include "rows.h"
#include "samples.h"

using namespace rb;
using namespace rb::samples;
using store::Mirror;
using store::plain_disk;

namespace {

template <class T>
T mirrored(store::Mirrored<T>&& result) {
  if (!result) FAIL(to_text(result.error().error));
  if constexpr (!std::is_void_v<T>) return std::move(*result);
}

struct Book {
  store::BookName name = some_name();
  std::vector<KeptRow> rows = some_rows(name, 8);
  Mirror mirror(const Folder& folder) {
    return mirrored(
        Mirror::open(plain_disk(), folder.path(), "pours", name, hashes_of(name, rows)));
  }
};

store::MirrorContent content_of(const fs::path& path) {
  return got(store::read_mirror(plain_disk(), path));
}

void append(const fs::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary | std::ios::app) << text;
}

void change(const fs::path& path, std::size_t at, char to) {
  std::fstream file(path, std::ios::binary | std::ios::in | std::ios::out);
  file.seekp(static_cast<std::streamoff>(at));
  file.put(to);
}

}  // namespace

TEST_CASE("a row comes back from its line as it was, to the last bit") {
  Book book;
  for (const auto& row : book.rows) {
    auto line = store::line_of(row);
    REQUIRE(line.back() == '\n');
    line.pop_back();
    CHECK(line.find('\n') == std::string::npos);
    const auto read = store::read_row(line);
    REQUIRE(read);
    CHECK(read->hash == row.hash);
    CHECK(store::hash_of(read->row) == row.hash);
  }
}

TEST_CASE("any one byte changed in a row's line is noticed or changes nothing") {
  Book book;
  auto line = store::line_of(book.rows[3]);
  line.pop_back();
  for (std::size_t at = 0; at < line.size(); ++at) {
    for (const char to : {' ', 'x', '1', '"', '\0'}) {
      auto changed = line;
      changed[at] = to;
      const auto read = store::read_row(changed);
      CAPTURE(at);
      if (read) CHECK(store::hash_of(read->row) == book.rows[3].hash);
    }
  }
}

TEST_CASE("a mirror goes on where it ended") {
  const Folder folder;
  Book book;
  mirrored(book.mirror(folder).add(part(book.rows, 0, 3)));
  auto again = book.mirror(folder);
  CHECK(again.last() == 3);
  CHECK(again.file().filename() == "pours-7K3MD.riseline");
  mirrored(again.add(part(book.rows, 3, 8)));
  const auto content = content_of(again.file());
  CHECK(content.rows.size() == 8);
  CHECK(content.damaged.empty());
  CHECK(content.missing().empty());
  CHECK(content.name->uuid == book.name.uuid);
  CHECK(content.name->created == book.name.created);
}

TEST_CASE("a mirror's line cut short is ended, never cut off, and its row written again") {
  const Folder folder;
  Book book;
  fs::path file;
  {
    auto mirror = book.mirror(folder);
    mirrored(mirror.add(part(book.rows, 0, 3)));
    file = mirror.file();
  }
  append(file, store::line_of(book.rows[3]).substr(0, 50));
  const auto before = bytes_of(file);
  auto mirror = book.mirror(folder);
  CHECK(mirror.last() == 3);
  mirrored(mirror.add(part(book.rows, 3, 8)));
  CHECK(bytes_of(file).substr(0, before.size()) == before);
  const auto content = content_of(file);
  CHECK(content.rows.size() == 8);
  CHECK(content.damaged.size() == 1);
  CHECK(content.missing().empty());
}

TEST_CASE("the mirror of another history, or one further on than the book, is left as it is") {
  const Folder folder;
  Book book;
  fs::path file;
  {
    auto mirror = book.mirror(folder);
    mirrored(mirror.add(book.rows));
    file = mirror.file();
  }
  const auto before = bytes_of(file);
  SUBCASE("another history") {
    book.rows.resize(5);
    while (book.rows.size() < 8) {
      book.rows.push_back(next_row(book.name, book.rows, "another"));
    }
  }
  SUBCASE("further on") {
    book.rows.resize(5);
  }
  auto mirror = book.mirror(folder);
  CHECK(mirror.file().filename() == "pours-7K3MD-2.riseline");
  CHECK(mirror.last() == 0);
  REQUIRE(mirror.passed_over().size() == 1);
  CHECK(mirror.passed_over()[0].find("pours-7K3MD.riseline") != std::string::npos);
  mirrored(mirror.add(book.rows));
  CHECK(bytes_of(file) == before);
  CHECK(book.mirror(folder).file() == mirror.file());  // and gone on with next time
}

TEST_CASE("no link is followed and no other file touched by a mirror") {
  const Folder folder, elsewhere;
  Book book;
  const auto path = folder / "pours-7K3MD.riseline";
  const auto other = elsewhere / "other.txt";
  std::ofstream(other) << "of someone else";
  SUBCASE("symbolic link") {
    fs::create_symlink(other, path);
  }
  SUBCASE("symbolic link to nothing") {
    fs::create_symlink(elsewhere / "none", path);
  }
  SUBCASE("hard link") {
    fs::create_hard_link(other, path);
  }
  SUBCASE("folder") {
    fs::create_directory(path);
  }
  SUBCASE("another file by its name") {
    std::ofstream(path) << std::string(5000, 'x') << "\n";
  }
  auto mirror = book.mirror(folder);
  CHECK(mirror.file().filename() == "pours-7K3MD-2.riseline");
  mirrored(mirror.add(book.rows));
  CHECK(bytes_of(other) == "of someone else");
  CHECK(!fs::exists(elsewhere / "none"));
}

TEST_CASE("a mirror tells which of its lines are damaged and which events are missing") {
  const Folder folder;
  Book book;
  auto mirror = book.mirror(folder);
  mirrored(mirror.add(book.rows));
  const auto text = bytes_of(mirror.file());
  SUBCASE("a row") {
    change(mirror.file(), text.find(R"("seq":4)") + 6, '9');
    const auto content = content_of(mirror.file());
    CHECK(content.rows.size() == 7);
    CHECK(content.damaged.size() == 1);
    CHECK(content.missing() == std::vector<std::pair<std::int64_t, std::int64_t>>{{4, 4}});
  }
  SUBCASE("the first line: the second tells the same") {
    change(mirror.file(), 20, '~');
    const auto content = content_of(mirror.file());
    CHECK(content.rows.size() == 8);
    CHECK(content.damaged.size() == 1);
    REQUIRE(content.name);
    CHECK(content.name->uuid == book.name.uuid);
  }
  SUBCASE("its mirror goes on all the same") {
    change(mirror.file(), text.find(R"("seq":8)") + 6, '9');
    auto again = book.mirror(folder);
    CHECK(again.last() == 7);
    mirrored(again.add(part(book.rows, 7, 8)));
    CHECK(content_of(again.file()).missing().empty());
  }
}

TEST_CASE("a folder that is not there is no place for a mirror and is not made") {
  const Folder folder;
  Book book;
  const auto mirror = Mirror::open(plain_disk(), folder / "stick", "pours", book.name,
                                   hashes_of(book.name, book.rows));
  REQUIRE(!mirror);
  CHECK(mirror.error().kind == store::MirrorTrouble::Kind::folder_gone);
  CHECK(!fs::exists(folder / "stick"));
}

TEST_CASE("a stick pulled between two taps is noticed, though its file is still open") {
  const Folder folder;
  Book book;
  fs::create_directory(folder / "stick");
  auto mirror = mirrored(Mirror::open(plain_disk(), folder / "stick", "pours", book.name,
                                      hashes_of(book.name, book.rows)));
  mirrored(mirror.add(part(book.rows, 0, 3)));
  fs::rename(folder / "stick", folder / "pulled");
  const auto put = mirror.add(part(book.rows, 3, 4));
  REQUIRE(!put);
  CHECK(put.error().kind == store::MirrorTrouble::Kind::folder_gone);
}
