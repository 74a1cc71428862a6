// The document to be kept is looked into by programs of others: qpdf, and pdfdetach and pdfinfo of
// poppler-utils. It is made to PDF/A-3; no validator of that standard has seen it.
#include "record/form/archive_pdf.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <sstream>

#include "record/form/json.h"
#include "sample.h"
#include "temp_folder.h"

using namespace rb;

namespace {

class Kept {
 public:
  explicit Kept(const DailyRecord& record) : file_(folder_.path() / "record.pdf") {
    const auto bytes = to_archive_pdf(record);
    REQUIRE_MESSAGE(bytes, (bytes ? "" : to_text(bytes.error())));
    bytes_ = *bytes;
    std::ofstream(file_, std::ios::binary) << bytes_;
  }
  [[nodiscard]] const std::string& bytes() const { return bytes_; }
  [[nodiscard]] std::string asked(const char* program, const char* after = "") const {
    return test::output_of(fmt::format("{} '{}' {}", program, file_.string(), after));
  }
  [[nodiscard]] std::filesystem::path beside(const char* name) const {
    return folder_.path() / name;
  }

 private:
  test::TempFolder folder_;
  std::filesystem::path file_;
  std::string bytes_;
};

bool in_document(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the document to be kept is whole, in both units and languages") {
  for (const char* units : {"si", "us"}) {
    DailyRecord record = test::sample_record(units);
    for (const Language language : Language::all()) {
      record.language = language;
      const Kept kept{record};
      CHECK(in_document(kept.asked("qpdf --check"), "No syntax or stream encoding errors found"));
    }
  }
}

TEST_CASE("the document carries what PDF/A-3 asks of its catalog") {
  const Kept kept{test::sample_record()};
  const std::string text = kept.asked("qpdf --qdf --object-streams=disable", "-");
  for (const std::string part : {"%PDF-1.7",
                                 "/OutputIntents [",
                                 "/S /GTS_PDFA1",
                                 "/OutputConditionIdentifier (sRGB",
                                 "/DestOutputProfile",
                                 "/N 3",
                                 "/Subtype /XML",
                                 "<pdfaid:part>3</pdfaid:part>",
                                 "<pdfaid:conformance>B</pdfaid:conformance>",
                                 "/AF [",
                                 "/AFRelationship /Data",
                                 "/EmbeddedFiles",
                                 "/Subtype /application#2fjson",
                                 "/Lang (en)",
                                 "/ID [",
                                 "/CreationDate (D:20260303140001Z)",
                                 "/ModDate (D:20260303140001Z)",
                                 "<xmp:CreateDate>2026-03-03T14:00:01Z</xmp:CreateDate>",
                                 "<xmp:ModifyDate>2026-03-03T14:00:01Z</xmp:ModifyDate>",
                                 "/Producer (Risebook)",
                                 "<pdf:Producer>Risebook</pdf:Producer>"}) {
    CAPTURE(part);
    CHECK(in_document(text, part));
  }
  CHECK_FALSE(in_document(text, "/Encrypt"));
  CHECK_FALSE(in_document(text, "/JavaScript"));
}

TEST_CASE("every typeface of the document stands in it") {
  const std::string fonts = Kept{test::sample_record()}.asked("pdffonts");
  std::istringstream lines(fonts);
  std::string line;
  std::getline(lines, line);
  const auto embedded = line.find("emb");
  REQUIRE(embedded != std::string::npos);
  std::getline(lines, line);
  int seen = 0;
  while (std::getline(lines, line)) {
    ++seen;
    CAPTURE(line);
    CHECK(line.substr(embedded, 3) == "yes");
  }
  CHECK(seen >= 2);
}

TEST_CASE("the record's JSON is attached, byte for byte") {
  const DailyRecord record = test::sample_record();
  const Kept kept{record};
  CHECK(in_document(kept.asked("pdfdetach -list"), "consolidation-2026-03-02-TABLET-07.json"));
  const auto out = kept.beside("taken-out.json");
  (void)kept.asked("pdfdetach -save 1", fmt::format("-o '{}'", out.string()).c_str());
  CHECK(test::bytes_of(out) == to_json(record));
}

TEST_CASE("the document is the same twice, whatever the clock says") {
  const DailyRecord record = test::sample_record();
  const Kept once{record};
  const Kept twice{record};
  CHECK(once.bytes() == twice.bytes());
  DailyRecord other = record;
  other.site = "Another site";
  CHECK(once.bytes() != Kept{other}.bytes());
}

TEST_CASE("signs of a site's name do not break the document's metadata") {
  DailyRecord record = test::sample_record();
  record.site = "Pier <3> & \"Ñandú\" (east)";
  const Kept kept{record};
  CHECK(in_document(kept.asked("qpdf --check"), "No syntax"));
  CHECK(in_document(kept.asked("pdfinfo"), "Pier <3> & \"Ñandú\" (east)"));
  CHECK(in_document(kept.asked("qpdf --qdf", "-"), "Pier &lt;3&gt; &amp; \"Ñandú\" (east)"));
}
