#include "record/pdf/pdf_pages.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "record/model/book_words.h"
#include "record/model/clean_text.h"
#include "record/model/table.h"
#include "record/pdf/dose_drawing.h"

namespace rb {

namespace {

constexpr double kMapTall = 290;

class Pages {
 public:
  Pages(Sheet& sheet, const DailyRecord& record, TypeWidths& widths)
      : sheet_(sheet), ink_(sheet.ink()), record_(record), widths_(widths) {}

  void draw() {
    title();
    if (record_.pours.empty()) {
      sheet_.skip(10);
      sheet_.text("No pour was logged on this day.", {10});
    }
    for (std::size_t i = 0; i < record_.pours.size(); ++i) {
      if (i > 0) sheet_.turn();
      pour(record_.pours[i]);
    }
    without_plan();
    cautions();
  }

 private:
  void title() {
    const double left = sheet_.left();
    const double right = left + sheet_.width();
    double y = sheet_.y() - 4;
    ink_.box(left, y, sheet_.width(), 5, look::slate);
    ink_.box(left, y, 64, 5, look::clay);
    y += 14;
    ink_.text(left, y, "Daily consolidation record", {21, true, look::slate});
    ink_.text(right, y + 3, long_day_text(record_), {11, true, look::slate, Align::right});
    ink_.text(
        right, y + 19,
        fmt::format("{}   ·   local times, {}", day_text(record_), offset_text(record_.utc_offset)),
        {8, false, look::steel, Align::right});
    sheet_.skip(44);
    sheet_.text(clean_text(record_.site), {11, false, look::slate});
    if (record_.edition > 1) {
      sheet_.text(clean_text(edition_text(record_)), {8, true, look::slate});
    }
    sheet_.skip(6);
    if (!record_.book.damage.empty()) {
      sheet_.text(clean_text(record_.book.damage), {9.5, true, look::red});
      sheet_.skip(6);
    }
    ink_.line(left, sheet_.y(), right, sheet_.y(), look::hair, 0.8);
    sheet_.skip(10);
  }

  void pour(const PourRecord& p) {
    bookmark(p.name.empty() ? p.id : p.name, true);
    sheet_.keep(120);
    sheet_.text(clean_text(p.name.empty() ? p.id : p.name), {15, true, look::slate});
    sheet_.skip(2);
    std::string under = "Pour " + p.id;
    if (p.site != record_.site) under += "   ·   " + p.site;
    sheet_.text(clean_text(under), {8, false, look::steel});
    sheet_.skip(8);
    if (!p.damaged.empty()) {
      sheet_.text(fmt::format("{} of this pour's events {} damaged and not in what follows: see "
                              "Damaged events.",
                              p.damaged.size(), p.damaged.size() == 1 ? "is" : "are"),
                  {9.5, true, look::red});
      sheet_.skip(6);
    }
    tiles(p);
    facts(p);
    std::string empty;
    const std::vector<Table> tables = tables_of(p, record_.units);
    for (const Table& table : tables) {
      if (table.key == "signatures" || table.key == "people") continue;
      if (table.key == "lifts") maps(p);
      if (table.rows.empty() && (table.key == "damaged" || table.key == "newer")) continue;
      if (table.rows.empty() && table.key != "findings") {
        std::string words = table.title;
        words.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(words.front())));
        empty += (empty.empty() ? "" : ", ") + words;
        continue;
      }
      section(table);
    }
    for (const std::string& gap : p.not_judged) {
      sheet_.skip(12);
      sheet_.text(clean_text("Not judged: " + gap), {8.2, true, look::slate});
    }
    if (!empty.empty()) {
      sheet_.skip(12);
      sheet_.text("Nothing was logged under: " + empty + ".", {8.2, false, look::steel});
    }
    signatures(p);
  }

  void without_plan() {
    for (const PourWithoutPlan& lost : record_.without_plan) {
      Table table = table_of(lost);
      table.title = clean_text("Pour " + lost.pour.text + ": damaged events");
      section(table);
    }
  }

