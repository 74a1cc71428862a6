// How a table of the record is told: a column a row, with where its cell comes from. Inside this
// room.
#pragma once

#include <functional>
#include <utility>

#include "record/model/clean_text.h"
#include "record/model/table.h"

namespace rb::columns {

inline Cell cell(const std::string& text) {
  if (text.empty()) return {};
  return clean_text(text);
}
inline Cell cell(const char* text) {
  return cell(std::string{text});
}
inline Cell cell(bool yes) {
  return yes;
}
inline Cell cell(int number) {
  return static_cast<double>(number);
}
inline Cell cell(double number) {
  return number;
}
inline Cell cell(Moment moment) {
  return moment;
}
inline Cell cell(Seconds span) {
  return in_seconds(span);
}
inline Cell cell(Length q) {
  return in_metres(q);
}
inline Cell cell(Volume q) {
  return in_cubic_metres(q);
}
inline Cell cell(Velocity q) {
  return in_metres_per_hour(q);
}
inline Cell cell(Pressure q) {
  return in_kilopascals(q);
}
inline Cell cell(UnitWeight q) {
  return in_kilonewtons_per_m3(q);
}
inline Cell cell(MassPerArea q) {
  return in_kilograms_per_m2(q);
}
inline Cell cell(MassPerVolume q) {
  return in_kilograms_per_m3(q);
}
inline Cell cell(Frequency q) {
  return in_vibrations_per_minute(q);
}
inline Cell cell(Current q) {
  return in_amperes(q);
}
inline Cell cell(Potential q) {
  return in_volts(q);
}
inline Cell cell(ApparentPower q) {
  return in_kilovoltamperes(q);
}
inline Cell cell(std::size_t number) {
  return static_cast<double>(number);
}
inline Cell cell(Celsius t) {
  return t.degrees;
}
template <class T>
inline Cell cell(const std::optional<T>& value) {
  return value ? cell(*value) : Cell{};
}

template <class Line>
struct Col {
  const char* key;
  const char* heading;
  Measure measure;
  std::function<Cell(const Line&)> of;
  On on = On::both;
  bool word = false;
};

/// A column whose texts are words of ours, told in the reader's language.
inline constexpr bool kWord = true;

template <class Line>
Table table(const char* key, const char* title, const std::vector<Line>& lines,
            const std::vector<Col<Line>>& columns) {
  Table made{key, title, {}, {}};
  for (const auto& c : columns) made.columns.push_back({c.key, c.heading, c.measure, c.on, c.word});
  for (const Line& line : lines) {
    std::vector<Cell> row;
    row.reserve(columns.size());
    for (const auto& c : columns) row.push_back(c.of(line));
    made.rows.push_back(std::move(row));
  }
  return made;
}

// A member as a cell.
template <class Line, class T>
std::function<Cell(const Line&)> of(T Line::*member) {
  return [member](const Line& line) { return cell(line.*member); };
}

using M = Measure;

// What was done and found.
Table findings(const PourRecord&);
Table lifts(const PourRecord&);
Table tops(const PourRecord&);
Table joints(const PourRecord&);
Table forms(const PourRecord&);
Table runs(const PourRecord&);
Table power(const PourRecord&);
Table settings(const PourRecord&);
Table moves(const PourRecord&);
Table inserts(const PourRecord&);
Table trucks(const PourRecord&);
Table corrections(const PourRecord&);
Table late(const PourRecord&);
Table uncertain(const PourRecord&);
Table aside(const PourRecord&);
Table damaged(const PourRecord&);
Table set_aside(const PourRecord&);

// What was planned, seen and signed.
Table elements(const PourRecord&);
Table mixes(const PourRecord&);
Table limits(const PourRecord&, Units);
Table people(const PourRecord&);
Table ready(const PourRecord&);
Table air(const PourRecord&);
Table holds(const PourRecord&);
Table notes(const PourRecord&);
Table strips(const PourRecord&);
// What came after the last lift.
Table cures(const PourRecord&);
Table concrete_temps(const PourRecord&);
Table maturities(const PourRecord&);
Table permits(const PourRecord&);
Table specimens(const PourRecord&);
Table blemishes(const PourRecord&);
Table photos(const PourRecord&);
Table signatures(const PourRecord&);
Table amendments(const PourRecord&);

}  // namespace rb::columns
