#include "record/pdf/pour_pages.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>

#include "record/model/clean_text.h"
#include "record/pdf/dose_drawing.h"
#include "record/pdf/photo_page.h"
#include "record/pdf/time_drawing.h"

namespace rb {

namespace {

constexpr double kMapTall = 290;

class PourPages {
 public:
  explicit PourPages(RecordPage& page)
      : page_(page), sheet_(page.sheet()), ink_(page.ink()), shown_(page.shown()) {}

  void draw(const PourRecord& p) {
    page_.bookmark(p.name.empty() ? p.id : p.name, true);
    sheet_.keep(120);
    sheet_.text(clean_text(p.name.empty() ? p.id : p.name), {15, true, look::slate});
    sheet_.skip(2);
    std::string under = shown_.say(said("Pour {id}"), {{"id", p.id}});
    if (p.site != page_.record().site) under += "   ·   " + p.site;
    sheet_.text(clean_text(under), {8, false, look::steel});
    for (const std::string& day : shown_.other_days(p)) {
      sheet_.text(day, {8, true, look::slate});
    }
    sheet_.skip(8);
    if (!p.damaged.empty()) {
      const Facts facts{{"count", std::to_string(p.damaged.size())}};
      sheet_.text(p.damaged.size() == 1
                      ? told(said("1 of this pour's events is damaged and not in what follows: see "
                                  "Damaged events."))
                      : shown_.say(said("{count} of this pour's events are damaged and not in what "
                                        "follows: see Damaged events."),
                                   facts),
                  {9.5, true, look::red});
      sheet_.skip(6);
    }
    tiles(p);
    facts(p);
    std::string empty;
    const std::vector<Table> tables = tables_of(p, shown_.units());
    for (const Table& table : tables) {
      if (table.key == "signatures" || table.key == "people") continue;
      if (table.key == "lifts") {
        maps(p);
        clock(p);
      }
      if (table.rows.empty() && (table.key == "damaged" || table.key == "newer")) continue;
      if (table.rows.empty() && table.key != "findings") {
        std::string words = shown_.title(table);
        words.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(words.front())));
        empty += (empty.empty() ? "" : ", ") + words;
        continue;
      }
      page_.section(table);
      if (table.key == "photos") draw_photos(page_, p);
    }
    for (const std::string& gap : p.not_judged) {
      sheet_.skip(12);
      sheet_.text(shown_.say(said("Not judged: {what}"), {{"what", gap}}),
                  {8.2, true, look::slate});
    }
    if (!empty.empty()) {
      sheet_.skip(12);
      sheet_.text(shown_.say(said("Nothing was logged under: {what}."), {{"what", empty}}),
                  {8.2, false, look::steel});
    }
    signatures(p);
  }

