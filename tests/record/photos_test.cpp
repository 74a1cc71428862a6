// Photos in the record's pages. Pictures are made and looked at by programs of others: ImageMagick,
// qpdf, and pdfimages and pdftotext of poppler-utils.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <random>
#include <sstream>

#include "record/form/archive_pdf.h"
#include "record/form/csv.h"
#include "record/form/html.h"
#include "record/form/xlsx.h"
#include "record/model/table.h"
#include "record/photo/shown_photo.h"
#include "sample.h"
#include "temp_folder.h"
#include "zip.h"

using namespace rb;
namespace fs = std::filesystem;

namespace {

DailyRecord photographed(const char* units = "si", Language language = {}) {
  const test::Sample sample = test::photographed_pour(units);
  return make_daily_record({sample.input()}, *parse_day("2026-03-02", test::kOffset), test::kOffset,
                           test::kBook, {}, language);
}

void put_photo(const fs::path& file, const std::string& bytes) {
  std::ofstream(file, std::ios::binary) << bytes;
}

std::size_t photo_times(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

std::string without_spaces(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.compare(i, 2, "\u00A0") == 0) {
      ++i;
    } else if (std::isspace(static_cast<unsigned char>(text[i])) == 0) {
      out += text[i];
    }
  }
  return out;
}

// Exif with one entry, in either order of bytes (from memory).
std::string turned(const std::string& jpeg, int turn, bool small_end) {
  std::string tiff = small_end ? std::string("II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0", 18)
                               : std::string("MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01", 18);
  const char value = static_cast<char>(turn);
  tiff += small_end ? std::string{value, '\0', '\0', '\0'} : std::string{'\0', value, '\0', '\0'};
  tiff += std::string(4, '\0');
  const std::string inside = std::string("Exif\0\0", 6) + tiff;
  const auto size = inside.size() + 2;
  return jpeg.substr(0, 2) + "\xFF\xE1" + static_cast<char>(size / 256) +
         static_cast<char>(size % 256) + inside + jpeg.substr(2);
}

// Four colours in the corners, wider than tall.
std::string made_photo(const test::TempFolder& folder, const char* how, const char* name) {
  const auto file = folder.path() / name;
  (void)test::output_of(
      fmt::format("convert '(' -size 900x600 xc:red xc:blue +append ')' '(' -size 900x600 xc:lime "
                  "xc:yellow +append ')' -append {} '{}'",
                  how, file.string()));
  return test::bytes_of(file);
}

}  // namespace

TEST_CASE("a photo stands upright, as ImageMagick turns it, at most 1280 pixels long") {
  const test::TempFolder folder;
  const std::string taken = made_photo(folder, "", "taken.jpg");
  for (int turn = 1; turn <= 8; ++turn) {
    for (const bool small_end : {true, false}) {
      CAPTURE(turn);
      const std::string told = turned(taken, turn, small_end);
      CHECK(photo_turn(told) == turn);
      const auto shown = shown_photo(told);
      REQUIRE(shown);
      CHECK(std::max(shown->wide, shown->tall) == 1280);
      CHECK((shown->wide > shown->tall) == (turn <= 4));
      put_photo(folder.path() / "told.jpg", told);
      put_photo(folder.path() / "shown.jpg", shown->jpeg);
      const auto corners = [&](const char* name, const char* before) {
        return test::output_of(
            fmt::format("convert '{}' {} -resize '4x4!' -sample '2x2!' -posterize 2 -depth 8 txt:-",
                        (folder.path() / name).string(), before));
      };
      CHECK(corners("shown.jpg", "") == corners("told.jpg", "-auto-orient"));
    }
  }
}

TEST_CASE(
    "a photo of grey, with a clear ground or small comes out in three colours, never larger") {
  const test::TempFolder folder;
  for (const auto& made : std::vector<std::pair<const char*, const char*>>{
           {"-colorspace Gray", "grey.jpg"},
           {"-colorspace Gray", "grey.png"},
           {"-alpha set -channel A -evaluate set 50%", "clear.png"},
           {"-interlace JPEG", "progressive.jpg"},
           {"-resize 200x100", "small.jpg"}}) {
    const std::string name = made.second;
    CAPTURE(name);
    const std::string bytes = made_photo(folder, made.first, made.second);
    const auto shown = shown_photo(bytes);
    REQUIRE(shown);
    CHECK(shown->wide <= 1280);
    if (name == "small.jpg") CHECK(shown->tall == 100);
    const auto file = folder.path() / "shown.jpg";
    put_photo(file, shown->jpeg);
    CHECK(test::output_of(
              fmt::format("identify -format '%w %h %[jpeg:colorspace]' '{}'", file.string())) ==
          fmt::format("{} {} 2", shown->wide, shown->tall));
    CHECK(shown_photo(bytes)->jpeg == shown->jpeg);
  }
}

