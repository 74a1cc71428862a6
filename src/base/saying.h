// What the program says, as data: an English sentence of ours, which is both its stable code and
// its key in the catalogues, and the facts in its braces. It becomes words at the edge, in the
// reader's language and units (words/sentence.h); English and SI here, for terminals and tests.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "base/measure.h"
#include "base/moment.h"
#include "base/said.h"

namespace rb {

class Saying;

/// A word of ours inside a sentence, to be told in the reader's language ("near", "above").
struct Term {
  const char* english = "";
  bool operator==(const Term& other) const {
    return std::string_view{english} == std::string_view{other.english};
  }
};

/// A saying inside another.
class Clause {
 public:
  explicit Clause(Saying inner);
  [[nodiscard]] const Saying& inner() const { return *inner_; }
  bool operator==(const Clause& other) const;

 private:
  std::shared_ptr<const Saying> inner_;
};

/// What a sentence tells: a figure, a name or words as a user wrote them, a term of ours, a
/// moment, a sentence.
using FactValue = std::variant<Amount, std::string, Term, Moment, Clause>;

struct Fact {
  std::string name;
  FactValue value;
  Rounding rounding = Rounding::nearest;
  bool operator==(const Fact&) const = default;
};
using Facts = std::vector<Fact>;

class Saying {
 public:
  Saying() = default;
  /// A sentence of ours, marked for the catalogues.
  Saying(Said english, Facts facts = {}) : english_(english.english), facts_(std::move(facts)) {}
  /// Words that are told as they stand: an id, a file's name, what a library said.
  Saying(std::string verbatim) : verbatim_(std::move(verbatim)) {}
  Saying(const char* verbatim) : verbatim_(verbatim) {}

  [[nodiscard]] bool empty() const { return *english_ == '\0' && verbatim_.empty(); }
  /// The template, which is the code; "" for words that are told as they stand.
  [[nodiscard]] const char* english() const { return english_; }
  [[nodiscard]] const Facts& facts() const { return facts_; }
  [[nodiscard]] const std::string& verbatim() const { return verbatim_; }
  /// In English and SI, units as a script writes them.
  [[nodiscard]] std::string text() const;
  bool operator==(const Saying& other) const;

 private:
  const char* english_ = "";
  Facts facts_;
  std::string verbatim_;
};

/// "WHOLE, STEP": a place inside a place; the step alone where the whole has no name.
Saying inside(Saying whole, Saying step);
/// "ONE; OTHER"
Saying beside(Saying one, Saying other);
/// "ONE. OTHER", where neither is empty.
Saying followed(Saying one, Saying other);

/// How sentences become words. English where `told` is empty; plain: units as a script writes them
/// ("m3"), moments in full.
struct Manner {
  std::function<const char*(const char*)> told{};
  Units units = Units::si;
  bool plain = true;
  std::chrono::minutes utc_offset{0};
};

/// The sentence with its facts in it. `{name+}` puts a sign before a figure, `{name~}` tells it
/// with the digits it has (SI to six figures, others to four). A name without a fact stays as it
/// stands, so that it is seen.
std::string fill(const char* sentence, const Facts& facts, const Manner& manner);
std::string fill(const Saying& saying, const Manner& manner);

/// A figure with its unit.
std::string amount_text(const Amount& figure, const Manner& manner,
                        Rounding rounding = Rounding::nearest);

}  // namespace rb
