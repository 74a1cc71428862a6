// The demo pour: what it was made to show is found, and nothing else of weight.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

#include "check/check.h"
#include "pour/log/fold.h"
#include "pour/log/script.h"
#include "pour/outlook/form.h"

using namespace rb;

namespace {

PourState demo() {
  std::ifstream in{RISEBOOK_SOURCE_DIR "/assets/demo-pour.jsonl"};
  std::ostringstream text;
  text << in.rdbuf();
  const auto script = read_script(text.str(), "demo-pour.jsonl");
  REQUIRE_MESSAGE(script, to_text(script.error()));
  return *fold(script->events);
}

}  // namespace

TEST_CASE("the demo names the under-vibrated bay and the fast lift and nothing false") {
  const PourState state = demo();
  const CheckReport report = check(state, AsOf::end(state));
  INFO(to_text(state, report));
  std::set<std::string> rules;
  for (const Finding& f : report.findings) rules.insert(f.rule);
  CHECK(rules == std::set<std::string>{"dose-low", "rise-fast"});
  REQUIRE(report.findings.size() == 2);
  const auto find = [&](const char* rule) {
    return *std::find_if(report.findings.begin(), report.findings.end(),
                         [&](const Finding& f) { return f.rule == rule; });
  };
  CHECK(find("dose-low").lift == 3);
  CHECK(find("dose-low").bay == 1);  // from 0: bay 2
  CHECK(find("rise-fast").lift == 5);
  CHECK(report.not_judged.empty());
  CHECK(state.speeds.size() == 2);
  CHECK_FALSE(report.clean());
  // 12 x 3.6 x 0.3 m less the opening of 0.8 x 0.9 m.
  CHECK(in_cubic_metres(net_volume(state, 0)) == doctest::Approx(12.744));
}
