// strip-early by strength, strip-leave, and the gate before STRIPPED: just below, at and just above
// each limit, and what is not judged.
#include <doctest/doctest.h>

#include <set>

#include "after_text.h"
#include "pour/outlook/gates.h"

using namespace rb;
using namespace rb::test;

TEST_CASE("a form stripped half an hour after its last concrete is a stop") {
  const Checked seen = a_lift_of("").at(600 + 1800, kStrip).checked();
  CHECK(seen.only("strip-early").severity == Severity::stop);
  CHECK(a_lift_of(kStrength).at(600 + 1800, kStrip).checked().only("strip-early").severity ==
        Severity::stop);
}

TEST_CASE("a form is not stripped before the strength the plan wants is shown by maturity") {
  const auto seen = [](double hours_read, double strip_hours, double degrees = 20) {
    return a_lift_of(kStrength)
        .at(600, concrete(degrees))
        .at(600 + hours_read * kHour, concrete(degrees))
        .at(600 + strip_hours * kHour, kStrip)
        .checked();
  };
  CHECK_FALSE(seen(20, 20).has("strip-early"));
  CHECK_FALSE(seen(20, 40).has("strip-early"));
  const Checked early = seen(19.99, 19.99);
  const Finding f = early.only("strip-early");
  CHECK(f.severity == Severity::stop);
  CHECK(f.measured->measure == Measure::strength);
  CHECK(f.measured->si == doctest::Approx(9.994));
  CHECK(f.limit->si == doctest::Approx(10));
  CHECK(early.says(f).find("stripped with 9.9 MPa shown") != std::string::npos);
  CHECK(source_text(f.source, kTerminal).starts_with("plan: strip_strength_mpa; "));
  // What was not read is not gained: the last reading is of 15 h.
  CHECK(seen(15, 40).only("strip-early").measured->si == doctest::Approx(7));
  // Before the curve begins, and with no reading, nothing is shown.
  const Finding none = seen(9.99, 9.99).only("strip-early");
  CHECK_FALSE(none.measured);
  CHECK(none.limit->si == doctest::Approx(10));
  CHECK_FALSE(a_lift_of(kStrength).at(90 * kHour, kStrip).checked().only("strip-early").measured);
  // Air never stands in for concrete.
  CHECK(a_lift_of(kStrength)
            .at(600, R"("do":"air-temp","temp":30)")
            .at(80 * kHour, R"("do":"air-temp","temp":30)")
            .at(90 * kHour, kStrip)
            .checked()
            .has("strip-early"));
}

TEST_CASE("of several probes the one whose concrete hardened least governs") {
  const auto seen = [](double colder) {
    return a_lift_of(kStrength)
        .at(600, concrete(35, R"(,"z":0.3)"))
        .at(600, concrete(colder, R"(,"z":0.5)"))
        .at(600 + 20 * kHour, concrete(35, R"(,"z":0.3)"))
        .at(600 + 20 * kHour, concrete(colder, R"(,"z":0.5)"))
        .at(600 + 20 * kHour, kStrip)
        .checked();
  };
  CHECK_FALSE(seen(20).has("strip-early"));
  CHECK(seen(19.9).has("strip-early"));
}

TEST_CASE("both a time and a strength are held to, in one group") {
  const std::string both = kStrength + R"(,"strip_after_s":108000)";
  const auto seen = [&](double strip_hours) {
    return a_lift_of(both)
        .at(600, concrete(20))
        .at(600 + 20 * kHour, concrete(20))
        .at(600 + strip_hours * kHour, kStrip)
        .checked();
  };
  CHECK_FALSE(seen(30).has("strip-early"));
  CHECK(seen(29.9).only("strip-early").measured->measure == Measure::any_span);
  const auto two = seen(19.9).of("strip-early");
  REQUIRE(two.size() == 2);
  CHECK(two[0].group == two[1].group);
}

