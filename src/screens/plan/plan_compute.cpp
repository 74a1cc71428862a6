#include "screens/plan/plan_compute.h"

#include <algorithm>
#include <array>

#include "screens/plan/plan_fields.h"

namespace rb::screens {

namespace {

constexpr std::array kNeededOfDeck{PlanField::length, PlanField::height, PlanField::thickness};
constexpr std::array kNeeded{PlanField::length,      PlanField::height,      PlanField::thickness,
                             PlanField::form_rating, PlanField::motor_force, PlanField::motor_amps};

// By PlanLimit.
constexpr std::array kLimits{
    Word::planned_by_wish, Word::planned_by_designer, Word::planned_by_form,
    Word::planned_by_head, Word::planned_by_knit,     Word::planned_by_trucks,
    Word::planned_by_age,  Word::planned_by_crew,     Word::planned_by_vibrators};

bool of_deck(const Element& element) {
  return element.kind == ElementKind::deck;
}

// The names of what is needed and not given: "form rating, motor's force".
std::string missing(const Say& say, const PlanEdit& edit) {
  std::string names;
  const auto ask = [&](PlanField field) {
    const FieldRef ref{field, edit.of, 0};
    if (is_given(edit.draft, ref)) return;
    if (!names.empty()) names += ", ";
    names += field_label(say, edit.draft, ref);
  };
  if (of_deck(edit.draft.plan.elements[edit.of])) {
    std::for_each(kNeededOfDeck.begin(), kNeededOfDeck.end(), ask);
  } else {
    std::for_each(kNeeded.begin(), kNeeded.end(), ask);
  }
  return names;
}

std::string in_words(const Say& say, const PlannedPour& planned) {
  const Element& element = planned.plan.elements.front();
  const bool deck = of_deck(element);
  const Amount rate{Measure::placing, trade::in_cubic_metres_per_hour(planned.placing)};
  std::string words = say(deck ? Word::planned_placing : Word::planned_rise,
                          deck ? say.amount(rate) : say.rise(planned.rise),
                          say(kLimits.at(static_cast<std::size_t>(planned.sets_rise))));
  const auto more = [&](const std::string& part) { words += " \u00B7 " + part; };
  if (!planned.method_holds) more(say(Word::planned_liquid));
  if (!deck) {
    more(element.rows.size() == 1
             ? say(Word::planned_row, planned.motors_a_row, planned.motors)
             : say(Word::planned_rows, element.rows.size(), planned.motors_a_row, planned.motors));
  }
  const std::string load = say.amount(rb::amount(planned.load));
  const std::string hourly = fmt::format("{:.1f}", planned.trucks_an_hour);
  more(planned.trucks == 1 ? say(Word::planned_load, load, hourly)
                           : say(Word::planned_loads, planned.trucks, load, hourly));
  more(span_text(planned.duration));
  if (planned.waits > Seconds{}) more(say(Word::planned_wait, span_text(planned.waits)));
  if (planned.hands_no_wait) {
    more(say(*planned.hands_no_wait == 1 ? Word::planned_hand : Word::planned_hands,
             *planned.hands_no_wait));
  }
  if (planned.motors_no_wait) {
    more(say(*planned.motors_no_wait == 1 ? Word::planned_motor : Word::planned_motors,
             *planned.motors_no_wait));
  }
  for (const GuessTold& guess : planned.guesses) {
    if (guess.changed) more(words_of(guess.words, say.voice()));
  }
  if (planned.insert_too && !deck) more(say(Word::planned_insert));
  return words;
}

}  // namespace

void draw_compute_button(Stage& stage, const Box& box, PlanEdit& edit) {
  if (button(stage.canvas, box,
             {.id = "compute",
              .text = stage.say(Word::plan_compute),
              .look = Look::act,
              .symbol = Symbol::check,
              .enabled = missing(stage.say, edit).empty()})) {
    edit.computed = compute(edit.draft, edit.of);
  }
}

void draw_paper_button(Stage& stage, const Box& box, const PlanEdit& edit) {
  if (!button(stage.canvas, box,
              {.id = "paper", .text = stage.say(Word::plan_paper), .symbol = Symbol::list})) {
    return;
  }
  auto planned = std::make_shared<PlannedPour>(**edit.computed);
  planned->plan.site = edit.draft.plan.site;
  planned->plan.name = edit.draft.plan.name;
  auto wish = std::make_shared<const PlanWish>(wish_for(edit.draft, edit.of));
  Voice voice = stage.say.voice();
  voice.units = edit.draft.plan.units;
  stage.intents.emplace_back(
      WriteSheet{std::move(planned), std::move(wish), voice, stage.tapped()});
}

namespace {

// How the sheet on paper stands; nothing where none was asked for.
void draw_paper_end(Stage& stage, Box& in) {
  if (stage.mirror == nullptr) return;
  using State = CopySeen::State;
  const CopySeen& paper = stage.mirror->paper;
  if (paper.state == State::none) return;
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Box line = in.cut_bottom(canvas.height(Face::small), canvas.mm(1));
  if (paper.state == State::under_way) {
    tag(canvas, line, Symbol::clock, say(Word::paper_under_way), Look::off, Face::small);
  } else {
    const bool made = paper.state == State::made;
    tag(canvas, line, made ? Symbol::check : Symbol::stop_sign,
        say(made ? Word::paper_made : Word::paper_failed, paper.says),
        made ? Look::well : Look::stop, Face::small, true);
  }
}

}  // namespace

void draw_computed(Stage& stage, const Box& box, const PlanEdit& edit) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  Box in = box;
  canvas.text(say(of_deck(edit.draft.plan.elements[edit.of]) ? Word::planned_deck_caution
                                                             : Word::planned_caution),
              in.cut_bottom(canvas.height(Face::small)),
              {.face = Face::small, .colours = canvas.on_page()});
  draw_paper_end(stage, in);
  const std::string lacks = missing(say, edit);
  if (!lacks.empty()) {
    tag(canvas, in, Symbol::note_sign, say(Word::planned_missing, lacks), Look::off, Face::small,
        true);
  } else if (!edit.computed) {
    tag(canvas, in, Symbol::note_sign, say(Word::planned_ready), Look::off, Face::small);
  } else if (!*edit.computed) {
    tag(canvas, in, Symbol::mend_sign, fault_words(say, edit.draft, edit.computed->error()),
        Look::mend, Face::small, true);
  } else {
    tag(canvas, in, Symbol::mend_sign, in_words(say, **edit.computed), Look::off, Face::small);
  }
}

}  // namespace rb::screens
