#include "app/local_time.h"

#include <ctime>

namespace rb {

std::chrono::minutes system_utc_offset(Moment moment) {
  const std::time_t time =
      std::chrono::floor<std::chrono::seconds>(moment).time_since_epoch().count();
  std::tm local{};
  if (localtime_r(&time, &local) == nullptr) return std::chrono::minutes{0};
  return std::chrono::duration_cast<std::chrono::minutes>(std::chrono::seconds{local.tm_gmtoff});
}

namespace {

// Midnight of a day by the clocks there, which may be changed between UTC's midnight and theirs.
Moment midnight(Moment utc_midnight) {
  Moment start = utc_midnight - system_utc_offset(utc_midnight);
  start = utc_midnight - system_utc_offset(start);
  return start;
}

}  // namespace

std::optional<LocalDay> system_day(const std::string& day) {
  const auto utc = parse_day(day);
  if (!utc) return std::nullopt;
  const Moment start = midnight(*utc);
  const Moment end = midnight(*utc + std::chrono::hours{24});
  return LocalDay{start, end, system_utc_offset(start), system_utc_offset(end)};
}

Result<std::optional<std::chrono::minutes>> read_utc_offset(const std::string& text) {
  if (text.empty()) return std::nullopt;
  // A known moment written with that offset tells how far it is from UTC.
  const auto there = parse_moment("2000-01-01T12:00:00" + text);
  const auto utc = parse_moment("2000-01-01T12:00:00Z");
  if (!there) {
    return fail(Error::Kind::input, "--utc-offset", {said("is \"{given}\""), {{"given", text}}},
                said("Use a form such as +02:00"));
  }
  return std::chrono::duration_cast<std::chrono::minutes>(*utc - *there);
}

}  // namespace rb
