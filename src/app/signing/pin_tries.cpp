#include "app/signing/pin_tries.h"

#include <algorithm>
#include <fstream>
#include <iterator>

#include "app/device.h"
#include "base/unfinished.h"
#include "sign/claim.h"

namespace rb {

namespace {

Result<sign::TriesList> tries_in(const Path& file, Moment now) {
  std::error_code error;
  if (!std::filesystem::exists(file, error) && !error) return sign::TriesList{};
  std::ifstream in;
  if (std::filesystem::is_regular_file(file, error)) in.open(file, std::ios::binary);
  std::string text;
  if (in.is_open()) text.assign(std::istreambuf_iterator<char>{in}, {});
  if (!in.is_open() || in.bad()) {
    return fail(Error::Kind::book, file.string(), said("tries of PINs cannot be counted"),
                said("Let this user read and write it"));
  }
  return sign::TriesList::read(text.empty() ? "?" : text, now);  // an empty file was cut off
}

Result<void> keep(const Path& file, const sign::TriesList& tries) {
  (void)make_folders(file.parent_path(),
                     0700);  // one that could not be made shows in the next step
  auto part = Unfinished::beside(file, 0600);
  if (!part) return Failed{part.error()};
  if (auto done = part->write(tries.text()); !done) return done;
  return part->put(Place::replaced);
}

}  // namespace

Path pin_tries_path() {
  const Path folder = data_folder();
  return folder.empty() ? folder : folder / "pin-tries";
}

Seconds pin_wait(const Path& tries, const Hex& key, Moment now) {
  const auto list = tries_in(tries, now);
  return list ? sign::wait_left(list->of(key), now) : Seconds{0};
}

Result<sign::PersonKey> unlock(const PourState& state, const PersonId& person, const sign::Pin& pin,
                               const Path& tries, Moment now) {
  const EnrolState* own = enrolled(state, person);
  if (own == nullptr) {
    return fail(Error::Kind::refused, person.text, said("has no key in this pour"),
                said("Enrol first"));
  }
  return unlock(own->what, pin, tries, now);
}

Result<sign::PersonKey> unlock(const event::Enrol& own, const sign::Pin& pin, const Path& tries,
                               Moment now) {
  const Hex& key = own.key;
  auto list = tries.empty() ? Failed{Error{Error::Kind::book,
                                           said("tries of PINs"),
                                           said("cannot be counted: this user has no folder"),
                                           {}}}
                            : tries_in(tries, now);
  if (!list) return Failed{list.error()};
  const Seconds wait = sign::wait_left(list->of(key), now);
  if (wait > Seconds{0}) {
    return fail(Error::Kind::refused, said("the PIN"),
                {said("was wrong too often; the next try in {wait}"),
                 {{"wait", amount(wait, Measure::any_span)}}});
  }
  list->add(key, now);
  if (auto done = keep(tries, *list); !done) return Failed{done.error()};
  auto opened = sign::open_key(sign::key_in(own), pin);
  if (!opened) return opened;
  list->clear(key);
  if (auto done = keep(tries, *list); !done) return Failed{done.error()};
  return opened;
}

}  // namespace rb
