// What every page of the record is drawn with: sheet, words, tables, bookmarks. Inside this room.
#pragma once

#include <string>

#include "record/pdf/paper_table.h"
#include "record/told/shown.h"

namespace rb {

class RecordPage {
 public:
  RecordPage(Sheet& sheet, const DailyRecord& record, TypeWidths& widths)
      : sheet_(sheet), record_(record), shown_(record), widths_(widths) {}

  [[nodiscard]] Sheet& sheet() { return sheet_; }
  [[nodiscard]] const Ink& ink() const { return sheet_.ink(); }
  [[nodiscard]] const DailyRecord& record() const { return record_; }
  [[nodiscard]] const Shown& shown() const { return shown_; }
  [[nodiscard]] std::string told(Said english) const { return shown_.told(english.english); }

  /// A table under its title, with a bookmark.
  void section(const Table& table);
  void section(const Table& table, const std::string& title);
  /// In the outline of the document; under the last one of the top, or at the top.
  void bookmark(const std::string& title, bool top);

 private:
  [[nodiscard]] PaperTable on_paper(const Table& table) const;

  Sheet& sheet_;
  const DailyRecord& record_;
  Shown shown_;
  TypeWidths& widths_;
  int parent_ = 0;
};

/// "Foreman" of "foreman"; letters beyond ASCII stay.
std::string capital(std::string text);

}  // namespace rb
