#include "check/after_pour.h"

#include <algorithm>

#include "check/tested_mix.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/drying.h"
#include "pour/outlook/hardening.h"

namespace rb {

namespace {

void untold_curing(const Look& look, std::size_t e, std::vector<NotJudged>& gaps) {
  const Element& element = look.plan().elements[e];
  if ((!element.cure_for && !element.cure_start_within) || !all_in(look, e)) return;
  const auto came = last_concrete(look.state, e);
  if (!came) return;
  const auto begun = curing_begun(look.state, e, *came);
  const bool late = element.cure_start_within && look.asked.at > *came + *element.cure_start_within;
  if (!begun && !late) {
    gaps.push_back(
        {.what = "curing",
         .element = e,
         .sentence = said("{element}: curing is planned and none is logged yet, so it is "
                          "not judged.")});
    return;
  }
  if (!begun || !element.cure_for || look.state.curing(e) == nullptr) return;
  if (cured_for(look.state, e, *came, look.asked.at) >= *element.cure_for) return;
  gaps.push_back({.what = "curing",
                  .element = e,
                  .sentence = said("{element}: its curing goes on, so whether it lasts as long as "
                                   "planned is not judged yet.")});
}

void unshown_strength(const Look& look, std::size_t e, std::vector<NotJudged>& gaps) {
  const Element& element = look.plan().elements[e];
  if (!element.strip_strength || !last_concrete(look.state, e)) return;
  const bool unshown =
      std::any_of(look.state.strips.begin(), look.state.strips.end(), [&](const EventRef ref) {
        const LogEntry& entry = look.state.log[ref];
        const auto* strip = std::get_if<event::Strip>(&entry.event.what);
        return strip != nullptr && strip->element == element.id &&
               !strength_judged(look.state, e, look.state.clock(entry.when));
      });
  if (!unshown) return;
  gaps.push_back({.what = "strength",
                  .element = e,
                  .sentence = said("{element}: the plan gives no strength_curve and no specimen of "
                                   "its last load was broken by then, so whether it was strong "
                                   "enough to be stripped is not judged.")});
}

void unread_weather(const Look& look, std::size_t e, std::vector<NotJudged>& gaps) {
  if (look.plan().elements[e].kind != ElementKind::deck) return;
  if (!last_concrete(look.state, e) || fastest_drying(look.state, e, look.asked.at)) return;
  gaps.push_back({.what = "evaporation",
                  .element = e,
                  .sentence = said("{element}: no air temperature with humidity and wind is logged "
                                   "for it, so how fast its surface dried is not judged.")});
}

// A mix that is to reach a strength, of which a load came and no specimen was taken.
void untaken_specimens(const Look& look, std::vector<NotJudged>& gaps) {
  for (const Mix& mix : look.plan().mixes) {
    if (!mix.strength) continue;
    const auto is_of = [&](const TestState& test) { return tested_mix(look.state, test) == &mix; };
    const bool came = std::any_of(look.state.trucks.begin(), look.state.trucks.end(),
                                  [&](const TruckState& truck) {
                                    return truck.what && truck.what->mix == mix.id &&
                                           truck.ended() && *truck.ended() <= look.asked.at;
                                  });
    const bool taken = std::any_of(
        look.state.tests.begin(), look.state.tests.end(),
        [&](const TestState& test) { return !test.what.specimens.empty() && is_of(test); });
    if (!came || taken) continue;
    gaps.push_back({.what = "specimen",
                    .sentence = said("of a mix with a strength to reach no specimen was taken, so "
                                     "its strength is not judged.")});
    return;  // once
  }
}

void unbroken_specimens(const Look& look, std::vector<NotJudged>& gaps) {
  for (const TestState& test : look.state.tests) {
    const Mix* mix = tested_mix(look.state, test);
    if (mix == nullptr || !mix->strength || test.what.specimens.empty()) continue;
    const bool broken = std::any_of(look.state.specimens.begin(), look.state.specimens.end(),
                                    [&](const SpecimenState& s) {
                                      return s.ticket == test.what.ticket && s.what.age_days >= 28;
                                    });
    if (broken) continue;
    gaps.push_back({.what = "specimen",
                    .sentence = said("a load's specimens have no result at 28 days yet, so its "
                                     "strength is not judged.")});
    return;  // once
  }
}

}  // namespace

std::optional<Seconds> curing_begun(const PourState& state, std::size_t element, Seconds came) {
  for (const CureState& cure : state.cures) {
    if (cure.element == element && (!cure.to || *cure.to > came)) return std::max(cure.from, came);
  }
  return std::nullopt;
}

bool all_in(const Look& look, std::size_t element) {
  if (!look.asof.live || look.state.closed) return true;
  const auto& lifts = look.state.elements[element].lifts;
  const auto& planned = look.plan().elements[element].lifts;
  return !lifts.empty() && lifts.back().ended &&
         static_cast<std::size_t>(lifts.back().lift) >= planned.size();
}

void tell_after_pour(const Look& look, std::vector<NotJudged>& gaps) {
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    untold_curing(look, e, gaps);
    unshown_strength(look, e, gaps);
    unread_weather(look, e, gaps);
  }
  untaken_specimens(look, gaps);
  unbroken_specimens(look, gaps);
}

}  // namespace rb
