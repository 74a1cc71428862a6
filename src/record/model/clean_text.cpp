#include "record/model/clean_text.h"

#include <glib.h>

#include <memory>

namespace rb {

std::string clean_text(std::string_view text) {
  const std::unique_ptr<char, decltype(&g_free)> valid{
      g_utf8_make_valid(text.data(), static_cast<gssize>(text.size())), &g_free};
  const std::string_view whole{valid.get()};
  std::string out;
  out.reserve(whole.size());
  for (std::size_t i = 0; i < whole.size(); ++i) {
    const auto c = static_cast<unsigned char>(whole[i]);
    if (c == '\r') {
      out += '\n';
      if (i + 1 < whole.size() && whole[i + 1] == '\n') ++i;
    } else if (c == '\t') {
      out += ' ';
    } else if (c == '\n' || (c >= 0x20 && c != 0x7F)) {
      out += whole[i];
    }
  }
  return out;
}

}  // namespace rb
