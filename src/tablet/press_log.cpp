#include "tablet/press_log.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

namespace rb::app {

PressLog::PressLog(const std::filesystem::path& file) {
  if (!file.empty()) out_.open(file, std::ios::app);
}

void PressLog::add(const screens::Press& press) {
  if (!out_.is_open()) return;
  nlohmann::json line;
  line["at"] = to_text(press.down.wall);
  line["held_s"] = (press.up.steady - press.down.steady).count();
  // Neither name nor place of a PIN's key: it could be read off them.
  if (press.id.starts_with("pin ")) {
    line["on"] = "pin";
  } else {
    line["x"] = press.down.at.x;
    line["y"] = press.down.at.y;
    if (!press.id.empty()) line["on"] = press.id;
  }
  line["end"] = screens::press_end_text(press.end);
  if (press.down.uncertain > Seconds{0}) line["uncertain_s"] = press.down.uncertain.count();
  out_ << line.dump() << std::endl;
}

}  // namespace rb::app
