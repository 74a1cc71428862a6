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
#include "store/photos/carry.h"
#include "store/photos/photo.h"

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

constexpr int kPhotoEvery = 16;  // rounds, of which one is at the photo's own file

// After what keep_signed_pour keeps: a blemish, its repair, a photo of it. Returns the photo's
// file.
fs::path keep_blemish(Logbook& book, const Folder& folder) {
  int minute = 20;
  const auto keep = [&](const Happening& what) {
    const auto kept = got(book.append(kPour, happening(what, minute), entry_at(minute)));
    ++minute;
    return kept.id;
  };
  event::Blemish blemish;
  blemish.element = ElementId{"W1"};
  blemish.kind = "honeycomb";
  blemish.patch = {metres(1), metres(1), metres(1), metres(1)};
  event::Repair repair;
  repair.target = keep(blemish);
  repair.note = "chipped out and packed";
  std::ofstream(folder / "face.jpg", std::ios::binary)
      << "\xFF\xD8\xFF\xE0" << std::string(500, 'x') << "\xFF\xD9";
  const auto kept = got(store::keep_photo(
      folder / "face.jpg", store::photos_folder(folder.path(), got(book.verify()).tag)));
  event::Photo photo;
  photo.target = keep(repair);
  photo.sha256 = kept.sha256;
  photo.name = kept.name;
  photo.bytes = kept.bytes;
  keep(photo);
  return kept.file;
}

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
  const auto photos =
      store::photo_faults(looked->photos, store::photos_folder(path.parent_path(), looked->tag));
  if (!photos.empty()) {
    named = photos.front();
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
  fs::path photo;
  {
    auto book = got(Logbook::create(path));
    keep_signed_pour(book);
    photo = keep_blemish(book, folder);
    REQUIRE(book.empty_log());
  }
  std::string named;
  const auto truth = told(path, named);
  REQUIRE_MESSAGE(truth, named);
  REQUIRE(truth->people.size() == 2);
  REQUIRE(truth->events.size() == 13);
  const int rounds = soak::rounds(250);
  std::mt19937 random(kSeed);
  MESSAGE("seed " << kSeed << ", rounds " << rounds);
  int harmless = 0, failed = 0;
  for (int round = 0; round < rounds; ++round) {
    const fs::path& changed = round % kPhotoEvery == kPhotoEvery - 1 ? photo : path;
    const auto at = static_cast<std::streamoff>(random() % fs::file_size(changed));
    const auto to = static_cast<char>(random());
    std::fstream file(changed, std::ios::in | std::ios::out | std::ios::binary);
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
    FAIL_CHECK("round " << round << ", " << changed.filename() << " byte " << at << " to "
                        << static_cast<int>(to) << ": told otherwise, and called whole");
  }
  MESSAGE(harmless << " harmless, " << rounds - harmless << " named");
  soak::tell("signed-byte-changes", rounds, failed);
}
