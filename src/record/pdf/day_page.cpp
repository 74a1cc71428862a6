#include "record/pdf/day_page.h"

#include <fmt/format.h>

#include <algorithm>

#include "record/model/clean_text.h"

namespace rb {

namespace {

void draw_title(RecordPage& page) {
  Sheet& sheet = page.sheet();
  const Ink& ink = page.ink();
  const DailyRecord& record = page.record();
  const double left = sheet.left();
  const double right = left + sheet.width();
  double y = sheet.y() - 4;
  ink.box(left, y, sheet.width(), 5, look::slate);
  ink.box(left, y, 64, 5, look::clay);
  y += 14;
  const Style day{11, true, look::slate, Align::right};
  const double taken = Ink::width(ink.lay(page.shown().long_day(), day));
  ink.fitted(left, y, sheet.width() - taken - 12, page.shown().record_title(),
             {21, true, look::slate});
  ink.text(right, y + 3, page.shown().long_day(), day);
  ink.text(
      right, y + 19,
      fmt::format("{}   ·   {}", day_text(record),
                  page.shown().say(said("times {how}"), {{"how", page.shown().clock_words()}})),
      {8, false, look::steel, Align::right});
  sheet.skip(48);
  sheet.text(clean_text(record.site), {11, false, look::slate});
  if (record.edition > 1) sheet.text(page.shown().edition(), {8, true, look::slate});
  sheet.skip(6);
  if (!record.book.damage.empty()) {
    sheet.text(clean_text(record.book.damage), {9.5, true, look::red});
    sheet.skip(6);
  }
  ink.line(left, sheet.y(), right, sheet.y(), look::hair, 0.8);
  sheet.skip(4);
}

bool of_other_days(const RecordPage& page) {
  const auto& pours = page.record().pours;
  return std::any_of(pours.begin(), pours.end(), [&](const PourRecord& pour) {
    return !page.shown().other_days(pour).empty();
  });
}

}  // namespace

void draw_day_page(RecordPage& page) {
  draw_title(page);
  Sheet& sheet = page.sheet();
  const DailyRecord& record = page.record();
  const Style small{8, false, look::slate};
  if (record.pours.empty()) {
    sheet.skip(10);
    sheet.text(page.told(said("No pour was logged on this day.")), {10});
  } else {
    page.section(day_table(record));
  }
  sheet.skip(6);
  if (of_other_days(page)) {
    sheet.text(page.told(said("A pour is told whole on every day it touches: a time with a date "
                              "before it is of another day.")),
               small);
  }
  sheet.section(page.told(said("Cautions")), 60);
  for (const std::string& caution : short_cautions()) {
    sheet.text(page.shown().told(caution), {8.2, false, look::slate}, 9);
    sheet.skip(2);
  }
  sheet.skip(8);
  if (!record.book.looked.empty()) {
    sheet.text(page.shown().say(said("Verified in the book for this record: {what}."),
                                {{"what", record.book.looked}}),
               small);
  }
  sheet.text(page.told(said("This document is made to PDF/A-3, not validated; the record's JSON is "
                            "attached to it.")),
             small);
}

void draw_cautions(RecordPage& page) {
  const std::string title = page.told(said("Cautions in full"));
  page.sheet().section(title, 110);
  page.bookmark(title, true);
  for (const std::string& caution : record_cautions()) {
    page.sheet().text(page.shown().told(caution), {8, false, look::slate}, 9);
    page.sheet().skip(4);
  }
}

}  // namespace rb
