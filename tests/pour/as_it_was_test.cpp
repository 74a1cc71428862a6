// What a state says stands as it did, stands as it did: whatever is entered, however far back.
#include "pour/log/as_it_was.h"

#include <doctest/doctest.h>

#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/origin.h"
#include "random_taps.h"

using namespace rb;

namespace {

template <class Item>
void same_before(const std::vector<Item>& was, const std::vector<Item>& is, std::size_t first) {
  if (first == AsItWas::kAll) REQUIRE(was.size() == is.size());
  const std::size_t count = std::min({first, was.size(), is.size()});
  for (std::size_t i = 0; i < count; ++i) REQUIRE(was[i] == is[i]);
  if (first != AsItWas::kAll) REQUIRE(count == first);
}

void same_until(const PourState& was, const PourState& is, const AsItWas& since) {
  const Seconds until = since.until();
  for (std::size_t i = 0; i < std::min(was.runs.size(), is.runs.size()); ++i) {
    if (was.runs[i].from >= until) break;
    REQUIRE(was.runs[i].from == is.runs[i].from);
    if (was.runs[i].to && *was.runs[i].to < until) REQUIRE(was.runs[i] == is.runs[i]);
  }
  for (std::size_t e = 0; e < was.elements.size(); ++e) {
    const Seconds tops = since.tops_until(e);
    if (tops == AsItWas::kEver) REQUIRE(was.elements[e].tops == is.elements[e].tops);
    for (std::size_t bay = 0; bay < was.elements[e].tops.size(); ++bay) {
      for (Seconds at{-60}; at < std::min(tops, is.last); at += Seconds{97}) {
        REQUIRE(was.elements[e].tops[bay].at(at) == is.elements[e].tops[bay].at(at));
      }
    }
  }
}

// A row whose runs or hangs came out otherwise is told of.
void other_rows_same(const PourState& was, const PourState& is, const AsItWas& since) {
  for (std::size_t e = 0; e < was.elements.size(); ++e) {
    for (std::size_t r = 0; r < was.elements[e].rows.size(); ++r) {
      bool told = false;
      for (const Trace& trace : since.traces()) {
        told = told || ((trace.of == Trace::Of::run || trace.of == Trace::Of::hang) &&
                        trace.element == e && trace.row == r);
      }
      if (told) continue;
      const RowState &a = was.elements[e].rows[r], &b = is.elements[e].rows[r];
      REQUIRE(a.runs.size() == b.runs.size());
      REQUIRE(a.hangs.size() == b.hangs.size());
      for (std::size_t i = 0; i < a.runs.size(); ++i) {
        REQUIRE(was.runs[a.runs[i]].from == is.runs[b.runs[i]].from);
        REQUIRE(was.runs[a.runs[i]].to == is.runs[b.runs[i]].to);
      }
      for (std::size_t i = 0; i < a.hangs.size(); ++i) {
        REQUIRE(was.hangs[a.hangs[i]] == is.hangs[b.hangs[i]]);
      }
    }
  }
}

}  // namespace

TEST_CASE("what is not told as changed has not changed, over one event or several") {
  std::size_t known = 0, partly = 0;
  for (unsigned seed = 2001; seed <= 2040; ++seed) {
    CAPTURE(seed);
    RandomTaps taps(seed);
    PourState state = *fold(std::vector<Event>{taps.opening});
    PourState was = state;
    for (int i = 0; i < 120; ++i) {
      CAPTURE(i);
      const Event event = taps.next();
      i % 2 == 0 ? extend(state, event) : (void)admit(state, event);
      const AsItWas since{state, AsItWas::stamp(was)};
      if (since.known()) {
        ++known;
        const std::size_t runs = since.first(Trace::Of::run);
        if (runs > 0 && runs < state.runs.size()) ++partly;
        same_before(was.runs, state.runs, runs);
        same_before(was.hangs, state.hangs, since.first(Trace::Of::hang));
        same_before(was.trucks, state.trucks, since.first(Trace::Of::truck));
        same_before(was.tests, state.tests, since.first(Trace::Of::test));
        same_before(was.penetrations, state.penetrations, since.first(Trace::Of::penetration));
        same_until(was, state, since);
        other_rows_same(was, state, since);
      }
      if (i % 3 == 0) was = state;
    }
  }
  CHECK(known > 3000);
  CHECK(partly > 500);
}

TEST_CASE("of a state that went another way nothing is known") {
  RandomTaps taps(5);
  const PourState begun = *fold(std::vector<Event>{taps.opening});
  PourState one = begun, other = begun;
  extend(one, *parse_event(
                  R"({"id":"a","at":"2026-03-02T22:30:00.000Z","by":"f","do":"air-temp","temp":9})",
                  "one"));
  extend(other,
         *parse_event(
             R"({"id":"b","at":"2026-03-02T22:30:00.000Z","by":"f","do":"air-temp","temp":8})",
             "other"));
  CHECK(AsItWas{one, AsItWas::stamp(begun)}.known());
  CHECK(AsItWas{one, AsItWas::stamp(one)}.same(Trace::Of::run));
  CHECK_FALSE(AsItWas{other, AsItWas::stamp(one)}.known());
  CHECK_FALSE(AsItWas{*fold(std::vector<Event>{taps.opening}), AsItWas::stamp(begun)}.known());
}

TEST_CASE("an event not told as odd was entered and kept as it happened, and all are counted") {
  std::size_t odd = 0;
  for (unsigned seed = 3001; seed <= 3020; ++seed) {
    CAPTURE(seed);
    RandomTaps taps(seed);
    PourState state = *fold(std::vector<Event>{taps.opening});
    for (int i = 0; i < 90; ++i) {
      const Event event = taps.next();
      i % 2 == 0 ? extend(state, event) : (void)admit(state, event);
      const auto told = oddly_entered(state);
      odd += told.size();
      Origin counted;
      for (EventRef ref = 0; ref < state.log.size(); ++ref) {
        const auto& entry = state.log[ref].event.entry;
        if (!entry) continue;
        ++(brought_in(state, ref) ? counted.brought : counted.tapped);
        if (std::binary_search(told.begin(), told.end(), ref)) continue;
        REQUIRE(between(entry->wall, state.log[ref].event.at) <= seconds(4));
        if (!entry->kept) continue;
        REQUIRE(between(entry->wall, *entry->kept) <= kLateKept);
        REQUIRE(between(entry->wall, *entry->kept) >= seconds(-4));
      }
      REQUIRE(origin_of(state) == counted);
    }
  }
  CHECK(odd > 1000);
}
