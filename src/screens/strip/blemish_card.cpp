// A blemish: where and how large it is, what became of it, and beside it the story of its spot.
#include <algorithm>

#include "record/model/event_words.h"
#include "screens/entry/paging.h"
#include "screens/strip/strip_inside.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

struct MendedLook {
  Word word;
  Look look;
  Symbol symbol;
};

MendedLook mended_look(Mended mended) {
  switch (mended) {
    case Mended::open:
      return {Word::blemish_open, Look::mend, Symbol::mend_sign};
    case Mended::repaired:
      return {Word::blemish_repaired, Look::act, Symbol::clock};
    case Mended::accepted:
      return {Word::blemish_accepted, Look::well, Symbol::check};
    case Mended::refused:
      break;
  }
  return {Word::blemish_refused, Look::stop, Symbol::cross};
}

std::string day_and_clock(const Say& say, Moment at) {
  return say.day(at) + " " + say.clock_short(at);
}

// The latest of what became of it, a line each.
std::vector<std::string> told_lines(const Say& say, const BlemishView& blemish) {
  std::vector<std::string> lines;
  if (!blemish.repairs.empty()) {
    const RepairView& last = blemish.repairs.back();
    lines.push_back(
        say(Word::blemish_by, repair_words(last.what), last.by, day_and_clock(say, last.at)));
  }
  if (!blemish.looks.empty()) {
    const LookedView& last = blemish.looks.back();
    std::string what = say(last.ok ? Word::blemish_accepted : Word::blemish_refused);
    if (!last.note.empty()) what += ": " + last.note;
    lines.push_back(say(Word::blemish_by, what, last.by, day_and_clock(say, last.at)));
  }
  return lines;
}

// The one place that tells the story of a blemish's spot.
std::vector<std::string> spot_lines(const Say& say, const SpotTold& spot) {
  std::vector<std::string> lines;
  if (!spot.came) {
    lines.push_back(say(Word::blemish_dry));
  } else if (spot.lift) {
    lines.push_back(say(Word::blemish_came, *spot.lift, say.clock_short(*spot.came),
                        say.clock_short(*spot.sets)));
  } else {
    lines.push_back(
        say(Word::blemish_came_untold, say.clock_short(*spot.came), say.clock_short(*spot.sets)));
  }
  if (spot.came && spot.judged) {
    lines.push_back(
        say(Word::blemish_dose, say.amount(amount(spot.dose)), say.amount(amount(spot.dose_min))));
  }
  std::string rules;
  for (const std::string& rule : spot.rules) {
    if (!rules.empty()) rules += ", ";
    rules += rule_title(say, rule);
  }
  lines.push_back(rules.empty() ? say(Word::blemish_unspoken) : say(Word::blemish_spoken, rules));
  return lines;
}

void draw_ways_on(Stage& stage, const Box& row, StripDraft& draft, const BlemishView& blemish) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  if (button(canvas, row.column(0, 4, gap),
             {.id = "blemish repair",
              .text = say(Word::blemish_repair),
              .look = blemish.mended == Mended::open ? Look::act : Look::quiet,
              .symbol = Symbol::pencil})) {
    draft.step = StripDraft::Step::repair;
    draft.repair = {.target = blemish.told.id, .note = {}};
    draft.at = stage.tapped();
  }
  if (button(canvas, row.column(1, 4, gap),
             {.id = "blemish accept",
              .text = say(Word::blemish_accept),
              .look = blemish.mended == Mended::repaired ? Look::act : Look::quiet,
              .symbol = Symbol::check,
              .enabled = blemish.mended != Mended::accepted})) {
    stage.keep(event::Reinspect{blemish.looked_at(), true, {}});
  }
  if (button(canvas, row.column(2, 4, gap),
             {.id = "blemish refuse",
              .text = say(Word::blemish_refuse),
              .symbol = Symbol::cross,
              .enabled = blemish.mended != Mended::refused})) {
    draft.typing = StripDraft::Text::refused;
    draft.repair = {.target = blemish.looked_at(), .note = {}};
    draft.at = stage.tapped();
  }
  if (button(canvas, row.column(3, 4, gap),
             {.id = "blemish photo",
              .text = say(Word::blemish_photo),
              .under = say(Word::photos_kept, blemish.photos),
              .symbol = blemish.photos > 0 ? Symbol::check : Symbol::plus,
              .enabled = stage.photos != nullptr})) {
    draft = {.side = draft.side, .step = StripDraft::Step::photos, .blemish = draft.blemish};
  }
}

}  // namespace

void draw_blemish_card(Stage& stage, const Box& box, StripDraft& draft,
                       const BlemishView& blemish) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in;
  if (!step_panel(
          stage, box,
          std::to_string(blemish.number) + " \u00B7 " + blemish_name(say, blemish.what.kind), in)) {
    draft = {.side = draft.side};
    return;
  }
  draw_ways_on(stage, in.cut_bottom(canvas.scale().target(), gap), draft, blemish);
  draw_sizes(stage, in.cut_bottom(canvas.scale().target(), gap), blemish.what.patch,
             blemish.what.depth, blemish.what.outline.empty(), draft);
  const MendedLook look = mended_look(blemish.mended);
  tag(canvas, in.cut_top(canvas.height(Face::strong), canvas.mm(0.8)), look.symbol, say(look.word),
      look.look);
  const Patch& p = blemish.what.patch;
  std::vector<std::string> lines{
      say(Word::blemish_place, say.height(p.x), say.height(p.z), say.height(p.w), say.height(p.h)),
      say(Word::blemish_told, blemish.by, day_and_clock(say, blemish.told.at))};
  for (std::string& line : told_lines(say, blemish)) lines.push_back(std::move(line));
  for (std::string& line : spot_lines(say, blemish.spot[0])) lines.push_back(std::move(line));
  const float tall = canvas.height(Face::small);
  for (const std::string& line : lines) {
    const float wanted = canvas.width(line, Face::small) > in.w() ? 2 * tall : tall;
    if (in.h() < wanted) break;
    canvas.text(line, in.cut_top(wanted, canvas.mm(0.4)),
                {.face = Face::small,
                 .colours = canvas.on_panel(),
                 .down = Down::top,
                 .lines = 2,
                 .free_text = true});
  }
}

}  // namespace rb::screens
