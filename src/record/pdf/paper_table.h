// A table on sheets: columns as wide as their texts want, headings again on every page, rows kept
// whole where they fit on a page and broken between lines where they do not.
#pragma once

#include <array>
#include <string>
#include <unordered_map>
#include <vector>

#include "record/pdf/lines.h"
#include "record/pdf/sheet.h"

namespace rb {

struct PaperColumn {
  std::string heading;
  Align align = Align::left;
  bool strong = false;
  bool whole = false;  ///< not broken at blanks and hyphens
  bool badge = false;  ///< a word in a box, as loud as its cell says
  bool box = false;    ///< an empty box to write in by hand
  double least = 0;    ///< points it is wide at the least
};
enum class Loud { plain, framed, filled };
struct PaperCell {
  std::string text;
  bool strong = false;
  Loud loud = Loud::plain;  ///< of a badge
};
struct PaperTable {
  bool red = false;          ///< its rows are of what is damaged
  double size = 8.2;         ///< of type
  double least_size = 6.4;   ///< down to this where it would not fit
  double row_least = 0;      ///< points a row is high at the least
  std::vector<bool> marked;  ///< rows on a ground of their own; empty: none
  std::vector<PaperColumn> columns;
  std::vector<std::vector<PaperCell>> rows;
};

/// Widths of texts, measured once and used by both passes.
class TypeWidths {
 public:
  struct Width {
    double whole = 0;  ///< on one line (the widest, where there are newlines)
    double word = 0;   ///< of the widest word
  };
  /// At 1 point of size; widths grow with the size.
  const Width& of(const Ink& ink, const std::string& text, bool bold);

 private:
  std::array<std::unordered_map<std::string, Width>, 2> known_;
};

class TableOnSheet {
 public:
  TableOnSheet(Sheet& sheet, const PaperTable& table, TypeWidths& widths);

  /// What the headings take and the rows that do not part from them: the first two, or all of three
  /// (a very tall row: its start).
  [[nodiscard]] double first() const;
  /// No row stands alone on a page, first or last, but one so tall that it is broken.
  void draw() const;

 private:
  struct Row {
    std::vector<Lines> cells;
    std::size_t lines = 1;
  };
  void fit_columns(TypeWidths& widths);
  [[nodiscard]] Row lay(std::size_t index) const;
  [[nodiscard]] double height(std::size_t lines) const;
  [[nodiscard]] double head_height() const;
  void draw_head() const;
  [[nodiscard]] bool tall(std::size_t index) const;
  /// With the last two rows kept together.
  [[nodiscard]] double kept_with(std::size_t index) const;
  void draw_row(std::size_t index) const;
  void draw_row(std::size_t index, const Row& row) const;
  void draw_box(double x, double y, double w, double h) const;
  void draw_badge(double x, double y, const PaperCell& cell) const;

  Sheet& sheet_;
  const Ink& ink_;
  const PaperTable& table_;
  double size_;
  std::vector<double> widths_;
  std::vector<Lines> head_;
  std::vector<std::size_t> lines_;  ///< of each row
  std::vector<Row> laid_;           ///< the rows, where they are few enough to be kept
  std::size_t head_lines_ = 1;
};

}  // namespace rb
