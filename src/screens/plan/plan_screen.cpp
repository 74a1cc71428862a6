#include "screens/plan/plan_screen.h"

#include "screens/entry/find_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/keyboard.h"
#include "screens/entry/paging.h"
#include "screens/plan/plan_compute.h"
#include "screens/plan/plan_drawing.h"
#include "screens/plan/plan_fields.h"
#include "screens/plan/plan_pad.h"
#include "screens/plan/plan_pages.h"

namespace rb::screens {

namespace {

using Page = PlanEdit::Page;
using Name = PlanEdit::Name;

Word title_of(Name name) {
  switch (name) {
    case Name::site:
      return Word::plan_site;
    case Name::element:
      return Word::plan_element;
    case Name::mix:
      return Word::plan_mix;
    default:
      return Word::plan_name;
  }
}

void put_name(PlanEdit& edit) {
  Plan& plan = edit.draft.plan;
  switch (edit.naming) {
    case Name::pour:
      plan.name = edit.text;
      edit.draft.name_guessed = false;
      break;
    case Name::site:
      plan.site = edit.text;
      break;
    case Name::element:
      plan.elements[edit.of].id = ElementId{edit.text};
      break;
    case Name::mix:
      plan.mixes[edit.of].id = MixId{edit.text};
      break;
    case Name::person:
      plan.people[edit.of].name = edit.text;
      break;
    case Name::none:
      break;
  }
}

void draw_naming(Stage& stage, const Box& box, PlanEdit& edit) {
  const bool id = edit.naming == Name::element || edit.naming == Name::mix;
  const PanelEnd end =
      draw_text_entry(stage, box, stage.say(title_of(edit.naming)), edit.text, id ? kName : kText);
  if (end == PanelEnd::open) return;
  if (end == PanelEnd::kept) put_name(edit);
  edit.naming = Name::none;
}

void start(Stage& stage, const Plan& plan) {
  stage.intents.emplace_back(OpenPour{std::make_shared<const Plan>(plan), stage.tapped()});
  stage.drafts.plan_sent = true;
  stage.close();
}

// BACK, the page's name, and what may be done with the page. True when the page has changed.
bool draw_head(Stage& stage, Box head, PlanEdit& edit, const Result<Plan>& whole) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  if (button(canvas, head.cut_left(canvas.mm(28), gap),
             {.id = "back", .text = say(Word::back), .symbol = Symbol::back})) {
    const auto before = page_before(edit.page);
    if (before) {
      edit.page = *before;
      if (*before == Page::pour) edit.of = 0;
      edit.turn = 0;
      edit.computed.reset();
    } else {
      stage.close();
    }
    return true;
  }
  const Box right = head.cut_right(canvas.mm(34), gap);
  const auto guess = guess_shown(edit);
  const bool confirm_first = edit.page == Page::pour && whole && !open_guesses(edit.draft).empty();
  if (guess || confirm_first) {
    if (button(canvas, right,
               {.id = "confirm",
                .text = say(Word::plan_confirm),
                .look = Look::mend,
                .symbol = Symbol::check})) {
      if (guess) {
        confirm(edit.draft, *guess);
      } else {
        confirm_all(edit.draft);
      }
    }
  } else if (edit.page == Page::pour) {
    if (button(canvas, right,
               {.id = "start",
                .text = say(Word::plan_start),
                .look = Look::run,
                .symbol = Symbol::run,
                .enabled = whole.has_value()})) {
      start(stage, *whole);
    }
  } else if (edit.page == Page::compute) {
    draw_compute_button(stage, right, edit);
    if (edit.computed && *edit.computed) {
      draw_paper_button(stage, head.cut_right(canvas.mm(28), gap), edit);
    }
  } else if (may_remove(edit)) {
    if (button(canvas, right,
               {.id = "remove",
                .text = say(Word::plan_remove) + (edit.removing ? "?" : ""),
                .look = edit.removing ? Look::stop : Look::quiet,
                .symbol = Symbol::cross})) {
      if (edit.removing) remove_shown(edit);
      edit.removing = !edit.removing;
      return true;
    }
  }
  canvas.text(plan_page_title(say, edit), head,
              {.face = Face::title, .colours = canvas.on_page(), .lines = 2, .free_text = true});
  return false;
}

void draw_standing(Stage& stage, const Box& box, const PlanEdit& edit, const Result<Plan>& whole) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  if (!whole) {
    tag(canvas, box, Symbol::mend_sign, fault_words(say, edit.draft, whole.error()), Look::mend,
        Face::small, true);
    return;
  }
  const std::string open = guesses_in_words(say, edit.draft);
  if (open.empty()) {
    tag(canvas, box, Symbol::check, say(Word::plan_whole), Look::well);
  } else {
    tag(canvas, box, Symbol::note_sign, say(Word::plan_to_confirm, open), Look::off, Face::small,
        true);
  }
}

}  // namespace

