// Photos beside a book: kept by their hash, whole or not at all, carried by copy, mirror, restore
// and rescue; what is missing or altered is told.
#include "store/photos/photo.h"

#include <doctest/doctest.h>
#include <sys/stat.h>

#include <chrono>
#include <thread>

#include "samples.h"
#include "store/copies/copy_book.h"
#include "store/copies/mirror_keeper.h"
#include "store/copies/rescue.h"
#include "store/photos/carry.h"

using namespace rb;
using namespace rb::samples;
using store::PhotoState;

namespace {

// As much of a photo as is looked at: how it begins and how it ends.
std::string jpeg(const std::string& inside) {
  return "\xFF\xD8\xFF\xE0" + inside + "\xFF\xD9";
}
std::string png(const std::string& inside) {
  return std::string("\x89PNG\r\n\x1A\n") + inside + "IEND\xAE\x42\x60\x82";
}

fs::path put(const fs::path& file, const std::string& bytes) {
  std::ofstream(file, std::ios::binary) << bytes;
  return file;
}

std::string why(const Result<store::PhotoKept>& kept) {
  REQUIRE_FALSE(kept);
  return to_text(kept.error());
}

std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(std::distance(fs::directory_iterator{folder}, {}));
}

// A book with a blemish and a photo of it.
struct Book {
  Folder folder;
  fs::path file = folder / "pours.risebook";
  Logbook book = book_with_pour(file);
  std::string tag = got(book.verify()).tag;
  fs::path photos = store::photos_folder(folder.path(), tag);
  Hex sha{};

  Book() {
    const auto kept = got(store::keep_photo(put(folder / "IMG_1.jpg", jpeg("a wall")), photos));
    sha = kept.sha256;
    event::Photo photo;
    photo.element = ElementId{"W1"};
    photo.sha256 = kept.sha256;
    photo.name = kept.name;
    photo.bytes = kept.bytes;
    got(book.append(PourId{"N1"}, happening(photo), entry_at(2)));
  }
};

}  // namespace

TEST_CASE("a photo is kept by the hash of its bytes; the original stays as it was") {
  const Folder folder;
  const auto original = put(folder / "IMG_0001.JPG", jpeg("abc"));
  const auto kept = got(store::keep_photo(original, folder / "photos"));
  // SHA-256 by sha256sum of the same nine bytes.
  CHECK(kept.sha256.digits == "e7a09cd3d9f4d7b145ac939a5a8949765019e275bcc579e7de10a05960e36322");
  CHECK(kept.name == "IMG_0001.JPG");
  CHECK(kept.bytes == 9);
  CHECK(kept.file.filename().string() == kept.sha256.digits + ".jpg");
  CHECK(bytes_of(kept.file) == jpeg("abc"));
  CHECK(bytes_of(original) == jpeg("abc"));
  struct stat is {};
  REQUIRE(stat(kept.file.c_str(), &is) == 0);
  CHECK((is.st_mode & 077U) == 0);
  // The same under another name is the same photo.
  got(store::keep_photo(put(folder / "again.jpeg", jpeg("abc")), folder / "photos"));
  CHECK(files_in(folder / "photos") == 1);
  const auto other = got(store::keep_photo(put(folder / "b.png", png("abc")), folder / "photos"));
  CHECK(other.file.extension() == ".png");
  CHECK(files_in(folder / "photos") == 2);
  CHECK(store::look_at_photo(folder / "photos", other.sha256) == PhotoState::whole);
}

TEST_CASE(
    "what is no photo, cut off, too large or gone is refused with words, and nothing is put") {
  const Folder folder;
  const auto keep = [&](const fs::path& file) {
    return why(store::keep_photo(file, folder / "photos"));
  };
  CHECK(keep(put(folder / "a.jpg", "GIF89a")).find("is neither a JPEG nor a PNG") !=
        std::string::npos);
  CHECK(keep(put(folder / "b.jpg", "\xFF\xD8\xFF\xE0 half")).find("is cut off") !=
        std::string::npos);
  CHECK(keep(put(folder / "c.png", png("").substr(0, 12))).find("is cut off") != std::string::npos);
  CHECK(keep(put(folder / "d.jpg", "")).find("is neither") != std::string::npos);
  CHECK(keep(folder / "gone.jpg").find("cannot be read") != std::string::npos);
  CHECK(keep(folder.path()).find("is no file") != std::string::npos);
  put(folder / "e.jpg", jpeg(std::string(static_cast<std::size_t>(store::kMostPhotoBytes), ' ')));
  CHECK(keep(folder / "e.jpg").find("is larger than 50 MiB") != std::string::npos);
  CHECK_FALSE(fs::exists(folder / "photos"));
  // A stick that is gone is not made anew.
  CHECK(why(store::keep_photo(put(folder / "f.jpg", jpeg("")), folder / "stick" / "photos"))
            .find("cannot be made") != std::string::npos);
  CHECK_FALSE(fs::exists(folder / "stick"));
}

