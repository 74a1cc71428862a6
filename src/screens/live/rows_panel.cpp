#include "screens/live/rows_panel.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

constexpr double kTallestMm = 27.0;
constexpr double kCardMm = 58.0;  // the narrowest a card is legible at

Look look_of_word(DoseWord word) {
  switch (word) {
    case DoseWord::enough:
      return Look::well;
    case DoseWord::over:
      return Look::mend;
    case DoseWord::more:
      return Look::live;
    case DoseWord::none:
      break;
  }
  return Look::quiet;
}

std::string dose_words(const Say& say, const RowView& row) {
  switch (row.word) {
    case DoseWord::more:
      if (row.running_since && row.counts < 1) {
        return say(Word::seconds_more, whole_seconds(row.to_go)) + " \u00B7 " +
               slow_words(say, row);
      }
      return say(Word::seconds_more, whole_seconds(row.to_go));
    case DoseWord::enough:
      return say(Word::enough);
    case DoseWord::over:
      return say(Word::seconds_over, whole_seconds(row.to_go));
    case DoseWord::none:
      break;
  }
  return say(Word::not_run_yet);
}

// A word or two: they stand under RUN.
std::string why_not_run(const Say& say, RunWait wait) {
  switch (wait) {
    case RunWait::cleared:
      return say(Word::wait_cleared);
    case RunWait::head_over:
      return say(Word::caution_head);
    case RunWait::empty:
      return say(Word::wait_empty);
    case RunWait::unread:
      return say(Word::wait_unread);
    case RunWait::over_set:
      return say(Word::wait_set);
    case RunWait::not_hung:
      return say(Word::caution_not_hung);
    case RunWait::not_served:
      return say(Word::wait_not_served);
    case RunWait::enough:
      return say(Word::enough);
    case RunWait::none:
    case RunWait::closed:  // the whole screen says so
      break;
  }
  return {};
}

// More running would do no good, however short it ran.
bool too_late_or_early(RunWait wait) {
  return wait == RunWait::over_set || wait == RunWait::empty || wait == RunWait::unread;
}

struct Caution {
  std::string words;
  Symbol symbol = Symbol::none;
  Look look = Look::quiet;
};

Caution caution_of(const Say& say, const RowView& row) {
  switch (row.caution) {
    case RowCaution::head_over:
      return {say(Word::caution_head), Symbol::stop_sign, Look::stop};
    case RowCaution::cables_open:
      return {say(Word::caution_cables), Symbol::mend_sign, Look::mend};
    case RowCaution::tripped:
      return {say(Word::caution_tripped), Symbol::mend_sign, Look::mend};
    case RowCaution::not_hung:
      return {say(Word::caution_not_hung), Symbol::cable, Look::off};
    case RowCaution::no_concrete:
      return {say(Word::caution_no_concrete), Symbol::none, Look::off};
    case RowCaution::none:
      break;
  }
  return {};
}

