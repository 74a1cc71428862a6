// Single things gone wrong, put one at a time into a pour that went right: the checker speaks of
// each once, by the rule a field engineer would want to hear, and of nothing else. The columns were
// written before the code was run.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "faults.h"

using namespace rb;
using namespace rb::test;

namespace {

constexpr std::array kKinds{"wall", "column", "deck"};

Pour good(std::size_t kind) {
  return kind == 0 ? good_wall() : kind == 1 ? good_column() : good_deck();
}

}  // namespace

TEST_CASE("a wall, a column and a deck that go right in every respect are told nothing") {
  for (std::size_t kind = 0; kind < kKinds.size(); ++kind) {
    const Checked seen = good(kind).checked();
    CAPTURE(std::string{kKinds.at(kind)});
    INFO(to_text(seen.state, seen.report));
    CHECK(seen.report.findings.empty());
    CHECK(seen.report.not_judged.empty());
  }
}

TEST_CASE("nothing is told at any moment of a pour that goes right, but that it waits for a hand") {
  for (std::size_t kind = 0; kind < kKinds.size(); ++kind) {
    for (double now = 0; now <= 7600; now += 50) {
      const Checked seen = good(kind).live(now);
      CAPTURE(std::string{kKinds.at(kind)});
      CAPTURE(now);
      INFO(to_text(seen.state, seen.report));
      const bool waits = seen.state.closed && seen.state.signs.size() < 2;
      CHECK(rules_of(seen) ==
            (waits ? std::set<std::string>{"unsigned"} : std::set<std::string>{}));
    }
  }
}

TEST_CASE("each of over forty single faults is told once, by its own rule and no other") {
  std::size_t told = 0;
  for (const Fault& fault : faults()) {
    CAPTURE(fault.name);
    bool somewhere = false;
    for (std::size_t kind = 0; kind < kKinds.size(); ++kind) {
      const Expected& expected = fault.in.at(kind);
      CAPTURE(std::string{kKinds.at(kind)});
      if (expected.says.empty()) {
        CHECK_FALSE(expected.why.empty());  // why it cannot occur there
        continue;
      }
      somewhere = true;
      Pour pour = good(kind);
      fault.spoil(pour, static_cast<ElementKind>(kind));
      const Checked seen = fault.live ? pour.live(*fault.live) : pour.checked();
      INFO(to_text(seen.state, seen.report));
      const bool gap = expected.says.starts_with(kGap);
      CHECK(expected.also.empty() == expected.why.empty());  // what follows is told why
      if (gap) {
        CHECK(rules_of(seen).empty());
        std::set<std::string> untold = expected.gaps;
        untold.insert(expected.says.substr(kGap.size()));
        CHECK(gaps_of(seen) == untold);
        continue;
      }
      std::set<std::string> all = expected.also;
      all.insert(expected.says);
      CHECK(rules_of(seen) == all);
      CHECK(gaps_of(seen) == expected.gaps);
      CHECK(groups_of(seen).size() == 1);
      for (const std::string& group : groups_of(seen)) {
        CAPTURE(group);
        CHECK(group.substr(0, group.find_first_of("/#")) == expected.says);
      }
    }
    CHECK(somewhere);
    told += somewhere ? 1 : 0;
  }
  CHECK(told >= 40);
}

TEST_CASE("two faults in one pour are two groups, each as it would be alone") {
  Pour pour = good_wall();
  never_ran(pour, "R1");
  pour.changed(R"("ticket":"T1","mix")", R"("volume":1.2)", R"("volume":1.2,"water_added":0.04)");
  const Checked seen = pour.checked();
  INFO(to_text(seen.state, seen.report));
  CHECK(groups_of(seen).size() == 2);
  for (const Finding& f : seen.report.findings) {
    CAPTURE(f.rule);
    CHECK(f.group.starts_with(f.rule == "water-added" ? "water-added/" : "row-missed/"));
  }
}

TEST_CASE("two rows of one wall that never ran are two groups") {
  Pour pour = good_wall();
  never_ran(pour, "R1");
  never_ran(pour, "R3");
  CHECK(groups_of(pour.checked()).size() == 2);
}

TEST_CASE("a joint left uncovered too long is its own cause, whatever else went wrong beside it") {
  Pour pour = good_wall();
  pour.later(kSecondHalf, 43200);
  never_ran(pour, "R3");
  const Checked seen = pour.checked();
  INFO(to_text(seen.state, seen.report));
  for (const Finding& f : seen.of("knit-late")) {
    CHECK(f.group.starts_with(f.lift == 2 ? "knit-late/" : "row-missed/"));
  }
  CHECK(seen.of("knit-late").size() == 2);
}

TEST_CASE("every rule of the list is told of some single fault") {
  std::set<std::string> told;
  for (const Fault& fault : faults()) {
    for (const Expected& expected : fault.in) {
      told.insert(expected.says);
      told.insert(expected.also.begin(), expected.also.end());
    }
  }
  for (const RuleCard& card : rule_cards()) {
    CAPTURE(std::string{card.id});
    CHECK(told.contains(card.id));
  }
}
