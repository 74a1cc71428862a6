// Reads a zip archive (PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16) to look into
// workbooks.
#pragma once

#include <cstdint>
#include <map>
#include <string>

namespace rb::test {

struct ZipEntry {
  std::string bytes;       ///< unpacked; its CRC was checked
  std::uint16_t date = 0;  ///< MS-DOS date of change
};

/// Every file of the archive by name; fails the test where the archive is not whole.
std::map<std::string, ZipEntry> unzip(const std::string& archive);

}  // namespace rb::test
