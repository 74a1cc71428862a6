#include "screens/strip/strip_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/figure_pad.h"
#include "screens/entry/keyboard.h"
#include "screens/entry/paging.h"
#include "screens/entry/told_later.h"
#include "screens/strip/face_drawing.h"
#include "screens/strip/strip_button.h"
#include "screens/strip/strip_inside.h"

namespace rb::screens {

namespace {

constexpr Length kLeastDrawn = metres(0.02);  // what a finger can mean
constexpr Length kTapped = metres(0.3);       // a blemish that was tapped and not drawn
constexpr double kSlackMm = 4;                // how far beside a blemish a finger still means it

Word side_word(Side side) {
  return side == Side::near_side ? Word::near_side : Word::far_side;
}

struct FaceState {
  Word word;
  Look look;
  Symbol symbol;
};

// "Not inspected" and "nothing found" are different things.
FaceState state_of(const FaceView& face) {
  switch (face.score.look) {
    case FaceLook::standing:
      return {Word::face_standing, Look::off, Symbol::note_sign};
    case FaceLook::stripped:
      return {Word::face_not_inspected, Look::mend, Symbol::mend_sign};
    case FaceLook::begun:
      return {Word::face_part_inspected, Look::mend, Symbol::mend_sign};
    case FaceLook::inspected:
      break;
  }
  return {Word::face_nothing, Look::well, Symbol::check};
}

std::string percent(const Say& say, double of_one) {
  return say.amount(share(of_one));
}

void draw_score(Stage& stage, Box box, const FaceView& face) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const FaceScore& score = face.score;
  FaceState state = state_of(face);
  std::string words = say(state.word);
  const auto foretold = score.foretold();
  const bool found = score.blemished > Area{};
  if (found) {
    const std::string area = say(Word::face_blemished, say.amount(amount(score.blemished)));
    words = score.look == FaceLook::inspected ? area : words + " \u00B7 " + area;
    if (score.look == FaceLook::inspected) state = {state.word, Look::mend, Symbol::mend_sign};
  }
  Box line = box.cut_top(canvas.height(Face::strong), canvas.mm(0.6));
  const Box sign = tag(canvas, line, state.symbol, words, state.look, Face::small);
  line.x0 = sign.x1 + canvas.mm(2);
  if (face.inspected) {
    canvas.text(say(Word::face_seen_by, face.inspected_by, say.clock_short(*face.inspected)), line,
                {.face = Face::small, .colours = canvas.on_panel(), .free_text = true});
  }
  const auto spoken = score.spoken_share();
  if (!spoken) return;
  canvas.text(foretold ? say(Word::face_foretold, percent(say, *foretold),
                             percent(say, 1 - *foretold), percent(say, *spoken))
                       : say(Word::face_spoken, percent(say, *spoken)),
              box,
              {.face = Face::small, .colours = canvas.on_panel(), .down = Down::top, .lines = 2});
}

// The blemish a finger means: the one it is on, else one just beside it.
const BlemishView* meant(const FaceView& face, const FaceFrame& frame, Point at, float slack) {
  const Length x = frame.x_at(at), z = frame.z_at(at);
  if (const BlemishView* on = blemish_at(face, x, z)) return on;
  for (const BlemishView& blemish : face.blemishes) {
    if (frame.box_of(blemish.what.patch).inset(-slack).holds(at)) return &blemish;
  }
  return nullptr;
}

// What a finger did on the face: it drew a blemish, or tapped one, or tapped where one is.
void answer(Stage& stage, const FaceFrame& frame, const FaceView& face, StripDraft& draft) {
  const Tap& tap = *stage.canvas.tap();
  const float slack = stage.canvas.mm(kSlackMm);
  const bool drawn = std::hypot(tap.to.x - tap.at.x, tap.to.y - tap.at.y) > 2 * slack;
  if (!drawn) {
    if (const BlemishView* blemish = meant(face, frame, tap.at, slack)) {
      draft.step = StripDraft::Step::card;
      draft.blemish = blemish->told.id;
      return;
    }
  }
  Patch patch = frame.patch_between(tap.at, drawn ? tap.to : tap.at);
  if (!drawn) {
    patch = {patch.x - kTapped / 2.0, patch.z - kTapped / 2.0, kTapped, kTapped};
  }
  draft = {.side = draft.side,
           .step = StripDraft::Step::fresh,
           .patch = onto_face(face, patch, kLeastDrawn),
           .at = stage.tapped()};
}

void draw_foot(Stage& stage, const Box& foot, StripDraft& draft, const PourView& view,
               const FaceView& face) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const bool near = draft.side == Side::near_side;
  offer_strip(stage, foot.column(0, 2, gap), view.strips[near ? 0 : 1], view.element_id,
              draft.asked);
  if (button(canvas, foot.column(1, 2, gap),
             {.id = "face inspected",
              .text = say(Word::face_all_seen),
              .look = face.inspected ? Look::quiet : Look::act,
              .symbol = Symbol::check,
              .enabled = face.stripped.has_value()})) {
    stage.keep(event::Inspect{view.element_id, draft.side, {}});
  }
}

