#include "base/contrast.h"

#include <doctest/doctest.h>

#include "published.h"

using namespace rb;
using namespace rb::published;

PUBLISHED(wcag_contrast, "contrast is that of WCAG 2") {
  constexpr Rgb kBlack{0, 0, 0};
  constexpr Rgb kWhite{255, 255, 255};
  constexpr Rgb kRed{255, 0, 0};
  constexpr Rgb kBlue{0, 0, 255};
  return {
      {"W3C, Web Content Accessibility Guidelines 2",
       "definitions of relative luminance and contrast ratio",
       Mark::read,
       Kind::worked_out,
       {{"black on white", contrast_ratio(kBlack, kWhite), 21.0, 1e-9},
        {"white on white", contrast_ratio(kWhite, kWhite), 1.0, 1e-9},
        {"luminance of blue", relative_luminance(kBlue), 0.0722, 1e-9}}},
      {"W3C, Web Content Accessibility Guidelines 2",
       "formula; values worked out apart",
       Mark::computed,
       Kind::worked_out,
       {{"blue on white", contrast_ratio(kBlue, kWhite), 8.59, 0.005},
        {"red on blue", contrast_ratio(kRed, kBlue), 2.15, 0.005},
        {"#11AA55 on #AA8811", contrast_ratio({0x11, 0xAA, 0x55}, {0xAA, 0x88, 0x11}), 1.11, 0.005},
        {"#E9FAF5 on white", contrast_ratio({0xE9, 0xFA, 0xF5}, kWhite), 1.08, 0.005},
        {"#767676 on white", contrast_ratio({0x76, 0x76, 0x76}, kWhite), 4.542, 0.0006},
        {"#777777 on white", contrast_ratio({0x77, 0x77, 0x77}, kWhite), 4.478, 0.0006},
        {"#595959 on white", contrast_ratio({0x59, 0x59, 0x59}, kWhite), 7.005, 0.0006}}}};
}
