// Every press with its place, its moment and what became of it, a JSON line each: to find out in
// the field why a tap was not taken. Holds no names and nothing of the pour.
#pragma once

#include <filesystem>
#include <fstream>

#include "screens/glass/tap.h"

namespace rb::app {

class PressLog {
 public:
  /// Adds to the file; an empty path logs nothing.
  explicit PressLog(const std::filesystem::path& file);
  void add(const screens::Press& press);

 private:
  std::ofstream out_;
};

}  // namespace rb::app
