#include "screens/live/dialogs.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "screens/entry/paging.h"
#include "screens/live/rows_panel.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

Box foot_of(Stage& stage, Box& in) {
  return in.cut_bottom(std::max(stage.canvas.scale().target(), stage.canvas.mm(17)),
                       stage.canvas.gap());
}

// Ready answers two abreast; the index of the one tapped, or -1.
int answers(Stage& stage, Box in, const std::string& id, const std::vector<std::string>& words,
            Look look) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  const int lines = (static_cast<int>(words.size()) + 1) / 2;
  in.y1 = std::min(in.y1, in.y0 + static_cast<float>(lines) * canvas.mm(25));
  int tapped = -1;
  int i = 0;
  for (const std::string& text : words) {
    if (button(canvas, in.line(i / 2, lines, gap).column(i % 2, 2, gap),
               {.id = id + " " + std::to_string(i), .text = text, .look = look})) {
      tapped = i;
    }
    ++i;
  }
  return tapped;
}

const RowView* find_row(const PourView& view, const RowPlace& place) {
  for (const RowView& row : view.rows) {
    if (row.place == place) return &row;
  }
  return nullptr;
}

constexpr int kMoreCells = 16;

// Buttons filled in line by line: three abreast where all lines of them are a finger tall, else
// four.
class Cells {
 public:
  Cells(Stage& stage, const Box& in) : canvas_(stage.canvas), in_(in) {
    constexpr int kOfThree = (kMoreCells + 2) / 3;
    const float of_three = in_.line(0, kOfThree, canvas_.gap()).h();
    abreast_ = of_three >= canvas_.scale().target() ? 3 : 4;
    lines_ = (kMoreCells + abreast_ - 1) / abreast_;
    in_.y1 = std::min(in_.y1, in_.y0 + static_cast<float>(lines_) * canvas_.mm(27));
  }
  /// True when tapped.
  bool operator()(ButtonSpec spec) {
    const float gap = canvas_.gap();
    const Box place = in_.line(i_ / abreast_, lines_, gap).column(i_ % abreast_, abreast_, gap);
    ++i_;
    // A low cell has room for words alone.
    spec.symbol_above = place.h() >= canvas_.mm(22);
    if (!spec.symbol_above) spec.symbol = Symbol::none;
    return button(canvas_, place, spec);
  }

 private:
  Canvas& canvas_;
  Box in_;
  int i_ = 0, abreast_ = 3, lines_ = 1;
};

}  // namespace

void draw_hold(Stage& stage, const Box& box, const HoldDraft& draft) {
  Box in = panel_with_title(stage, box, stage.say(Word::hold_title));
  back_button(stage, foot_of(stage, in), Word::cancel);
  using event::Chosen;
  constexpr std::array kReasons{Chosen::pump_stopped, Chosen::no_trucks, Chosen::rain,
                                Chosen::form_or_bracing, Chosen::vibrator_or_power};
  std::vector<std::string> choices;
  choices.reserve(kReasons.size() + 1);
  for (const Chosen reason : kReasons)
    choices.emplace_back(told(stage.say.language, event::says(reason)));
  choices.push_back(stage.say(Word::hold_other));
  const int chosen = answers(stage, in, "hold", choices, Look::act);
  if (chosen < 0) return;
  stage.close();
  const auto which = static_cast<std::size_t>(chosen);
  if (which == kReasons.size()) {
    stage.open(TypeDraft{.use = TypeDraft::Use::hold, .at = draft.at});
  } else {
    stage.keep(event::Hold{event::says(kReasons[which]), kReasons[which]}, draft.at);
  }
}

void draw_note(Stage& stage, const Box& box, const NoteDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  Box in = panel_with_title(stage, box, stage.say(Word::note_title));
  const Box foot = foot_of(stage, in);
  back_button(stage, foot.column(0, 3, canvas.gap()), Word::cancel);
  if (button(canvas, foot.column(1, 3, canvas.gap()),
             {.id = "after pour", .text = stage.say(Word::after_pour)})) {
    stage.open(AfterDraft{});
  }
  if (button(canvas, foot.column(2, 3, canvas.gap()),
             {.id = "note typed", .text = stage.say(Word::note_typed)})) {
    stage.open(TypeDraft{.use = TypeDraft::Use::note, .at = draft.at});
  }
  using event::Chosen;
  using event::Moving;
  constexpr std::array<std::variant<Chosen, Moving>, 6> kNotes{
      Chosen::grout_leaks, Moving::form,    Moving::motor,
      Chosen::mix_dry,     Chosen::mix_wet, Chosen::inspector_on_site};
  std::vector<std::string> choices;
  choices.reserve(kNotes.size());
  for (const auto& note : kNotes) {
    const auto* thing = std::get_if<Moving>(&note);
    choices.emplace_back(told(stage.say.language, thing != nullptr
                                                      ? event::Moved::says(*thing)
                                                      : event::says(std::get<Chosen>(note))));
  }
  const int chosen = answers(stage, in, "note", choices, Look::act);
  if (chosen < 0) return;
  stage.close();
  const auto& note = kNotes[static_cast<std::size_t>(chosen)];
  if (const auto* thing = std::get_if<Moving>(&note)) {
    // No note: the pour stops and everybody keeps away.
    stage.keep(event::Moved{*thing, view.element_id, {}}, draft.at);
  } else {
    const Chosen said = std::get<Chosen>(note);
    stage.keep(event::Note{event::says(said), {}, {}, said}, draft.at);
  }
}

