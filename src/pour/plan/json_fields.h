// Reading JSON objects field by field, with errors that name the field and what was expected.
// Inside this room only: a bad field is thrown as BadField and caught where a line or plan begins.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "base/moment.h"
#include "base/result.h"
#include "pour/plan/field.h"
#include "pour/plan/most.h"
#include "pour/plan/plan.h"

namespace rb {

using Json = nlohmann::json;

struct BadField {
  Error error;
};

class Fields {
 public:
  Fields(const Json& object, Saying where, Bounds bounds)
      : object_(object), where_(std::move(where)), bounds_(bounds) {
    if (!object_.is_object()) refuse("", said("a JSON object {...} was expected"));
  }

  [[nodiscard]] bool has(const char* field) {
    asked_.insert(field);
    return object_.contains(field) && !object_.at(field).is_null();
  }
  double number(const char* field, const Span& span);
  std::optional<double> maybe_number(const char* field, const Span& span);
  long integer(const char* field, long least, long most);
  std::optional<long> maybe_integer(const char* field, long least, long most);
  std::string text(const char* field);  ///< not empty
  std::string maybe_text(const char* field);
  std::string id(const char* field);  ///< not empty
  std::string maybe_id(const char* field);
  bool boolean(const char* field);
  Moment moment(const char* field);
  std::optional<Moment> maybe_moment(const char* field);
  /// Which of these words the field is.
  std::size_t one_of(const char* field, std::span<const char* const> words);
  Side side();  ///< of the field side: near (or left out), far
  const Json& object(const char* field);
  const Json& any(const char* field) { return get(field); }
  /// Bytes as lower-case hexadecimal digits, no fewer and no more than these.
  std::string hex(const char* field, const Span& bytes);
  /// The items of an array, each with its own place in messages; empty when the field is absent.
  std::vector<Fields> objects(const char* field, std::size_t most);
  std::vector<double> numbers(const char* field, const Span& span, std::size_t most);
  std::vector<std::string> ids(const char* field, std::size_t most);
  std::vector<std::string> texts(const char* field, std::size_t most);

  [[noreturn]] void refuse(const std::string& field, Saying what, Saying remedy = {}) const;
  [[nodiscard]] const Saying& where() const { return where_; }
  [[nodiscard]] const Json& whole() const { return object_; }
  [[nodiscard]] Bounds bounds() const { return bounds_; }
  /// Refuses every text inside a value that is too long.
  void hold_texts(const std::string& field, const Json& value) const;
  /// The fields nobody asked for, as a JSON object's text; empty when there are none.
  [[nodiscard]] std::string unknown() const;
  /// Refuses more bytes of such fields than may be kept, by the name of the first.
  void hold_unknown(const std::string& first, std::size_t bytes) const;

 private:
  const Json& get(const char* field);
  [[nodiscard]] const Json& list(const char* field, std::size_t most) const;
  template <class Hold>
  std::vector<std::string> names(const char* field, std::size_t most, Hold hold);
  void hold_text(const std::string& field, const std::string& text) const;
  void hold_id(const std::string& field, const std::string& text) const;
  double checked(const std::string& field, const Json& value, const Span& span) const;

  const Json& object_;
  Saying where_;
  Bounds bounds_;
  std::set<std::string> asked_;
};

/// A number made by a change of unit, to the twelve figures that were read, so that what was read
/// as 2.1 m/h is written as 2.1 again; read through it, too, so that no longer number changes.
double tidy(double value);

/// A value as a message quotes it: cut where it is long.
std::string quoted(const Json& value);

/// Parses text to JSON or throws BadField.
Json parse_json(std::string_view text, const Saying& where);

/// "WHERE, field NAME".
Saying field_of(const Saying& where, const std::string& field);

}  // namespace rb
