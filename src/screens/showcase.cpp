#include "screens/showcase.h"

#include <algorithm>
#include <array>

namespace rb::screens {

namespace {

Drafts with(Dialog dialog) {
  Drafts drafts;
  drafts.dialog = std::move(dialog);
  return drafts;
}

Drafts plain(const PourState&) {
  return {};
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
          .at = state.moment(state.last)};
}

// The latest tap of the wanted kind, as a correction in a step.
template <class Kind>
Drafts correcting(const PourState& state, CorrectDraft::Step step) {
  CorrectDraft draft;
  draft.step = step;
  for (const LogEntry& entry : state.log) {
    if (!std::holds_alternative<Kind>(entry.event.what)) continue;
    draft.target = entry.event.id;
    draft.before = entry.event;
  }
  if (step == CorrectDraft::Step::why) draft.strike = true;
  if (step == CorrectDraft::Step::time) draft.shift = Seconds{-60};
  return with(draft);
}

using Step = CorrectDraft::Step;

constexpr std::array kScreens{
    ShowcaseScreen{"pours", false, plain},
    ShowcaseScreen{"pours-settings", false, [](const PourState&) { return with(SettingsDraft{}); }},
    ShowcaseScreen{"pours-quit", false, [](const PourState&) { return with(QuitDraft{}); }},
    ShowcaseScreen{"pour", true, plain},
    ShowcaseScreen{"pad-top", true,
                   [](const PourState& s) { return with(pad_draft(s, PadDraft::Use::top)); }},
    ShowcaseScreen{"pad-end", true,
                   [](const PourState& s) { return with(pad_draft(s, PadDraft::Use::lift_end)); }},
    ShowcaseScreen{"row", true, [](const PourState& s) { return with(RowDraft{first_row(s)}); }},
    ShowcaseScreen{"run-anyway", true,
                   [](const PourState& s) {
                     return with(RunAnywayDraft{first_row(s), s.moment(s.last)});
                   }},
    ShowcaseScreen{"hold", true,
                   [](const PourState& s) { return with(HoldDraft{s.moment(s.last)}); }},
    ShowcaseScreen{"note", true,
                   [](const PourState& s) { return with(NoteDraft{s.moment(s.last)}); }},
    ShowcaseScreen{"typing", true,
                   [](const PourState& s) {
                     return with(TypeDraft{.text = "GROUT AT BAY 2", .at = s.moment(s.last)});
                   }},
    ShowcaseScreen{"typing-figures", true,
                   [](const PourState& s) {
                     Drafts drafts = with(TypeDraft{.at = s.moment(s.last)});
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
    ShowcaseScreen{"close", true, [](const PourState&) { return with(CloseDraft{}); }},
    ShowcaseScreen{"quit", true, [](const PourState&) { return with(QuitDraft{}); }},
    ShowcaseScreen{"elements", true, [](const PourState&) { return with(ElementsDraft{}); }},
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