void draw_row(Stage& stage, const Box& box, const RowDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const RowView* row = find_row(view, draft.place);
  Box in =
      panel_with_back(stage, box, say(Word::row_title, row_name(say, draft.place, view.two_sides)));
  if (row == nullptr) return;
  const auto tell = [&](const std::string& text, Face face = Face::body) {
    canvas.text(text, in.cut_top(canvas.height(face), canvas.mm(0.8)),
                {.face = face, .colours = canvas.on_panel()});
  };
  tell(say(Word::row_at, say.height(row->z)) + " \u00B7 " +
       say(Word::row_reach, say.height_bare(row->reach_low), say.height(row->reach_high)) +
       " \u00B7 " +
       say(row->spots.size() == 1 ? Word::row_motor : Word::row_motors, row->spots.size()));
  tell(head_words(say, *row));
  if (row->running_since && row->counts < 1) tell(slow_words(say, *row));
  tell(say(Word::ran, timer(row->ran)) +
       (view.lift.latest ? " " + say(Word::for_this_lift, *view.lift.latest) : ""));
  const Word hung = !row->hung    ? Word::row_not_hung
                    : row->cables ? Word::row_hung_cables
                                  : Word::row_hung_open;
  const Box state = in.cut_top(canvas.height(Face::strong) * 2, gap);
  canvas.text(say(hung), state, {.face = Face::strong, .colours = canvas.on_panel(), .lines = 2});
  const bool running = row->running_since.has_value();
  const bool can = !view.closed;
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(21));
  if (button(canvas, in.line(2, 3, gap),
             {.id = "motor out",
              .text = say(Word::motor_out),
              .symbol = Symbol::cross,
              .enabled = can && row->hung})) {
    stage.open(MotorOutDraft{draft.place});
  }
  if (button(canvas, in.line(1, 3, gap).column(1, 2, gap),
             {.id = "ran earlier",
              .text = say(Word::ran_earlier),
              .symbol = Symbol::clock,
              .enabled = !running})) {
    stage.open(RanEarlierDraft{.place = draft.place, .span = view.dose_min});
  }
  if (button(canvas, in.line(0, 3, gap).column(0, 2, gap),
             {.id = "hang fixed",
              .text = say(Word::hang_cables_fixed),
              .look = row->hung && row->cables ? Look::quiet : Look::act,
              .symbol = Symbol::check,
              .enabled = can && !(row->hung && row->cables)})) {
    stage.keep(event::Hang{draft.place, {}, true});
    stage.close();
  }
  if (button(canvas, in.line(0, 3, gap).column(1, 2, gap),
             {.id = "hang open",
              .text = say(Word::hang_cables_open),
              .symbol = Symbol::mend_sign,
              .enabled = can && !(row->hung && !row->cables)})) {
    stage.keep(event::Hang{draft.place, {}, false});
    stage.close();
  }
  if (button(canvas, in.line(1, 3, gap).column(0, 2, gap),
             {.id = "take down",
              .text = say(Word::take_down),
              .under = running ? say(Word::take_down_running) : "",
              .symbol = Symbol::down,
              .enabled = can && row->hung && !running})) {
    stage.keep(event::TakeDown{draft.place});
    stage.close();
  }
}

