#define POINTERHOLDER_TRANSITION 4  // qpdf with the standard's pointers only
#include "record/form/kept_document.h"

#include <qpdf/QPDF.hh>
#include <qpdf/QPDFEFStreamObjectHelper.hh>
#include <qpdf/QPDFEmbeddedFileDocumentHelper.hh>
#include <qpdf/QPDFFileSpecObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

namespace rb {

namespace {

using Object = QPDFObjectHandle;

// What the document tells of itself, here and in its metadata alike.
void describe(QPDF& document, const KeptFacts& facts) {
  Object info = Object::newDictionary();
  info.replaceKey("/Title", Object::newUnicodeString(facts.title));
  info.replaceKey("/Creator", Object::newString(facts.program));
  info.replaceKey("/Producer", Object::newString(facts.program));
  info.replaceKey("/CreationDate", Object::newString(facts.date));
  info.replaceKey("/ModDate", Object::newString(facts.date));
  document.getTrailer().replaceKey("/Info", document.makeIndirectObject(info));
  Object stream = document.newStream(facts.metadata);
  stream.getDict().replaceKey("/Type", Object::newName("/Metadata"));
  stream.getDict().replaceKey("/Subtype", Object::newName("/XML"));
  document.getRoot().replaceKey("/Metadata", stream);
  document.getRoot().replaceKey("/Lang", Object::newString(facts.language));
}

void put_intent(QPDF& document, const KeptFacts& facts) {
  Object profile = document.newStream(facts.profile);
  profile.getDict().replaceKey("/N", Object::newInteger(3));
  Object intent = Object::newDictionary();
  intent.replaceKey("/Type", Object::newName("/OutputIntent"));
  intent.replaceKey("/S", Object::newName("/GTS_PDFA1"));
  intent.replaceKey("/OutputConditionIdentifier", Object::newString(facts.condition));
  intent.replaceKey("/Info", Object::newString(facts.condition));
  intent.replaceKey("/DestOutputProfile", profile);
  document.getRoot().replaceKey("/OutputIntents",
                                Object::newArray({document.makeIndirectObject(intent)}));
}

void attach(QPDF& document, const KeptFacts& facts) {
  auto data = QPDFEFStreamObjectHelper::createEFStream(document, facts.attached);
  data.setSubtype(facts.attached_kind);
  data.setCreationDate(facts.date);
  data.setModDate(facts.date);
  auto file = QPDFFileSpecObjectHelper::createFileSpec(document, facts.attached_name, data);
  file.setDescription(facts.description);
  file.getObjectHandle().replaceKey("/AFRelationship", Object::newName("/Data"));
  QPDFEmbeddedFileDocumentHelper{document}.replaceEmbeddedFile(facts.attached_name, file);
  document.getRoot().replaceKey("/AF", Object::newArray({file.getObjectHandle()}));
}

}  // namespace

std::string kept_document(const std::string& pages, const KeptFacts& facts) {
  QPDF document;
  document.processMemoryFile("record", pages.data(), pages.size());
  describe(document, facts);
  put_intent(document, facts);
  attach(document, facts);
  QPDFWriter writer{document};
  writer.setOutputMemory();
  writer.setMinimumPDFVersion("1.7");
  writer.setObjectStreamMode(qpdf_o_disable);
  writer.setNewlineBeforeEndstream(true);
  writer.setDeterministicID(true);
  writer.write();
  const auto bytes = writer.getBufferSharedPointer();
  return {reinterpret_cast<const char*>(bytes->getBuffer()), bytes->getSize()};
}

}  // namespace rb
