#include "record/pdf/paper_table.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rb {

namespace {

constexpr double kGutter = 6;     // inside a cell, left and right
constexpr double kPad = 2.8;      // inside a cell, above and below
constexpr double kLongWord = 13;  // in sizes of type; a longer one may be broken
constexpr double kLoose = 26;     // spare room a column takes at most
constexpr double kHeadLess = 0.7;
constexpr std::size_t kKept = 400;  // rows laid out once and not again when they are drawn

}  // namespace

const TypeWidths::Width& TypeWidths::of(const Ink& ink, const std::string& text, bool bold) {
  constexpr double kMeasured = 20;
  const auto [it, fresh] = known_.at(bold ? 1 : 0).try_emplace(text);
  if (fresh && !text.empty()) {
    const LayoutHandle layout = ink.lay(text, {kMeasured, bold});
    it->second.whole = Ink::width(layout) / kMeasured;
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD);
    pango_layout_set_width(layout.get(), 0);
    it->second.word = Ink::width(layout) / kMeasured;
  }
  return it->second;
}

TableOnSheet::TableOnSheet(Sheet& sheet, const PaperTable& table, TypeWidths& widths)
    : sheet_(sheet), ink_(sheet.ink()), table_(table), size_(table.size) {
  fit_columns(widths);
  for (std::size_t c = 0; c < widths_.size(); ++c) {
    const Style style{size_ - kHeadLess, true, look::steel, table.columns[c].align};
    head_.emplace_back(ink_, table.columns[c].heading, style, widths_[c] - 2 * kGutter);
    head_lines_ = std::max(head_lines_, head_.back().count());
  }
  lines_.reserve(table_.rows.size());
  for (std::size_t i = 0; i < table_.rows.size(); ++i) {
    Row row = lay(i);
    lines_.push_back(row.lines);
    if (table_.rows.size() <= kKept) laid_.push_back(std::move(row));
  }
}

// Room for all: as wide as the longest texts. Less: words stay whole and texts wrap. Still less:
// smaller type, and in the end long words are broken.
void TableOnSheet::fit_columns(TypeWidths& known) {
  const std::size_t n = table_.columns.size();
  std::vector<double> whole(n);
  std::vector<double> word(n);
  for (std::size_t c = 0; c < n; ++c) {
    const PaperColumn& column = table_.columns[c];
    word[c] = known.of(ink_, column.heading, true).word;  // headings wrap gladly
    whole[c] = word[c];
    for (const auto& row : table_.rows) {
      const auto& cell = known.of(ink_, row[c].text, column.strong || row[c].strong);
      whole[c] = std::max(whole[c], cell.whole);
      word[c] = std::max(word[c], std::min(column.whole ? cell.whole : cell.word, kLongWord));
    }
    if (column.badge) word[c] += 1.0;
    word[c] = std::max(word[c], (column.least - 2 * kGutter) / size_);
    whole[c] = std::max(whole[c], word[c]);
  }
  const double room = sheet_.width() - static_cast<double>(n) * 2 * kGutter;
  const double words = std::accumulate(word.begin(), word.end(), 0.0);
  const double wholes = std::accumulate(whole.begin(), whole.end(), 0.0);
  while (size_ > table_.least_size && words * size_ > room) size_ -= 0.2;
  for (std::size_t c = 0; c < n; ++c) {
    double w = room * word[c] / words;
    if (wholes * size_ <= room) {
      w = whole[c] * size_ + std::min((room - wholes * size_) / static_cast<double>(n), kLoose);
    } else if (words * size_ <= room) {
      w = word[c] * size_ + (room - words * size_) * (whole[c] - word[c]) / (wholes - words);
    }
    widths_.push_back(w + 2 * kGutter);
  }
}

TableOnSheet::Row TableOnSheet::lay(std::size_t index) const {
  Row row;
  row.cells.reserve(widths_.size());
  for (std::size_t c = 0; c < widths_.size(); ++c) {
    const PaperColumn& column = table_.columns[c];
    const PaperCell& cell = table_.rows[index][c];
    const Style style{size_, column.strong || cell.strong, table_.red ? look::red : look::slate,
                      column.align};
    row.cells.emplace_back(ink_, cell.text, style, column.badge ? -1 : widths_[c] - 2 * kGutter);
    row.lines = std::max(row.lines, row.cells.back().count());
  }
  return row;
}

double TableOnSheet::height(std::size_t lines) const {
  return std::max(static_cast<double>(lines) * lead(size_) + 2 * kPad, table_.row_least);
}

double TableOnSheet::head_height() const {
  return static_cast<double>(head_lines_) * lead(size_ - kHeadLess) + 7;
}

