#include "record/form/xlsx.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/mman.h>
#include <unistd.h>
#include <xlsxwriter.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <map>

#include "pour/plan/most.h"
#include "record/model/book_words.h"
#include "record/model/clean_text.h"
#include "record/told/photo_words.h"

namespace rb {

namespace {

constexpr std::size_t kLongest = 32767;  // characters a cell can hold
constexpr lxw_color_t kSlate = 0x212E3A;
constexpr lxw_color_t kClay = 0xB45013;
constexpr lxw_color_t kRed = 0xBE161B;

// A file that lives in memory only: the library writes to a path, and nothing is left behind.
class MemoryFile {
 public:
  MemoryFile() : fd_(memfd_create("record", MFD_CLOEXEC)) {}
  ~MemoryFile() {
    if (fd_ >= 0) close(fd_);
  }
  MemoryFile(const MemoryFile&) = delete;
  MemoryFile& operator=(const MemoryFile&) = delete;
  [[nodiscard]] bool open() const { return fd_ >= 0; }
  [[nodiscard]] std::string path() const { return fmt::format("/proc/self/fd/{}", fd_); }
  [[nodiscard]] std::string bytes() const {
    std::string all;
    std::array<char, 65536> part{};
    ssize_t got = 0;
    while ((got = pread(fd_, part.data(), part.size(), static_cast<off_t>(all.size()))) > 0) {
      all.append(part.data(), static_cast<std::size_t>(got));
    }
    return all;
  }

 private:
  int fd_;
};

lxw_datetime calendar(Moment moment, std::chrono::minutes offset) {
  const auto local = moment + offset;
  const auto day = std::chrono::floor<std::chrono::days>(local);
  const std::chrono::year_month_day date{day};
  const std::chrono::hh_mm_ss time{local - day};
  return {static_cast<int>(date.year()),
          static_cast<int>(static_cast<unsigned>(date.month())),
          static_cast<int>(static_cast<unsigned>(date.day())),
          static_cast<int>(time.hours().count()),
          static_cast<int>(time.minutes().count()),
          static_cast<double>(time.seconds().count()) +
              static_cast<double>(time.subseconds().count()) / 1000.0};
}

// Cut where a character begins.
std::string fitting(std::string text, std::size_t most = kLongest) {
  if (text.size() <= most) return text;
  std::size_t end = most - 3;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return text.substr(0, end) + "...";
}

class Book {
 public:
  Book(lxw_workbook* book, const DailyRecord& record)
      : book_(book), record_(record), shown_(record) {
    heading_ = workbook_add_format(book_);
    format_set_bold(heading_);
    format_set_font_color(heading_, LXW_COLOR_WHITE);
    format_set_bg_color(heading_, kSlate);
    format_set_text_wrap(heading_);
    format_set_align(heading_, LXW_ALIGN_VERTICAL_CENTER);
    title_ = workbook_add_format(book_);
    format_set_bold(title_);
    format_set_font_size(title_, 16);
    format_set_font_color(title_, kClay);
    strong_ = workbook_add_format(book_);
    format_set_bold(strong_);
    format_set_align(strong_, LXW_ALIGN_VERTICAL_TOP);
    plain_ = workbook_add_format(book_);
    format_set_bold(plain_);
    text_ = workbook_add_format(book_);
    format_set_text_wrap(text_);
    format_set_align(text_, LXW_ALIGN_VERTICAL_TOP);
    damaged_ = workbook_add_format(book_);
    format_set_bold(damaged_);
    format_set_font_color(damaged_, kRed);
    format_set_text_wrap(damaged_);
    format_set_align(damaged_, LXW_ALIGN_VERTICAL_TOP);
    moment_ = workbook_add_format(book_);
    format_set_num_format(moment_, "yyyy-mm-dd hh:mm:ss");
    format_set_align(moment_, LXW_ALIGN_LEFT);
    format_set_align(moment_, LXW_ALIGN_VERTICAL_TOP);
  }

  // What the record is, its figures and its maps, all on one sheet.
  void front() {
    lxw_worksheet* sheet = workbook_add_worksheet(book_, told(said("Record")).c_str());
    worksheet_set_column(sheet, 0, 0, 34, nullptr);
    worksheet_set_column(sheet, 1, 16, 20, nullptr);
    write(sheet, row_, 0, shown_.record_title(), title_);
    row_ += 2;
    facts(sheet);
    row_ += 1;
    write(sheet, row_++, 0, shown_.title(day_table(record_)), strong_);
    row_ = table(sheet, row_, day_table(record_), false) + 1;
    maps(sheet);
    for (const std::string& caution : record_cautions()) {
      fact(sheet, said("Caution"), shown_.told(caution));
    }
    worksheet_set_landscape(sheet);
    worksheet_fit_to_pages(sheet, 1, 0);
  }

  [[nodiscard]] bool whole() const { return whole_; }

