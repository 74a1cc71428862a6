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

#include "record/model/book_words.h"
#include "record/model/clean_text.h"
#include "record/model/shown.h"

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

  void front() {
    lxw_worksheet* sheet = workbook_add_worksheet(book_, "Record");
    worksheet_set_column(sheet, 0, 0, 22, nullptr);
    worksheet_set_column(sheet, 1, 1, 90, nullptr);
    lxw_row_t row = 0;
    write(sheet, row, 0, "Daily consolidation record", title_);
    row += 2;
    const auto fact = [&](const char* name, const std::string& value) {
      write(sheet, row, 0, name, strong_);
      write(sheet, row++, 1, value, text_);
    };
    fact("Site", record_.site);
    fact("Day", fmt::format("{} ({})", shown_.long_day(), day_text(record_)));
    fact("Times", shown_.clock_words());
    if (record_.edition > 1) fact("Edition", shown_.edition());
    fact("Book", record_.book.tag);
    fact("Events in the book", std::to_string(record_.book.events));
    if (record_.book.head_event > 0) {
      fact("Newest event", std::to_string(record_.book.head_event));
    }
    fact("Hash of the newest", record_.book.head_hash);
    fact("Its short code", head_code(record_.book));
    if (!record_.book.looked.empty()) fact("Verified", record_.book.looked);
    if (!record_.book.damage.empty()) {
      write(sheet, row, 0, "Damage", damaged_);
      write(sheet, row++, 1, record_.book.damage, damaged_);
    }
    for (const std::string& caution : record_cautions()) fact("Caution", caution);
  }

  void sheet(const Table& table) {
    lxw_worksheet* sheet = workbook_add_worksheet(book_, sheet_name(table.key).c_str());
    std::vector<std::size_t> shown_columns;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      if (table.columns[i].on != On::paper) shown_columns.push_back(i);
    }
    lxw_col_t at = 0;
    for (const std::size_t i : shown_columns) {
      const Column& column = table.columns[i];
      std::string heading = shown_.heading(column);
      if (column.measure == Measure::moment) {
        heading += " (" + offset_text(record_.utc_offset) + ")";
      }
      write(sheet, 0, at, heading, heading_);
      worksheet_set_column(sheet, at, at, width_of(table, i), nullptr);
      for (std::size_t r = 0; r < table.rows.size(); ++r) {
        const auto* text = std::get_if<std::string>(&table.rows[r][i]);
        if (text != nullptr && table.key == "damaged") {
          write(sheet, static_cast<lxw_row_t>(r + 1), at, *text, damaged_);
        } else {
          put(sheet, static_cast<lxw_row_t>(r + 1), at, table.rows[r][i], column.measure);
        }
      }
      ++at;
    }
    worksheet_set_row(sheet, 0, 32, nullptr);
    worksheet_freeze_panes(sheet, 1, 0);
    if (at > 0) {
      worksheet_autofilter(sheet, 0, 0, static_cast<lxw_row_t>(table.rows.size()),
                           static_cast<lxw_col_t>(at - 1));
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

  static std::string sheet_name(std::string key) {
    key.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(key.front())));
    return key;
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
           Measure measure) {
    if (const auto* text = std::get_if<std::string>(&cell)) {
      write(sheet, row, column, *text, text_);
    } else if (const auto* yes = std::get_if<bool>(&cell)) {
      write(sheet, row, column, *yes ? "yes" : "no", text_);
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
  lxw_format *heading_, *title_, *strong_, *text_, *damaged_, *moment_;
  std::map<Measure, lxw_format*> numbers_;
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
  std::string title = "Daily consolidation record " + day_text(record);
  std::string subject = fitting(clean_text(record.site), 255);
  lxw_doc_properties properties{};
  properties.title = title.data();
  properties.subject = subject.data();
  properties.created =
      std::chrono::duration_cast<std::chrono::seconds>(record.as_of.time_since_epoch()).count();
  workbook_set_properties(workbook, &properties);
  Book book{workbook, record};
  book.front();
  for (const Table& table : tables_of(record)) book.sheet(table);
  const lxw_error error = workbook_close(workbook);
  if (error != LXW_NO_ERROR) {
    return fail(Error::Kind::input, said("workbook"), lxw_strerror(error),
                said("See that the disk has room"));
  }
  return file.bytes();
}

}  // namespace rb
