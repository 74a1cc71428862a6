// Pages with a head, a foot and a place to write next; text that breaks over pages without ever
// being cut. Points; nothing here knows what a pour is.
#pragma once

#include <string>

#include "record/pdf/ink.h"
#include "record/pdf/paper.h"

namespace rb {

/// What stands on every page.
struct PageWords {
  std::string head_left, head_right;  ///< from the second page on
  std::string foot_left;              ///< above the long line
  std::string foot_long;              ///< a line of its own
  std::string page_of{"page {} of {}"};
  double size = 7;      ///< of heads and feet
  double heading = 11;  ///< of a section's
};

class Sheet {
 public:
  /// Begins the first page; the last is finished when the sheet goes. `pages` is the number of
  /// pages that every page tells.
  Sheet(cairo_t* cr, Paper paper, PageWords words, int pages);
  ~Sheet();
  Sheet(const Sheet&) = delete;
  Sheet& operator=(const Sheet&) = delete;

  [[nodiscard]] const Ink& ink() const { return ink_; }
  [[nodiscard]] double left() const;
  [[nodiscard]] double width() const;
  [[nodiscard]] double y() const { return y_; }
  [[nodiscard]] double room() const;  ///< left on this page
  [[nodiscard]] double body() const;  ///< on a fresh page
  [[nodiscard]] int page() const { return page_; }

  void skip(double points) { y_ += points; }
  /// Begins a new page unless this much room is left, or the page is fresh.
  void keep(double points);
  void turn();

  /// A section's heading; keeps `with` points of what follows on the same page.
  void section(const std::string& title, double with);
  /// A paragraph, wrapped, broken over pages between lines.
  void text(const std::string& text, const Style& style, double indent = 0);

 private:
  void begin_page();

  Ink ink_;
  Paper paper_;
  PageWords words_;
  int pages_;
  int page_ = 0;
  double y_ = 0;
};

}  // namespace rb
