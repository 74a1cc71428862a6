#include "tablet/battery.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <string>

namespace rb {

namespace {

namespace fs = std::filesystem;

std::string word_in(const fs::path& file) {
  std::ifstream in{file};
  std::string line;
  std::getline(in, line);
  while (!line.empty() && (line.back() == ' ' || line.back() == '\r')) line.pop_back();
  return line;
}

std::optional<double> number_in(const fs::path& file) {
  std::ifstream in{file};
  double value = 0;
  if (!(in >> value) || !std::isfinite(value)) return {};
  return value;
}

struct Cell {
  double percent = 0;
  double holds = 0;  ///< when full, in units all cells share; 0 = not told
  bool charging = false;
};

std::optional<Cell> read_cell(const fs::path& at) {
  if (word_in(at / "type") != "Battery" || word_in(at / "scope") == "Device") return {};
  if (word_in(at / "present") == "0") return {};
  Cell cell;
  const auto capacity = number_in(at / "capacity");
  const auto full = number_in(at / "energy_full");
  const auto now = number_in(at / "energy_now");
  if (full && *full > 0) cell.holds = *full;
  if (capacity) {
    cell.percent = *capacity;
  } else if (full && now && *full > 0) {
    cell.percent = *now / *full * 100;
  } else {
    return {};
  }
  if (cell.percent < 0 || cell.percent > 110) return {};
  const std::string status = word_in(at / "status");
  cell.charging = status == "Charging" || status == "Full" || status == "Not charging";
  return cell;
}

}  // namespace

std::optional<screens::Battery> read_battery(const fs::path& folder) {
  std::error_code none;
  double sum = 0, weight = 0, plain = 0;
  int cells = 0;
  bool charging = false, all_tell = true;
  for (auto it = fs::directory_iterator(folder, none); !none && it != fs::directory_iterator();
       it.increment(none)) {
    const auto cell = read_cell(it->path());
    if (!cell) continue;
    ++cells;
    plain += cell->percent;
    sum += cell->percent * cell->holds;
    weight += cell->holds;
    all_tell = all_tell && cell->holds > 0;
    charging = charging || cell->charging;
  }
  if (cells == 0) return {};
  const double percent = all_tell ? sum / weight : plain / cells;
  // Rounded down: better told a point too low than too high.
  return screens::Battery{std::clamp(static_cast<int>(std::floor(percent)), 0, 100), charging};
}

}  // namespace rb
