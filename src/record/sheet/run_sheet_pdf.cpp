#include "record/sheet/run_sheet_pdf.h"

#include <cairo-pdf.h>

#include "record/pdf/counted_pages.h"
#include "record/pdf/paper_table.h"
#include "record/pdf/sheet.h"

namespace rb {

namespace {

constexpr double kText = 11;
constexpr double kTitle = 19;
constexpr double kHandRow = 24;  // room to write by hand

class Taped {
 public:
  Taped(Sheet& sheet, const RunSheet& told, TypeWidths& widths)
      : sheet_(sheet), told_(told), widths_(widths) {}

  void draw() {
    sheet_.text(told_.title, {kTitle, true, look::slate});
    if (!told_.about.empty()) sheet_.text(told_.about, {kText + 1, false, look::steel});
    sheet_.skip(8);
    facts();
    before();
    listed(told_.cautions_title, told_.cautions);
    steps();
    plain(told_.loads_title, told_.loads, kHandRow, 2);
    plain(told_.rows_title, told_.rows, 0, 0);
    if (!told_.feed.rows.empty()) plain(told_.feed_title, told_.feed, 0, 0);
    listed(told_.guesses_title, told_.guesses);
  }

 private:
  void facts() {
    double names = 0;
    for (const auto& [name, value] : told_.facts) {
      names = std::max(names, widths_.of(sheet_.ink(), name, true).whole * kText);
    }
    const double indent = std::min(names + 12, sheet_.width() * 0.4);
    for (const auto& [name, value] : told_.facts) {
      const Lines left{sheet_.ink(), name, {kText, true, look::slate}, indent - 8};
      const Lines right{sheet_.ink(), value, {kText, false, look::slate}, sheet_.width() - indent};
      const double tall = std::max(left.height(), right.height()) + 2;
      sheet_.keep(tall);
      left.draw(sheet_.ink(), sheet_.left(), sheet_.y(), 0, left.count());
      right.draw(sheet_.ink(), sheet_.left() + indent, sheet_.y(), 0, right.count());
      sheet_.skip(tall);
    }
  }

  // What must be in order, with boxes to tick.
  void before() {
    constexpr double kBox = 14;
    sheet_.section(told_.before_title, 60);
    for (const std::string& hold : told_.before) {
      const Lines lines{
          sheet_.ink(), hold, {kText, false, look::slate}, sheet_.width() - kBox - 10};
      const double tall = std::max(lines.height(), kBox) + 5;
      sheet_.keep(tall);
      sheet_.ink().frame(sheet_.left() + 1, sheet_.y() + 1, kBox, kBox, look::slate, 0.9);
      lines.draw(sheet_.ink(), sheet_.left() + kBox + 10, sheet_.y(), 0, lines.count());
      sheet_.skip(tall);
    }
  }

  void steps() {
    PaperTable table = hand_table();
    double clock = 0;  // a clock is never broken
    for (const SheetLine& line : told_.lines) {
      clock = std::max(clock, widths_.of(sheet_.ink(), line.clock, true).whole * kText);
    }
    constexpr double kAround = 16;
    table.columns.push_back(
        {.heading = told_.time, .strong = true, .whole = true, .least = clock + kAround});
    table.columns.push_back({.heading = told_.step});
    table.columns.push_back({.heading = told_.true_time, .box = true, .least = 66});
    table.columns.push_back({.heading = told_.initials, .box = true, .least = 58});
    for (const SheetLine& line : told_.lines) {
      const bool strong = line.hold || line.kind == RunStepKind::lift;
      table.rows.push_back({{line.clock, true}, {line.says, strong}, {}, {}});
      table.marked.push_back(line.kind == RunStepKind::lift);
    }
    draw_table(told_.lines_title, table);
  }

  static PaperTable hand_table() {
    PaperTable table;
    table.size = table.least_size = kText;
    table.row_least = kHandRow;
    return table;
  }

  // `by_hand`: so many columns at the end are boxes.
  void plain(const std::string& title, const SheetTable& from, double row_least,
             std::size_t by_hand) {
    if (from.rows.empty()) return;  // a deck has no rows
    PaperTable table = hand_table();
    table.row_least = row_least;
    for (std::size_t c = 0; c < from.headings.size(); ++c) {
      const bool box = c + by_hand >= from.headings.size();
      table.columns.push_back(
          {.heading = from.headings[c], .strong = c == 0, .box = box, .least = box ? 66.0 : 0.0});
    }
    for (const auto& row : from.rows) {
      std::vector<PaperCell> cells;
      cells.reserve(row.size());
      for (const std::string& cell : row) cells.push_back({cell});
      table.rows.push_back(std::move(cells));
    }
    draw_table(title, table);
  }

  void draw_table(const std::string& title, const PaperTable& table) {
    const TableOnSheet drawn{sheet_, table, widths_};
    sheet_.section(title, drawn.first());
    drawn.draw();
  }

  void listed(const std::string& title, const std::vector<std::string>& texts) {
    if (texts.empty()) return;
    sheet_.section(title, 50);
    for (const std::string& text : texts) {
      sheet_.text(text, {kText, false, look::slate}, 9);
      sheet_.skip(4);
    }
  }

  Sheet& sheet_;
  const RunSheet& told_;
  TypeWidths& widths_;
};

PageWords page_words(const RunSheet& told) {
  PageWords words{told.title, told.about, told.foot, {}};
  words.page_of = told.page_of;
  words.size = 9;
  words.heading = 14;
  return words;
}

}  // namespace

Result<std::string> to_pdf(const RunSheet& told, Paper paper) {
  TypeWidths widths;
  return counted_pages(
      paper,
      [&](cairo_surface_t* surface) {
        cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, told.title.c_str());
        cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Risebook");
      },
      [&](cairo_t* pen, int pages) {
        Sheet sheet{pen, paper, page_words(told), pages};
        Taped{sheet, told, widths}.draw();
        return sheet.page();
      });
}

}  // namespace rb
