#include "app/settings_file.h"

#include <fmt/format.h>
#include <pwd.h>
#include <unistd.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

#include "app/put_whole.h"

namespace rb {

namespace {

// The user's home: as the environment says, else as the system's list of users does.
std::optional<std::filesystem::path> home() {
  if (const char* set = std::getenv("HOME"); set != nullptr && *set == '/') return set;
  std::vector<char> room(1 << 14);
  passwd entry{};
  passwd* found = nullptr;
  if (getpwuid_r(geteuid(), &entry, room.data(), room.size(), &found) != 0 || found == nullptr) {
    return std::nullopt;
  }
  if (entry.pw_dir == nullptr || *entry.pw_dir != '/') return std::nullopt;
  return entry.pw_dir;
}

Result<std::filesystem::path> xdg(const char* variable, const char* under_home) {
  if (const char* set = std::getenv(variable); set != nullptr && *set == '/') return set;
  if (const auto at = home()) return *at / under_home;
  return fail(Error::Kind::input, said("the user's own folder"),
              {said("neither {variable} nor HOME names one, and this user has no home"),
               {{"variable", variable}}},
              said("Set HOME, or name the book: risebook FILE.risebook"));
}

}  // namespace

Result<std::filesystem::path> default_book() {
  auto folder = xdg("XDG_DATA_HOME", ".local/share");
  if (!folder) return folder;
  return *folder / "risebook" / "pours.risebook";
}

std::filesystem::path settings_path() {
  const auto folder = xdg("XDG_CONFIG_HOME", ".config");
  return folder ? *folder / "risebook" / "screens.json" : std::filesystem::path{};
}

screens::Settings read_settings(const std::filesystem::path& path) {
  screens::Settings settings;
  std::ifstream in{path};
  const auto json = nlohmann::json::parse(in, nullptr, false);
  if (!json.is_object()) return settings;
  const auto text = [&](const char* field) {
    const auto found = json.find(field);
    return found != json.end() && found->is_string() ? found->get<std::string>() : std::string{};
  };
  if (text("theme") == "night") settings.theme = screens::ThemeName::night;
  settings.language = Language::of_code(text("language")).value_or(Language{});
  if (text("units") == "us") settings.units = Units::us;
  if (text("units") == "si") settings.units = Units::si;
  if (text("rows_on") == "left") settings.rows_on = screens::HandSide::left;
  if (const auto sound = json.find("sound"); sound != json.end() && sound->is_boolean()) {
    settings.sound = sound->get<bool>();
  }
  if (const auto holder = json.find("holder"); holder != json.end() && holder->is_object()) {
    const auto of = [&](const char* field) { return holder->value(field, std::string{}); };
    settings.holder = Person{PersonId{of("id")}, of("name"), of("role")};
  }
  const auto diagonal = json.find("diagonal_inches");
  if (diagonal != json.end() && diagonal->is_number()) {
    const double inches = diagonal->get<double>();
    if (inches >= 5 && inches <= 40) settings.diagonal_inches = inches;
  }
  return settings;
}

std::filesystem::path folder_set(const std::filesystem::path& settings, const char* field) {
  std::ifstream in{settings};
  const auto json = nlohmann::json::parse(in, nullptr, false);
  if (!json.is_object()) return {};
  const auto found = json.find(field);
  if (found == json.end() || !found->is_string()) return {};
  const std::filesystem::path folder = found->get<std::string>();
  return folder.is_absolute() ? folder : std::filesystem::path{};
}

std::filesystem::path mirror_folder(const std::filesystem::path& settings) {
  return folder_set(settings, "mirror_folder");
}

void keep_mirror_folder(const std::filesystem::path& settings,
                        const std::filesystem::path& folder) {
  std::ifstream in{settings};
  auto json = nlohmann::json::parse(in, nullptr, false);
  if (!json.is_object()) json = nlohmann::json::object();
  json.erase("mirror_folder");
  if (!folder.empty()) json["mirror_folder"] = folder.string();
  std::error_code ignored;
  std::filesystem::create_directories(settings.parent_path(), ignored);
  (void)put_whole(settings, json.dump(2) + "\n");
}

void write_settings(const std::filesystem::path& path, const screens::Settings& settings) {
  nlohmann::json json{{"theme", settings.theme == screens::ThemeName::night ? "night" : "sun"},
                      {"language", settings.language.code()},
                      {"rows_on", settings.rows_on == screens::HandSide::left ? "left" : "right"},
                      {"sound", settings.sound},
                      {"diagonal_inches", settings.diagonal_inches}};
  if (const auto& holder = settings.holder) {
    json["holder"] = {{"id", holder->id.text}, {"name", holder->name}, {"role", holder->role}};
  }
  if (settings.units) json["units"] = *settings.units == Units::us ? "us" : "si";
  if (path.empty()) return;
  for (const char* field : {"mirror_folder", kCameraFolder}) {
    if (const auto folder = folder_set(path, field); !folder.empty()) {
      json[field] = folder.string();
    }
  }
  (void)make_folders(path.parent_path(), 0700);
  (void)put_whole(path, json.dump(2) + "\n");
}

}  // namespace rb