  // How many of each, to be seen from an arm's length.
  void tiles(const PourRecord& p) {
    const auto count = [&](Severity severity) {
      return std::count_if(p.findings.begin(), p.findings.end(), [severity](const FindingLine& f) {
        return f.severity == severity && f.of_cause == 1;
      });
    };
    const auto signed_by = std::count_if(p.signatures.begin(), p.signatures.end(),
                                         [](const SignatureLine& s) { return s.at.has_value(); });
    struct Tile {
      std::string number, words;
      bool loud;
    };
    const std::array<Tile, 5> all{{
        {std::to_string(count(Severity::stop)), "causes to stop for", count(Severity::stop) > 0},
        {std::to_string(count(Severity::mend)), "causes to mend", count(Severity::mend) > 0},
        {std::to_string(count(Severity::note)), "notes of the checker", false},
        {std::to_string(p.lifts.size()), "lifts placed", false},
        {fmt::format("{}", signed_by), "signatures logged", false},
    }};
    constexpr double kGap = 8;
    constexpr double kTall = 42;
    const double w = (sheet_.width() - 4 * kGap) / 5;
    sheet_.keep(kTall + 8);
    for (std::size_t i = 0; i < all.size(); ++i) {
      const double x = sheet_.left() + static_cast<double>(i) * (w + kGap);
      const double y = sheet_.y();
      const bool loud = all[i].loud;
      ink_.box(x, y, w, kTall, loud ? look::slate : look::mist);
      if (loud) ink_.box(x, y, 3, kTall, look::clay);
      ink_.text(x + 10, y + 5, all[i].number, {17, true, loud ? look::white : look::slate});
      ink_.text(x + 10, y + 28, all[i].words, {7.2, false, loud ? look::white : look::steel});
    }
    sheet_.skip(kTall + 12);
  }

  void facts(const PourRecord& p) {
    std::vector<std::pair<std::string, std::string>> all;
    all.emplace_back("Opened", p.opened ? when(*p.opened) : "not logged");
    all.emplace_back("Closed", p.closed ? when(*p.closed) : "still open");
    all.emplace_back("Pressure method", p.method);
    if (p.from_script > 0) {
      all.emplace_back("Brought in from a script",
                       fmt::format("{} of {} events, not tapped", p.from_script, p.events));
    }
    all.emplace_back("Loads discharged", std::to_string(p.trucks));
    all.emplace_back("Placed by ticket", p.placed ? volume(*p.placed) : "not known");
    all.emplace_back("Net below the top", p.net ? volume(*p.net) : "not known");
    if (p.placed && p.net && in_cubic_metres(*p.net) > 0) {
      const double off = in_cubic_metres(*p.placed) / in_cubic_metres(*p.net) - 1;
      all.emplace_back("Placed against net", fmt::format("{:+.1f} %", off * 100));
    }
    for (const PersonLine& person : p.people) {
      const std::string role = person.role.empty() ? "On the pour" : person.role;
      all.emplace_back(capital(clean_text(role)),
                       clean_text(person.name.empty() ? person.id : person.name));
    }
    constexpr std::size_t kAcross = 4;
    const double w = sheet_.width() / kAcross;
    const Style value{8.8, false, look::slate};
    for (std::size_t i = 0; i < all.size(); i += kAcross) {
      double tall = 0;
      std::vector<LayoutHandle> values;
      for (std::size_t k = i; k < std::min(i + kAcross, all.size()); ++k) {
        values.push_back(ink_.lay(all[k].second, value, w - 10));
        pango_layout_set_height(values.back().get(), -3);  // a name of a page's length is cut
        pango_layout_set_ellipsize(values.back().get(), PANGO_ELLIPSIZE_END);
        tall = std::max(tall, Ink::height(values.back()));
      }
      sheet_.keep(tall + 22);
      for (std::size_t k = 0; k < values.size(); ++k) {
        const double x = sheet_.left() + static_cast<double>(k) * w;
        ink_.text(x, sheet_.y(), all[i + k].first, {7, true, look::steel});
        ink_.colour(look::slate);
        cairo_move_to(ink_.cr(), x, sheet_.y() + 10);
        pango_cairo_show_layout(ink_.cr(), values[k].get());
      }
      sheet_.skip(tall + 17);
    }
  }

