#include "words/sentence.h"

#include <doctest/doctest.h>

using namespace rb;

namespace {

const Facts kFacts{{"row", std::string{"R2"}},
                   {"side", Term{"near"}},
                   {"measured", Amount{Measure::pressure, 47.88026}},
                   {"stepped", Amount{Measure::span, 90}}};

}  // namespace

TEST_CASE("facts stand where a sentence names them, in the reader's units") {
  const char* const text = "{row} ({side}): {measured}";
  CHECK(filled(text, kFacts, Voice{}) == "R2 (near): 47.9\u00A0kPa");
  // 1 psf = 0.04788026 kPa: NIST SP 811, appendix B.
  CHECK(filled(text, kFacts, Voice{.units = Units::us}) == "R2 (near): 1000\u00A0psf");
  CHECK(filled(text, kFacts, kTerminal) == "R2 (near): 47.9 kPa");
}

TEST_CASE("a figure that is part of the words is shown in the reader's units") {
  const char* const text = "about {0.5 m}, {300 mm}, {10 degC}, {90 min}";
  CHECK(filled(text, {}, Voice{}) ==
        "about 0.50\u00A0m, 300\u00A0mm, 10.0\u00A0\u00B0C, 90\u00A0min");
  CHECK(filled(text, {}, Voice{.units = Units::us}) ==
        "about 1.64\u00A0ft, 11.81\u00A0in, 50.0\u00A0\u00B0F, 90\u00A0min");
  CHECK(filled(text, {}, kTerminal) == "about 0.50 m, 300 mm, 10.0 degC, 90 min");
}

TEST_CASE("a sign stands before a figure where the sentence asks for it") {
  CHECK(filled("{stepped+}", kFacts, kTerminal) == "+90 s");
}

TEST_CASE("a name without a fact is seen, not passed over") {
  CHECK(filled("{none} and {row}", kFacts, kTerminal) == "{none} and R2");
  CHECK(filled("an open {brace", kFacts, kTerminal) == "an open {brace");
}

TEST_CASE("what a user wrote is never read as a name or a figure") {
  const Facts facts{{"note", std::string{"{row} 3 m"}}, {"row", std::string{"R2"}}};
  CHECK(filled("{note}", facts, Voice{.units = Units::us}) == "{row} 3 m");
}

TEST_CASE("a moment is told by the site's clock, and in full at a terminal") {
  const Facts facts{{"told", *parse_moment("2026-03-02T05:10:00.000Z")}};
  CHECK(filled("{told}", facts, Voice{.utc_offset = std::chrono::minutes{120}}) == "07:10:00");
  CHECK(filled("{told}", facts, kTerminal) == "2026-03-02T05:10:00.000Z");
}
