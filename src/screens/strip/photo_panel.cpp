// A photo of a blemish, chosen among the newest files of the camera's folder. The file is copied
// beside the book by its hash, on a thread of its own; the original stays as it is.
#include <fmt/format.h>

#include <algorithm>

#include "screens/entry/paging.h"
#include "screens/strip/strip_inside.h"

namespace rb::screens {

namespace {

constexpr Seconds kLookForPhotos{3};

// How the photo chosen last stands; empty: none was.
void draw_taking(Stage& stage, Box& in, const PhotosSeen& photos) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  if (photos.state == PhotosSeen::State::none) return;
  const Box line = in.cut_top(2 * canvas.height(Face::small), canvas.mm(1));
  switch (photos.state) {
    case PhotosSeen::State::taking:
      tag(canvas, line, Symbol::clock, say(Word::photo_taking, photos.name), Look::act, Face::small,
          true);
      break;
    case PhotosSeen::State::taken:
      tag(canvas, line, Symbol::check, say(Word::photo_taken, photos.name), Look::well, Face::small,
          true);
      break;
    default:
      tag(canvas, line, Symbol::stop_sign, say(Word::photo_failed, photos.says), Look::stop,
          Face::small, true);
  }
}

std::string size_text(std::int64_t bytes) {
  return fmt::format("{:.1f}\u00A0MB", static_cast<double>(bytes) / 1e6);
}

}  // namespace

void draw_photos(Stage& stage, const Box& box, StripDraft& draft, const BlemishView& blemish) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in;
  const std::string title =
      say(Word::photos_title, blemish.number, blemish_name(say, blemish.what.kind));
  if (!step_panel(stage, box, title, in) || stage.photos == nullptr) {
    draft = {.side = draft.side, .step = StripDraft::Step::card, .blemish = draft.blemish};
    return;
  }
  if (!draft.looked || stage.now < *draft.looked ||
      between(*draft.looked, stage.now) >= kLookForPhotos) {
    stage.intents.emplace_back(FindPhotos{});
    draft.looked = stage.now;
  }
  const PhotosSeen& photos = *stage.photos;
  canvas.text(say(photos.looked && photos.files.empty() ? Word::photos_none : Word::photos_newest,
                  photos.folder),
              in.cut_top(2 * canvas.height(Face::small), canvas.mm(1)),
              {.face = Face::small,
               .colours = canvas.soft(),
               .down = Down::top,
               .lines = 2,
               .free_text = true});
  draw_taking(stage, in, photos);
  const float tall = canvas.mm(17);
  const auto fit = std::max(1.0F, std::floor((in.h() + gap) / (tall + gap)));
  const std::size_t lines = std::min(static_cast<std::size_t>(fit) * 2, photos.files.size());
  for (std::size_t i = 0; i < lines; ++i) {
    const PhotoFile& file = photos.files[i];
    Box line = in;
    const std::size_t row = i / 2;
    line.y0 += static_cast<float>(row) * (tall + gap);
    line.y1 = line.y0 + tall;
    if (button(canvas, line.column(static_cast<int>(i % 2), 2, gap),
               {.id = "photo " + file.path,
                .text = file.name,
                .under = say.day(file.made) + " " + say.clock_short(file.made) + " \u00B7 " +
                         size_text(file.bytes),
                .enabled = photos.state != PhotosSeen::State::taking,
                .free_text = true})) {
      stage.intents.emplace_back(
          TakePhoto{file.path, blemish.looked_at(), stage.tapped(), say.voice()});
    }
  }
}

}  // namespace rb::screens