  void sheet(const Table& table_of_record) {
    lxw_worksheet* sheet = workbook_add_worksheet(book_, sheet_name(table_of_record).c_str());
    const lxw_row_t end = table(sheet, 0, table_of_record, true);
    if (table_of_record.key == "photos") photos(sheet, end + 1);
    worksheet_freeze_panes(sheet, 1, 0);
    if (!table_of_record.columns.empty()) {
      worksheet_autofilter(sheet, 0, 0, end - 1,
                           static_cast<lxw_col_t>(table_of_record.columns.size() - 1));
    }
    worksheet_set_landscape(sheet);
    worksheet_fit_to_pages(sheet, 1, 0);
    worksheet_repeat_rows(sheet, 0, 0);
  }

 private:
  static void write(lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column, const std::string& text,
                    lxw_format* format) {
    worksheet_write_string(sheet, row, column, fitting(clean_text(text)).c_str(), format);
  }

  [[nodiscard]] std::string told(Said english) const { return shown_.told(english); }

  void fact(lxw_worksheet* sheet, Said name, const std::string& value) {
    write(sheet, row_, 0, told(name), strong_);
    worksheet_merge_range(sheet, row_, 1, row_, 12, "", text_);
    write(sheet, row_, 1, value, text_);
    const double lines = 1 + std::floor(static_cast<double>(value.size()) / 150);
    if (lines > 1) worksheet_set_row(sheet, row_, 15.0 * lines, nullptr);
    ++row_;
  }

  void facts(lxw_worksheet* sheet) {
    const BookFacts& book = record_.book;
    fact(sheet, said("Site"), record_.site);
    fact(sheet, said("Day"), fmt::format("{} ({})", shown_.long_day(), day_text(record_)));
    fact(sheet, said("Times"), shown_.clock_words());
    if (record_.edition > 1) fact(sheet, said("Edition"), shown_.edition());
    fact(sheet, said("Book"), book.tag);
    fact(sheet, said("Events in the book"), std::to_string(book.events));
    if (book.head_event > 0) fact(sheet, said("Newest event"), std::to_string(book.head_event));
    fact(sheet, said("Hash of the newest"), book.head_hash);
    fact(sheet, said("Its short code"), head_code(book));
    if (!book.looked.empty()) fact(sheet, said("Verified"), book.looked);
    if (book.damage.empty()) return;
    write(sheet, row_, 0, told(said("Damage")), damaged_);
    write(sheet, row_++, 1, book.damage, damaged_);
  }

  // Each face under its title, as on paper.
  void maps(lxw_worksheet* sheet) {
    constexpr int kPixels = 1000;
    constexpr double kRowTall = 20;  // pixels of a row as it comes
    for (const PourRecord& pour : record_.pours) {
      for (const DoseMap& map : pour.dose_maps) {
        write(sheet, row_++, 0, shown_.map_title(map), strong_);
        const std::string png = dose_map_png(map, shown_.voice(), kPixels);
        const auto* bytes = reinterpret_cast<const unsigned char*>(png.data());
        if (worksheet_insert_image_buffer(sheet, row_, 0, bytes, png.size()) != LXW_NO_ERROR) {
          whole_ = false;
        }
        row_ += static_cast<lxw_row_t>(std::ceil(png_tall(png) / kRowTall)) + 2;
      }
    }
  }

  // Each photo under its words.
  void photos(lxw_worksheet* sheet, lxw_row_t row) {
    constexpr double kPixels = 480;
    constexpr double kRowTall = 20;
    for (const PourRecord& pour : record_.pours) {
      for (const PhotoLine& photo : pour.photos) {
        PhotoWords words = photo_words(photo, shown_);
        worksheet_write_string(sheet, row++, 0, fitting(words.title).c_str(), plain_);
        worksheet_write_string(sheet, row++, 0, fitting(words.taken).c_str(), nullptr);
        if (!photo.picture) {
          worksheet_write_string(sheet, row, 0, words.trouble.c_str(), plain_);
          row += 2;
          continue;
        }
        const double scale =
            std::min(1.0, kPixels / std::max(photo.picture->wide, photo.picture->tall));
        lxw_image_options options{};
        options.x_scale = options.y_scale = scale;
        options.description = words.title.data();
        const std::string& jpeg = photo.picture->jpeg;
        if (worksheet_insert_image_buffer_opt(sheet, row, 0,
                                              reinterpret_cast<const unsigned char*>(jpeg.data()),
                                              jpeg.size(), &options) != LXW_NO_ERROR) {
          whole_ = false;
        }
        row += static_cast<lxw_row_t>(std::ceil(scale * photo.picture->tall / kRowTall)) + 2;
      }
    }
  }

  // The height a PNG tells in its header (ISO/IEC 15948, 11.2.2).
  static double png_tall(const std::string& png) {
    constexpr std::size_t kAt = 20;
    if (png.size() < kAt + 4) return 0;
    double tall = 0;
    for (std::size_t i = 0; i < 4; ++i)
      tall = tall * 256 + static_cast<unsigned char>(png[kAt + i]);
    return tall;
  }

