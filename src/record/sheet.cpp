#include "record/sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rb {

namespace {

constexpr double kSide = 40;
constexpr double kTopMargin = 58;     // clear of a clipboard's clip
constexpr double kBottomMargin = 60;  // the foot stands in it
constexpr double kGutter = 6;         // inside a cell, left and right
constexpr double kTableSize = 8.2;
constexpr double kLeastSize = 6.4;
constexpr double kLongWord = 13;  // in sizes of type; a longer one may be broken
constexpr double kLoose = 26;     // spare room a column takes at most

double lead(double size) {
  return size * 1.38;
}
double baseline(double size) {
  return size * 1.03;
}

}  // namespace

const TypeWidths::Width& TypeWidths::of(const Ink& ink, const std::string& text, bool bold) {
  constexpr double kMeasured = 20;
  const auto [it, fresh] = known_[bold ? 1 : 0].try_emplace(text);
  if (fresh && !text.empty()) {
    const LayoutHandle layout = ink.lay(text, {kMeasured, bold});
    it->second.whole = Ink::width(layout) / kMeasured;
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD);
    pango_layout_set_width(layout.get(), 0);
    it->second.word = Ink::width(layout) / kMeasured;
  }
  return it->second;
}

// The lines of one cell or paragraph, laid out in a width.
struct Sheet::Lines {
  LayoutHandle layout{nullptr, &g_object_unref};
  std::size_t count = 0;

  Lines(const Ink& ink, const std::string& text, const Style& style, double width)
      : layout(ink.lay(text, style, width)),
        count(text.empty() ? 0
                           : static_cast<std::size_t>(pango_layout_get_line_count(layout.get()))) {}

  // Draws lines [from, to) with the first one's top at y.
  void draw(const Ink& ink, double x, double y, double width, std::size_t from, std::size_t to,
            const Style& style) const {
    ink.colour(style.colour);
    for (std::size_t i = from; i < std::min(to, count); ++i) {
      PangoLayoutLine* line = pango_layout_get_line_readonly(layout.get(), static_cast<int>(i));
      PangoRectangle logical{};
      pango_layout_line_get_extents(line, nullptr, &logical);
      const double spare = width - static_cast<double>(logical.width) / PANGO_SCALE;
      double dx = 0;
      if (style.align == Align::right) dx = spare;
      if (style.align == Align::centre) dx = spare / 2;
      cairo_move_to(ink.cr(), x + dx,
                    y + baseline(style.size) + static_cast<double>(i - from) * lead(style.size));
      pango_cairo_show_layout_line(ink.cr(), line);
    }
  }
};

Sheet::Sheet(cairo_t* cr, Paper paper, PageWords words, int pages, TypeWidths& widths)
    : ink_(cr), paper_(paper), words_(std::move(words)), pages_(pages), widths_(widths) {
  begin_page();
}

Sheet::~Sheet() {
  cairo_show_page(ink_.cr());
}

double Sheet::left() const {
  return kSide;
}
double Sheet::width() const {
  return paper_.width - 2 * kSide;
}
double Sheet::room() const {
  return paper_.height - kBottomMargin - y_;
}
double Sheet::body() const {
  return paper_.height - kBottomMargin - kTopMargin;
}

void Sheet::keep(double points) {
  if (room() < points && y_ > kTopMargin) turn();
}

void Sheet::turn() {
  cairo_show_page(ink_.cr());
  begin_page();
}

