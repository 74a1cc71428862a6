#include "screens/paper/amend_panel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

#include "pour/plan/amend.h"
#include "screens/entry/keyboard.h"
#include "screens/entry/number_pad.h"
#include "screens/entry/paging.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

using AmendStep = AmendDraft::Step;
using event::Chosen;

constexpr std::array kAmendReasons{Chosen::as_built, Chosen::other_people, Chosen::engineer_agreed,
                                   Chosen::superintendent_agreed};

// One thing of the plan that may be changed.
struct AmendLine {
  std::string id, text, under;
  AmendDraft next;  ///< where a tap on it leads
  bool free_text = true;
};

AmendDraft to_height(const AmendDraft& from, std::string path, Length stands) {
  AmendDraft next{.step = AmendStep::height};
  next.path = std::move(path);
  next.stands = stands;
  next.at = from.at;
  return next;
}

// Of the name what an id may hold, with a number where the plan has it already.
PersonId id_for(const std::string& name, const Plan& plan) {
  std::string base;
  for (const char c : name) {
    if ((c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) base += c;
    if (base.size() >= 12) break;
  }
  if (base.empty()) base = "person";
  PersonId id{base};
  for (int n = 2; plan.find(id) != nullptr; ++n) id.text = base + std::to_string(n);
  return id;
}

std::vector<AmendLine> amend_lines(const Say& say, const AmendDraft& draft, const PourView& view,
                                   const Plan& plan) {
  std::vector<AmendLine> lines;
  AmendDraft fresh{.step = AmendStep::name};
  fresh.fresh = true;
  fresh.at = draft.at;
  lines.push_back({"amend new person", say(Word::amend_person), {}, fresh, false});
  for (const Person& person : plan.people) {
    AmendDraft next{.step = AmendStep::role};
    next.person = person.id;
    next.at = draft.at;
    lines.push_back({"amend person " + person.id.text,
                     person.name.empty() ? person.id.text : person.name,
                     role_words(say, person.role), next});
  }
  const Element& element = plan.elements[view.element];
  const std::vector<std::string> of{"elements", element.id.text};
  const auto path = [&](std::vector<std::string> more) {
    std::vector<std::string> parts = of;
    parts.insert(parts.end(), more.begin(), more.end());
    return amend_path(parts);
  };
  lines.push_back({"amend thickness", say(Word::amend_thickness, element.id.text),
                   say.height(element.thickness),
                   to_height(draft, path({"thickness"}), element.thickness)});
  for (const Row& row : element.rows) {
    const RowPlace place{element.id, row.side, row.id};
    lines.push_back({"amend row " + row.id.text + " " + to_text(row.side),
                     say(Word::amend_row, row_name(say, place, view.two_sides)), say.height(row.z),
                     to_height(draft, path({"rows", to_text(row.side), row.id.text, "z"}), row.z)});
  }
  return lines;
}

void draw_list(Stage& stage, const Box& box, AmendDraft& draft, const PourView& view,
               const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  Box in = panel_with_title(stage, box, say(Word::amend_title));
  canvas.text(say(Word::amend_says), in.cut_top(2 * canvas.height(Face::small), canvas.mm(1)),
              {.face = Face::small, .colours = canvas.soft(), .down = Down::top, .lines = 2});
  const std::vector<AmendLine> lines = amend_lines(say, draft, view, plan);
  const float tall = canvas.mm(16);
  const Pages pages = turn_pages(stage, in, lines.size(), draft.page, "amend", tall);
  Box room = pages.room;
  for (std::size_t i = pages.first; i < pages.first + pages.lines && i < lines.size(); ++i) {
    const AmendLine& line = lines[i];
    if (button(canvas, room.cut_top(tall, canvas.gap()),
               {.id = line.id,
                .text = line.text,
                .under = line.under,
                .symbol = line.id == "amend new person" ? Symbol::plus : Symbol::pencil,
                .enabled = !view.closed,
                .free_text = line.free_text})) {
      draft = line.next;
      return;
    }
  }
}

// Asked of the plan itself: what it would not stand is told here and kept nowhere.
void ask_why(Stage& stage, AmendDraft& draft, const Plan& plan, std::string path,
             const nlohmann::json& value) {
  draft.path = std::move(path);
  draft.value = value.dump();
  const auto made = amended(plan, draft.path, draft.value);
  draft.refused = made ? std::string{} : words_of(made.error(), stage.say.voice());
  if (made) draft.step = AmendStep::why;
}

void draw_refused(Stage& stage, Box& in, const AmendDraft& draft) {
  if (draft.refused.empty()) return;
  Canvas& canvas = stage.canvas;
  tag(canvas, in.cut_top(3 * canvas.height(Face::small), canvas.mm(1)), Symbol::mend_sign,
      draft.refused, Look::mend, Face::small, true);
}

void draw_role(Stage& stage, const Box& box, AmendDraft& draft, const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const Person* known = plan.find(draft.person);
  const std::string name = known == nullptr || known->name.empty() ? draft.text : known->name;
  Box in = panel_with_back(stage, box, say(Word::amend_role, name));
  draw_refused(stage, in, draft);
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(22));
  int line = 0;
  for (const event::Role role :
       {event::Role::foreman, event::Role::inspector, event::Role::superintendent}) {
    if (!button(canvas, in.line(line++, 3, canvas.gap()),
                {.id = std::string("amend role ") + to_text(role),
                 .text = role_words(say, to_text(role)),
                 .look = Look::act})) {
      continue;
    }
    if (draft.fresh) {
      ask_why(stage, draft, plan, amend_path({"people", draft.person.text}),
              {{"name", draft.text}, {"role", to_text(role)}});
    } else {
      ask_why(stage, draft, plan, amend_path({"people", draft.person.text, "role"}), to_text(role));
    }
  }
}

