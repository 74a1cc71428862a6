#include "record/told/photo_words.h"

#include "record/model/clean_text.h"

namespace rb {

namespace {

std::string photo_title(const PhotoLine& photo, const Shown& shown) {
  if (!photo.blemish) return shown.told(said("Of the element"));
  const Facts facts{{"number", std::to_string(*photo.blemish)},
                    {"kind", shown.told(photo.of)},
                    {"repair", photo.repair}};
  return photo.repair.empty()
             ? shown.say(said("Blemish {number}: {kind}"), facts)
             : shown.say(said("Blemish {number}: {kind}; repair: {repair}"), facts);
}

std::string photo_place(const PhotoLine& photo, const Shown& shown) {
  if (!photo.x || !photo.z) return photo.element;
  const Facts facts{{"element", photo.element},
                    {"side", shown.told(photo.side)},
                    {"x", amount(*photo.x)},
                    {"z", amount(*photo.z)}};
  return shown.say(said("{element}, {side} side, {x} from the left, {z} up from the base"), facts);
}

std::string photo_trouble(const PhotoLine& photo, const Shown& shown) {
  if (photo.picture) return {};
  switch (photo.standing) {
    case PhotoStanding::missing:
      return shown.told(said("This photo is missing: its file is not in the book's folder."));
    case PhotoStanding::altered:
      return shown.told(
          said("This photo was altered: its file is another than the one that was kept."));
    case PhotoStanding::whole:
      return shown.told(
          said("This photo is whole in the book's folder, but cannot be drawn here."));
    case PhotoStanding::not_looked:
      break;
  }
  return shown.told(said("This photo's file was not looked for."));
}

}  // namespace

PhotoWords photo_words(const PhotoLine& photo, const Shown& shown) {
  constexpr std::size_t kDigits = 12;
  const Facts facts{{"when", shown.when(photo.at)},
                    {"by", photo.by},
                    {"name", photo.name},
                    {"digits", photo.sha256.substr(0, kDigits)}};
  return {clean_text(photo_title(photo, shown)), clean_text(photo_place(photo, shown)),
          clean_text(shown.say(said("{when}, {by}, {name}, SHA-256 {digits}…"), facts)),
          photo_trouble(photo, shown)};
}

}  // namespace rb