// A row that may be broken between its lines.
bool TableOnSheet::tall(std::size_t index) const {
  return height(lines_[index]) > sheet_.body() / 3;
}

double TableOnSheet::first() const {
  constexpr std::size_t kStart = 6;  // lines of a row that is broken
  double points = head_height();
  const std::size_t all = lines_.size() <= 3 ? lines_.size() : 2;
  for (std::size_t i = 0; i < all; ++i) {
    if (tall(i)) return points + height(std::min(lines_[i], kStart));
    if (points + height(lines_[i]) > sheet_.body() / 2) return points;
    points += height(lines_[i]);
  }
  return points;
}

double TableOnSheet::kept_with(std::size_t index) const {
  double points = height(lines_[index]);
  if (index + 2 == lines_.size() && !tall(index + 1)) points += height(lines_[index + 1]);
  return points;
}

void TableOnSheet::draw() const {
  sheet_.keep(first());
  draw_head();
  for (std::size_t i = 0; i < table_.rows.size(); ++i) draw_row(i);
}

void TableOnSheet::draw_head() const {
  const double left = sheet_.left();
  ink_.box(left, sheet_.y(), sheet_.width(), head_height(), look::mist);
  double x = left;
  for (std::size_t c = 0; c < widths_.size(); ++c) {
    const std::size_t fewer = head_lines_ - head_[c].count();
    const double down = static_cast<double>(fewer) * lead(size_ - kHeadLess);
    head_[c].draw(ink_, x + kGutter, sheet_.y() + 3.5 + down, 0, head_[c].count());
    x += widths_[c];
  }
  sheet_.skip(head_height());
  ink_.line(left, sheet_.y(), left + sheet_.width(), sheet_.y(), look::slate, 0.9);
}

void TableOnSheet::draw_row(std::size_t index) const {
  if (laid_.empty()) return draw_row(index, lay(index));
  draw_row(index, laid_[index]);
}

void TableOnSheet::draw_row(std::size_t index, const Row& row) const {
  const auto turn = [this] {
    sheet_.turn();
    draw_head();
  };
  if (!tall(index) && index > 0 && kept_with(index) > sheet_.room()) turn();
  std::size_t from = 0;
  while (from < row.lines) {
    const double fits = std::floor((sheet_.room() - 2 * kPad) / lead(size_));
    const std::size_t rest = row.lines - from;
    std::size_t now = fits < 1 ? 0 : std::min(rest, static_cast<std::size_t>(fits));
    if (rest - now == 1 && now > 2) --now;  // a lone line does not go ahead
    if (now < std::min<std::size_t>(rest, 2)) {
      turn();
      continue;
    }
    double x = sheet_.left();
    if (index < table_.marked.size() && table_.marked[index]) {
      ink_.box(x, sheet_.y(), sheet_.width(), height(now), look::mist);
    }
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
      if (table_.columns[c].box) {
        if (from == 0) draw_box(x, sheet_.y(), widths_[c], height(now));
      } else if (!table_.columns[c].badge) {
        row.cells[c].draw(ink_, x + kGutter, sheet_.y() + kPad, from, from + now);
      } else if (from == 0) {
        draw_badge(x + kGutter - 3, sheet_.y() + kPad, table_.rows[index][c]);
      }
      x += widths_[c];
    }
    sheet_.skip(height(now));
    from += now;
    ink_.line(sheet_.left(), sheet_.y(), sheet_.left() + sheet_.width(), sheet_.y(), look::hair,
              0.5);
    if (from < row.lines) turn();
  }
}

void TableOnSheet::draw_box(double x, double y, double w, double h) const {
  constexpr double kIn = 3;
  ink_.box(x + kIn, y + kIn, w - 2 * kIn, h - 2 * kIn, look::white);
  ink_.frame(x + kIn, y + kIn, w - 2 * kIn, h - 2 * kIn, look::steel, 0.8);
}

void TableOnSheet::draw_badge(double x, double y, const PaperCell& cell) const {
  const double size = size_ - 0.6;
  const bool filled = cell.loud == Loud::filled;
  const bool framed = cell.loud == Loud::framed;
  const Style style{size, filled || framed,
                    filled   ? look::white
                    : framed ? look::clay
                             : look::steel};
  const double w = Ink::width(ink_.lay(cell.text, style)) + 8;
  const double h = lead(size) + 1;
  if (filled) ink_.box(x, y - 0.5, w, h, look::slate);
  if (framed) ink_.frame(x, y - 0.5, w, h, look::clay, 1.0);
  ink_.text(x + 4, y, cell.text, style);
}

}  // namespace rb
