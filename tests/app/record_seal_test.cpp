// A sealed record tells of itself that it is as it was made; any other byte is found, and the part
// it stands in is named where the file still reads.
#include "app/signing/record_seal.h"

#include <doctest/doctest.h>

#include <random>

#include "app/signing/signing.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "temp_folder.h"

using namespace rb;

namespace {

const std::string kRecord =
    R"({"record":"daily consolidation","day":"2026-03-02","lifts":[{"lift":1,"top_m":0.6},)"
    R"({"lift":2,"top_m":1.2}],"trucks":[{"ticket":"7141","volume_m3":6.5}],"notes":[]})";

struct Made {
  test::TempFolder folder;
  std::optional<store::DeviceKey> key;
  RecordProof proof;
  std::string text;
};

void make(Made& made) {
  auto key = store::DeviceKey::ready(made.folder.path / "data");
  REQUIRE(key);
  made.key = *key;
  made.proof.events = {{EventId{"A-1"}, std::string(64, 'a')},
                       {EventId{"A-2"}, std::string(64, 'b')}};
  made.text = sealed(kRecord, made.proof, made.key);
}

}  // namespace

TEST_CASE("a record as it was made holds, and names the device that signed it") {
  Made made;
  make(made);
  const auto look = look_at_record(made.text);
  REQUIRE(look);
  CHECK(look->sound());
  CHECK(look->parts == 6);
  CHECK(look->events == made.proof.events);
  CHECK(look->device == store::to_hex(made.key->public_key()));
  // Without a key the digests hold still, and no device is named.
  const auto bare = look_at_record(sealed(kRecord, made.proof, {}));
  REQUIRE(bare);
  CHECK(bare->sound());
  CHECK(bare->device.empty());
}

TEST_CASE("any byte changed, taken or put in is found; a figure's part is named") {
  Made made;
  make(made);
  const std::size_t at = made.text.find("6.5");
  REQUIRE(at != std::string::npos);
  std::string other = made.text;
  other[at] = '9';
  auto look = look_at_record(other);
  REQUIRE(look);
  REQUIRE(look->faults.size() == 1);
  CHECK(look->faults[0] == "Part \"trucks\" is not as it was sealed.");
  std::mt19937 random(20260302);
  std::size_t unread = 0;
  std::size_t named = 0;
  for (std::size_t i = 0; i < made.text.size(); ++i) {
    other = made.text;
    other[i] = static_cast<char>(other[i] ^ static_cast<char>(1U << (random() % 7)));
    look = look_at_record(other);
    CAPTURE(i);
    if (look) {
      CHECK_FALSE(look->sound());
      ++named;
    } else {
      ++unread;
    }
  }
  CHECK(unread + named == made.text.size());
  CHECK(named > 100);
  CHECK_FALSE(look_at_record(made.text + " ")->sound());
}

TEST_CASE("a part left out, one put in and a seal of another device are told apart") {
  Made made;
  make(made);
  Made second;
  make(second);
  const std::string other_day =
      sealed(R"({"record":"daily consolidation","day":"2026-03-03"})", {}, {});
  // The seal of one record under the parts of another.
  const std::size_t seal = made.text.find("\"seal\"");
  const std::size_t seal2 = second.text.find("\"seal\"");
  const auto same = look_at_record(made.text.substr(0, seal) + second.text.substr(seal2));
  REQUIRE(same);
  CHECK(same->sound());  // the same parts: only the device differs, and it is named
  CHECK(same->device == store::to_hex(second.key->public_key()));
  const auto mixed =
      look_at_record(other_day.substr(0, other_day.find("\"seal\"")) + made.text.substr(seal));
  REQUIRE(mixed);
  CHECK_FALSE(mixed->sound());
  const auto& faults = mixed->faults;
  const auto tells = [&](const char* what) {
    return std::any_of(faults.begin(), faults.end(), [&](const std::string& fault) {
      return fault.find(what) != std::string::npos;
    });
  };
  CHECK(tells("Part \"day\" is not as it was sealed"));
  CHECK(tells("Part \"trucks\" was sealed and is missing"));
}

TEST_CASE("what is no sealed record is refused with words") {
  CHECK_FALSE(look_at_record("no json"));
  CHECK_FALSE(look_at_record("[1]"));
  CHECK_FALSE(look_at_record(kRecord));
  CHECK_FALSE(look_at_record(R"({"seal":[]})"));
  for (const char* broken :
       {R"({"a":1,"seal":{}})", R"({"a":1,"seal":{"parts":{"a":7}}})",
        R"({"a":1,"proof":7,"seal":{"parts":{}}})",
        R"({"proof":{"people":[1,{"pour":"P","line":"x"}]},"seal":{"parts":{}}})"}) {
    const auto look = look_at_record(broken);
    CAPTURE(broken);
    REQUIRE(look);
    CHECK_FALSE(look->sound());
  }
}
