#include "screens/paper/mirror_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/keyboard.h"
#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

struct LightLook {
  Look look = Look::quiet;
  Symbol symbol = Symbol::none;
};

LightLook light_look(MirrorLight light) {
  switch (light) {
    case MirrorLight::none:
      return {Look::quiet, Symbol::cross};
    case MirrorLight::looking:
      return {Look::quiet, Symbol::clock};
    case MirrorLight::even:
      return {Look::well, Symbol::check};
    case MirrorLight::behind:
      return {Look::mend, Symbol::mend_sign};
  }
  return {};
}

std::string last_part(const std::string& folder) {
  const auto at = folder.find_last_of('/');
  return at == std::string::npos || at + 1 == folder.size() ? folder : folder.substr(at + 1);
}

// The folders to choose from, the one in use among them though it may not be there now.
std::vector<MirrorPlace> places_of(const MirrorSeen& mirror) {
  std::vector<MirrorPlace> places = mirror.places;
  const bool listed = std::any_of(places.begin(), places.end(), [&](const MirrorPlace& place) {
    return place.folder == mirror.folder;
  });
  if (!mirror.folder.empty() && !listed) {
    places.insert(places.begin(), {mirror.folder, mirror.same_disk});
  }
  return places;
}

void draw_copy_button(Stage& stage, const Box& box, const MirrorSeen& mirror) {
  const Say& say = stage.say;
  const bool busy = mirror.copy.state == CopySeen::State::under_way;
  std::string under;
  if (mirror.folder.empty()) under = say(Word::copy_choose);
  if (busy) under = say(Word::copy_doing, static_cast<int>(std::floor(mirror.copy.done * 100)));
  if (button(stage.canvas, box,
             {.id = "copy",
              .text = say(Word::copy_now),
              .under = under,
              .look = Look::act,
              .symbol = Symbol::plus,
              .enabled = !busy && !mirror.folder.empty()})) {
    stage.intents.emplace_back(CopyNow{});
  }
}

void draw_copy_end(Stage& stage, Box& in, const CopySeen& copy) {
  if (copy.state != CopySeen::State::made && copy.state != CopySeen::State::failed) return;
  Canvas& canvas = stage.canvas;
  const bool made = copy.state == CopySeen::State::made;
  const Box line = in.cut_top(2 * canvas.height(Face::small), canvas.mm(1));
  tag(canvas, line, made ? Symbol::check : Symbol::stop_sign,
      stage.say(made ? Word::copy_made : Word::copy_failed, copy.says),
      made ? Look::well : Look::stop, Face::small, true);
}

// One that was not found: a share mounted somewhere of its own.
void draw_typed_place(Stage& stage, const Box& box, MirrorDraft& draft) {
  const PanelEnd end = draw_text_entry(stage, box, stage.say(Word::mirror_type_title),
                                       *draft.typing, kText, Keys::path);
  if (end == PanelEnd::open) return;
  if (end == PanelEnd::kept) {
    const bool whole = draft.typing->front() == '/';
    stage.intents.emplace_back(UseMirror{(whole ? "" : "/") + *draft.typing});
  }
  draft.typing.reset();
}

void draw_place(Stage& stage, const Box& box, const MirrorPlace& place, bool on) {
  if (button(stage.canvas, box,
             {.id = "mirror at " + place.folder,
              .text = last_part(place.folder),
              .under = place.same_disk ? stage.say(Word::mirror_same) : place.folder,
              .look = on ? Look::act : Look::quiet,
              .symbol = on ? Symbol::check : Symbol::none,
              .free_text = true})) {
    stage.intents.emplace_back(UseMirror{place.folder});
  }
}

}  // namespace