void Sheet::begin_page() {
  ++page_;
  y_ = kTopMargin;
  const double right = kSide + width();
  const Style small{7, false, look::steel};
  const Style small_right{7, false, look::steel, Align::right};
  if (page_ > 1) {
    ink_.text(kSide, kTopMargin - 22, words_.head_left, small);
    ink_.text(right, kTopMargin - 22, words_.head_right, small_right);
    ink_.line(kSide, kTopMargin - 9, right, kTopMargin - 9, look::hair);
  }
  const double foot = paper_.height - kBottomMargin + 16;
  ink_.line(kSide, foot, right, foot, look::slate, 0.8);
  ink_.text(kSide, foot + 5, words_.foot_left, small);
  ink_.text(right, foot + 5, fmt::format("page {} of {}", page_, pages_),
            {7, true, look::slate, Align::right});
  ink_.text(kSide, foot + 16, words_.foot_long, {6, false, look::steel});
}

void Sheet::section(const std::string& title, double with) {
  skip(14);
  keep(20 + with);
  ink_.box(left(), y_ + 2.5, 3, 10.5, look::clay);
  ink_.text(left() + 9, y_, title, {11, true, look::slate});
  y_ += 20;
}

void Sheet::text(const std::string& text, const Style& style, double indent) {
  const double room_across = width() - indent;
  const Lines lines(ink_, text, style, room_across);
  std::size_t from = 0;
  while (from < lines.count) {
    const double fits = std::floor(room() / lead(style.size));
    const std::size_t rest = lines.count - from;
    std::size_t now = fits < 1 ? 0 : std::min(rest, static_cast<std::size_t>(fits));
    if (now < std::min<std::size_t>(rest, 2)) {  // a lone line does not stay behind
      turn();
      continue;
    }
    lines.draw(ink_, left() + indent, y_, room_across, from, from + now, style);
    y_ += static_cast<double>(now) * lead(style.size);
    from += now;
    if (from < lines.count) turn();
  }
}

// Chooses the columns' widths and returns the size of type: as it is when all fits, smaller where
// words would have to be broken.
double Sheet::fit_columns(const PaperTable& table, std::vector<double>& widths) const {
  const std::size_t n = table.columns.size();
  std::vector<double> whole(n);
  std::vector<double> word(n);
  for (std::size_t c = 0; c < n; ++c) {
    const auto& heading = widths_.of(ink_, table.columns[c].heading, true);
    word[c] = heading.word;
    whole[c] = heading.word;  // headings wrap gladly
    for (const auto& row : table.rows) {
      const bool strong = table.columns[c].strong || row[c].strong;
      const auto& cell = widths_.of(ink_, row[c].text, strong);
      whole[c] = std::max(whole[c], cell.whole);
      const double least = table.columns[c].whole ? cell.whole : cell.word;
      word[c] = std::max(word[c], std::min(least, kLongWord));
    }
    if (table.columns[c].badge) {
      word[c] += 1.0;
      whole[c] = std::max(whole[c], word[c]);
    }
    whole[c] = std::max(whole[c], word[c]);
  }
  const double room = width() - static_cast<double>(n) * 2 * kGutter;
  const double words = std::accumulate(word.begin(), word.end(), 0.0);
  const double wholes = std::accumulate(whole.begin(), whole.end(), 0.0);
  double size = kTableSize;
  while (size > kLeastSize && words * size > room) size -= 0.2;
  widths.assign(n, 0);
  for (std::size_t c = 0; c < n; ++c) {
    double w = 0;
    if (wholes * size <= room) {
      w = whole[c] * size + std::min((room - wholes * size) / static_cast<double>(n), kLoose);
    } else if (words * size <= room) {
      w = word[c] * size + (room - words * size) * (whole[c] - word[c]) / (wholes - words);
    } else {
      w = room * word[c] / words;
    }
    widths[c] = w + 2 * kGutter;
  }
  return size;
}

