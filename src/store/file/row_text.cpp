#include "store/file/row_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

namespace rb::store {

namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kRowMark = "risebook mirror";

std::string one_line(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

template <class T>
std::optional<T> whole(T read, bool holds) {
  return holds ? std::optional<T>(std::move(read)) : std::nullopt;
}

template <class Bytes>
std::string hex(const Bytes& bytes) {
  std::string text;
  for (const auto byte : bytes) text += fmt::format("{:02x}", byte);
  return text;
}

/// What the line's own hash is taken over.
std::string claims_of(const Signed& head) {
  return fmt::format("signed head {} {} {} {} {}", head.seq, to_hex(head.hash), hex(head.key),
                     hex(head.signature), head.made);
}

/// `read` throws where a field is missing or of another type.
template <class Read>
auto parsed(std::string_view line, Read&& read) -> decltype(read(Json{})) {
  const auto json = Json::parse(line, nullptr, false);
  if (!json.is_object()) return std::nullopt;
  try {
    return read(json);
  } catch (const Json::exception&) {
    return std::nullopt;
  }
}

}  // namespace

std::string line_of(const KeptRow& kept) {
  const Row& row = kept.row;
  return one_line({{"seq", row.seq},
                   {"pour", row.pour},
                   {"id", row.id},
                   {"line", row.line},
                   {"entered", row.entered},
                   {"steady", row.steady},
                   {"boot", row.boot},
                   {"kept", row.kept},
                   {"prev_hash", to_hex(row.previous)},
                   {"hash", to_hex(kept.hash)}});
}

std::string line_of(const BookName& book) {
  return one_line({{"file", kRowMark},
                   {"version", kMirrorVersion},
                   {"uuid", book.uuid},
                   {"tag", book.tag},
                   {"created", book.created},
                   {"hash", to_hex(hash_of(book))}});
}

std::string line_of(const Signed& head) {
  return one_line({{"head", head.seq},
                   {"event_hash", to_hex(head.hash)},
                   {"key", hex(head.key)},
                   {"signature", hex(head.signature)},
                   {"made", head.made},
                   {"hash", to_hex(hash_of_text(claims_of(head)))}});
}

std::optional<KeptRow> read_row(std::string_view line) {
  return parsed(line, [](const Json& json) -> std::optional<KeptRow> {
    if (!json.contains("seq")) return std::nullopt;
    const auto previous = read_hash(json.at("prev_hash").get_ref<const std::string&>());
    const auto hash = read_hash(json.at("hash").get_ref<const std::string&>());
    if (!previous || !hash || !json.at("seq").is_number_integer()) return std::nullopt;
    KeptRow kept{{.seq = json.at("seq").get<std::int64_t>(),
                  .pour = json.at("pour").get<std::string>(),
                  .id = json.at("id").get<std::string>(),
                  .line = json.at("line").get<std::string>(),
                  .entered = json.at("entered").get<std::int64_t>(),
                  .steady = json.at("steady").get<double>(),
                  .boot = json.at("boot").get<std::string>(),
                  .kept = json.at("kept").get<std::int64_t>(),
                  .previous = *previous},
                 *hash};
    const bool holds = kept.holds();
    return whole(std::move(kept), holds);
  });
}

std::optional<BookName> read_name(std::string_view line) {
  return parsed(line, [](const Json& json) -> std::optional<BookName> {
    if (json.value("file", std::string{}) != kRowMark) return std::nullopt;
    BookName book{json.at("uuid").get<std::string>(), json.at("tag").get<std::string>(),
                  json.at("created").get<std::int64_t>()};
    const auto hash = read_hash(json.at("hash").get_ref<const std::string&>());
    const int version = json.at("version").get<int>();
    const bool known = version >= 1 && version <= kMirrorVersion;
    const bool holds = known && hash && *hash == hash_of(book);
    return whole(std::move(book), holds);
  });
}

std::optional<int> version_of(std::string_view line) {
  if (!read_name(line)) return std::nullopt;
  return parsed(line,
                [](const Json& json) { return std::optional(json.at("version").get<int>()); });
}

std::optional<Signed> read_head(std::string_view line) {
  return parsed(line, [](const Json& json) -> std::optional<Signed> {
    if (!json.contains("head")) return std::nullopt;
    const auto text = [&](const char* field) { return json.at(field).get<std::string>(); };
    const auto event_hash = read_hash(text("event_hash"));
    const auto key = read_hash(text("key"));
    const auto signature = text("signature");
    if (!event_hash || !key || signature.size() != 128) return std::nullopt;
    const auto first = read_hash(std::string_view{signature}.substr(0, 64));
    const auto second = read_hash(std::string_view{signature}.substr(64));
    if (!first || !second || !json.at("head").is_number_integer()) return std::nullopt;
    Signed head{.seq = json.at("head").get<std::int64_t>(),
                .hash = *event_hash,
                .key = *key,
                .signature = {},
                .made = json.at("made").get<std::int64_t>()};
    std::copy(first->begin(), first->end(), head.signature.begin());
    std::copy(second->begin(), second->end(), head.signature.begin() + 32);
    return whole(head, text("hash") == to_hex(hash_of_text(claims_of(head))));
  });
}

std::optional<Hash> read_hash(std::string_view hex) {
  Hash hash{};
  if (hex.size() != 2 * hash.size()) return std::nullopt;
  for (std::size_t i = 0; i < hex.size(); ++i) {
    const char c = hex[i];
    int digit = 0;
    if (c >= '0' && c <= '9') {
      digit = c - '0';
    } else if (c >= 'a' && c <= 'f') {
      digit = c - 'a' + 10;
    } else if (c >= 'A' && c <= 'F') {
      digit = c - 'A' + 10;
    } else {
      return std::nullopt;
    }
    hash[i / 2] = static_cast<unsigned char>(hash[i / 2] * 16 + digit);
  }
  return hash;
}

}  // namespace rb::store
