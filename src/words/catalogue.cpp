#include "words/catalogue.h"

#include <risebook_catalogues.h>

#include <algorithm>
#include <boost/locale/gnu_gettext.hpp>
#include <cstring>
#include <locale>
#include <string>
#include <vector>

namespace rb {

namespace {

namespace gettext = boost::locale::gnu_gettext;
using Messages = boost::locale::message_format<char>;

constexpr const char* kDomain = "risebook";

/// A catalogue as it was built in; the locale keeps the facet alive.
struct Catalogue {
  std::string code, name, letters;
  bool finished = true;
  std::locale locale{std::locale::classic()};
  const Messages* messages = nullptr;  ///< null for English
};

// A line of the catalogue's own heading ("X-Name: Español"); empty when it is not there.
std::string heading(const Messages& messages, const std::string& field) {
  const char* all = messages.get(0, nullptr, "");
  const std::string text = all == nullptr ? "" : all;
  const std::string key = field + ": ";
  const auto at = text.find(key);
  if (at == std::string::npos) return {};
  const auto from = at + key.size();
  return text.substr(from, text.find('\n', from) - from);
}

Catalogue read(const embedded::Catalogue& built_in) {
  gettext::messages_info info;
  info.language = built_in.code;
  info.encoding = "UTF-8";
  info.domains.emplace_back(kDomain);
  info.paths.emplace_back("");
  info.callback = [&](const std::string& /*file*/, const std::string& /*encoding*/) {
    return std::vector<char>(built_in.begin, built_in.end);
  };
  Catalogue catalogue;
  catalogue.code = built_in.code;
  Messages* facet = gettext::create_messages_facet<char>(info);
  catalogue.locale = std::locale(std::locale::classic(), facet);
  catalogue.messages = facet;
  catalogue.name = heading(*facet, "X-Name");
  catalogue.letters = heading(*facet, "X-Letters");
  catalogue.finished = heading(*facet, "X-Finished") == "yes";
  return catalogue;
}

const std::vector<Catalogue>& catalogues() {
  static const std::vector<Catalogue> all = [] {
    std::vector<Catalogue> list;
    list.push_back({.code = "en", .name = "English", .letters = ""});
    for (const embedded::Catalogue& one : embedded::catalogues()) list.push_back(read(one));
    return list;
  }();
  return all;
}

const Catalogue& of(Language language) {
  return catalogues()[language.index()];
}

}  // namespace

std::string_view Language::code() const {
  return of(*this).code;
}
std::string_view Language::own_name() const {
  return of(*this).name;
}
std::string_view Language::letters() const {
  return of(*this).letters;
}
bool Language::finished() const {
  return of(*this).finished;
}

std::span<const Language> Language::all() {
  static const std::vector<Language> list = [] {
    std::vector<Language> all;
    for (std::size_t i = 0; i < catalogues().size(); ++i) all.push_back(Language{i});
    return all;
  }();
  return list;
}

std::optional<Language> Language::of_code(std::string_view code) {
  const auto found = std::find_if(all().begin(), all().end(),
                                  [&](Language language) { return language.code() == code; });
  return found == all().end() ? std::nullopt : std::optional{*found};
}

const char* told(Language language, const char* english, const char* context) {
  const Messages* messages = of(language).messages;
  if (messages == nullptr || *english == '\0') return english;
  const char* found = messages->get(0, context, english);
  return found == nullptr ? english : found;
}

const char* told(Language language, const char* one, const char* many, long count) {
  const char* english = count == 1 ? one : many;
  const Messages* messages = of(language).messages;
  if (messages == nullptr) return english;
  const char* found = messages->get(0, nullptr, one, static_cast<int>(count));
  return found == nullptr ? english : found;
}

bool has_words(Language language, const char* english, const char* context) {
  const Messages* messages = of(language).messages;
  return messages == nullptr || *english == '\0' || messages->get(0, context, english) != nullptr;
}

}  // namespace rb
