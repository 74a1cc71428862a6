// A folder of its own for a test, gone when the test is over.
#pragma once

#include <doctest/doctest.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

namespace rb::test {

class TempFolder {
 public:
  TempFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "record-test-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  ~TempFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

inline std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// What a program prints; fails the test when it does not end well (third_party/install.sh names
/// the packages the tests need).
inline std::string output_of(const std::string& command) {
  std::FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  std::array<char, 4096> part{};
  std::size_t got = 0;
  while ((got = std::fread(part.data(), 1, part.size(), pipe)) > 0) out.append(part.data(), got);
  REQUIRE_MESSAGE(pclose(pipe) == 0, command);
  return out;
}

}  // namespace rb::test
