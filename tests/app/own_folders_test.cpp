// Where the user's own book and settings lie, and what is said when nowhere is.
#include <doctest/doctest.h>
#include <pwd.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdlib>
#include <optional>

#include "app/settings_file.h"
#include "temp_folder.h"

using namespace rb;

namespace {

// Sets variables of the environment, or takes them away, until the test ends.
class Environment {
 public:
  ~Environment() {
    for (const auto& [name, value] : was_) {
      value ? setenv(name.c_str(), value->c_str(), 1) : unsetenv(name.c_str());
    }
  }
  Environment() = default;
  Environment(const Environment&) = delete;
  Environment& operator=(const Environment&) = delete;
  void put(const char* name, const char* value) {
    const char* old = std::getenv(name);
    was_.emplace_back(name, old ? std::optional<std::string>{old} : std::nullopt);
    value ? setenv(name, value, 1) : unsetenv(name);
  }

 private:
  std::vector<std::pair<std::string, std::optional<std::string>>> was_;
};

}  // namespace

TEST_CASE("the user's book lies under XDG_DATA_HOME, else under HOME") {
  Environment environment;
  environment.put("HOME", "/home/foreman");
  environment.put("XDG_DATA_HOME", "/data");
  CHECK(*default_book() == "/data/risebook/pours.risebook");
  environment.put("XDG_DATA_HOME", nullptr);
  CHECK(*default_book() == "/home/foreman/.local/share/risebook/pours.risebook");
}

TEST_CASE("without HOME the system's list of users tells, never the folder one happens to be in") {
  Environment environment;
  environment.put("XDG_DATA_HOME", nullptr);
  environment.put("XDG_CONFIG_HOME", nullptr);
  const passwd* user = getpwuid(geteuid());
  for (const char* home : {static_cast<const char*>(nullptr), "", "home"}) {
    environment.put("HOME", home);
    const auto book = default_book();
    if (user != nullptr && user->pw_dir[0] == '/') {
      REQUIRE(book);
      CHECK(*book == std::filesystem::path{user->pw_dir} / ".local/share/risebook/pours.risebook");
    } else {
      REQUIRE_FALSE(book);
      CHECK(book.error().kind == Error::Kind::input);
    }
    CHECK((settings_path().empty() || settings_path().is_absolute()));
  }
}

TEST_CASE("settings are the user's own, and a link in their place is replaced, not followed") {
  const test::TempFolder folder;
  const auto path = folder.path / "own/screens.json";
  write_settings(path, {});
  struct stat info {};
  REQUIRE(stat(path.parent_path().c_str(), &info) == 0);
  CHECK((info.st_mode & 07777U) == 0700);
  std::filesystem::remove(path);
  std::filesystem::create_symlink(folder.path / "another", path);
  write_settings(path, {});
  CHECK_FALSE(std::filesystem::is_symlink(path));
  CHECK_FALSE(std::filesystem::exists(folder.path / "another"));
}