TEST_CASE(
    "a specimen of the last load shows strength, the lowest of the oldest, no older than it") {
  const auto pour = [](double low, double high) {
    return a_lift_of(R"("strip_strength_mpa":10)")
        .load("T1", 1.2, -600, 0, 600)
        .at(100, R"("do":"test","ticket":"T1","temp":20,"specimens":["S1","S2","S3"])")
        .at(600 + 24 * kHour, specimen("S1", 1, low))
        .at(600 + 24 * kHour, specimen("S2", 1, high));
  };
  const auto stripped = [](Pour p, double hours) {
    return p.at(700 + hours * kHour, kStrip).checked();
  };
  CHECK_FALSE(stripped(pour(10, 12), 25).has("strip-early"));
  CHECK(stripped(pour(9.9, 12), 25).only("strip-early").measured->si == doctest::Approx(9.9));
  // One older than the concrete tells nothing of it: then nothing shows it, and its set is the
  // least.
  const Checked older = stripped(pour(9, 9).at(601 + 24 * kHour, specimen("S3", 3, 30)), 25);
  CHECK(older.only("strip-early").measured->si == doctest::Approx(9));
}

TEST_CASE("where temperatures and specimens both show a strength the less of the two counts") {
  // 20 h of 20 degC show 10 MPa; specimens of a day what they broke at.
  const auto seen = [](double hours_read, double broke_at) {
    Pour pour = a_lift_of(kStrength).load("T1", 1.2, -600, 0, 600);
    pour.at(100, R"("do":"test","ticket":"T1","temp":20,"specimens":["S1"])");
    pour.at(600, concrete(20)).at(600 + hours_read * kHour, concrete(20));
    pour.at(600 + 30 * kHour, specimen("S1", 1, broke_at));
    return pour.at(600 + 30 * kHour, kStrip).checked();
  };
  CHECK_FALSE(seen(20, 10).has("strip-early"));
  CHECK_FALSE(seen(24, 30).has("strip-early"));
  const Checked broken = seen(24, 9.9);
  CHECK(broken.only("strip-early").measured->si == doctest::Approx(9.9));
  CHECK(broken.says(broken.only("strip-early")).find("stripped with 9.9 MPa shown") !=
        std::string::npos);
  CHECK(seen(19, 30).only("strip-early").measured->si == doctest::Approx(9.4));
  // A specimen broken afterwards was not known.
  Pour later = a_lift_of(kStrength).load("T1", 1.2, -600, 0, 600);
  later.at(100, R"("do":"test","ticket":"T1","temp":20,"specimens":["S1"])");
  later.at(600, concrete(20)).at(600 + 24 * kHour, concrete(20));
  later.at(600 + 30 * kHour, kStrip).at(600 + 31 * kHour, specimen("S1", 1, 5));
  CHECK_FALSE(later.checked().has("strip-early"));
}

TEST_CASE("leave to strip that the plan asks for is given after the last concrete and before") {
  const double strip = 90 * kHour;
  const std::string leave = R"("do":"permit-strip","element":"W1","why":"looked at")";
  const auto seen = [&](double given, const std::string& how) {
    return a_lift_of(R"("strip_permit":true)").at(given, how).at(strip, kStrip).checked();
  };
  CHECK_FALSE(seen(strip - 1, leave).has("strip-leave"));
  CHECK_FALSE(seen(strip, leave).has("strip-leave"));
  const Checked after = seen(strip + 1, leave);
  const Finding f = after.only("strip-leave");
  CHECK(f.severity == Severity::stop);
  CHECK(source_text(f.source, kTerminal) == "plan: strip_permit");
  CHECK(after.says(f).find("stripped with no leave logged") != std::string::npos);
  // The last concrete came at 600 s.
  CHECK_FALSE(seen(600, leave).has("strip-leave"));
  const Checked before = seen(599, leave);
  CHECK(before.says(before.only("strip-leave")).find("gave before its last concrete came") !=
        std::string::npos);
  // For this face, by somebody with a role.
  CHECK_FALSE(seen(strip - 1, leave + R"(,"side":"near")").has("strip-leave"));
  CHECK(seen(strip - 1, leave + R"(,"side":"far")").has("strip-leave"));
  const Checked stranger = seen(strip - 1, R"("by":"x9",)" + leave);
  CHECK(stranger.says(stranger.only("strip-leave")).find("x9, whom the plan gives no role") !=
        std::string::npos);
  // Once it counted, what somebody else says later changes nothing.
  CHECK_FALSE(a_lift_of(R"("strip_permit":true)")
                  .at(strip - 2, leave)
                  .at(strip - 1, R"("by":"x9",)" + leave)
                  .at(strip, kStrip)
                  .checked()
                  .has("strip-leave"));
  // Not asked for, none is missed; asked for, leave clears nothing of the time.
  CHECK_FALSE(a_lift_of("").at(strip, kStrip).checked().has("strip-leave"));
  const auto both = a_lift_of(R"("strip_permit":true)").at(1200, leave).at(2400, kStrip).checked();
  CHECK(both.has("strip-early"));
  CHECK_FALSE(both.has("strip-leave"));
}

