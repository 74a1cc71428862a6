// strip-early by strength, strip-leave, cure-late, cure-short, evaporation, specimen-low: just
// below, at and just above each limit, and what is not judged.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

// One lift up to 0.6 m, its last concrete in at 600 s.
Pour placed(const std::string& element, const std::string& mix = kQ, const std::string& kind = "") {
  PlanText plan;
  plan.element = element;
  plan.mix += mix;
  if (!kind.empty()) {
    plan.kind = kind;
    plan.height = 4;
    plan.thickness = 0.6;
    plan.lifts = "[0.6]";
    plan.rows.clear();
  }
  return Pour{plan}.placed(1, 0, 600, 0.6);
}

std::string concrete(double degrees, const std::string& place = "") {
  return fmt::format(R"("do":"concrete-temp","element":"W1","temp":{}{})", degrees, place);
}
const std::string kStrip = R"("do":"strip","element":"W1","side":"near")";
const std::string kCure = R"("do":"cure-start","element":"W1","how":"wet burlap")";
const std::string kCureEnd = R"("do":"cure-end","element":"W1")";
// 10 MPa at 20 h of 20 degC.
const std::string kStrength =
    R"("strip_strength_mpa":10,"strength_curve":[[10,4],[20,10],[48,20]])";
constexpr double kHour = 3600;

std::string specimen(const std::string& id, double days, double strength) {
  return fmt::format(R"("do":"specimen","specimen":"{}","age_days":{},"strength_mpa":{})", id, days,
                     strength);
}

bool untold(const Checked& seen, const std::string& what) {
  return std::any_of(seen.report.not_judged.begin(), seen.report.not_judged.end(),
                     [&](const NotJudged& gap) { return gap.what == what; });
}

}  // namespace

TEST_CASE("a form stripped half an hour after its last concrete is a stop") {
  const Checked seen = placed("").at(600 + 1800, kStrip).checked();
  CHECK(seen.only("strip-early").severity == Severity::stop);
  CHECK(placed(kStrength).at(600 + 1800, kStrip).checked().only("strip-early").severity ==
        Severity::stop);
}

