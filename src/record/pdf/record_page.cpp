#include "record/pdf/record_page.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "record/model/clean_text.h"

namespace rb {

namespace {

Loud loud(const std::string& severity) {
  if (severity == to_text(Severity::stop)) return Loud::filled;
  return severity == to_text(Severity::mend) ? Loud::framed : Loud::plain;
}

std::string upper(std::string text) {
  for (char& c : text) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return text;
}

bool is_figure(const Column& column) {
  return column.key == "measured_text" || column.key == "limit_text" || column.key == "value_text";
}

PaperColumn paper_column(const Column& column, const Shown& shown) {
  const bool words = column.measure == Measure::text || column.measure == Measure::yes_no ||
                     column.measure == Measure::moment;
  PaperColumn made;
  made.heading = shown.heading(column);
  made.align = words && !is_figure(column) ? Align::left : Align::right;
  made.whole = is_figure(column) || column.measure == Measure::count || column.key == "digits";
  made.badge = column.key == "weight";
  if (column.key == "name") made.least = 110;
  return made;
}

}  // namespace

std::string capital(std::string text) {
  if (!text.empty()) {
    text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  }
  return text;
}

PaperTable RecordPage::on_paper(const Table& table) const {
  PaperTable paper;
  paper.red = table.key == "damaged";
  std::vector<std::size_t> taken;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (table.columns[i].on == On::data) continue;
    taken.push_back(i);
    paper.columns.push_back(paper_column(table.columns[i], shown_));
    paper.columns.back().strong = taken.size() == 1;
  }
  for (const auto& row : table.rows) {
    std::vector<PaperCell> cells;
    for (const std::size_t i : taken) {
      const bool* yes = std::get_if<bool>(&row[i]);  // a no must not be overlooked
      PaperCell cell{shown_.text(row[i], table.columns[i]), yes != nullptr && !*yes};
      if (table.columns[i].key == "weight") {
        if (const auto* text = std::get_if<std::string>(&row[i])) cell.loud = loud(*text);
        if (cell.loud != Loud::plain) cell.text = upper(cell.text);
      }
      cells.push_back(std::move(cell));
    }
    paper.rows.push_back(std::move(cells));
  }
  return paper;
}

void RecordPage::section(const Table& table) {
  section(table, shown_.title(table));
}

void RecordPage::section(const Table& table, const std::string& title) {
  const PaperTable paper = on_paper(table);
  const TableOnSheet drawn{sheet_, paper, widths_};
  sheet_.section(title, drawn.first());
  bookmark(title, false);
  if (table.rows.empty()) {
    sheet_.text(told(said("No rule was broken by what was logged. That is not a verdict on the "
                          "concrete.")),
                {8.2, false, look::steel});
    return;
  }
  drawn.draw();
}

void RecordPage::bookmark(const std::string& title, bool top) {
  cairo_surface_t* surface = cairo_get_target(ink().cr());
  if (cairo_surface_get_type(surface) != CAIRO_SURFACE_TYPE_PDF) return;
  const std::string place = fmt::format("page={} pos=[0 {:.0f}]", sheet_.page(), sheet_.y());
  const int made = cairo_pdf_surface_add_outline(
      surface, top ? CAIRO_PDF_OUTLINE_ROOT : parent_, title.c_str(), place.c_str(),
      top ? CAIRO_PDF_OUTLINE_FLAG_OPEN : static_cast<cairo_pdf_outline_flags_t>(0));
  if (top) parent_ = made;
}

}  // namespace rb
