#include "record/form/colour_profile.h"

#include <lcms2.h>

#include <array>
#include <chrono>
#include <memory>

namespace rb {

namespace {

constexpr std::size_t kDateAt = 24;  // ICC.1:2001-04, 6.1: date and time, six numbers of 16 bits

void put_date(std::string& profile, Moment made) {
  const auto day = std::chrono::floor<std::chrono::days>(made);
  const std::chrono::year_month_day date{day};
  const std::chrono::hh_mm_ss time{std::chrono::floor<std::chrono::seconds>(made - day)};
  const std::array<unsigned, 6> parts{static_cast<unsigned>(static_cast<int>(date.year())),
                                      static_cast<unsigned>(date.month()),
                                      static_cast<unsigned>(date.day()),
                                      static_cast<unsigned>(time.hours().count()),
                                      static_cast<unsigned>(time.minutes().count()),
                                      static_cast<unsigned>(time.seconds().count())};
  for (std::size_t i = 0; i < parts.size(); ++i) {
    profile[kDateAt + 2 * i] = static_cast<char>(parts.at(i) >> 8U & 0xFFU);
    profile[kDateAt + 2 * i + 1] = static_cast<char>(parts.at(i) & 0xFFU);
  }
}

}  // namespace

std::string srgb_profile(Moment made) {
  const std::unique_ptr<void, cmsBool (*)(cmsHPROFILE)> profile{cmsCreate_sRGBProfile(),
                                                                &cmsCloseProfile};
  if (!profile) return {};
  cmsSetProfileVersion(profile.get(), 2.1);
  cmsUInt32Number size = 0;
  if (cmsSaveProfileToMem(profile.get(), nullptr, &size) == FALSE) return {};
  std::string bytes(size, '\0');
  if (cmsSaveProfileToMem(profile.get(), bytes.data(), &size) == FALSE) return {};
  put_date(bytes, made);  // the library puts the clock's
  return bytes;
}

}  // namespace rb