TEST_CASE("what cannot be drawn gives nothing, and bytes of chance do no harm") {
  const test::TempFolder folder;
  CHECK_FALSE(shown_photo(""));
  CHECK_FALSE(shown_photo("\xFF\xD8\xFF no photo \xFF\xD9"));
  CHECK_FALSE(shown_photo("\x89PNG\r\n\x1A\n"));
  CHECK_FALSE(shown_photo(made_photo(folder, "-colorspace CMYK", "four.jpg")));
  const std::string png = made_photo(folder, "-resize 60x40", "small.png");
  std::string huge = png;
  huge.replace(16, 8, std::string("\0\0\xFF\xFF\0\0\xFF\xFF", 8));
  CHECK_FALSE(shown_photo(huge));
  const std::string jpeg = turned(made_photo(folder, "-resize 60x40", "small.jpg"), 6, false);
  std::mt19937 random(20260302);
  int drawn = 0;
  for (int i = 0; i < 600; ++i) {
    std::string bytes = i % 2 == 0 ? png : jpeg;
    for (int k = 0; k < 3; ++k) bytes[random() % bytes.size()] = static_cast<char>(random());
    if (i % 5 == 0) bytes.resize(random() % bytes.size());
    // A size of chance is no harm, but no test's business either.
    if (i % 2 == 0 && bytes.size() > 24) bytes.replace(16, 8, png.substr(16, 8));
    drawn += shown_photo(bytes) ? 1 : 0;
  }
  CHECK(drawn > 0);
  CHECK(drawn < 600);
}

TEST_CASE("on paper each photo stands under its words, and one without a picture is named") {
  const test::TempFolder folder;
  const auto file = folder.path() / "record.pdf";
  for (const char* units : {"si", "us"}) {
    const DailyRecord record = photographed(units);
    const auto bytes = to_archive_pdf(record);
    REQUIRE(bytes);
    CHECK(*bytes == *to_archive_pdf(record));
    put_photo(file, *bytes);
    CHECK(test::output_of(fmt::format("qpdf --check '{}'", file.string()))
              .find("No syntax or stream encoding errors found") != std::string::npos);
    // page num type width height color comp bpc enc ...
    std::istringstream images(test::output_of(fmt::format("pdfimages -list '{}'", file.string())));
    int pictures = 0;
    for (std::string line; std::getline(images, line);) {
      if (line.find("jpeg") == std::string::npos) continue;
      ++pictures;
      CAPTURE(line);
      CHECK(line.find(" rgb ") != std::string::npos);
      CHECK(line.find(" 3   8  jpeg   no") != std::string::npos);
    }
    CHECK(pictures == 2);
    const std::string inside =
        test::output_of(fmt::format("qpdf --qdf --object-streams=disable '{}' -", file.string()));
    CHECK(inside.find("/Interpolate true") == std::string::npos);
    CHECK(inside.find("/Interpolate false") != std::string::npos);
    CHECK(inside.find("/DeviceCMYK") == std::string::npos);
    const std::string text =
        without_spaces(test::output_of(fmt::format("pdftotext -raw '{}' -", file.string())));
    for (const char* part :
         {"Blemish 1: honeycomb", "Blemish 1: honeycomb; repair: cut back and filled",
          "Of the element", "This photo is missing", "This photo was altered",
          "cannot be drawn here", "SHA-256 000000000000", "IMG_3.jpg", "near side",
          units == std::string{"si"} ? "6.20 m from the left" : "20.34 ft from the left"}) {
      CAPTURE(part);
      CHECK(text.find(without_spaces(part)) != std::string::npos);
    }
  }
}

TEST_CASE("the page carries its photos, and tells of those it has no room for") {
  const DailyRecord record = photographed();
  const std::string page = to_html(record);
  CHECK(photo_times(page, "src=\"data:image/jpeg;base64,/9j/") == 2);
  CHECK(photo_times(page, " src=") == 2);
  CHECK(photo_times(page, "<figcaption>") == 5);
  CHECK(page.find("This photo is missing") != std::string::npos);
  CHECK(page.find("This photo was altered") != std::string::npos);
  CHECK(page.find("cannot be drawn here") != std::string::npos);
  CHECK(page.find("This photo is not in this page") == std::string::npos);
  CHECK(page == to_html(record));
  const std::size_t one = record.pours[0].photos[0].picture->jpeg.size();
  const std::string full = to_html(record, one);
  CHECK(photo_times(full, "data:image/jpeg") == 1);
  CHECK(photo_times(full, "This photo is not in this page") == 1);
  CHECK(photo_times(to_html(photographed("si", *Language::of_code("es")), one),
                    "Esta foto no está") == 1);
}

TEST_CASE("the workbook has a sheet of photos with their pictures, CSV a row each") {
  const DailyRecord record = photographed();
  const auto workbook = to_xlsx(record);
  REQUIRE(workbook);
  CHECK(*workbook == *to_xlsx(record));
  const auto files = test::unzip(*workbook);
  int pictures = 0;
  for (const auto& [name, entry] : files) {
    if (name.find("media/") == std::string::npos || !name.ends_with("jpeg")) continue;
    ++pictures;
    CHECK(entry.bytes == record.pours[0].photos[0].picture->jpeg);
  }
  CHECK(pictures >= 1);  // two alike may be kept once
  CHECK(files.at("xl/workbook.xml").bytes.find("name=\"Photos\"") != std::string::npos);
  for (const Table& table : tables_of(record)) {
    if (table.key != "photos") continue;
    CHECK(table.rows.size() == 5);
    const std::string csv = to_csv(table);
    CHECK(csv.find("IMG_1.jpg,1001," + std::string(63, '0') + "1,missing") != std::string::npos);
  }
}

TEST_CASE("a record that nobody gave photos to says that none was looked for") {
  test::Sample sample = test::photographed_pour();
  sample.photos = {};
  const std::string page = to_html(make_daily_record(
      {sample.input()}, *parse_day("2026-03-02", test::kOffset), test::kOffset, test::kBook));
  CHECK(photo_times(page, "This photo&#39;s file was not looked for.") +
            photo_times(page, "This photo's file was not looked for.") ==
        5);
}