  // From a row on, headings first; returns the row after the last. `wide`: columns as wide as their
  // texts.
  lxw_row_t table(lxw_worksheet* sheet, lxw_row_t from, const Table& table, bool wide) {
    worksheet_set_row(sheet, from, 32, nullptr);
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      const auto at = static_cast<lxw_col_t>(i);
      const Column& column = table.columns[i];
      std::string heading = shown_.heading(column);
      if (column.measure == Measure::moment) {
        heading += " (" + offset_text(record_.utc_offset) + ")";
      }
      write(sheet, from, at, heading, heading_);
      if (wide) worksheet_set_column(sheet, at, at, width_of(table, i), nullptr);
      for (std::size_t r = 0; r < table.rows.size(); ++r) {
        const auto* text = std::get_if<std::string>(&table.rows[r][i]);
        const auto row = static_cast<lxw_row_t>(from + 1 + r);
        if (text != nullptr && table.key == "damaged") {
          write(sheet, row, at, *text, damaged_);
        } else {
          put(sheet, row, at, table.rows[r][i], column);
        }
      }
    }
    return static_cast<lxw_row_t>(from + 1 + table.rows.size());
  }

  // The table's title, as far as a sheet's name may go, unlike any other's.
  std::string sheet_name(const Table& table) {
    constexpr std::size_t kMost = 26;  // of 31 letters, so that a number has room
    const std::string title = shown_.title(table);
    std::string name;
    for (const char c : title.substr(0, title.find(':'))) {
      if (std::string_view{"[]*?/\\'"}.find(c) == std::string_view::npos) name += c;
    }
    name = std::string{first_letters(name, kMost)};
    const int nth = ++names_[name];
    return nth == 1 ? name : fmt::format("{} {}", name, nth);
  }

  static double width_of(const Table& table, std::size_t column) {
    if (table.columns[column].measure == Measure::moment) return 20;
    std::size_t longest = 10;
    for (const auto& row : table.rows) {
      if (const auto* text = std::get_if<std::string>(&row[column])) {
        longest = std::max(longest, text->size());
      }
    }
    return static_cast<double>(std::min<std::size_t>(longest + 2, 60));
  }

  void put(lxw_worksheet* sheet, lxw_row_t row, lxw_col_t column, const Cell& cell,
           const Column& of) {
    const Measure measure = of.measure;
    if (std::holds_alternative<std::string>(cell) || std::holds_alternative<bool>(cell)) {
      write(sheet, row, column, shown_.text(cell, of), text_);
    } else if (const auto* moment = std::get_if<Moment>(&cell)) {
      lxw_datetime when = calendar(*moment, record_.utc_offset);
      worksheet_write_datetime(sheet, row, column, &when, moment_);
    } else if (const auto* number = std::get_if<double>(&cell); number && std::isfinite(*number)) {
      worksheet_write_number(sheet, row, column, shown(*number, measure, record_.units),
                             number_format(measure));
    }
  }

  lxw_format* number_format(Measure measure) {
    lxw_format*& format = numbers_[measure];
    if (format == nullptr) {
      format = workbook_add_format(book_);
      const int places = decimals(measure, record_.units);
      std::string picture = "0";
      if (places > 0) picture += "." + std::string(static_cast<std::size_t>(places), '0');
      format_set_num_format(format, picture.c_str());
      format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
    }
    return format;
  }

  lxw_workbook* book_;
  const DailyRecord& record_;
  Shown shown_;
  lxw_format *heading_, *title_, *strong_, *plain_, *text_, *damaged_, *moment_;
  std::map<Measure, lxw_format*> numbers_;
  std::map<std::string, int> names_;
  bool whole_ = true;  // every picture found room
  lxw_row_t row_ = 0;  // of the first sheet, the next free
};

}  // namespace

Result<std::string> to_xlsx(const DailyRecord& record) {
  const MemoryFile file;
  if (!file.open()) {
    return fail(Error::Kind::input, said("workbook"), said("no memory to write it in"),
                said("Close other programs"));
  }
  lxw_workbook* workbook = workbook_new(file.path().c_str());
  if (workbook == nullptr) {
    return fail(Error::Kind::input, said("workbook"), said("could not be started"),
                said("Close other programs"));
  }
  std::string title = Shown{record}.record_title() + " " + day_text(record);
  std::string subject = fitting(clean_text(record.site), 255);
  lxw_doc_properties properties{};
  properties.title = title.data();
  properties.subject = subject.data();
  properties.created =
      std::chrono::duration_cast<std::chrono::seconds>(record.as_of.time_since_epoch()).count();
  workbook_set_properties(workbook, &properties);
  Book book{workbook, record};
  book.front();
  for (const Table& table : tables_of(record)) {
    if (!table.rows.empty() && table.key != "day_pours") book.sheet(table);
  }
  const lxw_error error = workbook_close(workbook);
  if (error != LXW_NO_ERROR) {
    return fail(Error::Kind::input, said("workbook"), lxw_strerror(error),
                said("See that the disk has room"));
  }
  if (!book.whole()) {
    return fail(Error::Kind::input, said("workbook"), said("its pictures found no room"),
                said("See that the disk has room"));
  }
  return file.bytes();
}

}  // namespace rb
