#include "record/model/daily_record.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "base/said.h"
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

LocalDay plain_day(Moment start, std::chrono::minutes utc_offset) {
  return {start, start + kDay, utc_offset, utc_offset};
}

bool touches(const PourState& state, const LocalDay& day) {
  return std::any_of(state.log.begin(), state.log.end(), [&](const LogEntry& entry) {
    return !entry.struck && entry.when >= day.start && entry.when < day.end;
  });
}

DailyRecord make_daily_record(const std::vector<RecordInput>& pours, const LocalDay& day,
                              BookFacts book, std::vector<PourWithoutPlan> without_plan,
                              Language language) {
  DailyRecord record;
  record.day = day.start;
  record.day_end = day.end;
  record.utc_offset = day.utc_offset;
  record.utc_offset_end = day.utc_offset_end;
  record.language = language;
  record.book = std::move(book);
  record.without_plan = std::move(without_plan);
  record.as_of = day.start;
  if (!pours.empty()) {
    record.units = pours.front().state.plan->units;
    record.site = pours.front().state.plan->site;
  }
  const Voice voice{language, record.units, false, record.utc_offset};
  for (const RecordInput& input : pours) {
    record.as_of = std::max(record.as_of, newest(input.state));
    record.pours.push_back(make_pour_record(input, voice));
  }
  return record;
}

DailyRecord make_daily_record(const std::vector<RecordInput>& pours, Moment day,
                              std::chrono::minutes utc_offset, BookFacts book,
                              std::vector<PourWithoutPlan> without_plan, Language language) {
  return make_daily_record(pours, plain_day(day, utc_offset), std::move(book),
                           std::move(without_plan), language);
}

std::string day_text(const DailyRecord& record) {
  return day_text(record.day, record.utc_offset);
}

std::string offset_text(std::chrono::minutes utc_offset) {
  const auto minutes = std::abs(utc_offset.count());
  return fmt::format("UTC{}{:02}:{:02}", utc_offset.count() < 0 ? '-' : '+', minutes / 60,
                     minutes % 60);
}

const std::vector<std::string>& record_cautions() {
  static const std::vector<std::string> kCautions{
      said(
          "Form pressure: while a row of external vibrators runs, reckon with the full liquid head "
          "of the concrete down to the lower end of its reach. The formulas for the rate of rise "
          "hold for ordinary internal vibration. The form designer's rating and drawings govern; "
          "keep people clear of the form and out from under it while concrete rises.")
          .english,
      said("Electricity: the motors are fed through inverters. Low voltage at the motor does not "
           "make the inverter's supply side harmless. Disconnect and wait the maker's discharge "
           "time before opening anything; only qualified people work on it, under the local "
           "electrical code.")
          .english,
      said("Overhead motors: every motor hangs by its bracket and a separate safety cable. Nobody "
           "stands below while motors are hung, moved or taken down.")
          .english,
      said("This record shows what was logged and what was reckoned from it, with the source of "
           "each limit. The tool advises. It replaces neither local codes, nor the form designer, "
           "nor licensed practice, nor the look at the stripped face.")
          .english};
  return kCautions;
}

const std::vector<std::string>& short_cautions() {
  static const std::vector<std::string> kShort{
      said("Form pressure: a running row presses as full liquid. The form designer's rating "
           "governs; keep clear.")
          .english,
      said("Electricity: inverters stay live inside after they are switched off. Qualified people "
           "only.")
          .english,
      said("Overhead motors: a bracket and a safety cable each. Nobody below while they are moved.")
          .english,
      said("The tool advises. Local codes, the form designer and licensed practice decide.")
          .english};
  return kShort;
}

}  // namespace rb
