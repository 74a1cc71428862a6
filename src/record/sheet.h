// Pages with a head, a foot and a place to write next; text and tables that break over pages
// without ever being cut. Points; nothing here knows what a pour is.
#pragma once

#include <functional>
#include <string>
#include <unordered_map>
#include <vector>

#include "record/ink.h"

namespace rb {

struct Paper {
  double width, height;
};
inline constexpr Paper kA4{595.276, 841.890};
inline constexpr Paper kLetter{612.0, 792.0};

/// What stands on every page.
struct PageWords {
  std::string head_left, head_right;  ///< from the second page on
  std::string foot_left;              ///< above the long line
  std::string foot_long;              ///< a line of its own
};

struct PaperColumn {
  std::string heading;
  Align align = Align::left;
  bool strong = false;
  bool whole = false;  ///< never broken inside a word, not at a hyphen either
  bool badge = false;  ///< a word in a box: filled for "STOP", framed for "MEND"
};
struct PaperCell {
  std::string text;
  bool strong = false;
};
struct PaperTable {
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
  std::unordered_map<std::string, Width> known_[2];
};

class Sheet {
 public:
  /// `pages` is the number said on every page. `turn` is called when a page is full.
  Sheet(cairo_t* cr, Paper paper, PageWords words, int pages, TypeWidths& widths);
  ~Sheet();
  Sheet(const Sheet&) = delete;
  Sheet& operator=(const Sheet&) = delete;

  [[nodiscard]] const Ink& ink() const { return ink_; }
  [[nodiscard]] double left() const;
  [[nodiscard]] double width() const;
  [[nodiscard]] double y() const { return y_; }
  [[nodiscard]] double room() const;
  [[nodiscard]] double body() const;  ///< what a fresh page has room for
  [[nodiscard]] int page() const { return page_; }

  void skip(double points) { y_ += points; }
  /// A new page unless this much room is left.
  void keep(double points);
  void turn();

  /// A section's heading with its rule; keeps `with` points of what follows on the same page.
  void section(const std::string& title, double with = 60);
  /// A paragraph, wrapped, broken over pages by lines.
  void text(const std::string& text, const Style& style, double indent = 0);
  void table(const PaperTable& table);

 private:
  struct Lines;
  void begin_page();
  [[nodiscard]] double fit_columns(const PaperTable& table, std::vector<double>& widths) const;
  double table_head(const PaperTable& table, const std::vector<double>& widths, double size,
                    bool draw);
  void row(const std::vector<Lines>& cells, const std::vector<Style>& styles,
           const PaperTable& table, const std::vector<double>& widths, double size, double pad,
           const std::function<void()>& again);
  void badge(double x, double y, const std::string& word, double size) const;

  Ink ink_;
  Paper paper_;
  PageWords words_;
  int pages_;
  TypeWidths& widths_;
  int page_ = 0;
  double y_ = 0;
};

}  // namespace rb