void draw_whole_face(Stage& stage, const Box& box, StripDraft& draft, const PourView& view,
                     const FaceView& face) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box other;
  Box in = panel_with_back(
      stage, box, say(Word::face_title, view.element_id.text, say(side_word(draft.side))), &other);
  const Side far = draft.side == Side::near_side ? Side::far_side : Side::near_side;
  if (button(canvas, other,
             {.id = "other face",
              .text = say(Word::face_other),
              .under = say(side_word(far)),
              .symbol = Symbol::forward})) {
    draft = {.side = far};
    return;
  }
  const float small = canvas.height(Face::small);
  draw_foot(stage, in.cut_bottom(canvas.scale().target(), gap), draft, view, face);
  draw_score(stage, in.cut_bottom(canvas.height(Face::strong) + 2 * small + canvas.mm(1), gap),
             face);
  std::string how;
  if (face.stripped) how = say(Word::face_draw);
  if (draft.side == Side::far_side) {
    how = say(Word::far_side) + ": " + say(Word::face_far_seen) + ". " + how;
  }
  canvas.text(how, in.cut_top(2 * small, canvas.mm(0.5)),
              {.face = Face::small, .colours = canvas.soft(), .down = Down::top, .lines = 2});
  Box room = in;
  room.y1 -= small + canvas.mm(0.6);  // the bays' numbers
  const FaceFrame frame(room.inset(canvas.mm(1)), face);
  std::optional<Patch> drawn;
  if (canvas.drag() && canvas.drag()->id == "face") {
    drawn = frame.patch_between(canvas.drag()->from, canvas.drag()->to);
  }
  draw_face(stage, frame, face, drawn);
  if (canvas.drag_target("face", in, say(Word::face_draw), face.stripped.has_value())) {
    answer(stage, frame, face, draft);
  }
}

// What is typed on the keys, put where it belongs.
void draw_typing(Stage& stage, const Box& box, StripDraft& draft) {
  using Text = StripDraft::Text;
  const Word title = *draft.typing == Text::kind      ? Word::blemish_name
                     : *draft.typing == Text::method  ? Word::repair_method
                     : *draft.typing == Text::product ? Word::repair_product
                     : *draft.typing == Text::who     ? Word::repair_who
                                                      : Word::blemish_refuse_why;
  const PanelEnd end = draw_text_entry(stage, box, stage.say(title), draft.text);
  if (end == PanelEnd::open) return;
  const Text what = *std::exchange(draft.typing, std::nullopt);
  const std::string text = std::exchange(draft.text, {});
  if (end != PanelEnd::kept) return;
  switch (what) {
    case Text::kind:
      draft.kind = text;
      draft.defect.reset();
      break;
    case Text::method:
      draft.repair.method = text;
      break;
    case Text::product:
      draft.repair.product = text;
      break;
    case Text::who:
      draft.repair.who = text;
      break;
    case Text::refused:
      stage.keep(event::Reinspect{draft.repair.target, false, text}, draft.at);
      break;
  }
}

