#include "tablet/battery.h"

#include <doctest/doctest.h>

#include <fstream>
#include <map>

#include "temp_folder.h"

using namespace rb;

namespace {
void supply(const std::filesystem::path& at, const std::map<std::string, std::string>& files) {
  std::filesystem::create_directories(at);
  for (const auto& [name, text] : files) std::ofstream(at / name) << text << '\n';
}
}  // namespace

TEST_CASE("no folder, an empty one or a mains plug alone tells nothing of a battery") {
  const test::TempFolder folder;
  CHECK_FALSE(read_battery(folder.path / "absent"));
  CHECK_FALSE(read_battery(folder.path));
  supply(folder.path / "AC", {{"type", "Mains"}, {"online", "1"}});
  CHECK_FALSE(read_battery(folder.path));
}

TEST_CASE("one battery tells its share and whether it charges") {
  const test::TempFolder folder;
  supply(folder.path / "BAT0",
         {{"type", "Battery"}, {"capacity", "18"}, {"status", "Discharging"}});
  CHECK(read_battery(folder.path) == screens::Battery{18, false});
  supply(folder.path / "BAT0", {{"status", "Charging"}});
  CHECK(read_battery(folder.path) == screens::Battery{18, true});
}

TEST_CASE("two batteries count by what they hold; a mouse's counts not; nonsense tells nothing") {
  const test::TempFolder folder;
  supply(folder.path / "BAT0", {{"type", "Battery"},
                                {"capacity", "80"},
                                {"energy_full", "10000000"},
                                {"status", "Discharging"}});
  supply(folder.path / "BAT1", {{"type", "Battery"},
                                {"capacity", "5"},
                                {"energy_full", "30000000"},
                                {"status", "Discharging"}});
  supply(folder.path / "hid-mouse", {{"type", "Battery"}, {"scope", "Device"}, {"capacity", "3"}});
  CHECK(read_battery(folder.path) == screens::Battery{23, false});  // (80 + 3 x 5) / 4 = 23.75
  const test::TempFolder other;
  supply(other.path / "BAT0", {{"type", "Battery"}, {"capacity", "much"}});
  CHECK_FALSE(read_battery(other.path));
  supply(other.path / "BAT0", {{"energy_full", "40"}, {"energy_now", "4"}});
  CHECK(read_battery(other.path)->percent == 10);
}
