#include "screens/entry/filter_panel.h"

#include <algorithm>
#include <functional>

#include "screens/entry/paging.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

using By = FilterDraft::By;

std::string told_filter(const Say& say, const TapFilter& filter, const PourView& view) {
  std::string words;
  const auto add = [&](const std::string& part) {
    words += (words.empty() ? "" : " \u00B7 ") + part;
  };
  if (filter.row) add(say(Word::place_row, row_name(say, *filter.row, view.naming.two_sides)));
  if (filter.lift) add(say(Word::place_lift, *filter.lift));
  if (filter.person) add(view.taps.name_of(*filter.person));
  if (filter.late) add(say(Word::filter_late));
  if (filter.corrected) add(say(Word::filter_corrected));
  return words.empty() ? say(Word::filter_all) : words;
}

// One thing a list may be narrowed to.
struct Choice {
  std::string text;
  bool chosen = false;
  std::function<void(TapFilter&)> set;
};

std::vector<Choice> choices_of(const Stage& stage, const FilterDraft& draft, const PourView& view) {
  const FilterChoices known = view.taps.choices();
  const Say& say = stage.say;
  const TapFilter& now = draft.set;
  std::vector<Choice> all;
  if (draft.choosing == By::row) {
    all.push_back({say(Word::filter_all), !now.row, [](TapFilter& f) { f.row.reset(); }});
    for (const RowPlace& row : known.rows) {
      const std::string name = row_name(say, row, view.naming.two_sides);
      all.push_back({view.naming.elements ? row.element.text + " " + name : name, now.row == row,
                     [row](TapFilter& f) { f.row = row; }});
    }
  } else if (draft.choosing == By::lift) {
    all.push_back({say(Word::filter_all), !now.lift, [](TapFilter& f) { f.lift.reset(); }});
    for (const int lift : known.lifts) {
      all.push_back(
          {say(Word::place_lift, lift), now.lift == lift, [lift](TapFilter& f) { f.lift = lift; }});
    }
  } else {
    all.push_back({say(Word::filter_all), !now.person, [](TapFilter& f) { f.person.reset(); }});
    for (const PersonId& person : known.people) {
      all.push_back({view.taps.name_of(person), now.person == person,
                     [person](TapFilter& f) { f.person = person; }});
    }
  }
  return all;
}

void draw_choices(Stage& stage, const Box& box, FilterDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  constexpr std::size_t kAbreast = 3;
  const std::vector<Choice> all = choices_of(stage, draft, view);
  const std::size_t lines = (all.size() + kAbreast - 1) / kAbreast;
  const Pages pages = turn_pages(stage, box, lines, draft.page, "filter");
  Box room = pages.room;
  for (std::size_t line = pages.first; line < pages.first + pages.lines && line < lines; ++line) {
    const Box here = room.cut_top(canvas.scale().target(), canvas.gap());
    for (std::size_t i = 0; i < kAbreast && line * kAbreast + i < all.size(); ++i) {
      const std::size_t n = line * kAbreast + i;
      if (button(canvas, here.column(static_cast<int>(i), kAbreast, canvas.gap()),
                 {.id = "choice " + std::to_string(n),
                  .text = all[n].text,
                  .look = all[n].chosen ? Look::act : Look::quiet,
                  .free_text = true})) {
        all[n].set(draft.set);
        draft.choosing = By::what;
        draft.page = 0;
      }
    }
  }
}

}  // namespace

void filter_button(Stage& stage, const Box& box, FilterDraft& draft, const PourView& view) {
  if (button(stage.canvas, box,
             {.id = "filter",
              .text = stage.say(Word::filter),
              .under = told_filter(stage.say, draft.set, view),
              .look = draft.set.any() ? Look::act : Look::quiet,
              .free_text = true})) {
    draft.choosing = By::what;
    draft.page = 0;
  }
}

bool draw_filter(Stage& stage, const Box& box, FilterDraft& draft, const PourView& view) {
  if (draft.choosing == By::none) return false;
  if (draft.choosing != By::what) {
    draw_choices(stage, box, draft, view);
    return true;
  }
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = box;
  const Box foot = in.cut_bottom(canvas.scale().target(), gap);
  in.y1 = std::min(in.y1, in.y0 + 2 * canvas.mm(25));
  const TapFilter& set = draft.set;
  const std::string all = say(Word::filter_all);
  const auto cell = [&](int i) { return in.line(i / 3, 2, gap).column(i % 3, 3, gap); };
  const auto by = [&](int i, const char* id, Word word, const std::string& now, By what) {
    if (!button(canvas, cell(i), {.id = id, .text = say(word), .under = now, .free_text = true})) {
      return;
    }
    draft.choosing = what;
    draft.page = 0;
  };
  by(0, "filter row", Word::filter_row,
     set.row ? row_name(say, *set.row, view.naming.two_sides) : all, By::row);
  by(1, "filter lift", Word::filter_lift, set.lift ? std::to_string(*set.lift) : all, By::lift);
  by(2, "filter person", Word::filter_person, set.person ? view.taps.name_of(*set.person) : all,
     By::person);
  const auto turn = [&](int i, const char* id, Word word, bool& on) {
    if (button(canvas, cell(i),
               {.id = id,
                .text = say(word),
                .look = on ? Look::act : Look::quiet,
                .symbol = on ? Symbol::check : Symbol::none})) {
      on = !on;
    }
  };
  turn(3, "filter late", Word::filter_late, draft.set.late);
  turn(4, "filter corrected", Word::filter_corrected, draft.set.corrected);
  if (button(canvas, foot.column(1, 3, gap),
             {.id = "filter off",
              .text = say(Word::filter_off),
              .symbol = Symbol::cross,
              .enabled = draft.set.any()})) {
    draft = {};
  }
  if (button(canvas, foot.column(2, 3, gap),
             {.id = "filter show",
              .text = say(Word::filter_show),
              .look = Look::act,
              .symbol = Symbol::check})) {
    draft.choosing = By::none;
    draft.page = 0;
  }
  back_button(stage, foot.column(0, 3, gap));
  return true;
}

}  // namespace rb::screens
