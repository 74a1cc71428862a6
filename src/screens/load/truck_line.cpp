#include "screens/load/truck_line.h"

#include <algorithm>
#include <cmath>

namespace rb::screens {

namespace {

struct AgeLook {
  Look look;
  Symbol symbol;
  std::string words;
};

AgeLook age_of(const Say& say, const TruckView& truck) {
  switch (truck.word) {
    case TruckView::AgeWord::over:
      return {Look::mend, Symbol::mend_sign,
              say(Word::age_over, span_text(truck.age - truck.limit))};
    case TruckView::AgeWord::nearly:
      return {Look::mend, Symbol::clock, say(Word::age_nearly, span_text(truck.limit - truck.age))};
    case TruckView::AgeWord::young:
      return {Look::well, Symbol::clock, say(Word::age_left, span_text(truck.limit - truck.age))};
    case TruckView::AgeWord::unknown:
      break;
  }
  return {Look::off, Symbol::note_sign, say(Word::truck_unknown)};
}

Word stage_word(TruckView::Stage stage) {
  switch (stage) {
    case TruckView::Stage::discharging:
      return Word::truck_discharging;
    case TruckView::Stage::waiting:
      return Word::truck_waiting;
    case TruckView::Stage::done:
      break;
  }
  return Word::truck_done;
}

std::string load_name(const Say& say, const TruckView& truck) {
  std::string name = truck.ticket.text;
  if (!truck.mix.empty()) name += " \u00B7 " + truck.mix.text;
  if (truck.volume) name += " \u00B7 " + say.amount(rb::amount(*truck.volume));
  return name;
}

// The card leads to where the load went.
void draw_about(Stage& stage, const Box& box, const TruckView& truck) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Pair ground = canvas.theme().quiet;
  const std::string id = "load " + truck.ticket.text;
  card_ground(canvas, box);
  if (canvas.target(id, box, say(Word::load_where) + " " + load_name(say, truck))) {
    stage.open(LoadDraft{.ticket = truck.ticket});
  }
  if (canvas.pressed(id)) canvas.edge(box, canvas.theme().ink, canvas.mm(1.2), canvas.mm(1.6));
  if (truck.stage == TruckView::Stage::discharging) {
    canvas.hatch({box.x0 + canvas.mm(0.4), box.y0 + canvas.mm(1.6), box.x0 + canvas.mm(2.4),
                  box.y1 - canvas.mm(1.6)},
                 ground.ink, canvas.mm(2.4), false);
  }
  Box in = box.inset(canvas.mm(3.2), canvas.mm(1));
  const Box sign = Box{in}.cut_right(canvas.mm(4));
  const float small = canvas.height(Face::small);
  canvas.symbol(Symbol::pencil, {sign.x0, in.y0, sign.x1, in.y0 + canvas.mm(4)},
                canvas.theme().ink_soft);
  Box name = in.cut_top(canvas.height(Face::strong));
  name.x1 = sign.x0 - canvas.mm(1);
  canvas.text(load_name(say, truck), name,
              {.face = Face::strong, .colours = ground, .free_text = true});
  // The moment its discharge began gives way before the age does.
  std::string state = say(stage_word(truck.stage));
  std::string age_words;
  if (truck.batched) {
    age_words = " \u00B7 " + say(Word::age_of, span_text(truck.age), span_text(truck.limit));
  }
  if (truck.stage == TruckView::Stage::discharging && truck.discharged) {
    const std::string since = " " + say.clock_short(*truck.discharged);
    if (canvas.width(state + since + age_words, Face::small) <= in.w()) state += since;
  }
  // Where even that is too wide the sign below tells what is left of its age.
  if (canvas.width(state + age_words, Face::small) > in.w()) age_words.clear();
  canvas.text(state + age_words, in.cut_top(small), {.face = Face::small, .colours = ground});
  // What is placed grows no older: only that it was too old is worth a sign.
  if (truck.stage == TruckView::Stage::done && truck.batched &&
      truck.word != TruckView::AgeWord::over) {
    return;
  }
  const AgeLook age = age_of(say, truck);
  in.y1 = std::min(in.y1, in.y0 + small + canvas.mm(0.8));
  tag(canvas, in, age.symbol, age.words, age.look);
}

// What was found of the load, or that it was looked at.
std::string test_words(const Say& say, const TruckView& truck) {
  if (!truck.tested) return {};
  std::string words = truck.slump ? say.amount(rb::amount(*truck.slump)) : std::string{};
  if (truck.temp) words += (words.empty() ? "" : " \u00B7 ") + say.temperature(*truck.temp);
  return words.empty() ? std::string{say(Word::truck_tested)} : words;
}

bool goes_elsewhere(const TruckView& truck, const PourView& view) {
  return truck.rest_may_go && view.naming.elements && view.element_id != ElementId{} &&
         std::find(truck.elements.begin(), truck.elements.end(), view.element_id) ==
             truck.elements.end();
}

// Begins its discharge into the element shown, or ends it.
void draw_discharge(Stage& stage, const Box& box, const TruckView& truck, const PourView& view) {
  const bool begins = truck.stage != TruckView::Stage::discharging;
  if (!button(stage.canvas, box,
              {.id = (begins ? "discharge " : "end discharge ") + truck.ticket.text,
               .text = stage.say(begins ? Word::discharge_start : Word::discharge_end),
               .under = begins && view.naming.elements ? view.element_id.text : "",
               .said = truck.ticket.text,
               .look = goes_elsewhere(truck, view) ? Look::quiet
                       : begins                    ? Look::act
                                                   : Look::live,
               .face = Face::small,
               .enabled = !view.closed,
               .free_text = true})) {
    return;
  }
  const Moment at = stage.tapped();
  if (begins) {
    stage.keep(event::Discharge{truck.ticket, view.element_id, {}}, at);
  } else {
    stage.keep(event::Discharge{truck.ticket, truck.element, at}, at);
  }
}

}  // namespace