TEST_CASE("what was gone on over before a face was stripped is told with it, as one thing") {
  const std::string over = R"("do":"override","rule":"strip-early","element":"W1","why":"rain",)";
  const auto seen = [&](const std::string& side, double at) {
    return a_lift_of("").at(at, over + R"("side":")" + side + '"').at(2400, kStrip).checked();
  };
  const Checked one = seen("near", 2400);
  CHECK(one.only("gate-passed").group == one.only("strip-early").group);
  const Checked other = seen("far", 2400);
  CHECK(other.only("gate-passed").group != other.only("strip-early").group);
  const Checked later = seen("near", 2401);
  CHECK(later.only("gate-passed").group != later.only("strip-early").group);
}

TEST_CASE("the gate before STRIPPED is open exactly where a rule would speak of it") {
  std::size_t told = 0, quiet = 0;
  for (const std::string& element :
       {std::string{}, std::string{R"("strip_after_s":90000)"}, kStrength,
        std::string{R"("strip_permit":true)"}, kStrength + R"(,"strip_permit":true)"}) {
    for (double hour = 1; hour < 60; hour += 3.5) {
      Pour pour = a_lift_of(element).at(600, concrete(20)).at(600 + 22 * kHour, concrete(20));
      pour.at(600 + 40 * kHour, R"("do":"permit-strip","element":"W1","side":"near","why":"seen")");
      const double at = 600 + hour * kHour;
      const Checked before = pour.live(at);
      const auto verdict = judge_strip(before.state, 0, Side::near_side, seconds(at));
      REQUIRE(verdict);
      std::set<std::string> gates;
      for (const Gate gate : gates_of_strip(*verdict)) gates.insert(rule_of(gate));
      std::set<std::string> rules;
      for (const std::string& rule : pour.at(at, kStrip).live(at).rules()) {
        if (rule.starts_with("strip-")) rules.insert(rule);
      }
      CAPTURE(element);
      CAPTURE(hour);
      CHECK(gates == rules);
      gates.empty() ? ++quiet : ++told;
    }
  }
  CHECK(told > 20);
  CHECK(quiet > 20);
}

TEST_CASE("a strip strength that nothing can show is not judged, and the set is the least") {
  const Checked later = a_lift_of(R"("strip_strength_mpa":10)").at(90 * kHour, kStrip).checked();
  CHECK_FALSE(later.has("strip-early"));
  CHECK(untold(later, "strength"));
  const Checked sooner = a_lift_of(R"("strip_strength_mpa":10)").at(2 * kHour, kStrip).checked();
  CHECK(sooner.only("strip-early").measured->measure == Measure::any_span);
  CHECK_FALSE(untold(a_lift_of(kStrength).at(90 * kHour, kStrip).checked(), "strength"));
}

TEST_CASE("leave to strip clears nothing; it is told beside, by name and reason") {
  Pour pour = a_lift_of("").at(2000, R"("do":"permit-strip","element":"W1","why":"props stand")");
  const Checked seen = pour.at(2400, kStrip).checked();
  const Finding f = seen.only("strip-early");
  CHECK(seen.says(f).find("gave leave: props stand") != std::string::npos);
  // Given afterwards, or for the other side, it does not stand beside.
  const Checked after = a_lift_of("")
                            .at(2400, kStrip)
                            .at(2500, R"("do":"permit-strip","element":"W1","why":"props stand")")
                            .checked();
  CHECK(after.says(after.only("strip-early")).find("leave") == std::string::npos);
}
