#include "base/result.h"

namespace rb {

std::string to_text(const Error& error) {
  std::string text = error.where;
  if (!text.empty()) text += ": ";
  text += error.what;
  if (!error.remedy.empty()) text += ". " + error.remedy;
  if (!text.empty() && text.back() != '.') text += '.';
  return text;
}

}  // namespace rb