void draw_plan(Stage& stage, const Box& box, PlanEdit& edit) {
  if (edit.field) {
    draw_plan_pad(stage, box, edit);
    return;
  }
  if (edit.naming != Name::none) {
    draw_naming(stage, box, edit);
    return;
  }
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  const Result<Plan> whole = finished(edit.draft);
  const bool asked = edit.removing;
  Box body = box;
  if (draw_head(stage, body.cut_top(canvas.scale().target(), gap), edit, whole)) return;
  const bool computing = edit.page == Page::compute;
  const bool answered = computing && edit.computed.has_value();
  const float says_lines = answered ? 7.0F : computing ? 5.0F : 2.0F;
  const Box says = body.cut_bottom(says_lines * canvas.height(Face::small), canvas.mm(1.5));
  if (computing) {
    draw_computed(stage, says, edit);
  } else {
    draw_standing(stage, says, edit, whole);
  }
  const bool drawn = edit.page == Page::element || edit.page == Page::bays ||
                     edit.page == Page::lifts || edit.page == Page::rows || computing;
  const bool portrait = canvas.scale().portrait();
  if (drawn) {
    const Box picture = portrait ? body.cut_top(std::round(body.h() * 0.4F), gap)
                                 : body.cut_left(std::round(body.w() * 0.46F), gap);
    draw_planned(stage, picture, edit.draft, edit.of);
  }
  const std::vector<PlanTile> tiles = plan_tiles(stage.say, edit);
  std::vector<Tile> faces;
  faces.reserve(tiles.size());
  for (const PlanTile& tile : tiles) faces.push_back(tile.tile);
  const int tapped = draw_tiles(stage, body, faces, drawn || portrait ? 2 : 3, edit.turn);
  if (tapped >= 0) tiles[static_cast<std::size_t>(tapped)].tapped(edit);
  // Whatever else is tapped takes the question back.
  if (asked && canvas.tap()) edit.removing = false;
}

void draw_plan_from(Stage& stage, const Box& box, PlanFromDraft& draft,
                    const std::vector<PourCard>& pours, const PoursPart& part) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::plan_from));
  const Box first = in.cut_top(canvas.mm(18), gap);
  Drafts& drafts = stage.drafts;
  // A plan in the making goes for a new one by a second tap only.
  const auto begins = [&](const Box& place, ButtonSpec spec) {
    const bool asked = draft.asked == spec.id;
    if (asked) {
      spec.under = say(Word::plan_instead);
      spec.look = Look::stop;
    }
    if (!button(canvas, place, spec)) return false;
    if (asked || !drafts.plan) return true;
    draft.asked = spec.id;
    return false;
  };
  const auto begin = [&](PlanDraft made) {
    drafts.plan.emplace();
    drafts.plan->draft = std::move(made);
    stage.open(PlanPanel{});
  };
  if (begins(first.column(0, 2, gap), {.id = "plan empty",
                                       .text = say(Word::plan_empty),
                                       .look = Look::act,
                                       .symbol = Symbol::plus})) {
    begin(empty_plan(say.units));
    return;
  }
  if (drafts.plan) {
    const std::string& name = drafts.plan->draft.plan.name;
    if (button(canvas, first.column(1, 2, gap),
               {.id = "plan go-on",
                .text = say(Word::plan_go_on),
                .under = name.empty() ? say(Word::plan_unnamed) : name,
                .look = Look::act,
                .symbol = Symbol::forward,
                .free_text = true})) {
      drafts.plan->field.reset();
      drafts.plan->naming = Name::none;
      stage.open(PlanPanel{});
    }
  }
  const float tall = canvas.scale().target();
  const Pages pages = turn_pages(stage, in, part.total, draft.page, "copies", tall);
  want_pours(stage, part, pours.size(), pages.first, pages.lines);
  for (std::size_t i = 0; i < pages.lines; ++i) {
    const std::size_t at = pages.first + i;
    if (at < part.first || at >= part.first + pours.size()) continue;  // it comes
    const PourCard& pour = pours[at - part.first];
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    if (begins({pages.room.x0, top, pages.room.x1, top + tall},
               {.id = "plan copy " + pour.id.text,
                .text = say(Word::plan_copy) + " \u00B7 " + pour.name,
                .under = say.day(pour.opened),
                .symbol = Symbol::list,
                .enabled = pour.plan != nullptr,
                .free_text = true})) {
      begin(copy_of(*pour.plan));
    }
  }
}

}  // namespace rb::screens
