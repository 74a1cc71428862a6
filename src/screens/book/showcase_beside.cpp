// The screens of no pour: the list of pours, a plan in the making, a book that was not opened, a
// clock in doubt.
#include <array>

#include "screens/book/failure_screen.h"
#include "screens/book/showcase_parts.h"

namespace rb::screens {

namespace {

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

constexpr std::array kScreensBeside{
    ShowcaseScreen{"pours", false, [](const PourState&) { return Drafts{}; }},
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

Drafts with(Dialog dialog) {
  Drafts drafts;
  drafts.dialog = std::move(dialog);
  return drafts;
}

std::span<const ShowcaseScreen> showcase_of_no_pour() {
  return kScreensBeside;
}

}  // namespace rb::screens