// The left part of a card: who the row is and how it stands. Tapping it opens the row.
void draw_info(Stage& stage, const Box& box, const RowView& row, bool two_sides) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const std::string name = row_name(say, row.place, two_sides);
  const std::string id = "row-info " + row.place.row.text + " " + to_text(row.place.side);
  const bool running = row.running_since.has_value();
  const Caution caution = caution_of(say, row);
  const bool ran = row.ran > Seconds{0} || running;
  const bool no_more = !running && row.word == DoseWord::more && too_late_or_early(row.wait);
  // It ran for this lift and hangs here no more: what it had is past, enough or not.
  const bool down = ran && !running && row.caution == RowCaution::not_hung;
  const std::string state = down      ? std::string{say(Word::take_down)}
                            : no_more ? why_not_run(say, row.wait)
                            : ran     ? dose_words(say, row)
                                      : head_words(say, row);
  if (canvas.target(id, box, name + " " + (ran ? timer(row.ran) + " " : "") + state)) {
    stage.open(RowDraft{row.place});
  }
  const Pair ground = canvas.theme().quiet;
  const float radius = canvas.mm(1.6);
  canvas.fill(box, ground.ground, radius);
  canvas.edge(box, canvas.pressed(id) ? canvas.theme().ink : canvas.theme().line,
              canvas.mm(canvas.pressed(id) ? 1.2 : 0.25), radius);
  if (row.serves_lift) {
    // A solid post at the edge: this row has work to do for the lift.
    canvas.fill({box.x0, box.y0 + radius, box.x0 + canvas.mm(1.6), box.y1 - radius},
                canvas.theme().act.ground);
  }
  Box in = box.inset(canvas.mm(2.4), canvas.mm(0.9));
  Box bar{};
  if (ran) bar = in.cut_bottom(canvas.mm(2.6), canvas.mm(1.6)).inset(0, canvas.mm(0.4));
  // The time of what runs is the largest thing there is.
  const auto fits = [&](Face face) {
    return in.h() >= canvas.height(face) + canvas.height(Face::small);
  };
  const Face figures = running && fits(Face::timer) ? Face::timer
                       : fits(Face::huge)           ? Face::huge
                                                    : Face::title;
  const bool roomy = figures != Face::title;
  // Words in two lines below the name come before an even halving.
  const float words = 2 * canvas.height(Face::small);
  const float half = ran ? in.h() / 2 : std::min(in.h() / 2, in.h() - words);
  Box first = in.cut_top(std::max(half, ran && roomy ? canvas.height(figures) : 0.0F));
  const Box label = canvas.text(row.place.row.text, first,
                                {.face = Face::title, .colours = ground, .free_text = true});
  Box beside{label.x1 + canvas.mm(1.5), first.y0, first.x1, first.y1};
  if (ran) {
    canvas.text(timer(row.ran), beside,
                {.face = figures, .colours = ground, .across = Across::right});
  } else {
    canvas.text(say.height(row.z), beside,
                {.face = Face::small,
                 .colours = {ground.ground, canvas.theme().ink_soft},
                 .across = Across::right});
  }
  // A trip comes before how the run stands; any other caution only while nothing runs.
  const bool works = running || (ran && caution.words.empty());
  const bool cautioned = !caution.words.empty() && caution.look != Look::off;
  if (row.caution == RowCaution::tripped || (cautioned && !works)) {
    tag(canvas, in, caution.symbol, caution.words, caution.look);
  } else if (works) {
    if (row.word == DoseWord::enough || row.word == DoseWord::over) {
      tag(canvas, in, row.word == DoseWord::enough ? Symbol::check : Symbol::mend_sign, state,
          look_of_word(row.word));
    } else {
      canvas.text(state, in, {.face = Face::strong, .colours = ground, .lines = 2});
    }
  } else if (down) {
    tag(canvas, in, Symbol::cable, state, Look::off);
  } else if (ran) {
    tag(canvas, in, Symbol::none, state, look_of_word(row.word));
  } else {
    canvas.text(
        row.caution == RowCaution::not_hung && row.head ? caution.words : state, in,
        {.face = Face::small, .colours = {ground.ground, canvas.theme().ink_soft}, .lines = 2});
  }
  if (ran) {
    band_bar(canvas, bar, row.ran.count(), row.low.count(), row.high.count(),
             running ? look_of_word(row.word) : Look::quiet);
  }
}

void draw_card(Stage& stage, const Box& box, const RowView& row, const PourView& view) {
  const float gap = stage.canvas.gap();
  Box card = box;
  const float wide = std::max(stage.canvas.scale().target(), std::round(card.w() * 0.42F));
  const bool right = stage.settings.rows_on == HandSide::right;
  const Box press = right ? card.cut_right(wide, gap) : card.cut_left(wide, gap);
  draw_info(stage, card, row, view.two_sides);
  draw_row_button(stage, press, row, view);
}

long running_in(std::span<const RowView* const> rows) {
  return std::count_if(rows.begin(), rows.end(),
                       [](const RowView* row) { return row->running_since.has_value(); });
}

// The buttons that turn the pages; one that leads to running rows says so, in stripes and words.
// The first row of the page shown.
std::size_t turn_rows(Stage& stage, const Box& box, std::span<const RowView* const> rows,
                      std::size_t a_page, std::size_t pages) {
  int& page = stage.drafts.rows_page;
  page = std::clamp(page, 0, static_cast<int>(pages) - 1);
  const std::size_t first = static_cast<std::size_t>(page) * a_page;
  const auto turn = [&](int column, const char* id, Symbol symbol, int by,
                        std::span<const RowView* const> hidden) {
    const long running = running_in(hidden);
    ButtonSpec spec{.id = id,
                    .text = {},
                    .look = running > 0 ? Look::live : Look::quiet,
                    .symbol = symbol,
                    .enabled = !hidden.empty()};
    if (running > 0) spec.text = fmt::format("{} {}", running, stage.say(Word::running));
    if (button(stage.canvas, box.column(column, 2, stage.canvas.gap()), spec)) page += by;
  };
  turn(0, "rows up", Symbol::up, -1, rows.first(first));
  turn(1, "rows down", Symbol::down, 1, rows.subspan(std::min(first + a_page, rows.size())));
  return first;
}