void draw_truck_line(Stage& stage, const Box& box, const TruckView& truck, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const bool can = !view.closed;
  Box about = box;
  const float wide = canvas.mm(27);
  const Box test = about.cut_right(wide, gap);
  // What is left of a load may go into another element.
  if (truck.stage != TruckView::Stage::done || (can && goes_elsewhere(truck, view))) {
    draw_discharge(stage, about.cut_right(wide, gap), truck, view);
  }
  if (button(canvas, test,
             {.id = "test " + truck.ticket.text,
              .text = say(Word::fresh_test),
              .under = test_words(say, truck),
              .said = truck.ticket.text,
              .symbol = truck.tested && !truck.slump && !truck.temp ? Symbol::check : Symbol::none,
              .enabled = can})) {
    stage.open(TestDraft{.ticket = truck.ticket, .at = stage.tapped()});
  }
  draw_about(stage, about, truck);
}

bool truck_is_here(const PourView& view) {
  return !view.closed && !view.trucks.empty() && view.trucks[0].stage != TruckView::Stage::done;
}

void draw_truck_card(Stage& stage, const Box& box, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const TruckView& truck = view.trucks[0];
  Box about = box;
  const float wide = std::max(canvas.scale().target(), std::round(box.w() * 0.42F));
  draw_discharge(stage, about.cut_right(wide, canvas.gap()), truck, view);
  const AgeLook age = age_of(stage.say, truck);
  std::string name = load_name(stage.say, truck);
  if (canvas.width(name, Face::strong) > about.w() - canvas.mm(4)) name = truck.ticket.text;
  if (canvas.target("trucks", about, name + " " + age.words)) stage.open(TrucksDraft{});
  card_ground(canvas, about);
  if (canvas.pressed("trucks")) {
    canvas.edge(about, canvas.theme().ink, canvas.mm(1.2), canvas.mm(1.6));
  }
  Box in = about.inset(canvas.mm(1.8), canvas.mm(0.9));
  const float small = canvas.height(Face::small) + canvas.mm(0.8);
  in.y0 += std::max(0.0F, std::floor((in.h() - canvas.height(Face::strong) - small) / 2));
  canvas.text(name, in.cut_top(canvas.height(Face::strong)),
              {.face = Face::strong, .colours = canvas.theme().quiet, .free_text = true});
  // Where it is narrow the sign says whether that much is left, or over.
  const bool narrow = canvas.width(age.words, Face::small) + canvas.mm(6.5) > in.w();
  const bool over = truck.word == TruckView::AgeWord::over;
  const std::string brief =
      (over ? "+" : "") + span_text(over ? truck.age - truck.limit : truck.limit - truck.age);
  const bool known = truck.word != TruckView::AgeWord::unknown;
  tag(canvas, in.cut_top(small), age.symbol, narrow && known ? brief : age.words, age.look);
}

}  // namespace rb::screens
