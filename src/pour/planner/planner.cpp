// The planner's own guesses, varied one step after the other until there is a plan.
#include "pour/planner/planner.h"

#include <algorithm>
#include <array>

#include "pour/plan/plan_json.h"
#include "pour/planner/attempt.h"

namespace rb {

namespace {

constexpr std::array<const char*, 9> kLimitWords{"rise-wished", "rise-given", "pressure",
                                                 "head",        "knit",       "trucks",
                                                 "load-age",    "crew",       "vibrators"};

// What is tried, and what a step away from the first guess costs: a smaller load is changed more
// gladly than the pace, and that than rows left out on one side. All our own choice.
constexpr std::array kRises{2.0, 2.5, 3.0, 4.0, 5.0, 6.0};  // m/h
constexpr double kWallRiseMost = 4.0;
constexpr std::array kLiftShares{0.8, 0.6, 0.5};
constexpr int kLoadCost = 1;
constexpr int kPaceCost = 3;
constexpr int kShortLastCost = 4;  // a short load at the end is usual, if it is said
constexpr int kSidesCost = 20;
constexpr Volume kLoadStep = cubic_metres(0.5);
constexpr int kMostHands = 40;

struct Variant {
  PlanWish wish;
  int cost = 0;
  LastLoad last = LastLoad::whole;
};

// Each of the variants with each of what one figure may be.
template <class Figures, class Put>
void vary(std::vector<Variant>& variants, const Figures& figures, int cost, Put put) {
  const std::size_t before = variants.size();
  variants.reserve(before * (figures.size() + 1));
  for (std::size_t f = 0; f < figures.size(); ++f) {
    for (std::size_t v = 0; v < before; ++v) {
      Variant made = variants[v];
      put(made, figures[f]);
      made.cost += cost * (static_cast<int>(f) + 1);
      variants.push_back(std::move(made));
    }
  }
}

std::vector<double> rises_for(const PlanWish& wish) {
  std::vector<double> rises;
  if (wish.given.rise || wish.kind == ElementKind::deck) return rises;
  for (const double rise : kRises) {
    if (metres_per_hour(rise) <= wish.rise_wished) continue;
    if (wish.kind == ElementKind::wall && rise > kWallRiseMost) continue;
    rises.push_back(rise);
  }
  return rises;
}

std::vector<Length> lifts_for(const PlanWish& wish) {
  std::vector<Length> lifts;
  if (wish.given.lift || wish.kind == ElementKind::deck) return lifts;
  for (const double share : kLiftShares) {
    if (wish.deepest_lift * share >= trade::kThinnestLift) {
      lifts.push_back(wish.deepest_lift * share);
    }
  }
  return lifts;
}

bool may_leave_a_side(const PlanWish& wish) {
  return wish.both_sides && !wish.given.sides && wish.kind != ElementKind::deck;
}

std::vector<Volume> loads_for(const PlanWish& wish) {
  std::vector<Volume> loads;
  if (wish.given.load) return loads;
  for (Volume load = wish.load - kLoadStep; load >= kLeastLoad; load -= kLoadStep) {
    loads.push_back(load);
  }
  return loads;
}

std::vector<Variant> variants_of(const PlanWish& wish) {
  std::vector<Variant> variants{Variant{wish}};
  vary(variants, loads_for(wish), kLoadCost, [](Variant& v, Volume load) { v.wish.load = load; });
  vary(variants, rises_for(wish), kPaceCost,
       [](Variant& v, double rise) { v.wish.rise_wished = metres_per_hour(rise); });
  vary(variants, lifts_for(wish), kPaceCost,
       [](Variant& v, Length lift) { v.wish.deepest_lift = lift; });
  if (!wish.given.load) {
    vary(variants, std::array{LastLoad::may_be_short}, kShortLastCost,
         [](Variant& v, LastLoad last) { v.last = last; });
  }
  if (may_leave_a_side(wish)) {
    vary(variants, std::array{false}, kSidesCost,
         [](Variant& v, bool both) { v.wish.both_sides = both; });
  }
  std::stable_sort(variants.begin(), variants.end(),
                   [](const Variant& a, const Variant& b) { return a.cost < b.cost; });
  return variants;
}

// What was changed, and which of the guesses that stand bind.
void tell_guesses(PlannedPour& p, const PlanWish& first, const PlanWish& used) {
  const auto tell = [&](PlanGuess guess, bool changed, Saying words) {
    p.guesses.push_back({guess, changed, std::move(words)});
  };
  if (used.load != first.load) {
    tell(PlanGuess::load, true,
         {said("loads of at most {now} in place of {first}"),
          {{"now", amount(used.load)}, {"first", amount(first.load)}}});
  } else if (!first.given.load && p.trucks > 1) {
    tell(PlanGuess::load, false,
         {said("loads of at most {now} are a guess"), {{"now", amount(used.load)}}});
  }
  if (!first.given.load && p.trucks > 1 && p.loads.back().volume < kLeastLoad) {
    tell(PlanGuess::load, true,
         {said("a last load of only {last}: measure what is left before it is ordered"),
          {{"last", amount(p.loads.back().volume)}}});
  }
  if (used.rise_wished != first.rise_wished) {
    tell(PlanGuess::rise, true,
         {said("a rise of {now} in place of {first}"),
          {{"now", amount(used.rise_wished)}, {"first", amount(first.rise_wished)}}});
  } else if (!first.given.rise && p.sets_rise == PlanLimit::rise_wished) {
    tell(PlanGuess::rise, false,
         {said("the rise of {now} is a guess, and nothing else holds it"),
          {{"now", amount(used.rise_wished)}}});
  }
  if (used.deepest_lift != first.deepest_lift) {
    tell(PlanGuess::lift, true,
         {said("lifts of at most {now} in place of {first}"),
          {{"now", amount(used.deepest_lift)}, {"first", amount(first.deepest_lift)}}});
  } else if (!first.given.lift && p.lifts.size() > 1) {
    tell(PlanGuess::lift, false,
         {said("lifts of at most {now} are a guess"), {{"now", amount(used.deepest_lift)}}});
  }
  if (used.both_sides != first.both_sides) {
    tell(PlanGuess::sides, true, said("rows on the near side alone in place of both"));
  }
}

// A refusal that tells what else was tried.
Error with_tried(Error fault, const PlanWish& wish) {
  const auto rises = rises_for(wish);
  const auto lifts = lifts_for(wish);
  const auto loads = loads_for(wish);
  Saying tried;
  const auto add = [&](Saying more) {
    tried = tried.empty() ? std::move(more) : beside(std::move(tried), std::move(more));
  };
  if (!loads.empty()) add({said("loads down to {load}"), {{"load", amount(loads.back())}}});
  if (!rises.empty()) {
    add({said("a rise up to {rise}"), {{"rise", amount(metres_per_hour(rises.back()))}}});
  }
  if (!lifts.empty()) add({said("lifts down to {lift}"), {{"lift", amount(lifts.back())}}});
  if (may_leave_a_side(wish)) add(said("one side alone"));
  if (!tried.empty()) {
    fault.what = followed(std::move(fault.what), {said("Tried in vain, too: {tried}"),
                                                  {{"tried", Clause{std::move(tried)}}}});
  }
  return fault;
}

// The least crew that nobody waits for.
std::optional<int> hands_no_wait(Variant used, Sizings& sizings) {
  PlanWish& wish = used.wish;
  const int crew = wish.crew;
  const auto waits = [&](int hands) {
    wish.crew = hands;
    const auto planned = attempt(wish, sizings, used.last);
    return !planned || planned->waits > Seconds{};
  };
  if (waits(std::max(crew, kMostHands))) return std::nullopt;
  for (int hands = crew + 1; hands < kMostHands; ++hands) {
    if (!waits(hands)) return hands;
  }
  return kMostHands;
}

Result<PlannedPour> vary_and_plan(const PlanWish& wish) {
  Sizings sizings;
  auto first = attempt(wish, sizings, LastLoad::whole);
  if (!first && first.error().kind != Error::Kind::refused) return first;
  Variant used{wish};
  if (!first) {
    auto planned = std::optional<PlannedPour>{};
    for (const Variant& variant : variants_of(wish)) {
      if (auto tried = attempt(variant.wish, sizings, variant.last)) {
        planned = *std::move(tried);
        used = variant;
        break;
      }
    }
    if (!planned) return Failed{with_tried(std::move(first.error()), wish)};
    planned->forced = first.error().what;
    first = *std::move(planned);
  }
  tell_guesses(*first, wish, used.wish);
  if (first->waits > Seconds{}) {
    first->hands_no_wait = hands_no_wait(used, sizings);
    if (first->hands_no_wait) first->motors_no_wait.reset();
  }
  return first;
}

}  // namespace

const char* to_text(PlanLimit limit) {
  return kLimitWords.at(static_cast<std::size_t>(limit));
}

Result<PlannedPour> plan_pour(const PlanWish& wish) {
  auto planned = vary_and_plan(wish);
  if (!planned) return planned;
  // What a pour could not be opened with is refused here, whatever it was asked with.
  if (auto plan = parse_plan(to_json(planned->plan), "the plan"); !plan) {
    return Failed{std::move(plan.error())};
  }
  return planned;
}

}  // namespace rb