void draw_more(Stage& stage, const Box& box, const PourView& view, const Plan& plan) {
  const Say& say = stage.say;
  Box in = panel_with_title(stage, box, say(Word::more_title));
  back_button(stage, foot_of(stage, in));
  Cells cell(stage, in);
  const auto waiting = std::count_if(
      view.trucks.begin(), view.trucks.end(),
      [](const TruckView& truck) { return truck.stage == TruckView::Stage::waiting; });
  if (cell({.id = "trucks",
            .text = say(Word::trucks),
            .under = waiting > 0 ? fmt::format("{} {}", waiting, say(Word::truck_waiting)) : "",
            .symbol = Symbol::list})) {
    stage.open(TrucksDraft{});
  }
  if (cell({.id = "inverters",
            .text = say(Word::inverters),
            .symbol = Symbol::cable,
            .enabled = !plan.power.empty()})) {
    stage.open(InvertersDraft{});
  }
  if (cell({.id = "pressure",
            .text = say(Word::pressure),
            .symbol = Symbol::rise,
            .enabled = !view.pressures.empty()})) {
    stage.open(PressureDraft{});
  }
  const Person* holder = holder_of(plan, stage.settings.holder);
  if (cell({.id = "holder",
            .text = say(Word::holder),
            .under = holder == nullptr ? "\u2013" : holder->name,
            .symbol = Symbol::pencil,
            .free_text = true})) {
    stage.open(HolderDraft{});
  }
  if (cell({.id = "amend",
            .text = say(Word::amend),
            .symbol = Symbol::pencil,
            .enabled = !view.closed})) {
    stage.open(AmendDraft{.at = stage.tapped()});
  }
  if (cell({.id = "all taps", .text = say(Word::last_taps_all), .symbol = Symbol::clock})) {
    stage.open(TapsDraft{});
  }
  if (cell({.id = "findings", .text = say(Word::findings), .symbol = Symbol::mend_sign})) {
    stage.open(FindingsDraft{});
  }
  if (cell({.id = "sign", .text = say(Word::sign), .symbol = Symbol::pencil})) {
    stage.open(SignDraft{});
  }
  if (cell({.id = "record", .text = say(Word::record), .symbol = Symbol::list})) {
    stage.open(RecordDraft{});
  }
  if (cell({.id = "review", .text = say(Word::review), .symbol = Symbol::level})) {
    stage.open(ReviewDraft{});
  }
  if (cell({.id = "settings",
            .text = say(Word::settings),
            .symbol = stage.settings.theme == ThemeName::sun ? Symbol::sun : Symbol::moon})) {
    stage.open(SettingsDraft{});
  }
  if (cell({.id = "ready", .text = say(Word::ready), .symbol = Symbol::check})) {
    stage.open(ReadyDraft{});
  }
  // Before the close as well: a deck is cured while it is poured.
  if (cell({.id = "after pour", .text = say(Word::after_pour), .symbol = Symbol::clock})) {
    stage.open(AfterDraft{});
  }
  if (!view.closed &&
      cell({.id = "close pour", .text = say(Word::close_pour), .symbol = Symbol::check})) {
    stage.open(CloseDraft{});
  }
  if (cell({.id = "wipe", .text = say(Word::wipe), .symbol = Symbol::hold})) {
    stage.drafts.wipe = true;
    stage.close();
  }
  if (cell({.id = "quit", .text = say(Word::quit), .symbol = Symbol::cross})) {
    stage.open(QuitDraft{});
  }
}

void draw_quit(Stage& stage, const Box& box) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::quit));
  const Box foot = foot_of(stage, in);
  // What waits for the disk would be lost: asked about.
  const std::string waits = keeping_told(say, stage.keeping, stage.now);
  const bool loses = !waits.empty() && stage.keeping.waiting > 0;
  canvas.text(loses ? waits + " " + say(Word::quit_waits) : say(Word::quit_ask), in,
              {.colours = canvas.on_panel(), .down = Down::top, .lines = 6});
  back_button(stage, foot.column(0, 2, gap), Word::cancel);
  if (button(canvas, foot.column(1, 2, gap),
             {.id = "quit now",
              .text = say(loses ? Word::quit_anyway : Word::quit),
              .look = loses ? Look::stop : Look::act,
              .symbol = Symbol::cross})) {
    stage.intents.emplace_back(Quit{});
  }
}

void draw_elements(Stage& stage, const Box& box, ElementsDraft& draft, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const Box in = panel_with_title(stage, box, say(Word::choose_element));
  const float tall = canvas.mm(18);
  const Pages pages = turn_pages(stage, in, view.elements.size(), draft.page, "elements", tall);
  for (std::size_t i = 0; i < pages.lines && pages.first + i < view.elements.size(); ++i) {
    const ElementChoice& it = view.elements[pages.first + i];
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    std::string under = it.placing ? say(Word::lift_placing, *it.placing, it.planned)
                                   : say(Word::page_of, it.lifts_done, it.planned);
    if (it.rows_running > 0) {
      under += fmt::format(" \u00B7 {} {}", say(Word::running), it.rows_running);
    }
    if (button(canvas, {pages.room.x0, top, pages.room.x1, top + tall},
               {.id = "element " + it.id.text,
                .text = it.id.text,
                .under = under,
                .look = it.rows_running > 0               ? Look::live
                        : pages.first + i == view.element ? Look::act
                                                          : Look::quiet,
                .free_text = true})) {
      stage.drafts.element = pages.first + i;
      stage.drafts.rows_page = 0;
      stage.close();
    }
  }
}

}  // namespace rb::screens
