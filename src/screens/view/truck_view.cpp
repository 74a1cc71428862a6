#include "screens/view/truck_view.h"

#include <algorithm>
#include <unordered_map>

#include "pour/log/log_entry.h"

namespace rb::screens {

std::vector<TruckView> make_truck_views(const PourState& state, Moment now) {
  std::vector<TruckView> views;
  std::unordered_map<std::string, const TestState*> tests;  // the last of each load
  for (const TestState& test : state.tests) tests[test.what.ticket.text] = &test;
  const Seconds limit = state.plan->limits.load_age_max.value;
  for (const TruckState& truck : state.trucks) {
    TruckView view{.ticket = truck.ticket, .limit = limit};
    if (truck.what) {
      view.entered = true;
      view.mix = truck.what->mix;
      view.volume = truck.what->volume;
      view.batched = state.moment(state.told(*truck.ref, truck.what->batched));
      view.arrived = state.moment(state.told(*truck.ref, truck.what->arrived));
    }
    if (const auto at = truck.discharged()) view.discharged = state.moment(*at);
    if (const auto at = truck.ended()) view.ended = state.moment(*at);
    if (const auto element = truck.element()) view.element = state.plan->elements[*element].id;
    for (std::size_t e = 0; e < state.elements.size(); ++e) {
      if (truck.may_be_in(e)) view.elements.push_back(state.plan->elements[e].id);
    }
    view.left = truck.left().value_or(Volume{});
    const bool over = view.ended && *view.ended <= now;
    view.stage = over && view.left <= Volume{} ? TruckView::Stage::done
                 : view.discharged && !over    ? TruckView::Stage::discharging
                                               : TruckView::Stage::waiting;
    // A closed pour discharges nothing more.
    const Moment until = view.stage == TruckView::Stage::done ? *view.ended
                         : state.closed                       ? *state.closed
                                                              : now;
    if (view.batched) {
      view.age = std::max(between(*view.batched, until), Seconds{0});
      view.word = view.age > limit                ? TruckView::AgeWord::over
                  : view.age > limit - kNearlyOld ? TruckView::AgeWord::nearly
                                                  : TruckView::AgeWord::young;
    }
    view.rest_may_go = view.stage == TruckView::Stage::done && view.batched &&
                       between(*view.batched, now) <= limit;
    if (const auto test = tests.find(truck.ticket.text); test != tests.end()) {
      view.tested = true;
      view.slump = test->second->what.slump;
      view.temp = test->second->what.temp;
    }
    views.push_back(std::move(view));
  }
  std::stable_sort(views.begin(), views.end(), [](const TruckView& a, const TruckView& b) {
    if (a.stage != b.stage) return a.stage < b.stage;
    if (a.stage == TruckView::Stage::done) return a.ended > b.ended;
    return a.age > b.age;
  });
  return views;
}

namespace {

// The event that told the volume of a part last: its end, where that told one, else its beginning.
ToldTap told_of(const PourState& state, const TruckState& truck, const PartState& part) {
  const Event* told = &state.log[part.ref].event;
  for (const LogEntry& entry : state.log) {
    const auto* end = std::get_if<event::Discharge>(&entry.event.what);
    if (end == nullptr || end->ticket != truck.ticket || !end->volume || !end->ended) continue;
    if (entry.struck || entry.sense != LogEntry::Sense::counts || !part.to) continue;
    if (state.clock(entry.when) == *part.to || state.clock(*end->ended) == *part.to) {
      told = &entry.event;
    }
  }
  return {told->id, told->at, told->what};
}

}  // namespace

std::vector<LoadView> make_load_views(const PourState& state) {
  std::vector<LoadView> views;
  views.reserve(state.trucks.size());
  for (const TruckState& truck : state.trucks) {
    LoadView view{.ticket = truck.ticket};
    if (truck.what && truck.ref) {
      const Event& event = state.log[*truck.ref].event;
      view.entered = ToldTap{event.id, event.at, event.what};
      view.volume = truck.what->volume;
      view.returned = truck.what->returned;
    }
    view.parts.reserve(truck.parts.size());
    for (const PartState& part : truck.parts) {
      LoadPart shown{.from = state.moment(part.from),
                     .volume = part.volume,
                     .told = told_of(state, truck, part)};
      if (part.element) shown.element = state.plan->elements[*part.element].id;
      if (part.to) shown.to = state.moment(*part.to);
      view.parts.push_back(std::move(shown));
    }
    views.push_back(std::move(view));
  }
  return views;
}

}  // namespace rb::screens
