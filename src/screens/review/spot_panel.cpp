#include "screens/review/spot_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/review/side_pages.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

// Rounded down: what is short of a least never looks like it.
std::string whole_down(Seconds span) {
  return fmt::format("{:.0f}", std::floor(span.count() + 1e-6));
}

std::string load_words(const Say& say, const SpotLoad& load) {
  std::string words = say(Word::spot_load, load.ticket.text);
  const auto add = [&](const std::string& part) { words += " \u00B7 " + part; };
  if (load.age) add(say(Word::spot_load_age, span_text(*load.age)));
  if (load.slump)
    add(say(Word::spot_load_slump, say.amount({Measure::small_length, in_metres(*load.slump)})));
  if (load.temp) add(say.temperature(*load.temp));
  return words;
}

std::string rows_words(const Say& say, const std::vector<RowPlace>& rows, Naming naming) {
  std::string words;
  for (const RowPlace& row : rows) {
    words += (words.empty() ? "" : ", ") + row_name(say, row, naming.two_sides);
  }
  return words;
}

void add_work(std::vector<SpotLine>& lines, const Say& say, const SpotView& view, Naming naming) {
  if (view.judged) {
    const bool low = view.dose < view.dose_min - Seconds{1e-6};
    lines.push_back({say(low ? Word::spot_dose_low : Word::spot_dose, whole_down(view.dose),
                         fmt::format("{:g}", view.dose_min.count())),
                     low});
  } else {
    lines.push_back({say(Word::face_unjudged)});
  }
  for (const SpotShaken& piece : view.shaken) {
    std::string words = say(Word::spot_shaken, whole_down(piece.span()), say.clock(piece.from),
                            rows_words(say, piece.rows, naming));
    if (piece.counts < 1) {
      words += " \u00B7 " + say(Word::slow_counts, fmt::format("{:.2f}", piece.counts));
    }
    lines.push_back({std::move(words)});
  }
  if (view.after > Seconds{0.5}) {
    lines.push_back({say(Word::spot_after, whole_down(view.after)), true});
  }
  for (const SpotInserted& insert : view.inserted) {
    lines.push_back({insert.counts ? say(Word::spot_inserted, say.clock_short(insert.at),
                                         fmt::format("{:g}", insert.each.count()))
                                   : say(Word::spot_not_inserted, say.clock_short(insert.at))});
  }
}

void add_head(std::vector<SpotLine>& lines, const Say& say, const SpotView& view) {
  if (!view.head) return;
  const std::string head = say.pressure(*view.head);
  const std::string at = say.clock_short(*view.head_at);
  if (!view.rating) {
    lines.push_back({say(Word::spot_head_unrated, head, at)});
  } else {
    lines.push_back({say(view.head_over ? Word::spot_head_over : Word::spot_head, head, at,
                         say.pressure(*view.rating)),
                     view.head_over});
  }
}

void add_cover(std::vector<SpotLine>& lines, const Say& say, const SpotView& view) {
  if (view.workable && view.sets) {
    lines.push_back(
        {say(Word::spot_sets, say.clock_short(*view.workable), say.clock_short(*view.sets))});
  }
  if (!view.covered) {
    lines.push_back({say(Word::spot_uncovered)});
  } else {
    lines.push_back({say(view.covered_late ? Word::spot_covered_late : Word::spot_covered,
                         say.clock_short(*view.covered), span_text(*view.cover_age)),
                     view.covered_late});
  }
}

}  // namespace

std::string spot_title(const Say& say, const SpotView& view) {
  return view.element.text + " " +
         say(view.side == Side::near_side ? Word::near_side : Word::far_side) + " \u00B7 " +
         say(Word::spot_at, view.bay + 1, say.height(view.at.x), say.height(view.at.z));
}

std::vector<SpotLine> spot_lines(const Say& say, const SpotView& view, Naming naming) {
  std::vector<SpotLine> lines;
  for (const SpotBlemish& seen : view.blemishes) {
    lines.push_back({say(Word::spot_blemish, seen.number, seen.kind), true});
  }
  if (view.opening) {
    lines.push_back({say(Word::spot_opening)});
    return lines;
  }
  if (!view.came) {
    lines.push_back({say(Word::spot_empty)});
    return lines;
  }
  lines.push_back({say(Word::spot_came, view.lift.value_or(0), say.clock(*view.came))});
  if (view.start_missing) lines.push_back({say(Word::spot_start_missing), true});
  for (const SpotLoad& load : view.loads) lines.push_back({load_words(say, load)});
  if (view.loads.empty()) lines.push_back({say(Word::spot_load_unknown)});
  add_work(lines, say, view, naming);
  add_head(lines, say, view);
  add_cover(lines, say, view);
  return lines;
}

void draw_spot(Stage& stage, const Box& box, const SpotView& view, Naming naming, int& page) {
  Canvas& canvas = stage.canvas;
  Box in = box;
  const float gap = canvas.mm(0.5);
  const float tall = 2 * canvas.height(Face::small);
  canvas.text(spot_title(stage.say, view), in.cut_top(tall, gap),
              {.face = Face::strong, .colours = canvas.on_panel(), .lines = 2, .free_text = true});
  const std::vector<SpotLine> lines = spot_lines(stage.say, view, naming);
  const SidePages pages = side_pages(stage, in, lines.size(), page, "story", tall, gap);
  Box room = pages.room;
  for (std::size_t i = pages.first; i < pages.first + pages.lines && i < lines.size(); ++i) {
    Box line = room.cut_top(tall, gap);
    const Box sign = line.cut_left(canvas.mm(4), canvas.mm(1));
    if (lines[i].wrong) {
      canvas.symbol(Symbol::mend_sign, sign.inset(0, (sign.h() - canvas.mm(3.6)) / 2),
                    canvas.theme().ink);
    }
    canvas.text(lines[i].text, line,
                {.face = lines[i].wrong ? Face::strong : Face::body,
                 .colours = canvas.on_panel(),
                 .lines = 2,
                 .free_text = true});
  }
}

}  // namespace rb::screens
