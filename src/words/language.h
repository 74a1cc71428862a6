// The languages the program speaks: English, in which its words are written, and one for each
// catalogue of this folder (es.po, ...). A language is added by adding its catalogue.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace rb {

class Language {
 public:
  constexpr Language() = default;                   ///< English
  [[nodiscard]] std::string_view code() const;      ///< "en", "es"
  [[nodiscard]] std::string_view own_name() const;  ///< "English", "Espa\u00F1ol"
  /// A word missing in a finished language is a fault; in an unfinished one English stands for it.
  [[nodiscard]] bool finished() const;
  /// Letters of its own that stand after N on the keys: "\u00D1"; none in English.
  [[nodiscard]] std::string_view letters() const;
  [[nodiscard]] constexpr std::size_t index() const { return index_; }
  constexpr bool operator==(const Language&) const = default;

  /// English first, then the catalogues by their code.
  static std::span<const Language> all();
  static std::optional<Language> of_code(std::string_view code);

 private:
  explicit constexpr Language(std::size_t index) : index_(index) {}
  std::size_t index_ = 0;
};

}  // namespace rb