TEST_CASE("a form is not stripped before the strength the plan wants is shown by maturity") {
  const auto seen = [](double hours_read, double strip_hours, double degrees = 20) {
    return placed(kStrength)
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
  CHECK_FALSE(placed(kStrength).at(90 * kHour, kStrip).checked().only("strip-early").measured);
  // Air never stands in for concrete.
  CHECK(placed(kStrength)
            .at(600, R"("do":"air-temp","temp":30)")
            .at(80 * kHour, R"("do":"air-temp","temp":30)")
            .at(90 * kHour, kStrip)
            .checked()
            .has("strip-early"));
}

TEST_CASE("of several probes the one whose concrete hardened least governs") {
  const auto seen = [](double colder) {
    return placed(kStrength)
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
    return placed(both)
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
    return placed(R"("strip_strength_mpa":10)")
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
    Pour pour = placed(kStrength).load("T1", 1.2, -600, 0, 600);
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
  Pour later = placed(kStrength).load("T1", 1.2, -600, 0, 600);
  later.at(100, R"("do":"test","ticket":"T1","temp":20,"specimens":["S1"])");
  later.at(600, concrete(20)).at(600 + 24 * kHour, concrete(20));
  later.at(600 + 30 * kHour, kStrip).at(600 + 31 * kHour, specimen("S1", 1, 5));
  CHECK_FALSE(later.checked().has("strip-early"));
}

TEST_CASE("leave to strip that the plan asks for is given after the last concrete and before") {
  const double strip = 90 * kHour;
  const std::string leave = R"("do":"permit-strip","element":"W1","why":"looked at")";
  const auto seen = [&](double given, const std::string& how) {
    return placed(R"("strip_permit":true)").at(given, how).at(strip, kStrip).checked();
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
  CHECK_FALSE(placed(R"("strip_permit":true)")
                  .at(strip - 2, leave)
                  .at(strip - 1, R"("by":"x9",)" + leave)
                  .at(strip, kStrip)
                  .checked()
                  .has("strip-leave"));
  // Not asked for, none is missed; asked for, leave clears nothing of the time.
  CHECK_FALSE(placed("").at(strip, kStrip).checked().has("strip-leave"));
  const auto both = placed(R"("strip_permit":true)").at(1200, leave).at(2400, kStrip).checked();
  CHECK(both.has("strip-early"));
  CHECK_FALSE(both.has("strip-leave"));
}

TEST_CASE("what was gone on over before a face was stripped is told with it, as one thing") {
  const std::string over = R"("do":"override","rule":"strip-early","element":"W1","why":"rain",)";
  const auto seen = [&](const std::string& side, double at) {
    return placed("").at(at, over + R"("side":")" + side + '"').at(2400, kStrip).checked();
  };
  const Checked one = seen("near", 2400);
  CHECK(one.only("gate-passed").group == one.only("strip-early").group);
  const Checked other = seen("far", 2400);
  CHECK(other.only("gate-passed").group != other.only("strip-early").group);
  const Checked later = seen("near", 2401);
  CHECK(later.only("gate-passed").group != later.only("strip-early").group);
}

TEST_CASE("a strip strength that nothing can show is not judged, and the set is the least") {
  const Checked later = placed(R"("strip_strength_mpa":10)").at(90 * kHour, kStrip).checked();
  CHECK_FALSE(later.has("strip-early"));
  CHECK(untold(later, "strength"));
  const Checked sooner = placed(R"("strip_strength_mpa":10)").at(2 * kHour, kStrip).checked();
  CHECK(sooner.only("strip-early").measured->measure == Measure::any_span);
  CHECK_FALSE(untold(placed(kStrength).at(90 * kHour, kStrip).checked(), "strength"));
}

TEST_CASE("leave to strip clears nothing; it is told beside, by name and reason") {
  Pour pour = placed("").at(2000, R"("do":"permit-strip","element":"W1","why":"props stand")");
  const Checked seen = pour.at(2400, kStrip).checked();
  const Finding f = seen.only("strip-early");
  CHECK(seen.says(f).find("gave leave: props stand") != std::string::npos);
  // Given afterwards, or for the other side, it does not stand beside.
  const Checked after = placed("")
                            .at(2400, kStrip)
                            .at(2500, R"("do":"permit-strip","element":"W1","why":"props stand")")
                            .checked();
  CHECK(after.says(after.only("strip-early")).find("leave") == std::string::npos);
}

TEST_CASE("curing begins within what the plan gives after the last concrete") {
  const std::string within = R"("cure_start_within_s":1800)";
  const auto begun = [&](double after) {
    return placed(within).at(3600, kClose).at(600 + after, kCure).checked();
  };
  CHECK_FALSE(begun(1799).has("cure-late"));
  CHECK_FALSE(begun(1800).has("cure-late"));
  const Checked late = begun(3601);
  const Finding f = late.only("cure-late");
  CHECK(f.severity == Severity::mend);
  CHECK(f.measured->si == about(3601));
  CHECK(f.limit->si == about(1800));
  // Not begun: told once the time is past, and not judged before.
  const Pour none = placed(within).at(1000, kClose);
  CHECK_FALSE(none.live(2400).has("cure-late"));
  CHECK(untold(none.live(2400), "curing"));
  const Checked past = none.live(2401);
  CHECK(past.says(past.only("cure-late")).find("no curing begun") != std::string::npos);
  CHECK_FALSE(untold(past, "curing"));
  // While the element is filled nothing is asked yet; one whose plan asks nothing is told nothing.
  CHECK_FALSE(placed(within).live(9000).has("cure-late"));
  CHECK_FALSE(untold(placed("").at(1000, kClose).live(9000), "curing"));
}

TEST_CASE("curing lasts as long as the plan wants, breaks left out") {
  const std::string day = R"("cure_for_s":86400)";
  const auto cured = [&](double span) {
    return placed(day).at(1000, kCure).at(1000 + span, kCureEnd).checked();
  };
  CHECK_FALSE(cured(86400).has("cure-short"));
  const Checked brief = cured(86399);
  CHECK(brief.only("cure-short").measured->si == about(86399));
  CHECK(brief.only("cure-short").severity == Severity::mend);
  CHECK_FALSE(placed(day)
                  .at(1000, kCure)
                  .at(44200, kCureEnd)
                  .at(50000, kCure)
                  .at(93200, kCureEnd)
                  .checked()
                  .has("cure-short"));
  const Checked on = placed(day).at(1000, kCure).at(9000, kClose).checked();
  CHECK_FALSE(on.has("cure-short"));
  CHECK(untold(on, "curing"));
}

namespace {

std::string weather(double humidity, double wind) {
  return fmt::format(R"("do":"air-temp","temp":18,"humidity":{},"wind":{})", humidity, wind);
}
// 31 degC under 18 degC of air: 5 (16807 - r 7776) (V + 4) 1e-6 kg/m2/h.
Pour slab(double humidity, double wind) {
  return placed("", kQ, "deck")
      .load("T1", 9.6, -600, 0, 600)
      .at(10, temp(31))
      .at(20, weather(humidity, wind));
}

}  // namespace

TEST_CASE("a slab that dries faster than 1 kg/m2 an hour before its curing is told") {
  // 1.0 at 50 % is a wind of 11.4811 km/h, 3.18919 m/s.
  CHECK_FALSE(slab(50, 3.189).checked().has("evaporation"));
  const Checked seen = slab(50, 3.19).checked();
  const Finding f = seen.only("evaporation");
  CHECK(f.severity == Severity::mend);
  CHECK(f.measured->si > 1);
  CHECK(f.measured->si < 1.001);
  CHECK(seen.says(f).find("concrete 31.0 degC, air 18.0 degC, humidity 50.0 %, wind 3.2 m/s") !=
        std::string::npos);
  // Curing begun before the reading shields it; a reading from before it came holds until the next.
  CHECK_FALSE(
      placed("", kQ, "deck").at(10, kCure).at(20, weather(10, 9)).checked().has("evaporation"));
  CHECK(placed("", kQ, "deck").at(-1, weather(10, 9)).checked().has("evaporation"));
  // A wall stands in its form.
  CHECK_FALSE(placed("").at(20, weather(10, 9)).checked().has("evaporation"));
}

TEST_CASE("without humidity and wind the drying of a slab is not judged") {
  CHECK(untold(placed("", kQ, "deck").checked(), "evaporation"));
  CHECK(untold(placed("", kQ, "deck").at(20, R"("do":"air-temp","temp":35)").checked(),
               "evaporation"));
  CHECK_FALSE(untold(slab(50, 1).checked(), "evaporation"));
  CHECK_FALSE(untold(placed("").checked(), "evaporation"));
}

TEST_CASE("a specimen of 28 days below the strength of its mix is told, one of 27 is not") {
  const auto seen = [](double days, double strength) {
    return placed("", R"(,"strength_mpa":40)")
        .load("T1", 1.2, -600, 0, 600)
        .at(100, R"("do":"test","ticket":"T1","temp":20,"specimens":["S1","S2"])")
        .at(28 * 86400, specimen("S1", days, strength))
        .checked();
  };
  CHECK_FALSE(seen(28, 40).has("specimen-low"));
  const Checked low = seen(28, 39.9);
  const Finding f = low.only("specimen-low");
  CHECK(f.severity == Severity::mend);
  CHECK(f.ticket == TicketId{"T1"});
  CHECK(low.says(f).find("specimen S1 broke at 39.9 MPa after 28 days") != std::string::npos);
  CHECK_FALSE(untold(low, "specimen"));
  CHECK_FALSE(seen(27, 30).has("specimen-low"));
  CHECK(untold(seen(27, 30), "specimen"));
}

TEST_CASE("a mix that is to reach a strength wants specimens of a load that came") {
  const auto seen = [](const std::string& strength, const std::string& specimens) {
    return placed("", strength)
        .load("T1", 1.2, -600, 0, 600)
        .at(100, R"("do":"test","ticket":"T1","temp":20)" + specimens)
        .checked();
  };
  const std::string strong = R"(,"strength_mpa":40)";
  CHECK(untold(seen(strong, ""), "specimen"));
  CHECK_FALSE(untold(seen("", ""), "specimen"));
  CHECK(untold(seen(strong, R"(,"specimens":["S1"])"), "specimen"));  // taken, and not broken yet
  const auto broken = placed("", strong)
                          .load("T1", 1.2, -600, 0, 600)
                          .at(100, R"("do":"test","ticket":"T1","temp":20,"specimens":["S1"])")
                          .at(28 * 86400, specimen("S1", 28, 41));
  CHECK_FALSE(untold(broken.checked(), "specimen"));
  // While the load is discharged it may be taken yet.
  CHECK_FALSE(untold(placed("", strong).load("T1", 1.2, -600, 0, 600).live(500), "specimen"));
}