// A size of the fresh blemish, or of one kept: that is a correction.
void put_size(Stage& stage, const FaceView& face, StripDraft& draft, const BlemishView* blemish,
              const FigureTyped& typed) {
  const Length size = small_length_of(*typed.value, stage.say.units);
  if (draft.step == StripDraft::Step::fresh) {
    resize(face, typed.what, size, draft.patch, draft.depth);
  } else if (blemish != nullptr) {
    event::Blemish mended = blemish->what;
    resize(face, typed.what, size, mended.patch, mended.depth);
    keep_told_later(stage, blemish->told, mended, draft.at);
  }
}

}  // namespace

bool step_panel(Stage& stage, const Box& box, const std::string& title, Box& in, Box* beside) {
  const bool leads_on = stage.next.has_value();  // by what stands beside the panel
  in = panel_with_back(stage, box, title, beside);
  if (!stage.next || leads_on) return true;
  stage.next.reset();
  return false;
}

std::string blemish_name(const Say& say, const std::string& kind) {
  const auto defect = event::defect_named(kind);
  return defect ? std::string{told(say.language, to_text(*defect))} : kind;
}

void draw_sizes(Stage& stage, const Box& row, const Patch& patch, std::optional<Length> depth,
                bool may_size, StripDraft& draft) {
  const Units units = stage.say.units;
  struct Size {
    Figure what;
    const char* id;
    std::optional<Length> size;
    bool may;
  };
  const std::array sizes{Size{Figure::blemish_wide, "blemish wide", patch.w, may_size},
                         Size{Figure::blemish_high, "blemish high", patch.h, may_size},
                         Size{Figure::blemish_deep, "blemish deep", depth, true}};
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    const Size& it = sizes[i];
    const auto value = it.size ? std::optional{shown(*it.size, units)} : std::nullopt;
    if (button(stage.canvas, row.column(static_cast<int>(i), 3, stage.canvas.gap()),
               {.id = it.id,
                .text = value ? figure_text(it.what, *value, units) : "\u2013",
                .under = stage.say(figure_range(it.what, units).title),
                .symbol = Symbol::pencil,
                .enabled = it.may})) {
      draft.figure = FigureEntry{.what = it.what, .guess = value};
      if (draft.step == StripDraft::Step::card) draft.at = stage.tapped();
    }
  }
}

void resize(const FaceView& face, Figure what, Length size, Patch& patch,
            std::optional<Length>& depth) {
  if (what == Figure::blemish_deep) {
    depth = size;
    return;
  }
  Length& from = what == Figure::blemish_wide ? patch.x : patch.z;
  Length& was = what == Figure::blemish_wide ? patch.w : patch.h;
  from += was / 2.0 - size / 2.0;
  was = size;
  patch = onto_face(face, patch, {});
}

void draw_strip(Stage& stage, const Box& box, StripDraft& draft, const PourView& view) {
  const std::size_t which = draft.side == Side::near_side ? 0 : 1;
  if (view.faces.size() <= which) return stage.close();
  if (draft.typing) return draw_typing(stage, box, draft);
  const FaceView& face = view.faces[which];
  const auto found = std::find_if(face.blemishes.begin(), face.blemishes.end(),
                                  [&](const BlemishView& b) { return b.told.id == draft.blemish; });
  const BlemishView* blemish = found == face.blemishes.end() ? nullptr : &*found;
  if (const auto typed = draw_typed(stage, box, draft.figure)) {
    if (typed->value) put_size(stage, face, draft, blemish, *typed);
    return;
  }
  if (draft.step == StripDraft::Step::fresh) {
    draw_fresh_blemish(stage, box, draft, view);
  } else if (draft.step == StripDraft::Step::face || blemish == nullptr) {
    draft.step = StripDraft::Step::face;  // taken back in the meantime
    draw_whole_face(stage, box, draft, view, face);
  } else if (draft.step == StripDraft::Step::repair) {
    draw_repair(stage, box, draft, *blemish);
  } else if (draft.step == StripDraft::Step::photos) {
    draw_photos(stage, box, draft, *blemish);
  } else {
    draw_blemish_card(stage, box, draft, *blemish);
  }
}

}  // namespace rb::screens
