#include "base/short_code.h"

#include <doctest/doctest.h>

#include <cctype>
#include <random>
#include <set>

using namespace rb;

TEST_CASE("a short code reads back however it is written down") {
  std::mt19937_64 random(20260302);
  std::set<std::string> codes;
  for (int i = 0; i < 1000; ++i) {
    std::string hex;
    for (int digit = 0; digit < 64; ++digit) hex += "0123456789abcdef"[random() % 16];
    const auto code = short_code(hex);
    REQUIRE(code.size() == 11);
    CHECK(code.find_first_of("01OILAEU") == std::string::npos);
    CHECK(read_short_code(code) == code);
    std::string written;
    for (const char c : code) {
      if (c != '-') written += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
      written += ' ';
    }
    CHECK(read_short_code(written) == code);
    codes.insert(code);
  }
  CHECK(codes.size() == 1000);
}

TEST_CASE("what is no hash gives no code, and what is no code is not read as one") {
  CHECK(short_code("").empty());
  CHECK(short_code("123").empty());
  CHECK(short_code(std::string(64, 'x')).empty());
  for (const char* text :
       {"", "7K3MD", "7K3MD-P9QX", "7K3MD-P9QXTT", "7K3MD-P9QXO", "7K3MD_P9QXT"}) {
    CHECK(read_short_code(text).empty());
  }
}
