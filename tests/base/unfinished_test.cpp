// A file in the making touches nothing of anybody else.
#include "base/unfinished.h"

#include <doctest/doctest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fstream>
#include <sstream>

using namespace rb;
namespace fs = std::filesystem;

namespace {

struct Folder {
  Folder() {
    std::string name = (fs::temp_directory_path() / "unfinished-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path = name;
  }
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] long files() const {
    return std::distance(fs::directory_iterator(path), fs::directory_iterator{});
  }
  fs::path path;
};

std::string bytes_of(const fs::path& path) {
  std::ostringstream all;
  all << std::ifstream(path, std::ios::binary).rdbuf();
  return all.str();
}

}  // namespace

TEST_CASE("a file appears under its name only once it is whole, and nothing is left beside") {
  const Folder folder;
  const auto to = folder.path / "letter.txt";
  auto made = Unfinished::beside(to);
  REQUIRE(made);
  CHECK(made->write("dear "));
  CHECK(made->write("sir"));
  CHECK_FALSE(fs::exists(to));
  CHECK(unfinished_name(made->path(), to));
  CHECK(made->put(Place::must_be_free));
  CHECK(bytes_of(to) == "dear sir");
  CHECK(folder.files() == 1);
}

TEST_CASE("a file given up leaves nothing") {
  const Folder folder;
  CHECK(Unfinished::beside(folder.path / "letter.txt")->write("half"));
  CHECK(folder.files() == 0);
}

TEST_CASE("two makings of one file at once do not meet") {
  const Folder folder;
  const auto to = folder.path / "letter.txt";
  auto one = Unfinished::beside(to);
  auto two = Unfinished::beside(to);
  REQUIRE(one);
  REQUIRE(two);
  CHECK(one->path() != two->path());
  CHECK(one->write("one"));
  CHECK(two->write("two"));
  CHECK(one->put(Place::must_be_free));
  const auto late = two->put(Place::must_be_free);
  REQUIRE_FALSE(late);
  CHECK(late.error().trouble == BookTrouble::in_the_way);
  CHECK(bytes_of(to) == "one");
}

TEST_CASE("what stands in the place is kept, or replaced, and a link is never followed") {
  const Folder folder;
  const auto to = folder.path / "letter.txt";
  const auto other = folder.path / "other.txt";
  std::ofstream(other) << "another's";
  fs::create_symlink(other, to);
  auto made = Unfinished::beside(to);
  REQUIRE(made);
  CHECK(made->write("mine"));
  SUBCASE("kept") {
    CHECK_FALSE(made->put(Place::must_be_free));
    CHECK(fs::is_symlink(to));
  }
  SUBCASE("replaced") {
    CHECK(made->put(Place::replaced));
    CHECK_FALSE(fs::is_symlink(to));
    CHECK(bytes_of(to) == "mine");
  }
  CHECK(bytes_of(other) == "another's");
}

TEST_CASE("the mode is as asked, cut by the umask") {
  const Folder folder;
  const mode_t before = umask(0022);
  const auto mode = [](const fs::path& path) {
    struct stat info {};
    REQUIRE(stat(path.c_str(), &info) == 0);
    return info.st_mode & 07777U;
  };
  const auto open = Unfinished::beside(folder.path / "a");
  const auto own = Unfinished::beside(folder.path / "b", 0600);
  CHECK(mode(open->path()) == 0644);
  CHECK(mode(own->path()) == 0600);
  CHECK(make_folders(folder.path / "x/y", 0700));
  CHECK(mode(folder.path / "x") == 0700);
  CHECK(mode(folder.path / "x/y") == 0700);
  umask(before);
}

TEST_CASE("a folder that is not there, or a file in its place, is told by name") {
  const Folder folder;
  const auto none = Unfinished::beside(folder.path / "none/letter.txt");
  REQUIRE_FALSE(none);
  CHECK(none.error().trouble == BookTrouble::no_folder);
  CHECK(none.error().where.text() == folder.path / "none/letter.txt");
  std::ofstream(folder.path / "file") << "x";
  CHECK_FALSE(make_folders(folder.path / "file/deep", 0700));
}

TEST_CASE("the longest name a file may have can be made") {
  const Folder folder;
  const auto to = folder.path / std::string(255, 'n');
  auto made = Unfinished::beside(to);
  REQUIRE(made);
  CHECK(made->put(Place::must_be_free));
}
