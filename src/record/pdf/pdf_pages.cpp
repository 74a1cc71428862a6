#include "record/pdf/pdf_pages.h"

#include <fmt/format.h>

#include "record/model/book_words.h"
#include "record/model/clean_text.h"
#include "record/pdf/day_page.h"
#include "record/pdf/pour_pages.h"

namespace rb {

namespace {

PageWords words_of(const DailyRecord& record) {
  const Shown shown{record};
  const std::string newest = fmt::format("{} {}", day_text(record.as_of, record.utc_offset),
                                         clock_text(record.as_of, record.utc_offset));
  return {clean_text(fmt::format("{}   ·   {}", shown.record_title(), record.site)),
          fmt::format("{}   ·   {}", day_text(record), offset_text(record.utc_offset)),
          shown.say(said("Risebook   ·   book {book}   ·   {count} events, the newest of {newest}"),
                    {{"book", record.book.tag},
                     {"count", std::to_string(record.book.events)},
                     {"newest", newest}}),
          shown.say(said("newest {head}"), {{"head", head_words(record.book, record.language)}}),
          shown.told("page {} of {}")};
}

}  // namespace

int draw_pages(cairo_t* cr, const DailyRecord& record, Paper paper, int pages, TypeWidths& widths) {
  Sheet sheet{cr, paper, words_of(record), pages};
  RecordPage page{sheet, record, widths};
  draw_day_page(page);
  for (const PourRecord& pour : record.pours) {
    sheet.turn();
    draw_pour(page, pour);
  }
  for (const PourWithoutPlan& lost : record.without_plan) {
    page.section(table_of(lost, record.language),
                 page.shown().say(said("Pour {id}: damaged events"), {{"id", lost.pour.text}}));
  }
  draw_cautions(page);
  return sheet.page();
}

}  // namespace rb
