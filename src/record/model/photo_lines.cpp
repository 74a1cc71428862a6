#include "record/model/photo_lines.h"

#include <algorithm>
#include <limits>

#include "record/model/event_words.h"

namespace rb {

namespace {

const Event* event_named(const Names& names, const std::vector<EventRef>& among,
                         const EventId& id) {
  for (const EventRef ref : among) {
    if (names.event(ref).id == id) return &names.event(ref);
  }
  return nullptr;
}

// What is on it: of a repair also the blemish that was repaired. The record's own line of a blemish
// tells it, found by its place among the blemishes that stand.
void put_target(PhotoLine& line, const PourRecord& record, const PourState& state,
                const Names& names, EventId target) {
  if (const Event* mended = event_named(names, state.repairs, target)) {
    if (const auto* repair = std::get_if<event::Repair>(&mended->what)) {
      line.repair = repair_words(*repair);
      target = repair->target;
    }
  }
  std::size_t nth = 0;
  for (const EventRef ref : state.blemishes) {
    const Event& e = names.event(ref);
    if (std::get_if<event::Blemish>(&e.what) == nullptr) continue;
    if (e.id == target && nth < record.blemishes.size()) {
      const BlemishLine& blemish = record.blemishes[nth];
      line.blemish = blemish.number;
      line.of = blemish.kind;
      line.element = blemish.element;
      line.side = blemish.side;
      line.x = blemish.patch.x;
      line.z = blemish.patch.z;
    }
    ++nth;
  }
}

}  // namespace

const char* to_text(const PhotoLine& photo) {
  switch (photo.standing) {
    case PhotoStanding::not_looked:
      return said("not looked for").english;
    case PhotoStanding::missing:
      return said("missing").english;
    case PhotoStanding::altered:
      return said("altered").english;
    case PhotoStanding::whole:
      break;
  }
  return photo.picture ? said("whole").english : said("whole, but cannot be drawn").english;
}

void put_photos(PourRecord& record, const PourState& state, const Names& names,
                const PhotoSource& source) {
  for (const EventRef ref : state.photos) {
    const Event& e = names.event(ref);
    const auto* photo = std::get_if<event::Photo>(&e.what);
    if (photo == nullptr) continue;
    PhotoLine line{.at = names.when(ref),
                   .element = photo->element ? photo->element->text : std::string{},
                   .name = photo->name,
                   .sha256 = photo->sha256.digits,
                   .by = names.person(e.by),
                   .bytes = photo->bytes};
    put_target(line, record, state, names, photo->target);
    if (source) {
      const PhotoFile file = source(line.sha256);
      line.standing = file.standing;
      if (file.standing == PhotoStanding::whole) line.picture = shown_photo(file.bytes);
    }
    record.photos.push_back(std::move(line));
  }
  const auto number = [](const PhotoLine& line) {
    return line.blemish.value_or(std::numeric_limits<int>::max());
  };
  std::stable_sort(record.photos.begin(), record.photos.end(),
                   [&](const PhotoLine& a, const PhotoLine& b) { return number(a) < number(b); });
}

}  // namespace rb
