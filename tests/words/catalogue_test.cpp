#include "words/catalogue.h"

#include <doctest/doctest.h>

#include <string>

using namespace rb;

TEST_CASE("English comes first and needs no catalogue") {
  REQUIRE_FALSE(Language::all().empty());
  CHECK(Language::all().front() == Language{});
  CHECK(Language{}.code() == "en");
  CHECK(Language{}.finished());
  CHECK(std::string{told(Language{}, "no such words")} == "no such words");
}

TEST_CASE("every language has a code and a name of its own, and is found by its code") {
  for (const Language language : Language::all()) {
    CHECK_FALSE(language.own_name().empty());
    CHECK(Language::of_code(language.code()) == language);
  }
  CHECK_FALSE(Language::of_code("xx"));
}

TEST_CASE("words are told in Spanish, and what a catalogue lacks stays English") {
  const auto spanish = Language::of_code("es");
  REQUIRE(spanish);
  CHECK(std::string{spanish->own_name()} == "Espa\u00F1ol");
  CHECK(std::string{told(*spanish, "near")} == "frente");
  CHECK(has_words(*spanish, "near"));
  CHECK(std::string{told(*spanish, "no such words")} == "no such words");
  CHECK_FALSE(has_words(*spanish, "no such words"));
}

TEST_CASE("one word in English that is two elsewhere is told apart by its context") {
  const auto spanish = Language::of_code("es");
  REQUIRE(spanish);
  CHECK(std::string{told(*spanish, "RUN", "run")} != told(*spanish, "RUN", "running"));
}
