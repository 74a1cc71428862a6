// Answers on the command line: each figure in SI and in US units.
#pragma once

#include <optional>
#include <string>

#include "base/quantity.h"
#include "base/result.h"

namespace rb {

/// "name          figures", the names in a column.
void say(const char* what, const std::string& figures);

std::string both(Pressure p);
std::string both(Velocity v);
std::string both(Length l);
std::string both(Force f);
std::string both(Volume v);
std::string both(Celsius t);
/// "1 h 45 min", "95 s".
std::string span_text(Seconds s);

/// A figure the answer rests on that no option asks for.
void default_taken(const char* what, const std::string& figures);

/// Who decides in the end.
void caution(const char* who);

/// The first thing wrong among the options of a command, kept while the rest is read.
class OptionReading {
 public:
  template <class T>
  T get(Result<T> read) {
    if (read) return *read;
    if (!error_) error_ = read.error();
    return T{};
  }
  template <class T>
  T choose(const char* option, const std::optional<T>& chosen, const std::string& text, Said use) {
    if (chosen) return *chosen;
    if (!error_) {
      error_ = Error{Error::Kind::input, option, {said("is \"{given}\""), {{"given", text}}}, use};
    }
    return T{};
  }
  [[nodiscard]] const std::optional<Error>& error() const { return error_; }

 private:
  std::optional<Error> error_;
};

}  // namespace rb