double Sheet::table_head(const PaperTable& table, const std::vector<double>& widths, double size,
                         bool draw) {
  std::vector<Lines> cells;
  std::size_t most = 1;
  const double small = size - 0.7;
  std::vector<Style> styles;
  for (std::size_t c = 0; c < widths.size(); ++c) {
    styles.push_back({small, true, look::steel, table.columns[c].align});
    cells.emplace_back(ink_, table.columns[c].heading, styles[c], widths[c] - 2 * kGutter);
    most = std::max(most, cells.back().count);
  }
  const double height = static_cast<double>(most) * lead(small) + 7;
  if (!draw) return height;
  ink_.box(left(), y_, width(), height, look::mist);
  double x = left();
  for (std::size_t c = 0; c < widths.size(); ++c) {
    const double down = static_cast<double>(most - cells[c].count) * lead(small);
    cells[c].draw(ink_, x + kGutter, y_ + 3.5 + down, widths[c] - 2 * kGutter, 0, cells[c].count,
                  styles[c]);
    x += widths[c];
  }
  y_ += height;
  ink_.line(left(), y_, left() + width(), y_, look::slate, 0.9);
  return height;
}

void Sheet::badge(double x, double y, const std::string& word, double size) const {
  const double w = widths_.of(ink_, word, true).whole * size + 8;
  const double h = lead(size) + 1;
  if (word == "STOP") {
    ink_.box(x, y - 0.5, w, h, look::slate);
    ink_.text(x + 4, y, word, {size, true, look::white});
  } else if (word == "MEND") {
    ink_.frame(x, y - 0.5, w, h, look::clay, 1.0);
    ink_.text(x + 4, y, word, {size, true, look::clay});
  } else {
    ink_.text(x + 4, y, word, {size, false, look::steel});
  }
}

void Sheet::row(const std::vector<Lines>& cells, const std::vector<Style>& styles,
                const PaperTable& table, const std::vector<double>& widths, double size, double pad,
                const std::function<void()>& again) {
  std::size_t lines = 1;
  for (const Lines& cell : cells) lines = std::max(lines, cell.count);
  const auto height = [&](std::size_t n) { return static_cast<double>(n) * lead(size) + 2 * pad; };
  if (height(lines) > room() && height(lines) <= body() * 0.5) {
    turn();
    again();
  }
  std::size_t from = 0;
  while (from < lines) {
    const double fits = std::floor((room() - 2 * pad) / lead(size));
    const std::size_t rest = lines - from;
    const std::size_t now = fits < 1 ? 0 : std::min(rest, static_cast<std::size_t>(fits));
    if (now < std::min<std::size_t>(rest, 2)) {
      turn();
      again();
      continue;
    }
    double x = left();
    for (std::size_t c = 0; c < cells.size(); ++c) {
      if (!table.columns[c].badge) {
        cells[c].draw(ink_, x + kGutter, y_ + pad, widths[c] - 2 * kGutter, from, from + now,
                      styles[c]);
      } else if (from == 0) {
        const std::string word = pango_layout_get_text(cells[c].layout.get());
        badge(x + kGutter - 3, y_ + pad, word, size - 0.6);
      }
      x += widths[c];
    }
    y_ += height(now);
    from += now;
    ink_.line(left(), y_, left() + width(), y_, look::hair, 0.5);
    if (from < lines) {
      turn();
      again();
    }
  }
}

void Sheet::table(const PaperTable& table) {
  std::vector<double> widths;
  const double size = fit_columns(table, widths);
  constexpr double kPad = 2.8;
  const auto head = [&] { table_head(table, widths, size, true); };
  keep(table_head(table, widths, size, false) + 2 * (lead(size) + 2 * kPad));
  head();
  for (const auto& cells : table.rows) {
    std::vector<Lines> laid;
    std::vector<Style> styles;
    laid.reserve(cells.size());
    for (std::size_t c = 0; c < cells.size(); ++c) {
      const PaperColumn& column = table.columns[c];
      styles.push_back({size, column.strong || cells[c].strong, look::slate, column.align});
      laid.emplace_back(ink_, cells[c].text, styles[c],
                        column.badge ? -1 : widths[c] - 2 * kGutter);
    }
    row(laid, styles, table, widths, size, kPad, head);
  }
}

}  // namespace rb
