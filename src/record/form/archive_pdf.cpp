#define POINTERHOLDER_TRANSITION 4  // qpdf with the standard's pointers only
#include "record/form/archive_pdf.h"

#include <fmt/format.h>

#include <exception>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFEFStreamObjectHelper.hh>
#include <qpdf/QPDFEmbeddedFileDocumentHelper.hh>
#include <qpdf/QPDFFileSpecObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include "record/form/colour_profile.h"
#include "record/form/json.h"
#include "record/form/write_record.h"
#include "record/model/clean_text.h"
#include "record/model/edition.h"
#include "record/model/shown.h"
#include "record/pdf/pdf.h"

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

class Archive {
 public:
  Archive(const std::string& pages, const DailyRecord& record) : record_(record) {
    document_.processMemoryFile("record", pages.data(), pages.size());
  }

  std::string make() {
    describe();
    put_intent();
    attach();
    QPDFWriter writer{document_};
    writer.setOutputMemory();
    writer.setMinimumPDFVersion("1.7");
    writer.setObjectStreamMode(qpdf_o_disable);
    writer.setNewlineBeforeEndstream(true);
    writer.setDeterministicID(true);
    writer.write();
    const auto bytes = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(bytes->getBuffer()), bytes->getSize()};
  }

 private:
  using Object = QPDFObjectHandle;

  // What the document tells of itself, here and in its metadata alike.
  void describe() {
    const std::string title = clean_text(
        fmt::format("{} {} {}", Shown{record_}.record_title(), day_text(record_), record_.site));
    Object info = Object::newDictionary();
    info.replaceKey("/Title", Object::newUnicodeString(title));
    info.replaceKey("/Creator", Object::newString(kProgram));
    info.replaceKey("/Producer", Object::newString(kProgram));
    info.replaceKey("/CreationDate", Object::newString(pdf_date(record_.as_of)));
    info.replaceKey("/ModDate", Object::newString(pdf_date(record_.as_of)));
    document_.getTrailer().replaceKey("/Info", document_.makeIndirectObject(info));
    Object stream = document_.newStream(metadata(record_, title));
    stream.getDict().replaceKey("/Type", Object::newName("/Metadata"));
    stream.getDict().replaceKey("/Subtype", Object::newName("/XML"));
    document_.getRoot().replaceKey("/Metadata", stream);
    document_.getRoot().replaceKey("/Lang",
                                   Object::newString(std::string{record_.language.code()}));
  }

  void put_intent() {
    Object profile = document_.newStream(srgb_profile(record_.as_of));
    profile.getDict().replaceKey("/N", Object::newInteger(3));
    Object intent = Object::newDictionary();
    intent.replaceKey("/Type", Object::newName("/OutputIntent"));
    intent.replaceKey("/S", Object::newName("/GTS_PDFA1"));
    intent.replaceKey("/OutputConditionIdentifier", Object::newString("sRGB IEC61966-2.1"));
    intent.replaceKey("/Info", Object::newString("sRGB IEC61966-2.1"));
    intent.replaceKey("/DestOutputProfile", profile);
    document_.getRoot().replaceKey("/OutputIntents",
                                   Object::newArray({document_.makeIndirectObject(intent)}));
  }

  void attach() {
    const std::string name = edition_name(record_name(record_), record_.edition) + ".json";
    auto data = QPDFEFStreamObjectHelper::createEFStream(document_, to_json(record_));
    data.setSubtype("application/json");
    data.setCreationDate(pdf_date(record_.as_of));
    data.setModDate(pdf_date(record_.as_of));
    auto file = QPDFFileSpecObjectHelper::createFileSpec(document_, name, data);
    file.setDescription(Shown{record_}.record_title());
    file.getObjectHandle().replaceKey("/AFRelationship", Object::newName("/Data"));
    QPDFEmbeddedFileDocumentHelper{document_}.replaceEmbeddedFile(name, file);
    document_.getRoot().replaceKey("/AF", Object::newArray({file.getObjectHandle()}));
  }

  const DailyRecord& record_;
  QPDF document_;
};

}  // namespace

Result<std::string> to_archive_pdf(const DailyRecord& record) {
  auto pages = to_pdf(record);
  if (!pages) return pages;
  try {
    return Archive{*pages, record}.make();
  } catch (const std::exception& error) {
    return fail(Error::Kind::input, "PDF", error.what(),
                said("See that memory and disk have room"));
  }
}

}  // namespace rb
