#include <doctest/doctest.h>

#include <map>
#include <set>

#include "published.h"

using namespace rb::published;

TEST_CASE("values are counted by how they are known, and only what was read counts as read") {
  std::map<Mark, int> values;
  std::map<Mark, std::set<std::string>> publications;
  for (const Maker maker : enlisted()) {
    for (const Sheet& sheet : maker()) {
      for (const Row& row : sheet.rows) {
        if (!agrees(row)) continue;
        ++values[sheet.mark];
        publications[sheet.mark].insert(sheet.publication);
      }
    }
  }
  MESSAGE("read " << values[Mark::read] << " in " << publications[Mark::read].size()
                  << " publications, second hand " << values[Mark::second_hand] << ", memory "
                  << values[Mark::memory] << ", worked out apart " << values[Mark::computed]);
  CHECK(values[Mark::read] >= 60);
  CHECK(publications[Mark::read].size() >= 8);
  CHECK(values[Mark::second_hand] >= 140);
  CHECK(values[Mark::computed] >= 150);
}

TEST_CASE("every sheet says where its figures stand, and names no page of the web") {
  for (const Maker maker : enlisted()) {
    for (const Sheet& sheet : maker()) {
      CAPTURE(sheet.publication);
      CAPTURE(sheet.place);
      CHECK_FALSE(sheet.publication.empty());
      CHECK_FALSE(sheet.place.empty());
      for (const char* address : {"http", "www", ".com", ".org", ".net"}) {
        CHECK(sheet.place.find(address) == std::string::npos);
        CHECK(sheet.publication.find(address) == std::string::npos);
      }
      if (sheet.mark == Mark::second_hand) {
        const bool said = sheet.place.find("second hand") != std::string::npos ||
                          sheet.place.find("no source") != std::string::npos ||
                          sheet.place == "the same sheet";
        CHECK(said);
      }
    }
  }
}

TEST_CASE("a row that is off, or has no number, does not count as agreeing") {
  CHECK(agrees({"", 1.0, 1.1, 0.11}));
  CHECK_FALSE(agrees({"", 1.0, 1.1, 0.09}));
  CHECK_FALSE(agrees({"", std::numeric_limits<double>::quiet_NaN(), 1.0, 10.0}));
}