  void maps(const PourRecord& p) {
    for (const DoseMap& map : p.dose_maps) {
      const double tall = dose_drawing_height(map, sheet_.width(), kMapTall);
      const std::string title = fmt::format("Dose on {}, {} side", map.element, to_text(map.side));
      sheet_.section(clean_text(title), tall + 16);
      bookmark(clean_text(title), false);
      sheet_.text(
          "Seconds of vibration each part got while it held plastic concrete. Seen from the near "
          "side, to scale. Heavy lines: tops of the lifts. Broken lines with rings: rows of "
          "motors.",
          {7.4, false, look::steel});
      sheet_.skip(4);
      draw_dose_map(ink_, map, record_.units, sheet_.left(), sheet_.y(), sheet_.width(), kMapTall);
      sheet_.skip(tall);
    }
  }

  void section(const Table& table) {
    const PaperTable paper = on_paper(table);
    const TableOnSheet drawn{sheet_, paper, widths_};
    sheet_.section(table.title, drawn.first());
    bookmark(table.title, false);
    if (table.rows.empty()) {
      sheet_.text("No rule was broken by what was logged. That is not a verdict on the concrete.",
                  {8.2, false, look::steel});
      return;
    }
    drawn.draw();
  }

  [[nodiscard]] PaperTable on_paper(const Table& table) const {
    PaperTable paper;
    paper.red = table.key == "damaged";
    std::vector<std::size_t> taken;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      const Column& column = table.columns[i];
      if (column.on == On::data) continue;
      taken.push_back(i);
      const bool words = column.measure == Measure::text || column.measure == Measure::yes_no ||
                         column.measure == Measure::moment;
      const bool number_words =
          column.key == "measured_text" || column.key == "limit_text" || column.key == "value_text";
      PaperColumn made;
      made.heading = heading_with_unit(column, record_.units);
      made.align = words && !number_words ? Align::left : Align::right;
      made.strong = taken.size() == 1;
      made.whole = number_words || column.key == "rule";
      made.badge = column.key == "weight";
      paper.columns.push_back(std::move(made));
    }
    for (const auto& row : table.rows) {
      std::vector<PaperCell> cells;
      for (const std::size_t i : taken) {
        const bool* yes = std::get_if<bool>(&row[i]);  // a no must not be overlooked
        cells.push_back({cell_text(row[i], table.columns[i]), yes != nullptr && !*yes});
      }
      paper.rows.push_back(std::move(cells));
    }
    return paper;
  }

  [[nodiscard]] std::string cell_text(const Cell& cell, const Column& column) const {
    if (const auto* text = std::get_if<std::string>(&cell)) {
      if (column.key != "weight" || *text == "note") return *text;
      std::string loud = *text;
      for (char& c : loud) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
      return loud;
    }
    if (const auto* yes = std::get_if<bool>(&cell)) return *yes ? "yes" : "NO";
    if (const auto* moment = std::get_if<Moment>(&cell)) return when(*moment);
    if (const auto* number = std::get_if<double>(&cell)) {
      return shown_text(*number, column.measure, record_.units);
    }
    return {};
  }

  // The clock on the record's day; on any other day the date too.
  [[nodiscard]] std::string when(Moment moment) const {
    const std::string day = day_text(moment, record_.utc_offset);
    const std::string clock = clock_text(moment, record_.utc_offset);
    return day == day_text(record_) ? clock : day + " " + clock;
  }

  [[nodiscard]] std::string volume(Volume v) const {
    return fmt::format("{} {}", shown_text(in_cubic_metres(v), Measure::volume, record_.units),
                       unit_text(Measure::volume, record_.units));
  }

  void signatures(const PourRecord& p) {
    constexpr double kTall = 46;
    sheet_.section("Signatures",
                   std::min(sheet_.body() - 60, kTall * static_cast<double>(p.signatures.size())));
    bookmark("Signatures", false);
    for (const SignatureLine& s : p.signatures) signature(s);
  }

  // The role, then what was signed over lines to write on. What is too long for its line stands
  // below, whole.
  void signature(const SignatureLine& s) {
    struct Field {
      const char* name;
      double from, to;  // shares of the width
      std::string text;
      bool below = false;
    };
    std::array<Field, 4> fields{{{"name", 0.18, 0.42, clean_text(s.by)},
                                 {"verdict", 0.42, 0.64, clean_text(s.verdict)},
                                 {"when", 0.64, 0.78, s.at ? when(*s.at) : std::string{}},
                                 {"by hand", 0.78, 1.0, {}}}};
    constexpr std::size_t kMostLines = 3;
    const Style value{8.8, false, look::slate};
    const double w = sheet_.width();
    std::vector<Lines> laid;
    double tall = lead(value.size);
    for (Field& f : fields) {
      laid.emplace_back(ink_, f.text, value, (f.to - f.from) * w - 10);
      f.below = laid.back().count() > kMostLines;
      if (f.below) laid.back() = Lines{ink_, "see below", value, (f.to - f.from) * w - 10};
      tall = std::max(tall, laid.back().height());
    }
    sheet_.keep(tall + 34);
    const double y = sheet_.y() + 12;
    const std::string role = capital(s.role.empty() ? "Signature" : clean_text(s.role));
    ink_.fitted(sheet_.left(), y + tall - lead(9), fields[0].from * w - 8, role,
                {9, true, look::slate});
    for (std::size_t i = 0; i < fields.size(); ++i) {
      const double x = sheet_.left() + fields[i].from * w;
      laid[i].draw(ink_, x, y + tall - laid[i].height(), 0, laid[i].count());
      const double under = y + tall + 2;
      ink_.line(x, under, sheet_.left() + fields[i].to * w - 8, under, look::slate, 0.7);
      ink_.text(x, under + 2, fields[i].name, {6.6, false, look::steel});
    }
    sheet_.skip(tall + 30);
    const double indent = fields[0].from * w;
    for (const Field& f : fields) {
      if (f.below) sheet_.text(capital(f.name) + ": " + f.text, {8.2, false, look::slate}, indent);
    }
    for (const std::string& told : s.told) {
      sheet_.text(clean_text(told), {8.2, false, look::slate}, indent);
    }
    if (!s.comment.empty()) {
      sheet_.text("“" + clean_text(s.comment) + "”", {8.2, false, look::slate}, indent);
      sheet_.skip(4);
    }
  }

  static std::string capital(std::string text) {
    if (!text.empty()) {
      text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
    }
    return text;
  }

  void cautions() {
    sheet_.section("Cautions", 110);
    bookmark("Cautions", true);
    for (const std::string& caution : record_cautions()) {
      sheet_.text(caution, {8, false, look::slate}, 9);
      sheet_.skip(4);
    }
    if (!record_.book.looked.empty()) {
      sheet_.text(clean_text("Verified in the book for this record: " + record_.book.looked + "."),
                  {8, false, look::slate}, 9);
    }
  }

  void bookmark(const std::string& title, bool top) {
    cairo_surface_t* surface = cairo_get_target(ink_.cr());
    if (cairo_surface_get_type(surface) != CAIRO_SURFACE_TYPE_PDF) return;
    const std::string place = fmt::format("page={} pos=[0 {:.0f}]", sheet_.page(), sheet_.y());
    const int made = cairo_pdf_surface_add_outline(
        surface, top ? CAIRO_PDF_OUTLINE_ROOT : parent_, title.c_str(), place.c_str(),
        top ? CAIRO_PDF_OUTLINE_FLAG_OPEN : static_cast<cairo_pdf_outline_flags_t>(0));
    if (top) parent_ = made;
  }

  Sheet& sheet_;
  const Ink& ink_;
  const DailyRecord& record_;
  TypeWidths& widths_;
  int parent_ = CAIRO_PDF_OUTLINE_ROOT;
};

PageWords words_of(const DailyRecord& record) {
  return {clean_text(fmt::format("Daily consolidation record   ·   {}", record.site)),
          fmt::format("{}   ·   {}", day_text(record), offset_text(record.utc_offset)),
          clean_text(fmt::format("Risebook   ·   book {}   ·   {} events, the newest of {} {}",
                                 record.book.tag, record.book.events,
                                 day_text(record.as_of, record.utc_offset),
                                 clock_text(record.as_of, record.utc_offset))),
          clean_text("newest " + head_words(record.book))};
}

}  // namespace

int draw_pages(cairo_t* cr, const DailyRecord& record, Paper paper, int pages, TypeWidths& widths) {
  Sheet sheet{cr, paper, words_of(record), pages};
  Pages{sheet, record, widths}.draw();
  return sheet.page();
}

}  // namespace rb
