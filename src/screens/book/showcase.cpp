#include "screens/book/showcase.h"

#include <algorithm>
#include <array>

#include "pour/log/log_entry.h"
#include "screens/book/failure_screen.h"
#include "screens/entry/insert_panel.h"
#include "screens/entry/truck_panel.h"

namespace rb::screens {

namespace {

Drafts with(Dialog dialog) {
  Drafts drafts;
  drafts.dialog = std::move(dialog);
  return drafts;
}

// A book that was not opened, by each trouble in turn.
Drafts failing(int trouble) {
  Drafts drafts;
  const auto what = static_cast<BookTrouble>(trouble);
  drafts.failure =
      FailureDraft{what, "/home/foreman/risebook/pours.risebook",
                   "the book cannot be opened: the system's own words", may_still_read(what)};
  return drafts;
}

Drafts asking(const PourState& state, ClockDoubt doubt) {
  Drafts drafts;
  drafts.clock = ClockQuestion{doubt, state.moment(state.last)};
  return drafts;
}

Drafts plain(const PourState&) {
  return {};
}

// When the latest event happened; the end it may tell of can still be to come.
Moment last_tap(const PourState& state) {
  return state.log[state.order.back()].when;
}

ElementId first_element(const PourState& state) {
  return state.plan->elements.empty() ? ElementId{} : state.plan->elements.front().id;
}

RowPlace first_row(const PourState& state) {
  if (state.plan->elements.empty() || state.plan->elements.front().rows.empty()) return {};
  const Element& element = state.plan->elements.front();
  return {element.id, element.rows.front().side, element.rows.front().id};
}

int first_lift(const PourState& state) {
  const auto* placing = state.elements.empty() ? nullptr : state.placing(0);
  return placing == nullptr ? 1 : placing->lift;
}

PadDraft pad_draft(const PourState& state, PadDraft::Use use) {
  return {.use = use,
          .element = first_element(state),
          .lift = first_lift(state),
          .guess = metres(1.2),
          .at = last_tap(state)};
}

// The latest tap of the wanted kind, as a correction in a step.
template <class Kind>
Drafts correcting(const PourState& state, CorrectDraft::Step step) {
  CorrectDraft draft;
  draft.step = step;
  for (const LogEntry& entry : state.log) {
    if (!std::holds_alternative<Kind>(entry.event.what)) continue;
    draft.target = entry.event.id;
    draft.at = entry.event.at;
    draft.what = entry.event.what;
  }
  if (step == CorrectDraft::Step::why) draft.strike = true;
  if (step == CorrectDraft::Step::time) draft.shift = Seconds{-60};
  return with(draft);
}

PourView view_of(const PourState& state) {
  return make_pour_view(state, CheckReport{}, 0, last_tap(state));
}

TruckDraft truck_draft(const PourState& state) {
  return new_truck(view_of(state), *state.plan, last_tap(state));
}

InsertDraft insert_draft(const PourState& state) {
  return new_insert(view_of(state), last_tap(state));
}

TestDraft test_draft(const PourState& state) {
  return {.ticket = TicketId{"7143"},
          .slump = millimetres(130),
          .temp = celsius(18.5),
          .at = last_tap(state)};
}

template <class Draft>
Drafts with_figure(Draft draft, FigureEntry figure) {
  draft.figure = std::move(figure);
  return with(std::move(draft));
}

// A copy of the pour's plan, as it is made anew.
Drafts planning(const PourState& state, PlanEdit::Page page) {
  Drafts drafts = with(PlanPanel{});
  drafts.plan.emplace();
  drafts.plan->draft = copy_of(*state.plan);
  drafts.plan->page = page;
  return drafts;
}

// The same with its rows computed, or refused: a mix that sets too soon cannot be knitted.
Drafts computing(const PourState& state, Force force, Seconds sets) {
  Drafts drafts = planning(state, PlanEdit::Page::compute);
  PlanDraft& draft = drafts.plan->draft;
  draft.wish.motor.force = force;
  draft.wish.motor.amps = amperes(4.2);
  for (Mix& mix : draft.plan.mixes) mix.initial_set = sets;
  if (!draft.plan.elements.empty()) drafts.plan->computed = compute(draft, 0);
  return drafts;
}

using Step = CorrectDraft::Step;

constexpr std::array kScreens{
    ShowcaseScreen{"pours", false, plain},
    ShowcaseScreen{"pours-find", false,
                   [](const PourState&) { return with(FindDraft{.text = "Core"}); }},
    ShowcaseScreen{"pours-settings", false, [](const PourState&) { return with(SettingsDraft{}); }},
    ShowcaseScreen{"pours-mirror", false, [](const PourState&) { return with(MirrorDraft{}); }},
    ShowcaseScreen{"pours-mirror-path", false,
                   [](const PourState&) { return with(MirrorDraft{.typing = "/media/x"}); }},
    ShowcaseScreen{"pours-quit", false, [](const PourState&) { return with(QuitDraft{}); }},
    ShowcaseScreen{"plan-from", false,
                   [](const PourState& s) {
                     Drafts drafts = planning(s, PlanEdit::Page::pour);
                     drafts.dialog = PlanFromDraft{};
                     return drafts;
                   }},
    ShowcaseScreen{"plan-from-asked", false,
                   [](const PourState& s) {
                     Drafts drafts = planning(s, PlanEdit::Page::pour);
                     drafts.dialog = PlanFromDraft{.asked = "plan empty"};
                     return drafts;
                   }},
    ShowcaseScreen{"plan-empty", false,
                   [](const PourState&) {
                     Drafts drafts = with(PlanPanel{});
                     drafts.plan.emplace();
                     drafts.plan->draft = empty_plan(Units::si);
                     return drafts;
                   }},
    ShowcaseScreen{"plan", false,
                   [](const PourState& s) { return planning(s, PlanEdit::Page::pour); }},
    ShowcaseScreen{"plan-element", false,
                   [](const PourState& s) { return planning(s, PlanEdit::Page::element); }},
    ShowcaseScreen{"plan-guessed", false,
                   [](const PourState&) {
                     Drafts drafts = with(PlanPanel{});
                     drafts.plan.emplace();
                     drafts.plan->draft = empty_plan(Units::si);
                     drafts.plan->page = PlanEdit::Page::element;
                     drafts.plan->draft.plan.name = "Wall";
                     add_element(drafts.plan->draft);
                     set_length(drafts.plan->draft, 0, metres(14.4));
                     set_height(drafts.plan->draft, 0, metres(4.05));
                     set_thickness(drafts.plan->draft, 0, metres(0.3));
                     return drafts;
                   }},
    ShowcaseScreen{"plan-bays", false,
                   [](const PourState& s) { return planning(s, PlanEdit::Page::bays); }},
    ShowcaseScreen{"plan-lifts", false,
                   [](const PourState& s) { return planning(s, PlanEdit::Page::lifts); }},
    ShowcaseScreen{"plan-rows", false,
                   [](const PourState& s) { return planning(s, PlanEdit::Page::rows); }},
    ShowcaseScreen{"plan-mix", false,
                   [](const PourState& s) { return planning(s, PlanEdit::Page::mix); }},
    ShowcaseScreen{"plan-person", false,
                   [](const PourState& s) { return planning(s, PlanEdit::Page::person); }},
    ShowcaseScreen{"plan-limits", false,
                   [](const PourState& s) { return planning(s, PlanEdit::Page::limits); }},
    ShowcaseScreen{"plan-compute", false,
                   [](const PourState& s) {
                     Drafts drafts = planning(s, PlanEdit::Page::compute);
                     drafts.plan->draft.wish = {};
                     return drafts;
                   }},
    ShowcaseScreen{"plan-computed", false,
                   [](const PourState& s) { return computing(s, kilonewtons(6), hours(5)); }},
    ShowcaseScreen{"plan-refused", false,
                   [](const PourState& s) { return computing(s, kilonewtons(6), hours(0.5)); }},
    ShowcaseScreen{"plan-figure", false,
                   [](const PourState& s) {
                     Drafts drafts = planning(s, PlanEdit::Page::element);
                     drafts.plan->field = FieldRef{PlanField::form_rating, 0, 0};
                     drafts.plan->typed = "60";
                     return drafts;
                   }},
    ShowcaseScreen{"plan-name", false,
                   [](const PourState& s) {
                     Drafts drafts = planning(s, PlanEdit::Page::pour);
                     drafts.plan->naming = PlanEdit::Name::pour;
                     return drafts;
                   }},
    ShowcaseScreen{"pour", true, plain},
    ShowcaseScreen{"pad-top", true,
                   [](const PourState& s) { return with(pad_draft(s, PadDraft::Use::top)); }},
    ShowcaseScreen{"pad-end", true,
                   [](const PourState& s) { return with(pad_draft(s, PadDraft::Use::lift_end)); }},
    ShowcaseScreen{"bay-start", true,
                   [](const PourState& s) { return with(BayStartDraft{.at = last_tap(s)}); }},
    ShowcaseScreen{"row", true, [](const PourState& s) { return with(RowDraft{first_row(s)}); }},
    ShowcaseScreen{"gate-run", true,
                   [](const PourState& s) {
                     return with(GateDraft{.place = first_row(s),
                                           .element = first_element(s),
                                           .lift = first_lift(s)});
                   }},
    ShowcaseScreen{"gate-lift", true,
                   [](const PourState& s) {
                     return with(GateDraft{.element = first_element(s), .lift = first_lift(s)});
                   }},
    ShowcaseScreen{"resume", true,
                   [](const PourState& s) { return with(ResumeDraft{last_tap(s)}); }},
    ShowcaseScreen{"hold", true, [](const PourState& s) { return with(HoldDraft{last_tap(s)}); }},
    ShowcaseScreen{"note", true, [](const PourState& s) { return with(NoteDraft{last_tap(s)}); }},
    ShowcaseScreen{"after", true, [](const PourState&) { return with(AfterDraft{}); }},
    ShowcaseScreen{"after-temp", true,
                   [](const PourState& s) {
                     return with(AfterDraft{FigureEntry{.what = Figure::hardening}, last_tap(s)});
                   }},
    ShowcaseScreen{"typing", true,
                   [](const PourState& s) {
                     return with(TypeDraft{.text = "GROUT AT BAY 2", .at = last_tap(s)});
                   }},
    ShowcaseScreen{"typing-figures", true,
                   [](const PourState& s) {
                     Drafts drafts = with(TypeDraft{.at = last_tap(s)});
                     drafts.figures = true;
                     return drafts;
                   }},
    ShowcaseScreen{"taps", true, [](const PourState&) { return with(TapsDraft{}); }},
    ShowcaseScreen{"correct", true,
                   [](const PourState& s) { return correcting<event::LiftEnd>(s, Step::choose); }},
    ShowcaseScreen{"correct-row-tap", true,
                   [](const PourState& s) { return correcting<event::Run>(s, Step::choose); }},
    ShowcaseScreen{"correct-time", true,
                   [](const PourState& s) { return correcting<event::Run>(s, Step::time); }},
    ShowcaseScreen{"correct-height", true,
                   [](const PourState& s) { return correcting<event::LiftEnd>(s, Step::height); }},
    ShowcaseScreen{"correct-row", true,
                   [](const PourState& s) { return correcting<event::Run>(s, Step::row); }},
    ShowcaseScreen{"correct-why", true,
                   [](const PourState& s) { return correcting<event::Run>(s, Step::why); }},
    ShowcaseScreen{"findings", true, [](const PourState&) { return with(FindingsDraft{}); }},
    ShowcaseScreen{"more", true, [](const PourState&) { return with(MoreDraft{}); }},
    ShowcaseScreen{"settings", true, [](const PourState&) { return with(SettingsDraft{}); }},
    ShowcaseScreen{"mirror", true, [](const PourState&) { return with(MirrorDraft{}); }},
    ShowcaseScreen{"mirror-path", true,
                   [](const PourState&) { return with(MirrorDraft{.typing = "/media/x"}); }},
    ShowcaseScreen{"close", true, [](const PourState&) { return with(CloseDraft{}); }},
    ShowcaseScreen{"quit", true, [](const PourState&) { return with(QuitDraft{}); }},
    ShowcaseScreen{"trucks", true, [](const PourState&) { return with(TrucksDraft{}); }},
    ShowcaseScreen{"truck", true, [](const PourState& s) { return with(truck_draft(s)); }},
    ShowcaseScreen{"truck-mix", true,
                   [](const PourState& s) {
                     TruckDraft draft = truck_draft(s);
                     draft.step = TruckDraft::Step::mix;
                     return with(draft);
                   }},
    ShowcaseScreen{"truck-ticket", true,
                   [](const PourState& s) {
                     TypeDraft draft{.use = TypeDraft::Use::ticket, .at = last_tap(s)};
                     draft.truck = truck_draft(s);
                     Drafts drafts = with(draft);
                     drafts.figures = true;
                     return drafts;
                   }},
    ShowcaseScreen{"truck-volume", true,
                   [](const PourState& s) {
                     return with_figure(truck_draft(s), {.what = Figure::volume, .guess = 3.3});
                   }},
    ShowcaseScreen{"test", true, [](const PourState& s) { return with(test_draft(s)); }},
    ShowcaseScreen{
        "test-density", true,
        [](const PourState& s) { return with_figure(test_draft(s), {.what = Figure::density}); }},
    ShowcaseScreen{"test-slump-wrong", true,
                   [](const PourState& s) {
                     return with_figure(test_draft(s), {.what = Figure::slump, .typed = "999"});
                   }},
    ShowcaseScreen{"pressure", true, [](const PourState&) { return with(PressureDraft{}); }},
    ShowcaseScreen{"inverters", true, [](const PourState&) { return with(InvertersDraft{}); }},
    ShowcaseScreen{"speed", true,
                   [](const PourState& s) {
                     return with(SpeedDraft{
                         InverterId{"V1"}, {.what = Figure::speed, .guess = 4800}, last_tap(s)});
                   }},
    ShowcaseScreen{"speed-over", true,
                   [](const PourState& s) {
                     return with(SpeedDraft{
                         InverterId{"V1"}, {.what = Figure::speed, .typed = "7200"}, last_tap(s)});
                   }},
    ShowcaseScreen{"air", true,
                   [](const PourState& s) {
                     return with(AirDraft{{.what = Figure::air_temp, .guess = -9}, last_tap(s)});
                   }},
    ShowcaseScreen{"insert", true, [](const PourState& s) { return with(insert_draft(s)); }},
    ShowcaseScreen{"insert-wide", true,
                   [](const PourState& s) {
                     InsertDraft draft = insert_draft(s);
                     draft.what.spacing = metres(0.9);
                     return with(draft);
                   }},
    ShowcaseScreen{"insert-depth", true,
                   [](const PourState& s) {
                     return with_figure(insert_draft(s), {.what = Figure::depth, .guess = 1});
                   }},
    ShowcaseScreen{"next", true, [](const PourState&) { return with(NextDraft{}); }},
    ShowcaseScreen{"holder", true, [](const PourState&) { return with(HolderDraft{}); }},
    ShowcaseScreen{"ready", true, [](const PourState&) { return with(ReadyDraft{}); }},
    ShowcaseScreen{"ready-note", true,
                   [](const PourState&) { return with(ReadyDraft{.noting = "safety cables"}); }},
    ShowcaseScreen{"elements", true, [](const PourState&) { return with(ElementsDraft{}); }},
    ShowcaseScreen{"failure", false, [](const PourState&) { return failing(0); }},
    ShowcaseScreen{"failure-1", false, [](const PourState&) { return failing(1); }},
    ShowcaseScreen{"failure-2", false, [](const PourState&) { return failing(2); }},
    ShowcaseScreen{"failure-3", false, [](const PourState&) { return failing(3); }},
    ShowcaseScreen{"failure-4", false, [](const PourState&) { return failing(4); }},
    ShowcaseScreen{"failure-5", false, [](const PourState&) { return failing(5); }},
    ShowcaseScreen{"failure-6", false, [](const PourState&) { return failing(6); }},
    ShowcaseScreen{"failure-7", false, [](const PourState&) { return failing(7); }},
    ShowcaseScreen{"failure-8", false, [](const PourState&) { return failing(8); }},
    ShowcaseScreen{"failure-9", false, [](const PourState&) { return failing(9); }},
    ShowcaseScreen{"failure-10", false, [](const PourState&) { return failing(10); }},
    ShowcaseScreen{"failure-11", false, [](const PourState&) { return failing(11); }},
    ShowcaseScreen{"failure-12", false, [](const PourState&) { return failing(12); }},
    ShowcaseScreen{"failure-13", false, [](const PourState&) { return failing(13); }},
    ShowcaseScreen{"clock-early", false,
                   [](const PourState& s) { return asking(s, ClockDoubt::before_build); }},
    ShowcaseScreen{"clock-behind", false,
                   [](const PourState& s) { return asking(s, ClockDoubt::behind_book); }},
    ShowcaseScreen{"clock-ahead", true,
                   [](const PourState& s) { return asking(s, ClockDoubt::ahead_of_book); }},
    ShowcaseScreen{"clock-far", true,
                   [](const PourState& s) { return asking(s, ClockDoubt::far_ahead); }},
};

}  // namespace

std::span<const ShowcaseScreen> showcase() {
  return kScreens;
}

const ShowcaseScreen* find_screen(std::string_view name) {
  const auto found = std::find_if(kScreens.begin(), kScreens.end(),
                                  [&](const ShowcaseScreen& s) { return s.name == name; });
  return found == kScreens.end() ? nullptr : &*found;
}

}  // namespace rb::screens