 private:
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
        {std::to_string(count(Severity::stop)), told(said("causes to stop for")),
         count(Severity::stop) > 0},
        {std::to_string(count(Severity::mend)), told(said("causes to mend")),
         count(Severity::mend) > 0},
        {std::to_string(count(Severity::note)), told(said("notes of the checker")), false},
        {std::to_string(p.lifts.size()), told(said("lifts placed")), false},
        {fmt::format("{}", signed_by), told(said("signatures logged")), false},
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
    all.emplace_back(told(said("Opened")), p.opened ? when(*p.opened) : told(said("not logged")));
    all.emplace_back(told(said("Closed")), p.closed ? when(*p.closed) : told(said("still open")));
    all.emplace_back(told(said("Pressure method")), shown_.told(p.method));
    all.emplace_back(told(said("Events")), std::to_string(p.events));
    if (p.from_script > 0) {
      all.emplace_back(told(said("Brought in from a script")),
                       shown_.say(said("{count} of {all} events, not tapped"),
                                  {{"count", std::to_string(p.from_script)},
                                   {"all", std::to_string(p.events)}}));
    }
    all.emplace_back(told(said("Loads discharged")), std::to_string(p.trucks));
    all.emplace_back(told(said("Placed by ticket")),
                     p.placed ? shown_.figure(amount(*p.placed)) : told(said("not known")));
    all.emplace_back(told(said("Net below the top")),
                     p.net ? shown_.figure(amount(*p.net)) : told(said("not known")));
    if (p.placed && p.net && in_cubic_metres(*p.net) > 0) {
      const double off = in_cubic_metres(*p.placed) / in_cubic_metres(*p.net) - 1;
      all.emplace_back(told(said("Placed against net")), fmt::format("{:+.1f} %", off * 100));
    }
    for (const PersonLine& person : p.people) {
      const std::string role =
          person.role.empty() ? told(said("On the pour")) : shown_.told(person.role);
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

  // Its rise against the limit, and what went on, on one axis.
  void clock(const PourRecord& p) {
    const TimeDrawing drawing{p, shown_};
    if (drawing.empty() || drawing.height() > sheet_.body() - 60) return;
    const std::string title = told(said("What went on, by the clock"));
    sheet_.section(title, drawing.height() + 26);
    page_.bookmark(title, false);
    sheet_.text(
        told(said("Line: the highest top of each element as it was read. Broken lines: from "
                  "each lift's start as fast as its limit allows. Below: each row's runs, "
                  "and what else happened.")),
        {7.4, false, look::steel});
    sheet_.skip(6);
    drawing.draw(ink_, sheet_.left(), sheet_.y(), sheet_.width());
    sheet_.skip(drawing.height());
  }

  void maps(const PourRecord& p) {
    for (const DoseMap& map : p.dose_maps) {
      const double tall = dose_drawing_height(map, sheet_.width(), kMapTall);
      const std::string title = shown_.map_title(map);
      sheet_.section(title, tall + 30);
      page_.bookmark(title, false);
      sheet_.text(
          told(said("Seconds of vibration each part got while it held plastic concrete. Seen "
                    "from the near side, to scale. Heavy lines: tops of the lifts. Broken "
                    "lines with rings: rows of motors.")),
          {7.4, false, look::steel});
      sheet_.skip(4);
      draw_dose_map(ink_, map, shown_.voice(), sheet_.left(), sheet_.y(), sheet_.width(), kMapTall);
      sheet_.skip(tall);
    }
  }

  // What was signed, a field of the line that a signature takes.
  struct SignatureField {
    std::string name;
    double from, to;  // shares of the width
    std::string text;
    bool below = false;
  };
  struct LaidSignature {
    std::array<SignatureField, 4> fields;
    std::vector<Lines> lines{};        // of each field
    std::vector<std::string> under{};  // paragraphs below
    double tall = 0;                   // of the line
    bool quoted = false;
  };
  static constexpr double kRoleWide = 0.18;
  static constexpr double kUnderLine = 30;
  static constexpr double kUnderQuoted = 4;
  static constexpr Style kSigned{8.8, false, look::slate};
  static constexpr Style kUnderSigned{8.2, false, look::slate};

  // Together on a page where they fit on one: no signature stands alone on the next.
  void signatures(const PourRecord& p) {
    const std::string title = told(said("Signatures"));
    std::vector<LaidSignature> all;
    double tall = 1;  // sums of points do not come out even
    for (const SignatureLine& s : p.signatures) {
      all.push_back(lay(s));
      tall += height(all.back());
    }
    constexpr double kTall = 46;
    const double most = sheet_.body() - 60;
    if (tall > most) tall = std::min(most, kTall * static_cast<double>(p.signatures.size()));
    sheet_.section(title, tall);
    page_.bookmark(title, false);
    for (std::size_t i = 0; i < all.size(); ++i) signature(p.signatures[i], all[i]);
  }

  // What is too long for its line stands below, whole.
  [[nodiscard]] LaidSignature lay(const SignatureLine& s) const {
    LaidSignature laid{{{{told(said("name")), kRoleWide, 0.42, clean_text(s.by)},
                         {told(said("verdict")), 0.42, 0.64, clean_text(shown_.told(s.verdict))},
                         {told(said("when")), 0.64, 0.78, s.at ? when(*s.at) : std::string{}},
                         {told(said("by hand")), 0.78, 1.0, {}}}}};
    constexpr std::size_t kMostLines = 3;
    laid.tall = lead(kSigned.size);
    for (SignatureField& f : laid.fields) {
      const double wide = (f.to - f.from) * sheet_.width() - 10;
      laid.lines.emplace_back(ink_, f.text, kSigned, wide);
      f.below = laid.lines.back().count() > kMostLines;
      if (f.below) {
        laid.lines.back() = Lines{ink_, told(said("see below")), kSigned, wide};
        laid.under.push_back(capital(f.name) + ": " + f.text);
      }
      laid.tall = std::max(laid.tall, laid.lines.back().height());
    }
    for (const std::string& sentence : s.told) laid.under.push_back(clean_text(sentence));
    laid.quoted = !s.comment.empty();
    if (laid.quoted) laid.under.push_back("“" + clean_text(s.comment) + "”");
    return laid;
  }

  [[nodiscard]] double height(const LaidSignature& laid) const {
    double tall = laid.tall + kUnderLine;
    for (const std::string& text : laid.under) {
      tall += Lines{ink_, text, kUnderSigned, (1 - kRoleWide) * sheet_.width()}.height();
    }
    return laid.quoted ? tall + kUnderQuoted : tall;
  }

  // The role, then what was signed over lines to write on.
  void signature(const SignatureLine& s, const LaidSignature& laid) {
    const double w = sheet_.width();
    sheet_.keep(laid.tall + kUnderLine);
    const double y = sheet_.y() + 12;
    const std::string role =
        capital(s.role.empty() ? told(said("Signature")) : shown_.told(s.role));
    ink_.fitted(sheet_.left(), y + laid.tall - lead(9), kRoleWide * w - 8, role,
                {9, true, look::slate});
    for (std::size_t i = 0; i < laid.fields.size(); ++i) {
      const SignatureField& f = laid.fields.at(i);
      const double x = sheet_.left() + f.from * w;
      laid.lines[i].draw(ink_, x, y + laid.tall - laid.lines[i].height(), 0, laid.lines[i].count());
      const double under = y + laid.tall + 2;
      ink_.line(x, under, sheet_.left() + f.to * w - 8, under, look::slate, 0.7);
      ink_.text(x, under + 2, f.name, {6.6, false, look::steel});
    }
    sheet_.skip(laid.tall + kUnderLine);
    for (const std::string& text : laid.under) sheet_.text(text, kUnderSigned, kRoleWide * w);
    if (laid.quoted) sheet_.skip(kUnderQuoted);
  }

  [[nodiscard]] std::string told(Said english) const { return page_.told(english); }
  [[nodiscard]] std::string when(Moment moment) const { return shown_.when(moment); }

  RecordPage& page_;
  Sheet& sheet_;
  const Ink& ink_;
  const Shown& shown_;
};

}  // namespace

void draw_pour(RecordPage& page, const PourRecord& pour) {
  PourPages{page}.draw(pour);
}

}  // namespace rb
