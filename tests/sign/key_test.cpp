// PINs and the keys they open. Cheap to try, so that the tests are quick; what a key costs on a
// tablet is tried once.
#include <doctest/doctest.h>

#include "sign/person_key.h"

using namespace rb;
using sign::Pin;

namespace {

constexpr sign::PinCost kCheap{1, 64};

Pin pin(const char* typed) {
  auto read = Pin::read(typed);
  REQUIRE(read);
  return *std::move(read);
}

std::string refused(const std::string& typed) {
  const auto read = Pin::read(typed);
  REQUIRE_FALSE(read);
  return to_text(read.error());
}

}  // namespace

TEST_CASE("a PIN has six digits at least, not one again and again nor in a row") {
  CHECK(Pin::read("204816"));
  CHECK(Pin::read("112358132134"));
  CHECK(refused("20481").find("shorter than six digits") != std::string::npos);
  CHECK(refused("").find("shorter than six digits") != std::string::npos);
  CHECK(refused("20481a").find("other than digits") != std::string::npos);
  CHECK(refused("204 816").find("other than digits") != std::string::npos);
  CHECK(refused(std::string(65, '1')).find("longer than 64") != std::string::npos);
  for (const char* easy : {"000000", "7777777", "123456", "456789", "987654"}) {
    CAPTURE(std::string{easy});
    const std::string text = refused(easy);
    CHECK(text.find("guessed first") != std::string::npos);
    CHECK(text.find(easy) == std::string::npos);  // an error tells no PIN
  }
}

TEST_CASE("a PIN that is moved leaves nothing behind") {
  Pin one = pin("204816");
  const Pin other = std::move(one);
  CHECK(other.digits() == "204816");
  CHECK(one.digits().empty());  // NOLINT(bugprone-use-after-move): that is what is asked
}

TEST_CASE("the right PIN opens a key, which signs; another does not") {
  const auto sealed = sign::make_key(pin("204816"), kCheap);
  REQUIRE(sealed);
  CHECK(sealed->key.bytes() == 32);
  CHECK(sealed->salt.bytes() == 16);
  CHECK(sealed->sealed.bytes() == 72);
  const auto key = sign::open_key(*sealed, pin("204816"));
  REQUIRE(key);
  CHECK(key->key() == sealed->key);
  const Hex signature = key->sign("the pour of W1");
  CHECK(sign::holds(sealed->key, "the pour of W1", signature));
  CHECK_FALSE(sign::holds(sealed->key, "the pour of W2", signature));
  const auto wrong = sign::open_key(*sealed, pin("204817"));
  REQUIRE_FALSE(wrong);
  CHECK(wrong.error().kind == Error::Kind::refused);
}

TEST_CASE("two keys of one PIN have nothing in common") {
  const auto one = sign::make_key(pin("204816"), kCheap),
             other = sign::make_key(pin("204816"), kCheap);
  REQUIRE(one);
  REQUIRE(other);
  CHECK(one->key != other->key);
  CHECK(one->salt != other->salt);
  CHECK(one->sealed != other->sealed);
  CHECK(sign::fingerprint(one->key) != sign::fingerprint(other->key));
}

TEST_CASE("a sealed key of which any byte was changed does not open") {
  const auto sealed = sign::make_key(pin("204816"), kCheap);
  REQUIRE(sealed);
  const auto opens = [&](auto change) {
    sign::SealedKey changed = *sealed;
    change(changed);
    return sign::open_key(changed, pin("204816")).has_value();
  };
  const auto turn = [](Hex& hex, std::size_t at) {
    hex.digits[at] = hex.digits[at] == '0' ? '1' : '0';
  };
  for (std::size_t at = 0; at < sealed->sealed.digits.size(); at += 7) {
    CHECK_FALSE(opens([&](sign::SealedKey& k) { turn(k.sealed, at); }));
  }
  CHECK_FALSE(opens([&](sign::SealedKey& k) { turn(k.salt, 3); }));
  CHECK_FALSE(opens([&](sign::SealedKey& k) { turn(k.key, 3); }));
  CHECK_FALSE(opens([&](sign::SealedKey& k) { k.cost.rounds = 2; }));
  CHECK_FALSE(opens([&](sign::SealedKey& k) { k.sealed.digits.resize(10); }));
}

TEST_CASE("what a key costs on a tablet opens too") {
  const sign::PinCost cost;
  CHECK(cost.rounds >= 2);  // the library's measure for somebody who waits, or better
  CHECK(cost.memory_kib >= 65536);
  const auto sealed = sign::make_key(pin("204816"));
  REQUIRE(sealed);
  CHECK(sealed->cost == cost);
  CHECK(sign::open_key(*sealed, pin("204816")));
}

// RFC 8032, 7.1, TEST 1 (from memory): the key 9d61b19d... signs the empty message.
TEST_CASE("signatures are those of Ed25519") {
  const Hex key{"d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a"};
  Hex signature{
      "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bac"
      "c61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"};
  CHECK(sign::holds(key, "", signature));
  CHECK_FALSE(sign::holds(key, "r", signature));
  signature.digits.front() = 'f';
  CHECK_FALSE(sign::holds(key, "", signature));
  CHECK_FALSE(sign::holds(Hex{"d75a"}, "", signature));
  CHECK_FALSE(sign::holds(key, "", Hex{"xyz"}));
}
