// The table of single faults: what went wrong, in the trade's words, how it is put into a good
// pour, and what is to be told of it, kind by kind.
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "good_pours.h"

namespace rb::test {

/// Not a finding, but told under "not judged": what follows is its id.
inline const std::string kGap = "not judged: ";

struct Expected {
  std::string says;              ///< the rule; empty: the fault cannot occur in that kind
  std::set<std::string> also{};  ///< rules that follow from it, in the same group
  std::string why{};             ///< why it cannot occur, or why more is told
  std::set<std::string> gaps{};  ///< what it leaves not judged
};

/// The same in a wall, a column and a deck.
inline std::array<Expected, 3> everywhere(const std::string& says) {
  return {Expected{says}, Expected{says}, Expected{says}};
}

struct Fault {
  std::string name;
  std::function<void(Pour&, ElementKind)> spoil;
  std::array<Expected, 3> in;    ///< wall, column, deck
  std::optional<double> live{};  ///< told while the pour goes on, at that moment
};

/// What a report tells: its groups, its gaps, its rules, each once.
inline std::set<std::string> groups_of(const Checked& seen) {
  std::set<std::string> all;
  for (const Finding& f : seen.report.findings) all.insert(f.group);
  return all;
}
inline std::set<std::string> gaps_of(const Checked& seen) {
  std::set<std::string> all;
  for (const NotJudged& gap : seen.report.not_judged) all.insert(gap.what);
  return all;
}
inline std::set<std::string> rules_of(const Checked& seen) {
  const auto found = seen.rules();
  return {found.begin(), found.end()};
}

/// Of rows and power, of concrete, of what is done and written.
std::vector<Fault> faults();
std::vector<Fault> faults_of_rows();
std::vector<Fault> faults_of_concrete();

}  // namespace rb::test
