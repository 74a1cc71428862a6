// What is told of a blemish by the one who found it, and of its repair by the one who saw it.
#include <array>

#include "screens/entry/paging.h"
#include "screens/entry/plan_tiles.h"
#include "screens/strip/strip_inside.h"

namespace rb::screens {

namespace {

constexpr int kTilesAbreast = 4;

void keep_fresh(Stage& stage, StripDraft& draft, const PourView& view) {
  event::Blemish blemish;
  blemish.element = view.element_id;
  blemish.side = draft.side;
  blemish.kind = draft.defect ? to_text(*draft.defect) : draft.kind;
  blemish.patch = draft.patch;
  blemish.depth = draft.depth;
  stage.keep(std::move(blemish), draft.at);
  draft = {.side = draft.side};
}

}  // namespace

void draw_fresh_blemish(Stage& stage, const Box& box, StripDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::blemish_what));
  const Box foot = in.cut_bottom(canvas.scale().target(), gap);
  draw_sizes(stage, in.cut_bottom(canvas.scale().target(), gap), draft.patch, draft.depth, true,
             draft);
  std::vector<Tile> tiles;
  const auto words = event::words_of(event::Defect{});
  tiles.reserve(words.size() + 1);
  for (const char* word : words) {
    const bool on = draft.defect && std::string_view{to_text(*draft.defect)} == word;
    tiles.push_back({.id = std::string{"defect "} + word,
                     .value = std::string{told(say.language, word)},
                     .symbol = on ? Symbol::check : Symbol::none,
                     .look = on ? Look::act : Look::quiet});
  }
  const bool own = !draft.defect && !draft.kind.empty();
  tiles.push_back({.id = "defect other",
                   .value = own ? draft.kind : say(Word::blemish_other),
                   .free_text = own,
                   .symbol = own ? Symbol::check : Symbol::pencil,
                   .look = own ? Look::act : Look::quiet});
  const int tapped = draw_tiles(stage, in, tiles, kTilesAbreast, draft.turn);
  if (tapped >= 0) {
    const auto which = static_cast<std::size_t>(tapped);
    if (which < words.size()) {
      draft.defect = static_cast<event::Defect>(which);
    } else {
      draft.typing = StripDraft::Text::kind;
      draft.text = draft.kind;
    }
  }
  const PanelEnd end = keep_or_cancel(stage, foot, draft.defect || !draft.kind.empty());
  if (end == PanelEnd::kept) keep_fresh(stage, draft, view);
  if (end == PanelEnd::cancelled) draft = {.side = draft.side};
}

void draw_repair(Stage& stage, const Box& box, StripDraft& draft, const BlemishView& blemish) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(
      stage, box, say(Word::repair_title, blemish.number, blemish_name(say, blemish.what.kind)));
  const Box foot = in.cut_bottom(canvas.scale().target(), gap);
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(22));
  struct Line {
    StripDraft::Text what;
    const char* id;
    Word word;
    const std::string& text;
  };
  const std::array lines{
      Line{StripDraft::Text::method, "repair method", Word::repair_method, draft.repair.method},
      Line{StripDraft::Text::product, "repair product", Word::repair_product, draft.repair.product},
      Line{StripDraft::Text::who, "repair who", Word::repair_who, draft.repair.who}};
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = lines[i];
    const bool told = !line.text.empty();
    if (button(canvas, in.line(static_cast<int>(i), 3, gap),
               {.id = line.id,
                .text = told ? line.text : say(Word::repair_untold),
                .under = say(line.word),
                .look = told ? Look::act : Look::quiet,
                .symbol = told ? Symbol::check : Symbol::pencil,
                .free_text = told})) {
      draft.typing = line.what;
      draft.text = line.text;
    }
  }
  const PanelEnd end = keep_or_cancel(stage, foot, !draft.repair.method.empty());
  if (end == PanelEnd::open) return;
  if (end == PanelEnd::kept) stage.keep(draft.repair, draft.at);
  draft = {.side = draft.side, .step = StripDraft::Step::card, .blemish = draft.blemish};
}

}  // namespace rb::screens
