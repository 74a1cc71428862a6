#include "record/told/shown.h"

#include <fmt/format.h>

#include <array>

#include "record/model/clean_text.h"

namespace rb {

Voice voice_of(const DailyRecord& record) {
  return {record.language, record.units, false, record.utc_offset};
}

Shown::Shown(const DailyRecord& record) : record_(record), voice_(voice_of(record)) {}

std::string Shown::told(const std::string& english) const {
  return rb::told(voice_.language, english.c_str());
}

std::string Shown::told(Said english) const {
  return rb::told(voice_.language, english);
}

std::string Shown::say(Said sentence, Facts facts) const {
  return clean_text(words_of(Saying{sentence, std::move(facts)}, voice_));
}

std::string Shown::title(const Table& table) const {
  return told(table.title);
}

std::string Shown::heading(const Column& column) const {
  const std::string unit = unit_text(column.measure, voice_.units);
  return unit.empty() ? told(column.heading) : fmt::format("{} ({})", told(column.heading), unit);
}

std::string Shown::text(const Cell& cell, const Column& column) const {
  if (const auto* text = std::get_if<std::string>(&cell)) return column.word ? told(*text) : *text;
  if (const auto* yes = std::get_if<bool>(&cell)) return told(*yes ? said("yes") : said("NO"));
  if (const auto* moment = std::get_if<Moment>(&cell)) return when(*moment);
  if (const auto* number = std::get_if<double>(&cell)) {
    return shown_text(*number, column.measure, voice_.units);
  }
  return {};
}

std::string Shown::figure(const Amount& amount) const {
  return amount_text(amount, voice_);
}

std::string Shown::when(Moment moment) const {
  const std::string clock = clock_text(moment, record_.utc_offset);
  const bool of_day = moment >= record_.day && moment < record_.day_end;
  return of_day ? clock : day_text(moment, record_.utc_offset) + " " + clock;
}

std::string Shown::long_day() const {
  static constexpr std::array<Said, 7> kWeekdays{
      said("Sunday"),   said("Monday"), said("Tuesday"), said("Wednesday"),
      said("Thursday"), said("Friday"), said("Saturday")};
  static constexpr std::array<Said, 12> kMonths{
      said("January"),   said("February"), said("March"),    said("April"),
      said("May"),       said("June"),     said("July"),     said("August"),
      said("September"), said("October"),  said("November"), said("December")};
  const auto day = std::chrono::floor<std::chrono::days>(record_.day + record_.utc_offset);
  const std::chrono::year_month_day date{day};
  return say(said("{weekday} {day} {month} {year}"),
             {{"weekday", Term{kWeekdays.at(std::chrono::weekday{day}.c_encoding())}},
              {"day", std::to_string(static_cast<unsigned>(date.day()))},
              {"month", Term{kMonths.at(static_cast<unsigned>(date.month()) - 1)}},
              {"year", std::to_string(static_cast<int>(date.year()))}});
}

std::string Shown::record_title() const {
  return told(said("Daily consolidation record"));
}

std::vector<std::string> Shown::other_days(const PourRecord& pour) const {
  std::vector<std::string> told;
  if (pour.opened && *pour.opened < record_.day) {
    told.push_back(say(said("Begun on an earlier day: {when}."), {{"when", when(*pour.opened)}}));
  }
  if (pour.closed && *pour.closed >= record_.day_end) {
    told.push_back(say(said("Closed on a later day: {when}."), {{"when", when(*pour.closed)}}));
  }
  return told;
}

std::string Shown::map_title(const DoseMap& map) const {
  return say(said("Dose on {element}, {side} side"),
             {{"element", map.element}, {"side", Term{to_text(map.side)}}});
}

std::string Shown::clock_words() const {
  const Facts facts{{"offset", offset_text(record_.utc_offset)},
                    {"other", offset_text(record_.utc_offset_end)}};
  if (record_.utc_offset_end == record_.utc_offset) return say(said("local, {offset}"), facts);
  return say(said("all told in {offset}: the clocks were set to {other} on this day"), facts);
}

std::string Shown::edition() const {
  if (record_.edition <= 1) return {};
  const std::string number = std::to_string(record_.edition);
  if (!record_.earlier) return say(said("Edition {number}."), {{"number", number}});
  const Facts facts{
      {"number", number}, {"file", record_.earlier->file}, {"hash", record_.earlier->sha256}};
  if (record_.earlier->sha256.empty()) {
    return say(said("Edition {number}. The one before it: {file}"), facts);
  }
  return say(said("Edition {number}. The one before it: {file}, SHA-256 {hash}"), facts);
}

}  // namespace rb
