#include "screens/live/next_panel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "screens/entry/paging.h"
#include "screens/live/lift_panel.h"
#include "screens/live/rows_panel.h"
#include "screens/view/event_words.h"
#include "screens/view/next_view.h"

namespace rb::screens {

namespace {

// What the card says and looks like; a step that a touch does has a look of its own.
struct CardWords {
  std::string first, second;
  Symbol symbol = Symbol::check;
  Look look = Look::quiet;
};

std::string alike_words(const Say& say, const NextStep& step) {
  return step.alike == 0 ? std::string{} : say(Word::next_alike, step.alike);
}

CardWords of_row(const Say& say, const PourView& view, const NextStep& step) {
  const RowView& row = *step.row;
  const std::string name = row_name(say, row.place, view.two_sides);
  std::string alike = alike_words(say, step);
  switch (step.what) {
    case NextDo::rest:
      return {say(Word::next_rest_now, name),
              row.word == DoseWord::over ? say(Word::seconds_over, whole_seconds(row.to_go))
                                         : say(Word::enough),
              Symbol::rest, Look::live};
    case NextDo::run:
      return {say(Word::next_run, name), alike, Symbol::run, Look::run};
    case NextDo::cables:
      return {say(Word::next_cables_first, name), alike, Symbol::cable, Look::act};
    case NextDo::hold:
      return {say(Word::next_held, name), head_words(say, row), Symbol::stop_sign, Look::stop};
    case NextDo::wait:
      return {
          say(Word::next_rest, name),
          row.word == DoseWord::more ? say(Word::seconds_more, whole_seconds(row.to_go)) : alike,
          Symbol::clock, Look::quiet};
    default:
      return {say(Word::next_read_top), say(Word::next_read_for, name), Symbol::level, Look::act};
  }
}

CardWords card_words(const Say& say, const PourView& view, const NextStep& step) {
  if (step.what == NextDo::nothing) return {say(Word::next_nothing), {}, Symbol::check, {}};
  if (step.row != nullptr) return of_row(say, view, step);
  const RowPlace& to = step.move != nullptr ? step.move->to : step.hang_first->place;
  const std::string name = row_name(say, to, view.two_sides);
  const std::string why = step.hang_first != nullptr ? say(Word::next_to_run, name)
                                                     : say(Word::next_for_lift, step.move->lift);
  if (step.what == NextDo::take_down) {
    return {say(Word::next_down, row_name(say, step.from->place, view.two_sides)),
            say(Word::next_motors_to, step.from->motors, name), Symbol::down, Look::act};
  }
  return {say(Word::next_up, name), why, Symbol::cable, Look::act};
}

// One line of the panel: what it is about, and up to two buttons.
struct NextLine {
  std::string text, under;
  std::function<void(Stage&, const Box&)> buttons;
};

// To the row, where it is said how it was hung; what moves its motors has a line of its own.
void hang_button(Stage& stage, const Box& box, const RunNowView& run, const PourView& view,
                 const std::string& name) {
  for (const MoveView& move : view.moves) {
    if (move.to == run.place) return;
  }
  if (button(stage.canvas, box,
             {.id = "hang " + run.place.row.text + " " + to_text(run.place.side),
              .text = stage.say(Word::next_up, name),
              .look = Look::act,
              .symbol = Symbol::cable,
              .enabled = !view.closed,
              .free_text = true})) {
    stage.open(RowDraft{run.place});
  }
}

NextLine run_line(const Say& say, const RunNowView& run, const PourView& view) {
  const std::string name = row_name(say, run.place, view.two_sides);
  const bool hang = run.wait == RunWait::not_hung && !run.running;
  return {say(run.wait == RunWait::head_over ? Word::next_held
              : run.running                  ? Word::next_rest
              : hang                         ? Word::next_hang_first
                                             : Word::next_run,
              name),
          say(Word::seconds_more, whole_seconds(run.to_go)),
          [&run, &view, hang, name](Stage& stage, const Box& box) {
            if (hang) {
              hang_button(stage, box, run, view, name);
              return;
            }
            for (const RowView& row : view.rows) {
              if (row.place == run.place) draw_row_button(stage, box, row, view, "next ");
            }
          }};
}

std::string for_lift(const Say& say, const MoveView& move) {
  std::string words = say(Word::next_for_lift, move.lift);
  if (move.due) words += " \u00B7 " + say(Word::wanted_about, say.clock_short(move.due->likely));
  return words;
}

NextLine down_line(const Say& say, const MoveView& move, const MoveView::From& from,
                   const PourView& view) {
  const std::string to = row_name(say, move.to, view.two_sides);
  const std::string name = row_name(say, from.place, view.two_sides);
  return {from.motors == 1 ? say(Word::next_move_one, name, to)
                           : say(Word::next_move_from, from.motors, name, to),
          for_lift(say, move), [&from, &view, name](Stage& stage, const Box& box) {
            if (button(stage.canvas, box,
                       {.id = "down " + from.place.row.text + " " + to_text(from.place.side),
                        .text = stage.say(Word::next_down, name),
                        .under = from.running ? stage.say(Word::take_down_running) : "",
                        .look = Look::act,
                        .symbol = Symbol::down,
                        .enabled = !from.running && !view.closed,
                        .free_text = true})) {
              stage.keep(event::TakeDown{from.place});
            }
          }};
}

NextLine hang_line(const Say& say, const MoveView& move, const PourView& view) {
  const std::string to = row_name(say, move.to, view.two_sides);
  return {move.down == 1 ? say(Word::next_hang_one, to) : say(Word::next_hang_on, move.down, to),
          for_lift(say, move), [&move, &view, to](Stage& stage, const Box& box) {
            if (button(stage.canvas, box,
                       {.id = "up " + move.to.row.text + " " + to_text(move.to.side),
                        .text = stage.say(Word::next_up, to),
                        .under = stage.say(Word::next_cables),
                        .look = Look::act,
                        .symbol = Symbol::cable,
                        .enabled = !view.closed,
                        .free_text = true})) {
              stage.keep(event::Hang{move.to, {}, true});
            }
          }};
}

// Whether a row with concrete in reach has not run enough, though nobody is to run it now.
bool short_of_it(const PourView& view) {
  return std::any_of(view.rows.begin(), view.rows.end(), [](const RowView& row) {
    const bool enough = row.word == DoseWord::enough || row.word == DoseWord::over;
    return row.serves_lift && row.wait != RunWait::empty && !enough;
  });
}

std::vector<NextLine> lines_of(const Say& say, const PourView& view) {
  std::vector<NextLine> lines;
  for (const RunNowView& run : view.run_now) lines.push_back(run_line(say, run, view));
  if (view.run_now.empty()) {
    lines.push_back(
        {say(short_of_it(view) ? Word::next_run_not_now : Word::next_run_none), "", {}});
  }
  for (const MoveView& move : view.moves) {
    for (const MoveView::From& from : move.from) {
      lines.push_back(down_line(say, move, from, view));
    }
    // What is down already is hung when the rest has come down too.
    if (move.from.empty()) lines.push_back(hang_line(say, move, view));
  }
  if (view.moves.empty()) lines.push_back({say(Word::next_move_none), "", {}});
  for (const KnitView& knit : view.knit) {
    lines.push_back({knit_words(say, view, knit), "", {}});
  }
  return lines;
}

}  // namespace

std::string knit_words(const Say& say, const PourView& view, const KnitView& knit) {
  const bool one = view.elevation.bays.size() < 2;
  if (knit.gone) {
    const std::string ago = span_text(between(knit.by, view.now));
    return one ? say(Word::knit_gone_all, ago) : say(Word::knit_gone, ago, knit.bay + 1);
  }
  const std::string by = say.clock_short(knit.by);
  const std::string left = span_text(between(view.now, knit.by));
  return one ? say(Word::knit_least_all, by, left) : say(Word::knit_least, by, left, knit.bay + 1);
}

namespace {

// The same as the line of the panel that tells it.
void do_step(Stage& stage, const PourView& view, const NextStep& step) {
  switch (step.what) {
    case NextDo::rest:
    case NextDo::run:
      press_row_button(stage, *step.row, view);
      break;
    case NextDo::cables:
      stage.open(RowDraft{step.row->place});
      break;
    case NextDo::take_down:
      stage.keep(event::TakeDown{step.from->place});
      break;
    case NextDo::hang:
      if (step.move != nullptr) {
        stage.keep(event::Hang{step.move->to, {}, true});
      } else {
        stage.open(RowDraft{step.hang_first->place});
      }
      break;
    case NextDo::read_top:
      open_top_pad(stage, view);
      break;
    default:
      stage.open(NextDraft{});
  }
}

// Names the step, not the place on the glass: a finger that comes down on one is not taken for
// another that stands there a moment later.
std::string step_id(const NextStep& step) {
  const RowPlace* place = step.row != nullptr          ? &step.row->place
                          : step.from != nullptr       ? &step.from->place
                          : step.move != nullptr       ? &step.move->to
                          : step.hang_first != nullptr ? &step.hang_first->place
                                                       : nullptr;
  constexpr std::array kNames{"nothing", "rest", "cables", "run", "take down",
                              "hang",    "hold", "wait",   "read"};
  std::string id = fmt::format("do {}", kNames.at(static_cast<std::size_t>(step.what)));
  if (place != nullptr) id += " " + place->row.text + " " + to_text(place->side);
  return id;
}

}  // namespace

void draw_next_card(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const NextStep step = next_step(view);
  const CardWords words = card_words(stage.say, view, step);
  Box room = box;
  const bool done_here = words.look != Look::quiet && step.what != NextDo::hold;
  if (done_here) {
    const Box list = room.cut_right(canvas.scale().target(), canvas.gap());
    if (button(canvas, list, {.id = "next", .text = {}, .symbol = Symbol::list})) {
      stage.open(NextDraft{});
    }
  }
  const float sign = canvas.mm(12);
  const bool fits = canvas.width(words.first, Face::huge) <= room.w() - sign &&
                    room.h() >= canvas.height(Face::huge) + canvas.height(Face::small);
  if (button(canvas, room,
             {.id = done_here ? step_id(step) : "next",
              .text = words.first,
              .under = words.second,
              .look = words.look,
              .symbol = words.symbol,
              .face = fits ? Face::huge : Face::title,
              .free_text = true})) {
    do_step(stage, view, step);
  }
}

void draw_next(Stage& stage, const Box& box, NextDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  const Box in = panel_with_title(stage, box, stage.say(Word::next_title));
  const std::vector<NextLine> lines = lines_of(stage.say, view);
  const float tall = canvas.mm(17);
  const Pages pages = turn_pages(stage, in, lines.size(), draft.page, "next", tall);
  for (std::size_t i = 0; i < pages.lines && pages.first + i < lines.size(); ++i) {
    const NextLine& line = lines[pages.first + i];
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    Box room{pages.room.x0, top, pages.room.x1, top + tall};
    if (line.buttons) {
      line.buttons(stage, room.cut_right(std::round(room.w() * 0.4F), gap));
    }
    const TextStyle strong{.face = Face::strong,
                           .colours = canvas.on_panel(),
                           .lines = 2,
                           .free_text = line.buttons != nullptr};
    if (line.under.empty()) {
      canvas.text(line.text, room, strong);
      continue;
    }
    const float both = canvas.height(Face::strong) + canvas.height(Face::small);
    room.y0 += std::max(0.0F, std::floor((room.h() - both) / 2));
    TextStyle one = strong;
    one.lines = 1;
    canvas.text(line.text, room.cut_top(canvas.height(Face::strong)), one);
    canvas.text(line.under, room.cut_top(canvas.height(Face::small)),
                {.face = Face::small, .colours = canvas.soft()});
  }
}

}  // namespace rb::screens
