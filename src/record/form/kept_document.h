// A drawn document made into one to be kept, by qpdf. Inside this room. Of the standard library's
// kinds only: what includes qpdf's headers is C++17, for clang 14 takes them as C++20 for wrong.
#pragma once

#include <string>

namespace rb {

struct KeptFacts {
  std::string title, description;  ///< UTF-8
  std::string program, language;   ///< "Risebook", "en"
  std::string date;                ///< "D:20260303140001Z"
  std::string metadata;            ///< XMP
  std::string profile;             ///< ICC, of three colours
  std::string condition;           ///< what the profile is called
  std::string attached_name, attached_kind, attached;
};

/// The document's bytes, the same for the same. Throws std::exception on what is no document, and
/// where there is no memory.
std::string kept_document(const std::string& pages, const KeptFacts& facts);

}  // namespace rb
