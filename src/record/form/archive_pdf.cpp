#include "record/form/archive_pdf.h"

#include <fmt/format.h>

#include <exception>

#include "record/form/colour_profile.h"
#include "record/form/edition.h"
#include "record/form/json.h"
#include "record/form/kept_document.h"
#include "record/form/write_record.h"
#include "record/model/clean_text.h"
#include "record/pdf/pdf.h"
#include "record/told/shown.h"

namespace rb {

namespace {

constexpr const char* kProgram = "Risebook";

std::string xml_text(const std::string& text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

// Dates without milliseconds: as the document's own and the metadata's are to agree.
std::string iso_date(Moment moment) {
  return to_text(moment).substr(0, 19) + "Z";
}
std::string pdf_date(Moment moment) {
  std::string digits = "D:";
  for (const char c : iso_date(moment)) {
    if (c >= '0' && c <= '9') digits += c;
  }
  return digits + "Z";
}

// ISO 16684-1, in the form ISO 19005-3 asks for (both not seen, second hand).
std::string metadata(const DailyRecord& record, const std::string& title) {
  const std::string date = iso_date(record.as_of);
  return fmt::format(
      "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
      "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
      "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
      "<rdf:Description rdf:about=\"\" xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\">\n"
      "<pdfaid:part>3</pdfaid:part><pdfaid:conformance>B</pdfaid:conformance>\n"
      "</rdf:Description>\n"
      "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\">\n"
      "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{0}</rdf:li></rdf:Alt></dc:title>\n"
      "</rdf:Description>\n"
      "<rdf:Description rdf:about=\"\" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\">\n"
      "<xmp:CreatorTool>{1}</xmp:CreatorTool><xmp:CreateDate>{2}</xmp:CreateDate>"
      "<xmp:ModifyDate>{2}</xmp:ModifyDate><xmp:MetadataDate>{2}</xmp:MetadataDate>\n"
      "</rdf:Description>\n"
      "<rdf:Description rdf:about=\"\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\">\n"
      "<pdf:Producer>{1}</pdf:Producer>\n"
      "</rdf:Description>\n"
      "</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>",
      xml_text(title), kProgram, date);
}

KeptFacts facts_of(const DailyRecord& record, const std::string& json) {
  const Shown shown{record};
  const std::string title =
      clean_text(fmt::format("{} {} {}", shown.record_title(), day_text(record), record.site));
  return {.title = title,
          .description = shown.record_title(),
          .program = kProgram,
          .language = std::string{record.language.code()},
          .date = pdf_date(record.as_of),
          .metadata = metadata(record, title),
          .profile = srgb_profile(record.as_of),
          .condition = "sRGB IEC61966-2.1",
          .attached_name = edition_name(record_name(record), record.edition) + ".json",
          .attached_kind = "application/json",
          .attached = json.empty() ? to_json(record) : json};
}

}  // namespace

Result<std::string> to_archive_pdf(const DailyRecord& record, const std::string& json) {
  auto pages = to_pdf(record);
  if (!pages) return pages;
  try {
    return kept_document(*pages, facts_of(record, json));
  } catch (const std::exception& error) {
    return fail(Error::Kind::input, "PDF", error.what(),
                said("See that memory and disk have room"));
  }
}

}  // namespace rb