// Which side's rows are shown. A side that runs while it is not shown says so, in stripes and
// words.
void draw_sides(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  Side& shown = stage.drafts.rows_side;
  int at = 0;
  for (const Side side : {Side::near_side, Side::far_side}) {
    const auto running = std::count_if(view.rows.begin(), view.rows.end(), [&](const RowView& row) {
      return row.place.side == side && row.running_since;
    });
    const bool on = side == shown;
    const bool hidden_run = !on && running > 0;
    ButtonSpec spec{.id = std::string("side ") + to_text(side),
                    .text = stage.say(side == Side::near_side ? Word::near_side : Word::far_side),
                    .look = hidden_run ? Look::live : (on ? Look::act : Look::quiet),
                    .symbol = on ? Symbol::check : (hidden_run ? Symbol::run : Symbol::none),
                    .face = Face::strong,
                    .repeats = true};
    if (running > 0) {
      spec.under = fmt::format("{} {}", running, stage.say(Word::running));
    }
    if (button(canvas, box.column(at++, 2, canvas.gap()), spec)) {
      shown = side;
      stage.drafts.rows_page = 0;
    }
  }
}

}  // namespace

std::string slow_words(const Say& say, const RowView& row) {
  return say(Word::slow_counts, fmt::format("{:.2f}", row.counts));
}

std::string head_words(const Say& say, const RowView& row) {
  if (!row.head) return say(Word::caution_no_concrete);
  const std::string about = row.head_about ? "~" : "";
  if (!row.rating) return say(Word::head_only, about + say.pressure(*row.head));
  return say(Word::head_of, about + say.pressure_bare(*row.head), say.pressure(*row.rating));
}

void draw_row_button(Stage& stage, const Box& box, const RowView& row, const PourView& view,
                     const std::string& before) {
  const Say& say = stage.say;
  const bool running = row.running_since.has_value();
  const std::string id = before + "row " + row.place.row.text + " " + to_text(row.place.side);
  ButtonSpec spec{.id = id,
                  .text = say(running ? Word::rest : Word::run),
                  .said = row_name(say, row.place, view.two_sides),
                  .look = running ? Look::live : Look::run,
                  .symbol = running ? Symbol::rest : Symbol::run,
                  .face = Face::title,
                  .enabled = !view.closed,
                  .symbol_above = box.h() >= stage.canvas.mm(20)};
  if (!running && row.caution == RowCaution::head_over) {
    // Said before it is pressed, in words and figures.
    spec.look = Look::stop;
    spec.under = head_words(say, row);
    spec.symbol = Symbol::stop_sign;
  } else if (!running && !row.run_wanted()) {
    // Neither the colour nor the sign of "go", and in words why.
    spec.look = Look::quiet;
    spec.symbol = Symbol::none;
    spec.under = why_not_run(say, row.wait);
  }
  if (button(stage.canvas, box, spec)) press_row_button(stage, row, view);
}

void press_row_button(Stage& stage, const RowView& row, const PourView& view) {
  if (row.running_since) {
    stage.keep(event::Rest{row.place});
  } else if (!row.gates.empty() || row.wait == RunWait::cleared) {
    stage.open(GateDraft{
        .place = row.place, .element = view.element_id, .lift = view.lift.latest.value_or(1)});
  } else {
    stage.keep(event::Run{row.place, std::nullopt});
  }
}

void draw_rows(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  if (view.rows.empty()) {
    panel(canvas, box);
    canvas.text(stage.say(Word::rows_none), box.inset(gap),
                {.colours = canvas.soft(), .across = Across::middle, .lines = 3});
    return;
  }
  Box room = box;
  if (view.two_sides) draw_sides(stage, room.cut_top(canvas.scale().target(), gap), view);
  std::vector<const RowView*> shown;
  for (const RowView& row : view.rows) {
    if (!view.two_sides || row.place.side == stage.drafts.rows_side) shown.push_back(&row);
  }
  const auto in_one = [&](float height) {
    return static_cast<std::size_t>((height + gap) / (canvas.scale().target() + gap));
  };
  // Side by side before a second page: a row that runs is best seen without turning.
  const bool wide = room.w() >= 2 * canvas.mm(kCardMm) + gap && shown.size() > in_one(room.h());
  const std::size_t across = wide ? 2 : 1;
  std::size_t lines = std::max<std::size_t>(1, (shown.size() + across - 1) / across);
  std::size_t first = 0;
  if (lines > in_one(room.h())) {
    const std::size_t all = lines;
    const Box turn = room.cut_bottom(canvas.scale().target(), gap);
    lines = std::max<std::size_t>(1, in_one(room.h()));
    first = turn_rows(stage, turn, shown, lines * across, (all + lines - 1) / lines);
  }
  const float tall = std::min(canvas.mm(kTallestMm),
                              std::floor((room.h() + gap) / static_cast<float>(lines)) - gap);
  for (std::size_t i = 0; i < lines * across && first + i < shown.size(); ++i) {
    Box card = room.column(static_cast<int>(i % across), static_cast<int>(across), gap);
    const std::size_t line = i / across;
    card.y0 = std::round(room.y0 + static_cast<float>(line) * (tall + gap));
    card.y1 = card.y0 + tall;
    draw_card(stage, card, *shown[first + i], view);
  }
}

}  // namespace rb::screens
