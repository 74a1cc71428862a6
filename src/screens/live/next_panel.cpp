#include "screens/live/next_panel.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "screens/entry/paging.h"
#include "screens/live/rows_panel.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

std::string listed(const std::string& list, const std::string& one) {
  return list.empty() ? one : list + ", " + one;
}

struct CardWords {
  std::string first, second;
  Symbol symbol = Symbol::check;
  bool waits = false;  ///< a hand is wanted
};

CardWords card_words(const Say& say, const PourView& view) {
  CardWords words;
  std::string waiting;
  std::string running;
  std::string hang;
  std::string held;
  for (const RunNowView& row : view.run_now) {
    std::string& list = row.wait == RunWait::head_over  ? held
                        : row.running                   ? running
                        : row.wait == RunWait::not_hung ? hang
                                                        : waiting;
    list = listed(list, row_name(say, row.place, view.two_sides));
  }
  if (!waiting.empty()) {
    words.first = say(Word::next_run, waiting);
    words.symbol = Symbol::run;
    words.waits = true;
  } else if (!running.empty()) {
    words.first = say(Word::next_rest, running);
    words.symbol = Symbol::clock;
  } else if (!hang.empty()) {
    words.first = say(Word::next_hang_first, hang);
    words.symbol = Symbol::cable;
    words.waits = true;
  } else if (!held.empty()) {
    words.first = say(Word::next_held, held);
    words.symbol = Symbol::stop_sign;
  }
  if (!view.moves.empty()) {
    const MoveView& move = view.moves.front();
    const std::string to = row_name(say, move.to, view.two_sides);
    std::string from;
    for (const MoveView::From& f : move.from) {
      from = listed(from, row_name(say, f.place, view.two_sides));
    }
    const std::string line =
        from.empty() ? say(Word::next_hang, to) : say(Word::next_move, from + " \u2192 " + to);
    // Already said: the same row, its motors down.
    const bool said_first =
        from.empty() && std::any_of(view.run_now.begin(), view.run_now.end(), [&](const auto& run) {
          return run.wait == RunWait::not_hung && !run.running && run.place == move.to;
        });
    if (words.symbol == Symbol::cable && said_first) return words;
    if (words.first.empty()) words.symbol = Symbol::rise;
    (words.first.empty() ? words.first : words.second) = line;
    words.waits = true;
  }
  if (words.first.empty()) words.first = say(Word::next_nothing);
  return words;
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

void draw_next_card(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const CardWords words = card_words(stage.say, view);
  const bool two = !words.second.empty();
  if (canvas.target("next", box, words.first + (two ? " " + words.second : ""))) {
    stage.open(NextDraft{});
  }
  const Pair pair = canvas.theme().quiet;
  const float radius = canvas.mm(1.6);
  canvas.fill(box, pair.ground, radius);
  const bool pressed = canvas.pressed("next");
  canvas.edge(box, pressed || words.waits ? canvas.theme().ink : canvas.theme().line,
              canvas.mm(pressed       ? 1.2
                        : words.waits ? 0.6
                                      : 0.25),
              radius);
  Box in = box.inset(canvas.mm(1.8), canvas.mm(0.9));
  const Box more = in.cut_right(canvas.mm(5), canvas.mm(1.5));
  canvas.symbol(Symbol::forward, more.inset(0, (in.h() - canvas.mm(5)) / 2), pair.ink);
  const Box sign = in.cut_left(canvas.mm(6), canvas.mm(2));
  canvas.symbol(words.symbol, sign.inset(0, (in.h() - canvas.mm(6)) / 2), pair.ink);
  const TextStyle strong{
      .face = Face::strong, .colours = pair, .lines = two ? 1 : 2, .free_text = true};
  if (!two) {
    canvas.text(words.first, in, strong);
    return;
  }
  const float tall = canvas.height(Face::strong);
  in.y0 += std::max(0.0F, std::floor((in.h() - 2 * tall) / 2));
  canvas.text(words.first, in.cut_top(tall), strong);
  in.y1 = in.y0 + tall;
  canvas.text(words.second, in, {.face = Face::strong, .colours = pair, .free_text = true});
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
