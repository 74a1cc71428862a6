#include "whole_pours.h"

#include <fmt/format.h>

#include <numbers>

namespace rb::test {

namespace {

constexpr double kWholeHour = 3600;
constexpr double kWholeDay = 24 * kWholeHour;
const std::string kFirstLoad = R"("do":"truck","ticket":"T1")";
const std::string kSecondLoad = R"("do":"truck","ticket":"T2")";

void put_for(std::string& text, const std::string& was, const std::string& is) {
  const auto at = text.find(was);
  REQUIRE_MESSAGE(at != std::string::npos, was);
  text.replace(at, was.size(), is);
}

// By the curve 20 MPa after two days of 20 degC: 19.8 at the last reading, an hour before.
const std::string kWholeAsked =
    R"("strip_after_s":86400,"strip_strength_mpa":10,"strip_permit":true,)"
    R"("strength_curve":[[10,4],[20,10],[48,20],[168,30]],)"
    R"("cure_start_within_s":3600,"cure_for_s":259200)";

// From `came` on, when the last concrete came.
Pour& seen_through(Pour& pour, double came, const After& after) {
  std::string& element = pour.plan.element;
  element += (element.empty() ? "" : ",") + kWholeAsked;
  pour.plan.mix += R"(,"strength_mpa":40)";
  pour.changed(R"("do":"test","ticket":"T2")", R"("density":2400)",
               R"("density":2400,"specimens":["S1","S2","S3"])");
  for (int hours = 1; hours <= 47; hours += 2) {
    pour.at(came + hours * kWholeHour, R"("do":"concrete-temp","element":"W1","temp":20)");
  }
  pour.at(came + 1800, R"("do":"cure-start","element":"W1","how":"wet burlap")");
  pour.at(came + 4 * kWholeDay, R"("do":"cure-end","element":"W1")");
  pour.at(came + after.permit * kWholeHour,
          R"("by":"s1","do":"permit-strip","element":"W1","why":"strength shown")");
  pour.at(came + after.strip * kWholeHour, R"("do":"strip","element":"W1","side":"near")");
  const auto broken = [&](const char* id, double days, double strength) {
    pour.at(came + days * kWholeDay,
            fmt::format(R"("do":"specimen","specimen":"{}","age_days":{},"strength_mpa":{})", id,
                        days, strength));
  };
  broken("S1", 1, 12);
  broken("S2", 28, 44);
  broken("S3", 28, 43);
  return pour;
}

// Two motors of 7.5 A and a vibrator of 3 A at 42 V: 18 A, 1.31 kVA; trunk and cord lose 4.5 %.
void well_fed(Pour& pour) {
  put_for(pour.plan.more, R"("cable":{"mm2":4,"length":25})",
          R"("cable":{"mm2":4,"length":15},"trunk":{"mm2":10,"length":10},)"
          R"("generator":{"kva":5,"derate":0.8},"internal":{"heads":1,"amps":3})");
}

constexpr double kLiftsEnd = 6900, kDeckEnd = 2400;

}  // namespace

Pour whole_wall(const After& after) {
  Pour pour = good_wall();
  well_fed(pour);
  return seen_through(pour, kLiftsEnd, after);
}

Pour whole_column(const After& after) {
  Pour pour = good_column();
  well_fed(pour);
  return seen_through(pour, kLiftsEnd, after);
}

Pour whole_round_column(const After& after) {
  Pour pour = whole_column(after);
  pour.plan.element += R"(,"section":"round")";
  const double load = std::numbers::pi / 4 * 0.6 * 0.6 * 1.2;
  for (const std::string& truck : {kFirstLoad, kSecondLoad}) {
    pour.changed(truck, R"("volume":0.432)", fmt::format(R"("volume":{:.4f})", load));
  }
  return pour;
}

Pour whole_two_columns() {
  Pour pour = whole_column();
  pour.plan.other =
      R"({"id":"W2","kind":"column","length":0.6,"height":0.6,"thickness":0.6,"bays":[0.6],)"
      R"("form_rating_kpa":50,"lifts":[0.6]})";
  pour.changed(kSecondLoad, R"("volume":0.432)", R"("volume":0.9)");
  pour.changed(R"("do":"discharge","ticket":"T2")", R"("element":"W1")",
               R"("element":"W1","volume":0.432)");
  pour.at(7010, R"("do":"discharge","ticket":"T2","element":"W2","volume":0.216,"ended":")" +
                    pour.moment(7100) + '"');
  pour.at(7010, R"("do":"lift-start","element":"W2","lift":1)");
  pour.at(7110, R"("do":"lift-end","element":"W2","lift":1,"height":0.6)");
  pour.at(7120, R"("do":"insert","element":"W2","lift":1,"group":3,"spacing":0.27,"seconds":10,)"
                R"("depth_below":0,"points":8,"heads":1)");
  return pour;
}

Pour whole_deck(const After& after) {
  Pour pour = good_deck();
  return seen_through(pour, kDeckEnd, after);
}

}  // namespace rb::test
