#include "zip.h"

#include <doctest/doctest.h>
#include <zlib.h>

namespace rb::test {

namespace {

std::uint32_t number(const std::string& bytes, std::size_t at, std::size_t size) {
  REQUIRE(at + size <= bytes.size());
  std::uint32_t value = 0;
  for (std::size_t i = size; i > 0; --i) {
    value = value << 8U | static_cast<unsigned char>(bytes[at + i - 1]);
  }
  return value;
}

std::string inflated(const std::string& packed, std::size_t size) {
  std::string out(size, '\0');
  z_stream stream{};
  REQUIRE(inflateInit2(&stream, -MAX_WBITS) == Z_OK);
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(packed.data()));
  stream.avail_in = static_cast<uInt>(packed.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  const int ended = inflate(&stream, Z_FINISH);
  inflateEnd(&stream);
  REQUIRE(ended == Z_STREAM_END);
  return out;
}

}  // namespace

std::map<std::string, ZipEntry> unzip(const std::string& archive) {
  constexpr std::size_t kEndSize = 22;
  REQUIRE(archive.size() > kEndSize);
  REQUIRE(archive.substr(0, 4) == "PK\x03\x04");
  const std::size_t end = archive.size() - kEndSize;  // no comment
  REQUIRE(archive.substr(end, 4) == "PK\x05\x06");
  std::map<std::string, ZipEntry> files;
  std::size_t at = number(archive, end + 16, 4);
  for (std::uint32_t left = number(archive, end + 10, 2); left > 0; --left) {
    REQUIRE(archive.substr(at, 4) == "PK\x01\x02");
    const std::uint32_t method = number(archive, at + 10, 2);
    const std::uint32_t crc = number(archive, at + 16, 4);
    const std::uint32_t packed = number(archive, at + 20, 4);
    const std::uint32_t size = number(archive, at + 24, 4);
    const std::uint32_t name = number(archive, at + 28, 2);
    const std::uint32_t local = number(archive, at + 42, 4);
    const std::size_t data =
        local + 30 + number(archive, local + 26, 2) + number(archive, local + 28, 2);
    REQUIRE(data + packed <= archive.size());
    ZipEntry entry;
    entry.date = static_cast<std::uint16_t>(number(archive, at + 14, 2));
    entry.bytes = archive.substr(data, packed);
    if (method == 8) entry.bytes = inflated(entry.bytes, size);
    REQUIRE(crc32(0, reinterpret_cast<const Bytef*>(entry.bytes.data()),
                  static_cast<uInt>(entry.bytes.size())) == crc);
    files[archive.substr(at + 46, name)] = std::move(entry);
    at += 46 + name + number(archive, at + 30, 2) + number(archive, at + 32, 2);
  }
  return files;
}

}  // namespace rb::test
