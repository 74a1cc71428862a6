// cure-late, cure-short, cure-temp, evaporation, specimen-low: just below, at and just above each
// limit, and what is not judged.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "after_text.h"

using namespace rb;
using namespace rb::test;

TEST_CASE("curing begins within what the plan gives after the last concrete") {
  const std::string within = R"("cure_start_within_s":1800)";
  const auto begun = [&](double after) {
    return a_lift_of(within).at(3600, kClose).at(600 + after, kCure).checked();
  };
  CHECK_FALSE(begun(1799).has("cure-late"));
  CHECK_FALSE(begun(1800).has("cure-late"));
  const Checked late = begun(3601);
  const Finding f = late.only("cure-late");
  CHECK(f.severity == Severity::mend);
  CHECK(f.measured->si == about(3601));
  CHECK(f.limit->si == about(1800));
  // Not begun: told once the time is past, and not judged before.
  const Pour none = a_lift_of(within).at(1000, kClose);
  CHECK_FALSE(none.live(2400).has("cure-late"));
  CHECK(untold(none.live(2400), "curing"));
  const Checked past = none.live(2401);
  CHECK(past.says(past.only("cure-late")).find("no curing begun") != std::string::npos);
  CHECK_FALSE(untold(past, "curing"));
  // While the element is filled nothing is asked yet; one whose plan asks nothing is told nothing.
  CHECK_FALSE(a_lift_of(within).live(9000).has("cure-late"));
  CHECK_FALSE(untold(a_lift_of("").at(1000, kClose).live(9000), "curing"));
}

TEST_CASE("curing lasts as long as the plan wants, breaks left out") {
  const std::string day = R"("cure_for_s":86400)";
  const auto cured = [&](double span) {
    return a_lift_of(day).at(1000, kCure).at(1000 + span, kCureEnd).checked();
  };
  CHECK_FALSE(cured(86400).has("cure-short"));
  const Checked brief = cured(86399);
  CHECK(brief.only("cure-short").measured->si == about(86399));
  CHECK(brief.only("cure-short").severity == Severity::mend);
  CHECK_FALSE(a_lift_of(day)
                  .at(1000, kCure)
                  .at(44200, kCureEnd)
                  .at(50000, kCure)
                  .at(93200, kCureEnd)
                  .checked()
                  .has("cure-short"));
  const Checked on = a_lift_of(day).at(1000, kCure).at(9000, kClose).checked();
  CHECK_FALSE(on.has("cure-short"));
  CHECK(untold(on, "curing"));
}

TEST_CASE("hardening concrete that freezes before it is strong enough, or gets too hot, is told") {
  const auto seen = [](const std::string& element, double hours_on, double degrees) {
    return a_lift_of(element)
        .at(600, concrete(20))
        .at(600 + hours_on * kHour, concrete(degrees))
        .at(700 + hours_on * kHour, R"("do":"note","text":"read")")
        .checked();
  };
  CHECK_FALSE(seen("", 5, 0).has("cure-temp"));
  CHECK_FALSE(seen("", 5, 0.1).has("cure-temp"));
  const Checked frost = seen("", 5, -0.1);
  const Finding f = frost.only("cure-temp");
  CHECK(f.severity == Severity::mend);
  CHECK(f.measured->si == doctest::Approx(-0.1));
  CHECK(f.limit->si == 0);
  // Two days where nothing shows a strength.
  CHECK(seen("", 48, -5).has("cure-temp"));
  CHECK_FALSE(seen("", 48.01, -5).has("cure-temp"));
  // By a curve until it shows 3.5 MPa, however long.
  const std::string slow = R"("strength_curve":[[1,0.1],[40,3.5],[80,7]])";
  const auto cured = [&](double hours_at_20) {
    return a_lift_of(slow)
        .at(600, concrete(20))
        .at(600 + hours_at_20 * kHour, concrete(20))
        .at(601 + hours_at_20 * kHour, concrete(-1))
        .checked();
  };
  CHECK(cured(39.9).has("cure-temp"));
  CHECK_FALSE(cured(40.1).has("cure-temp"));
  CHECK_FALSE(seen("", 90, 70).has("cure-temp"));
  const Checked hot = seen("", 90, 70.1);
  CHECK(hot.only("cure-temp").limit->si == 70);
  CHECK(hot.says(hot.only("cure-temp")).find("was read at 70.1") != std::string::npos);
  // The concrete of a load before it came in is not hardening here.
  CHECK_FALSE(a_lift_of("").at(-1, R"("do":"air-temp","temp":-5)").checked().has("cure-temp"));
}

namespace {

std::string weather(double humidity, double wind) {
  return fmt::format(R"("do":"air-temp","temp":18,"humidity":{},"wind":{})", humidity, wind);
}
// 31 degC under 18 degC of air: 5 (16807 - r 7776) (V + 4) 1e-6 kg/m2/h.
Pour slab(double humidity, double wind) {
  return a_lift_of("", kQ, "deck")
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
      a_lift_of("", kQ, "deck").at(10, kCure).at(20, weather(10, 9)).checked().has("evaporation"));
  CHECK(a_lift_of("", kQ, "deck").at(-1, weather(10, 9)).checked().has("evaporation"));
  // A wall stands in its form.
  CHECK_FALSE(a_lift_of("").at(20, weather(10, 9)).checked().has("evaporation"));
}

TEST_CASE("without humidity and wind the drying of a slab is not judged") {
  CHECK(untold(a_lift_of("", kQ, "deck").checked(), "evaporation"));
  CHECK(untold(a_lift_of("", kQ, "deck").at(20, R"("do":"air-temp","temp":35)").checked(),
               "evaporation"));
  CHECK_FALSE(untold(slab(50, 1).checked(), "evaporation"));
  CHECK_FALSE(untold(a_lift_of("").checked(), "evaporation"));
}

TEST_CASE("a specimen of 28 days below the strength of its mix is told, one of 27 is not") {
  const auto seen = [](double days, double strength) {
    return a_lift_of("", R"(,"strength_mpa":40)")
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
    return a_lift_of("", strength)
        .load("T1", 1.2, -600, 0, 600)
        .at(100, R"("do":"test","ticket":"T1","temp":20)" + specimens)
        .checked();
  };
  const std::string strong = R"(,"strength_mpa":40)";
  CHECK(untold(seen(strong, ""), "specimen"));
  CHECK_FALSE(untold(seen("", ""), "specimen"));
  CHECK(untold(seen(strong, R"(,"specimens":["S1"])"), "specimen"));  // taken, and not broken yet
  const auto broken = a_lift_of("", strong)
                          .load("T1", 1.2, -600, 0, 600)
                          .at(100, R"("do":"test","ticket":"T1","temp":20,"specimens":["S1"])")
                          .at(28 * 86400, specimen("S1", 28, 41));
  CHECK_FALSE(untold(broken.checked(), "specimen"));
  // While the load is discharged it may be taken yet.
  CHECK_FALSE(untold(a_lift_of("", strong).load("T1", 1.2, -600, 0, 600).live(500), "specimen"));
}
