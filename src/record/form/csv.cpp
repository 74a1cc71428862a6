#include "record/form/csv.h"

#include <fmt/format.h>

#include <cmath>

namespace rb {

namespace {

std::string field(std::string text) {
  if (text.find_first_of("\",\r\n") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

std::string field_of(const Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) {
    const bool formula =
        !text->empty() && std::string_view{"=+-@"}.find(text->front()) != std::string_view::npos;
    return field(formula ? "'" + *text : *text);
  }
  if (const auto* yes = std::get_if<bool>(&cell)) return *yes ? "yes" : "no";
  if (const auto* number = std::get_if<double>(&cell)) {
    return std::isfinite(*number) ? fmt::format("{}", *number) : std::string{};
  }
  if (const auto* moment = std::get_if<Moment>(&cell)) return to_text(*moment);
  return {};
}

}  // namespace

std::string to_csv(const Table& table) {
  std::string out;
  const auto line = [&](auto&& text_of_column) {
    bool first = true;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      if (table.columns[i].on == On::paper) continue;
      if (!first) out += ',';
      out += text_of_column(i);
      first = false;
    }
    out += "\r\n";
  };
  line([&](std::size_t i) { return field(key_with_unit(table.columns[i])); });
  for (const auto& row : table.rows) {
    line([&](std::size_t i) { return field_of(row[i]); });
  }
  return out;
}

}  // namespace rb
