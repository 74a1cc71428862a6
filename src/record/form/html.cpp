#include "record/form/html.h"

#include <fmt/format.h>
#include <risebook_page.h>

#include "record/form/html_parts.h"
#include "record/model/book_words.h"
#include "record/model/clean_text.h"

namespace rb {

namespace {

std::string embedded_text(const unsigned char* begin, const unsigned char* end) {
  return {reinterpret_cast<const char*>(begin), static_cast<std::size_t>(end - begin)};
}

bool is_measured(const Column& column) {
  return column.measure != Measure::text && column.measure != Measure::yes_no &&
         column.measure != Measure::moment;
}

// How loud a cell is: a no, a weight.
std::string cell_class(const Cell& cell, const Column& column) {
  if (is_measured(column)) return "figure";
  if (const bool* yes = std::get_if<bool>(&cell)) return *yes ? "" : "no";
  const auto* text = std::get_if<std::string>(&cell);
  return text != nullptr && column.key == "weight" ? *text : std::string{};
}

std::string html_table(const Table& table, const Shown& shown) {
  std::string head;
  for (const Column& column : table.columns) {
    if (column.on == On::data) continue;
    head +=
        html_element("th", shown.heading(column), is_measured(column) ? "class=\"figure\"" : "");
  }
  std::string rows;
  for (const auto& row : table.rows) {
    rows += "<tr>";
    for (std::size_t i = 0; i < row.size(); ++i) {
      const Column& column = table.columns[i];
      if (column.on == On::data) continue;
      const std::string loud = cell_class(row[i], column);
      rows += html_element("td", shown.text(row[i], column),
                           loud.empty() ? "" : fmt::format("class=\"{}\"", html_text(loud)));
    }
    rows += "</tr>\n";
  }
  return fmt::format(
      "<div "
      "class=\"wide\"><table>\n<thead><tr>{}</tr></thead>\n<tbody>\n{}</tbody></table></div>\n",
      head, rows);
}

class Page {
 public:
  explicit Page(const DailyRecord& record) : record_(record), shown_(record) {}

  std::string make() {
    const std::string title = fmt::format("{} {}", shown_.record_title(), day_text(record_));
    out_ = fmt::format(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n<meta "
        "name=\"viewport\" content=\"width=device-width, "
        "initial-scale=1\">\n{}<style>\n{}</style>\n"
        "</head>\n<body>\n",
        record_.language.code(), html_element("title", title),
        embedded_text(embedded::rb_page_style, embedded::rb_page_style_end));
    out_ += html_fillings();
    header();
    if (record_.pours.empty()) paragraph(told(said("No pour was logged on this day.")));
    for (std::size_t i = 0; i < record_.pours.size(); ++i) pour(record_.pours[i], i);
    for (const PourWithoutPlan& lost : record_.without_plan) {
      heading("h2", shown_.say(said("Pour {id}: damaged events"), {{"id", lost.pour.text}}));
      out_ += html_table(table_of(lost), shown_);
    }
    heading("h3", told(said("Cautions in full")));
    for (const std::string& caution : record_cautions()) paragraph(shown_.told(caution));
    paragraph(
        shown_.say(said("newest {head}"), {{"head", head_words(record_.book, record_.language)}}),
        "quiet");
    out_ += "<script>\n" + embedded_text(embedded::rb_page_script, embedded::rb_page_script_end) +
            "</script>\n</body>\n</html>\n";
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string told(Said english) const { return shown_.told(english.english); }
  void heading(const char* level, const std::string& text) {
    out_ += html_element(level, text) + "\n";
  }
  void paragraph(const std::string& text, const char* look = "") {
    if (text.empty()) return;
    out_ += html_element("p", text, *look == '\0' ? "" : fmt::format("class=\"{}\"", look)) + "\n";
  }

  void header() {
    out_ += "<header>\n";
    heading("h1", shown_.record_title());
    paragraph(record_.site);
    paragraph(fmt::format("{} ({}), {}", shown_.long_day(), day_text(record_),
                          shown_.say(said("times {how}"), {{"how", shown_.clock_words()}})));
    paragraph(shown_.edition());
    paragraph(record_.book.damage, "damage");
    paragraph(
        shown_.say(said("book {book}, {count} events"),
                   {{"book", record_.book.tag}, {"count", std::to_string(record_.book.events)}}),
        "quiet");
    out_ += "</header>\n";
    table(day_table(record_), "h3");
    heading("h3", told(said("Cautions")));
    for (const std::string& caution : short_cautions()) paragraph(shown_.told(caution));
  }

  void table(const Table& table, const char* level) {
    heading(level, shown_.title(table));
    out_ += html_table(table, shown_);
  }

  void pour(const PourRecord& p, std::size_t number) {
    heading("h2", p.name.empty() ? p.id : p.name);
    paragraph(shown_.say(said("Pour {id}"), {{"id", p.id}}), "quiet");
    for (const std::string& day : shown_.other_days(p)) paragraph(day);
    const std::vector<Table> tables = tables_of(p, shown_.units());
    for (const Table& one : tables) {
      if (one.key == "findings") findings(one);
    }
    for (const std::string& gap : p.not_judged) {
      paragraph(shown_.say(said("Not judged: {what}"), {{"what", gap}}));
    }
    for (std::size_t i = 0; i < p.dose_maps.size(); ++i) {
      heading("h3", shown_.map_title(p.dose_maps[i]));
      out_ += html_face(p.dose_maps[i], shown_, fmt::format("{}-{}", number + 1, i + 1));
    }
    heading("h3", told(said("What went on, by the clock")));
    out_ += html_timeline(p, shown_);
    for (const Table& one : tables) {
      if (one.key != "findings" && !one.rows.empty()) table(one, "h3");
    }
    for (const SignatureLine& line : p.signatures) {
      for (const std::string& words : line.told) paragraph(words);
    }
  }

  void findings(const Table& found) {
    if (!found.rows.empty()) {
      table(found, "h3");
      return;
    }
    heading("h3", shown_.title(found));
    paragraph(
        told(said("No rule was broken by what was logged. That is not a verdict on the "
                  "concrete.")));
  }

  const DailyRecord& record_;
  Shown shown_;
  std::string out_;
};

}  // namespace

std::string html_text(std::string_view text) {
  std::string out;
  for (const char c : clean_text(text)) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

std::string html_element(const char* name, std::string_view text, std::string_view more) {
  return fmt::format("<{0}{1}{2}>{3}</{0}>", name, more.empty() ? "" : " ", more, html_text(text));
}

std::string to_html(const DailyRecord& record) {
  return Page{record}.make();
}

}  // namespace rb