void draw_mirror_light(Stage& stage, const Box& box) {
  if (stage.mirror == nullptr) return;
  Canvas& canvas = stage.canvas;
  const std::string words = mirror_words(stage.say, *stage.mirror);
  const LightLook look = light_look(mirror_light(*stage.mirror));
  if (canvas.target("mirror", box, words)) stage.open(MirrorDraft{});
  const Pair pair = pair_of(canvas.theme(), look.look);
  const float radius = canvas.mm(1.6);
  canvas.fill(box, pair.ground, radius);
  const bool pressed = canvas.pressed("mirror");
  canvas.edge(box, pair.ink, canvas.mm(pressed ? 1.2 : 0.25), radius);
  Box in = box.inset(canvas.mm(1.2), canvas.mm(0.8));
  const float side = canvas.mm(4.5);
  const Box sign = in.cut_left(side, canvas.mm(1));
  canvas.symbol(look.symbol, sign.inset(0, (in.h() - side) / 2), pair.ink);
  canvas.text(words, in, {.face = Face::small, .colours = pair, .lines = 3});
}

void draw_mirror(Stage& stage, const Box& box, MirrorDraft& draft) {
  if (draft.typing && stage.mirror != nullptr) return draw_typed_place(stage, box, draft);
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::mirror_title));
  if (stage.mirror == nullptr) {
    canvas.text(say(Word::keep_read_only), in.cut_top(3 * canvas.height(Face::body)),
                {.colours = canvas.on_panel(), .lines = 3});
    int page = 0;
    turn_pages(stage, in, 0, page, "mirror");
    return;
  }
  const MirrorSeen& mirror = *stage.mirror;
  if (!draft.looked || stage.now < *draft.looked ||
      between(*draft.looked, stage.now) >= kLookForPlaces) {
    stage.intents.emplace_back(FindPlaces{});
    draft.looked = stage.now;
  }
  const LightLook look = light_look(mirror_light(mirror));
  tag(canvas, in.cut_top(canvas.height(Face::strong), canvas.mm(0.8)), look.symbol,
      mirror_words(say, mirror), look.look, Face::strong);
  canvas.text(mirror_advice(say, mirror), in.cut_top(canvas.height(Face::small), canvas.mm(1.5)),
              {.face = Face::small, .colours = canvas.on_panel()});
  const float tall = canvas.mm(17);
  Box line = in.cut_top(tall, gap);
  draw_copy_button(stage, line.cut_left(std::floor(line.w() * 0.42F), gap), mirror);
  if (button(canvas, line.column(0, 2, gap),
             {.id = "record", .text = say(Word::record), .symbol = Symbol::list})) {
    stage.open(RecordDraft{});
  }
  if (button(canvas, line.column(1, 2, gap),
             {.id = "mirror none",
              .text = say(Word::mirror_use_none),
              .look = mirror.folder.empty() ? Look::act : Look::quiet,
              .symbol = mirror.folder.empty() ? Symbol::check : Symbol::none})) {
    stage.intents.emplace_back(UseMirror{});
  }
  draw_copy_end(stage, in, mirror.copy);
  const std::vector<MirrorPlace> places = places_of(mirror);
  const Pages pages = turn_pages(stage, in, places.size() + 1, draft.page, "mirror", tall);
  for (std::size_t i = 0; i < pages.lines && pages.first + i <= places.size(); ++i) {
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    const Box place{pages.room.x0, top, pages.room.x1, top + tall};
    if (pages.first + i < places.size()) {
      draw_place(stage, place, places[pages.first + i],
                 places[pages.first + i].folder == mirror.folder);
    } else if (button(canvas, place, {.id = "mirror type", .text = say(Word::mirror_type)})) {
      draft.typing = "/";
    }
  }
  if (places.empty()) {
    Box under = pages.room;
    under.y0 += tall + gap;
    if (under.h() < canvas.height(Face::small)) return;
    canvas.text(say(Word::mirror_no_place), under,
                {.face = Face::small, .colours = canvas.soft(), .down = Down::top, .lines = 3});
  }
}

bool draw_head_code(Stage& stage, const Box& box) {
  if (!stage.head || stage.keeping.waiting > 0) return false;
  Canvas& canvas = stage.canvas;
  canvas.text(stage.say(Word::photograph, stage.head->code, stage.head->event), box,
              {.face = Face::strong, .colours = canvas.on_panel(), .lines = 2});
  return true;
}

}  // namespace rb::screens
