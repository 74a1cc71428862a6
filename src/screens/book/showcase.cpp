#include "screens/book/showcase.h"

#include <algorithm>
#include <array>

#include "pour/log/log_entry.h"
#include "screens/book/showcase_parts.h"
#include "screens/entry/insert_panel.h"
#include "screens/load/truck_panel.h"

namespace rb::screens {

namespace {

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

TicketId first_ticket(const PourState& state) {
  return state.trucks.empty() ? TicketId{} : state.trucks.front().ticket;
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
  static const CheckReport kNone;
  return make_pour_view(state, kNone, 0, last_tap(state));
}

// The key of the first cause of what was found; empty: nothing was.
std::string first_cause(const PourState& state) {
  const CheckReport report = check(state, AsOf::end(state));
  return report.findings.empty() ? std::string{} : report.findings.front().group;
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
          .specimens = {SpecimenId{"7143-1"}, SpecimenId{"7143-2"}, SpecimenId{"7143-3"}},
          .at = last_tap(state)};
}

StripDraft fresh_blemish(const PourState& state) {
  return {.step = StripDraft::Step::fresh,
          .patch = {metres(1), metres(0.4), metres(1.25), metres(0.3)},
          .defect = event::Defect::bug_holes,
          .at = last_tap(state)};
}

EventId first_blemish(const PourState& state) {
  return state.blemishes.empty() ? EventId{} : state.log[state.blemishes.front()].event.id;
}

template <class Draft>
Drafts with_figure(Draft draft, FigureEntry figure) {
  draft.figure = std::move(figure);
  return with(std::move(draft));
}

using Step = CorrectDraft::Step;

constexpr std::array kScreens{
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
    ShowcaseScreen{"gate-strip", true,
                   [](const PourState& s) {
                     return with(GateDraft{.strip = Side::near_side, .element = first_element(s)});
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
    ShowcaseScreen{"face", true, [](const PourState&) { return with(StripDraft{}); }},
    ShowcaseScreen{"face-far", true,
                   [](const PourState&) { return with(StripDraft{.side = Side::far_side}); }},
    ShowcaseScreen{"blemish-new", true, [](const PourState& s) { return with(fresh_blemish(s)); }},
    ShowcaseScreen{"blemish-size", true,
                   [](const PourState& s) {
                     return with_figure(fresh_blemish(s), {.what = Figure::blemish_deep});
                   }},
    ShowcaseScreen{"blemish", true,
                   [](const PourState& s) {
                     return with(
                         StripDraft{.step = StripDraft::Step::card, .blemish = first_blemish(s)});
                   }},
    ShowcaseScreen{"photos", true,
                   [](const PourState& s) {
                     return with(
                         StripDraft{.step = StripDraft::Step::photos, .blemish = first_blemish(s)});
                   }},
    ShowcaseScreen{"repair", true,
                   [](const PourState& s) {
                     StripDraft draft{.step = StripDraft::Step::repair,
                                      .blemish = first_blemish(s)};
                     draft.repair.method = "cut back and filled";
                     return with(draft);
                   }},
    ShowcaseScreen{"repair-who", true,
                   [](const PourState& s) {
                     StripDraft draft{.step = StripDraft::Step::repair,
                                      .blemish = first_blemish(s)};
                     draft.typing = StripDraft::Text::who;
                     return with(draft);
                   }},
    ShowcaseScreen{"specimens", true, [](const PourState&) { return with(SpecimensDraft{}); }},
    ShowcaseScreen{"specimen", true,
                   [](const PourState& s) {
                     return with(SpecimenDraft{
                         .specimen = SpecimenId{"7143-1"}, .age_days = 28, .at = last_tap(s)});
                   }},
    ShowcaseScreen{"specimen-strength", true,
                   [](const PourState& s) {
                     return with_figure(
                         SpecimenDraft{.specimen = SpecimenId{"7143-1"}, .at = last_tap(s)},
                         {.what = Figure::broke_at, .typed = "9999"});
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
    ShowcaseScreen{"findings-cause", true,
                   [](const PourState& s) { return with(FindingsDraft{.cause = first_cause(s)}); }},
    ShowcaseScreen{"findings-back", true,
                   [](const PourState& s) {
                     event::SendBack sent{first_cause(s), {}, {}};
                     return with(TypeDraft{.use = TypeDraft::Use::sent_back,
                                           .text = "cores wanted",
                                           .sent = std::move(sent),
                                           .at = last_tap(s)});
                   }},
    ShowcaseScreen{"review", true, [](const PourState&) { return with(ReviewDraft{}); }},
    ShowcaseScreen{"review-cover", true,
                   [](const PourState& s) {
                     return with(ReviewDraft{.kind = FaceKind::cover, .at = s.last / 2.0});
                   }},
    ShowcaseScreen{"review-head", true,
                   [](const PourState&) { return with(ReviewDraft{.kind = FaceKind::head}); }},
    ShowcaseScreen{"review-load", true,
                   [](const PourState&) { return with(ReviewDraft{.kind = FaceKind::load}); }},
    ShowcaseScreen{"review-spot", true,
                   [](const PourState&) {
                     return with(ReviewDraft{.spot = Spot{metres(1.1), metres(0.4)}});
                   }},
    ShowcaseScreen{"review-finding", true,
                   [](const PourState& s) { return with(ReviewDraft{.cause = first_cause(s)}); }},
    ShowcaseScreen{"taps-filter", true,
                   [](const PourState&) {
                     return with(TapsDraft{.filter = {.choosing = FilterDraft::By::what}});
                   }},
    ShowcaseScreen{"taps-filter-row", true,
                   [](const PourState&) {
                     return with(TapsDraft{.filter = {.choosing = FilterDraft::By::row}});
                   }},
    ShowcaseScreen{"taps-filtered", true,
                   [](const PourState&) {
                     return with(TapsDraft{.filter = {.set = {.lift = 1, .late = true}}});
                   }},
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
    ShowcaseScreen{"test-specimens", true,
                   [](const PourState& s) {
                     TypeDraft draft{.use = TypeDraft::Use::specimens,
                                     .text = "7143-1 7143-2 7143-3",
                                     .at = last_tap(s)};
                     draft.test = test_draft(s);
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
                     return with(
                         AirDraft{.figure = FigureEntry{.what = Figure::air_temp, .guess = -9},
                                  .at = last_tap(s)});
                   }},
    ShowcaseScreen{"air-all", true,
                   [](const PourState& s) {
                     return with(AirDraft{.figure = std::nullopt,
                                          .temp = celsius(-12.5),
                                          .wind = metres_per_second(11),
                                          .at = last_tap(s)});
                   }},
    ShowcaseScreen{"air-wind", true,
                   [](const PourState& s) {
                     return with(AirDraft{.figure = FigureEntry{.what = Figure::wind},
                                          .temp = celsius(21),
                                          .at = last_tap(s)});
                   }},
    ShowcaseScreen{"load", true,
                   [](const PourState& s) { return with(LoadDraft{.ticket = first_ticket(s)}); }},
    ShowcaseScreen{"load-part", true,
                   [](const PourState& s) {
                     return with(LoadDraft{.ticket = first_ticket(s),
                                           .figure = FigureEntry{.what = Figure::part},
                                           .at = last_tap(s)});
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
};

}  // namespace

std::span<const ShowcaseScreen> showcase() {
  static const std::vector<ShowcaseScreen> all = [] {
    const auto beside = showcase_of_no_pour();
    std::vector<ShowcaseScreen> screens{beside.begin(), beside.end()};
    screens.insert(screens.end(), kScreens.begin(), kScreens.end());
    const auto afterwards = showcase_of_afterwards();
    screens.insert(screens.end(), afterwards.begin(), afterwards.end());
    return screens;
  }();
  return all;
}

const ShowcaseScreen* find_screen(std::string_view name) {
  const auto screens = showcase();
  const auto found = std::find_if(screens.begin(), screens.end(),
                                  [&](const ShowcaseScreen& s) { return s.name == name; });
  return found == screens.end() ? nullptr : &*found;
}

}  // namespace rb::screens