TEST_CASE("where the folder takes nothing nothing is half-written") {
  const Folder folder;
  fs::create_directory(folder / "photos");
  fs::permissions(folder / "photos", fs::perms::owner_read | fs::perms::owner_exec);
  const auto kept = store::keep_photo(put(folder / "a.jpg", jpeg("abc")), folder / "photos");
  if (kept) return;  // the superuser may write anywhere
  CHECK_FALSE(to_text(kept.error()).empty());
  CHECK(files_in(folder / "photos") == 0);
  fs::permissions(folder / "photos", fs::perms::owner_all);
}

TEST_CASE(
    "a photo that was altered or is gone is named by its event, and put right from its file") {
  Book made;
  const auto photos = got(made.book.verify()).photos;
  REQUIRE(photos.size() == 1);
  CHECK(store::photo_faults(photos, made.photos).empty());
  const auto file = made.photos / (made.sha.digits + ".jpg");
  put(file, jpeg("another wall"));
  REQUIRE(store::photo_faults(photos, made.photos).size() == 1);
  CHECK(store::photo_faults(photos, made.photos).front() ==
        "Photo IMG_1.jpg of event " + photos.front().event.text + " is altered");
  // An altered one is not carried.
  const auto carried = got(store::carry_photos(made.photos, made.folder / "elsewhere"));
  CHECK(carried.brought == 0);
  CHECK(carried.faults.size() == 1);
  got(store::keep_photo(made.folder / "IMG_1.jpg", made.photos));
  CHECK(store::photo_faults(photos, made.photos).empty());
  fs::remove(file);
  CHECK(store::photo_faults(photos, made.photos).front().find("is missing") != std::string::npos);
}

TEST_CASE("a copy has its photos, or says which it lacks; a restored book has them too") {
  Book made;
  const auto copy = got(store::copy_book(made.file, made.folder / "copies"));
  CHECK(copy.lacks.empty());
  CHECK(store::look_at_photo(store::photos_folder(made.folder / "copies", made.tag), made.sha) ==
        PhotoState::whole);
  fs::create_directory(made.folder / "new");
  const auto restored = got(store::restore_book(copy.file, made.folder / "new" / "again.risebook"));
  CHECK(restored.lacks.empty());
  CHECK(store::look_at_photo(store::photos_folder(made.folder / "new", made.tag), made.sha) ==
        PhotoState::whole);
  fs::remove_all(made.photos);
  const auto poorer = got(store::copy_book(made.file, made.folder / "others"));
  REQUIRE(poorer.lacks.size() == 1);
  CHECK(poorer.lacks.front().find("is missing") != std::string::npos);
}

TEST_CASE("a rescued book has the photos of the old one, and of its mirror") {
  Book made;
  fs::create_directory(made.folder / "stick");
  fs::path mirror;
  {
    store::MirrorKeeper keeper(made.file, made.folder / "stick",
                               {.now = [] { return five_past(0); }, .changed = {}});
    const auto there = store::photos_folder(made.folder / "stick", made.tag);
    for (int i = 0; i < 2000; ++i) {
      if (store::look_at_photo(there, made.sha) == PhotoState::whole) break;
      std::this_thread::sleep_for(std::chrono::milliseconds{5});
    }
    CHECK(store::look_at_photo(there, made.sha) == PhotoState::whole);
    mirror = keeper.status().file;
  }
  fs::create_directory(made.folder / "a");
  const auto rescued = got(store::rescue_book(made.file, made.folder / "a" / "new.risebook"));
  CHECK(rescued.photos.empty());
  CHECK(store::look_at_photo(store::photos_folder(made.folder / "a", made.tag), made.sha) ==
        PhotoState::whole);
  fs::remove_all(made.photos);
  fs::create_directory(made.folder / "b");
  const auto by_mirror =
      got(store::rescue_book(made.file, made.folder / "b" / "new.risebook", mirror));
  CHECK(by_mirror.photos.empty());
  fs::create_directory(made.folder / "c");
  const auto without = got(store::rescue_book(made.file, made.folder / "c" / "new.risebook"));
  REQUIRE(without.photos.size() == 1);
}
