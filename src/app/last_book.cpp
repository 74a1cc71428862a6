#include "app/last_book.h"

#include <fmt/format.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "app/put_whole.h"
#include "app/settings_file.h"

namespace rb {

std::filesystem::path last_book_path() {
  const auto settings = settings_path();
  return settings.empty() ? settings : settings.parent_path() / "last-book.json";
}

LastBook read_last_book(const std::filesystem::path& file) {
  std::ifstream in{file};
  const auto json = nlohmann::json::parse(in, nullptr, false);
  if (!json.is_object()) return {};
  const auto path = json.find("path");
  const auto uuid = json.find("uuid");
  const auto events = json.find("events");
  const bool whole = path != json.end() && path->is_string() && uuid != json.end() &&
                     uuid->is_string() && events != json.end() && events->is_number_integer();
  if (!whole) return {};
  return {path->get<std::string>(), uuid->get<std::string>(), events->get<std::int64_t>()};
}

void write_last_book(const std::filesystem::path& file, const LastBook& book) {
  const nlohmann::json json{
      {"path", book.path.string()}, {"uuid", book.uuid}, {"events", book.events}};
  if (file.empty()) return;
  (void)make_folders(file.parent_path(), 0700);
  (void)put_whole(file, json.dump(2) + "\n");
}

std::optional<screens::Trouble> missed_book(const LastBook& before, const LastBook& now) {
  if (before.path != now.path || before.uuid == now.uuid || before.events <= 0) return {};
  return screens::Trouble{
      .text = fmt::format("The book that stood here before is gone; it had {} events ({}).",
                          before.events, before.uuid),
      .word = screens::Word::keep_other_book,
      .number = static_cast<std::size_t>(before.events)};
}

}  // namespace rb