void draw_height(Stage& stage, const Box& box, AmendDraft& draft, const Plan& plan) {
  Canvas& canvas = stage.canvas;
  Box in = panel_with_title(stage, box, words_of(amended_what(draft.path), stage.say.voice()));
  draw_refused(stage, in, draft);
  const Box keys = in.cut_left(std::round(in.w() * 0.46F), canvas.gap());
  draw_keys(stage, keys, draft.typed);
  const Box last = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(19)), canvas.gap());
  draw_value(stage, in, draft.typed, draft.stands);
  const auto height = typed_height(draft.typed, stage.say.units);
  const PanelEnd end = keep_or_cancel(stage, last, height.has_value());
  if (end == PanelEnd::cancelled) draft = AmendDraft{.at = draft.at};
  if (end == PanelEnd::kept) ask_why(stage, draft, plan, draft.path, in_metres(*height));
}

void keep_amendment(Stage& stage, const AmendDraft& draft, const std::string& why,
                    std::optional<Chosen> chosen) {
  stage.keep(event::Amend{draft.path, draft.value, why, chosen}, draft.at);
  stage.close();
}

// What it was stands beside what it will be, before it is kept.
void draw_amend_why(Stage& stage, const Box& box, AmendDraft& draft, const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_back(stage, box, words_of(amended_what(draft.path), say.voice()));
  const auto made = amended(plan, draft.path, draft.value);
  const std::string was =
      made ? words_of(amended_value(draft.path, made->was), say.voice()) : std::string{};
  const std::string now = words_of(amended_value(draft.path, draft.value), say.voice());
  canvas.text(was.empty() ? now : was + " \u2192 " + now,
              in.cut_top(canvas.height(Face::title), canvas.mm(1)),
              {.face = Face::title, .colours = canvas.on_panel(), .free_text = true});
  canvas.text(say(Word::correct_why), in.cut_top(canvas.height(Face::small), canvas.mm(1)),
              {.face = Face::small, .colours = canvas.soft()});
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(21));
  for (std::size_t i = 0; i <= kAmendReasons.size(); ++i) {
    const Box place =
        in.line(static_cast<int>(i / 2), 3, gap).column(static_cast<int>(i % 2), 2, gap);
    if (i == kAmendReasons.size()) {
      if (button(canvas, place,
                 {.id = "why typed", .text = say(Word::why_typed), .symbol = Symbol::pencil})) {
        draft.text.clear();
        draft.step = AmendStep::other;
      }
    } else if (button(canvas, place,
                      {.id = "why " + std::to_string(i),
                       .text = std::string{told(say.language, event::says(kAmendReasons.at(i)))},
                       .look = Look::act})) {
      keep_amendment(stage, draft, event::says(kAmendReasons.at(i)), kAmendReasons.at(i));
    }
  }
}

void draw_letters(Stage& stage, const Box& box, AmendDraft& draft, const Plan& plan) {
  const bool name = draft.step == AmendStep::name;
  const PanelEnd end = draw_text_entry(
      stage, box, stage.say(name ? Word::amend_name : Word::correct_why), draft.text);
  if (end == PanelEnd::cancelled) draft = AmendDraft{.at = draft.at};
  if (end != PanelEnd::kept) return;
  if (!name) return keep_amendment(stage, draft, draft.text, {});
  draft.person = id_for(draft.text, plan);
  draft.step = AmendStep::role;
}

}  // namespace

bool types_letters(const AmendDraft& draft) {
  return draft.step == AmendStep::name || draft.step == AmendStep::other;
}

void draw_amend(Stage& stage, const Box& box, AmendDraft& draft, const PourView& view,
                const Plan& plan) {
  switch (draft.step) {
    case AmendStep::list:
      return draw_list(stage, box, draft, view, plan);
    case AmendStep::role:
      return draw_role(stage, box, draft, plan);
    case AmendStep::height:
      return draw_height(stage, box, draft, plan);
    case AmendStep::why:
      return draw_amend_why(stage, box, draft, plan);
    case AmendStep::name:
    case AmendStep::other:
      return draw_letters(stage, box, draft, plan);
  }
}

}  // namespace rb::screens
