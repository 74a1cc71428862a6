// Closing a pour: what is open is listed, and asked about.
#include <algorithm>

#include "screens/entry/paging.h"
#include "screens/live/dialogs.h"

namespace rb::screens {

namespace {

// What a foreman would be asked for later: lifts, rows, loads, the walk-down, what was found.
std::vector<std::string> open_at_close(const Say& say, const PourView& view) {
  std::vector<std::string> open;
  for (const ElementChoice& it : view.elements) {
    if (it.placing) {
      open.push_back(it.id.text + ": " + say(Word::lift_placing, *it.placing, it.planned));
    }
    if (it.rows_to_run > 0) {
      open.push_back(it.id.text + ": " + say(Word::rows_not_enough, it.rows_to_run));
    }
  }
  int stops = view.behind.stops;
  int mends = view.behind.mends;
  for (const Finding& finding : view.attention) {
    ++(finding.severity == Severity::stop ? stops : mends);
  }
  if (stops + mends > 0) open.push_back(say(Word::close_behind, stops, mends));
  const auto trucks = std::count_if(view.trucks.begin(), view.trucks.end(), [](const auto& truck) {
    return truck.stage != TruckView::Stage::done;
  });
  if (trucks > 0) open.push_back(say(Word::close_trucks, trucks));
  const ReadyCounts ready = count(view.ready);
  if (ready.open() > 0) open.push_back(say(Word::close_ready, ready.open(), ready.all));
  return open;
}

}  // namespace

void draw_close(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::close_pour));
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  bool running = false;
  for (const ElementChoice& element : view.elements) running = running || element.rows_running > 0;
  const std::vector<std::string> open = open_at_close(say, view);
  if (!open.empty() && !running) {
    tag(canvas, in.cut_top(canvas.height(Face::small), canvas.mm(1)), Symbol::mend_sign,
        say(Word::close_pour_open), Look::mend);
    for (const std::string& line : open) {
      if (in.h() < 4 * canvas.height(Face::small)) break;
      canvas.text("\u2013 " + line, in.cut_top(canvas.height(Face::small)),
                  {.face = Face::small, .colours = canvas.on_panel(), .free_text = true});
    }
    in.cut_top(0, canvas.mm(2));
  }
  canvas.text(say(running ? Word::close_pour_rows : Word::close_pour_ask), in,
              {.colours = canvas.on_panel(), .down = Down::top, .lines = 6});
  back_button(stage, foot.column(0, 2, gap), Word::cancel);
  if (button(canvas, foot.column(1, 2, gap),
             {.id = "close now",
              .text = say(open.empty() ? Word::close_pour : Word::close_anyway),
              .look = open.empty() ? Look::act : Look::mend,
              .symbol = Symbol::check,
              .enabled = !running && !view.closed})) {
    stage.keep(event::PourClose{});
    stage.close();
  }
}

}  // namespace rb::screens
