// One byte changed anywhere in a signed book: found and named, or no event, signature or figure is
// another.
#include <doctest/doctest.h>

#include <map>
#include <random>

#include "../store/signed_pour.h"
#include "check/check.h"
#include "pour/log/fold.h"
#include "pour/outlook/signatures.h"
#include "soak.h"

using namespace rb;
using namespace rb::samples;

namespace {

constexpr unsigned kSeed = 20261128;
const PourId kPour{"N1"};

struct Told {
  std::vector<Event> events;
  std::vector<PersonSignature> people;
  std::vector<SignatureState> signatures;
  std::string figures;  ///< check --json
  bool operator==(const Told&) const = default;
};

/// What a book tells; nothing where it tells that something ails it, and `named` by what.
std::optional<Told> told(const fs::path& path, std::string& named) {
  const auto book = Logbook::open(path, Access::read);
  if (!book) {
    named = to_text(book.error());
    return std::nullopt;
  }
  const auto looked = book->verify();
  if (!looked || !looked->sound()) {
    named = looked ? looked->faults.front() : to_text(looked.error());
    return std::nullopt;
  }
  const auto events = book->events(kPour);
  if (!events) {
    named = to_text(events.error());
    return std::nullopt;
  }
  const auto state = fold(*events);
  if (!state) return Told{*events, looked->people, {}, {}};
  return Told{*events, looked->people, signatures_of(*state),
              to_json(*state, check(*state, AsOf::end(*state)))};
}

}  // namespace

TEST_CASE(
    "any one byte changed in a signed book is named, or changes no event, signature, figure") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  {
    auto book = got(Logbook::create(path));
    keep_signed_pour(book);
    REQUIRE(book.empty_log());
  }
  std::string named;
  const auto truth = told(path, named);
  REQUIRE_MESSAGE(truth, named);
  REQUIRE(truth->people.size() == 2);
  const int rounds = soak::rounds(250);
  std::mt19937 random(kSeed);
  MESSAGE("seed " << kSeed << ", rounds " << rounds);
  int harmless = 0, failed = 0;
  for (int round = 0; round < rounds; ++round) {
    const auto at = static_cast<std::streamoff>(random() % fs::file_size(path));
    const auto to = static_cast<char>(random());
    std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
    file.seekg(at);
    const auto was = static_cast<char>(file.get());
    const auto put = [&](char byte) {
      file.seekp(at);
      file.put(byte);
      file.flush();
    };
    put(to == was ? static_cast<char>(to ^ 1) : to);
    named.clear();
    const auto found = told(path, named);
    put(was);
    if (!found) {
      CHECK_MESSAGE(!named.empty(), "byte " << at << " is found and not named");
      continue;
    }
    ++harmless;
    if (*found == *truth) continue;
    ++failed;
    FAIL_CHECK("round " << round << ", byte " << at << " to " << static_cast<int>(to)
                        << ": told otherwise, and called whole");
  }
  MESSAGE(harmless << " harmless, " << rounds - harmless << " named");
  soak::tell("signed-byte-changes", rounds, failed);
}
