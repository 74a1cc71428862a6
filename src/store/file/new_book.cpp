#include "store/file/new_book.h"

#include <utility>

namespace rb::store {

namespace {

namespace fs = std::filesystem;

Failed of_book(Error error) {
  error.kind = Error::Kind::book;
  return Failed{std::move(error)};
}

}  // namespace

Result<void> nothing_stands(const fs::path& to) {
  if (fs::exists(fs::symlink_status(to))) {
    return fail(BookTrouble::in_the_way, to.string(), "there is already a file here",
                "Give the new book another name");
  }
  for (const char* beside : {"-wal", "-shm", "-journal", ".head"}) {
    const fs::path left = to.string() + beside;
    if (fs::exists(fs::symlink_status(left))) {
      return fail(BookTrouble::in_the_way, left.string(),
                  "this file is left from another book and may hold events of it",
                  "Put it back beside its book, or give the new book another name");
    }
  }
  return {};
}

Result<Unfinished> begin_book(const fs::path& to) {
  (void)make_folders(to.parent_path(), 0700);  // one that could not be made shows in the next step
  auto made = Unfinished::beside(to, 0600);
  if (!made) return of_book(made.error());
  return made;
}

Result<void> put_book(Unfinished& book) {
  if (auto put = book.put(Place::must_be_free); !put) return of_book(put.error());
  return {};
}

}  // namespace rb::store
