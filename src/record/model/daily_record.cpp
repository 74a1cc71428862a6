#include "record/model/daily_record.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "pour/log/log_entry.h"
#include "record/model/pour_record.h"

namespace rb {

namespace {

constexpr std::chrono::hours kDay{24};

Moment newest(const PourState& state) {
  Moment moment = state.moment(state.last);
  for (const LogEntry& entry : state.log) {
    moment = std::max(moment, entry.when);
    if (entry.event.entry) moment = std::max(moment, entry.event.entry->wall);
  }
  return moment;
}

}  // namespace

bool touches(const PourState& state, Moment day) {
  return std::any_of(state.log.begin(), state.log.end(), [&](const LogEntry& entry) {
    return !entry.struck && entry.when >= day && entry.when < day + kDay;
  });
}

DailyRecord make_daily_record(const std::vector<RecordInput>& pours, Moment day,
                              std::chrono::minutes utc_offset, BookFacts book,
                              std::vector<PourWithoutPlan> without_plan) {
  DailyRecord record;
  record.day = day;
  record.utc_offset = utc_offset;
  record.book = std::move(book);
  record.without_plan = std::move(without_plan);
  record.as_of = day;
  if (!pours.empty()) {
    record.units = pours.front().state.plan->units;
    record.site = pours.front().state.plan->site;
  }
  for (const RecordInput& input : pours) {
    record.as_of = std::max(record.as_of, newest(input.state));
    record.pours.push_back(make_pour_record(input, Voice{.units = record.units}));
  }
  return record;
}

std::string day_text(const DailyRecord& record) {
  return day_text(record.day, record.utc_offset);
}

std::string long_day_text(const DailyRecord& record) {
  static constexpr std::array<const char*, 7> kWeekdays{
      "Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"};
  static constexpr std::array<const char*, 12> kMonths{
      "January", "February", "March",     "April",   "May",      "June",
      "July",    "August",   "September", "October", "November", "December"};
  const auto day = std::chrono::floor<std::chrono::days>(record.day + record.utc_offset);
  const std::chrono::year_month_day date{day};
  return fmt::format("{} {} {} {}", kWeekdays.at(std::chrono::weekday{day}.c_encoding()),
                     static_cast<unsigned>(date.day()),
                     kMonths.at(static_cast<unsigned>(date.month()) - 1),
                     static_cast<int>(date.year()));
}

std::string offset_text(std::chrono::minutes utc_offset) {
  const auto minutes = std::abs(utc_offset.count());
  return fmt::format("UTC{}{:02}:{:02}", utc_offset.count() < 0 ? '-' : '+', minutes / 60,
                     minutes % 60);
}

std::string edition_text(const DailyRecord& record) {
  if (record.edition <= 1) return {};
  std::string text = fmt::format("Edition {}.", record.edition);
  if (!record.earlier) return text;
  text += " The one before it: " + record.earlier->file;
  return record.earlier->sha256.empty() ? text : text + ", SHA-256 " + record.earlier->sha256;
}

const std::vector<std::string>& record_cautions() {
  static const std::vector<std::string> kCautions{
      "Form pressure: while a row of external vibrators runs, reckon with the full liquid head of "
      "the concrete down to the lower end of its reach. The formulas for the rate of rise hold for "
      "ordinary internal vibration. The form designer's rating and drawings govern; keep people "
      "clear of the form and out from under it while concrete rises.",
      "Electricity: the motors are fed through inverters. Low voltage at the motor does not make "
      "the inverter's supply side harmless. Disconnect and wait the maker's discharge time before "
      "opening anything; only qualified people work on it, under the local electrical code.",
      "Overhead motors: every motor hangs by its bracket and a separate safety cable. Nobody "
      "stands below while motors are hung, moved or taken down.",
      "This record shows what was logged and what was reckoned from it, with the source of each "
      "limit. The tool advises. It replaces neither local codes, nor the form designer, nor "
      "licensed practice, nor the look at the stripped face."};
  return kCautions;
}

}  // namespace rb
