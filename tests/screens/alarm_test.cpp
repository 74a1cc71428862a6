#include "screens/view/alarm.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::screens;

namespace {
Finding finding(const char* rule, Severity severity, std::size_t row, double measured = 1) {
  Finding f;
  f.rule = rule;
  f.severity = severity;
  f.element = 0;
  f.row = row;
  f.measured = Amount{Measure::number, measured};
  return f;
}
const PourId kPour{"P1"};
}  // namespace

TEST_CASE("what stood when a pour was first looked at sounds nothing") {
  Alarm alarm;
  CHECK_FALSE(alarm.hear(kPour, {finding("head-high", Severity::stop, 0)}));
  CHECK_FALSE(alarm.hear(kPour, {finding("head-high", Severity::stop, 0)}));
  CHECK_FALSE(alarm.hear(PourId{"P2"}, {finding("row-missed", Severity::mend, 1)}));
}

TEST_CASE("a finding sounds once, as long as it stands, whatever its figure becomes") {
  Alarm alarm;
  CHECK_FALSE(alarm.hear(kPour, {}));
  CHECK(alarm.hear(kPour, {finding("rise-fast", Severity::stop, 0, 4.1)}) == Severity::stop);
  CHECK_FALSE(alarm.hear(kPour, {finding("rise-fast", Severity::stop, 0, 4.2)}));
  CHECK_FALSE(alarm.hear(kPour, {}));
  CHECK(alarm.hear(kPour, {finding("rise-fast", Severity::stop, 0)}) == Severity::stop);
}

TEST_CASE("of several new findings the gravest sounds; notes are silent") {
  Alarm alarm;
  CHECK_FALSE(alarm.hear(kPour, {}));
  CHECK_FALSE(alarm.hear(kPour, {finding("run-long", Severity::note, 0)}));
  CHECK(alarm.hear(kPour, {finding("run-short", Severity::mend, 0)}) == Severity::mend);
  CHECK(alarm.hear(kPour, {finding("run-short", Severity::mend, 0),
                           finding("run-short", Severity::mend, 1),
                           finding("head-high", Severity::stop, 2)}) == Severity::stop);
}

TEST_CASE("each load that grows old sounds for itself") {
  Alarm alarm;
  CHECK_FALSE(alarm.hear(kPour, {}));
  Finding first = finding("load-old", Severity::mend, 0);
  first.ticket = TicketId{"4711"};
  Finding second = first;
  second.ticket = TicketId{"4712"};
  CHECK(alarm.hear(kPour, {first}) == Severity::mend);
  CHECK(alarm.hear(kPour, {first, second}) == Severity::mend);
  CHECK_FALSE(alarm.hear(kPour, {first, second}));
}

namespace {
Finding at(Finding f, double from, std::optional<double> to = {}) {
  f.from = seconds(from);
  if (to) f.to = seconds(*to);
  return f;
}
}  // namespace

TEST_CASE("a pour first looked at tells what was lately true, the gravest and the latest first") {
  const Finding old = at(finding("run-short", Severity::mend, 0), 0, 100);
  const Finding late = at(finding("run-short", Severity::mend, 1), 500, 600);
  const Finding later = at(finding("temp-out", Severity::mend, 2), 700);
  const Finding stop = at(finding("head-high", Severity::stop, 3), 50, 650);
  const Finding plan = finding("row-far", Severity::mend, 4);
  const Finding note = at(finding("run-long", Severity::note, 5), 700);
  const auto found = Alarm{}.attention(kPour, {plan, note, old, late, later, stop}, seconds(701));
  CHECK(found.now == std::vector<Finding>{stop, later, late, plan});
  CHECK(found.behind.mends == 1);  // the old one stays open
  CHECK(found.behind.stops == 0);
  CHECK(found.behind.gravest == old);
  CHECK(Alarm{}.attention(kPour, {old}, seconds(700)).now.size() == 1);
}

TEST_CASE("of two stops the one that can hurt people stands first, whichever is the later") {
  const Finding joint = at(finding("knit-late", Severity::stop, 0), 0, 700);
  const Finding moved = at(finding("form-moved", Severity::stop, 1), 650, 650);
  const Finding wet = at(finding("slump-out", Severity::mend, 2), 700);
  for (const auto& found : {std::vector{joint, moved, wet}, {wet, moved, joint}}) {
    CHECK(Alarm{}.attention(kPour, found, seconds(700)).now ==
          std::vector<Finding>{moved, joint, wet});
  }
}

TEST_CASE("what is new needs a hand until it was looked at, however long that takes") {
  Alarm alarm;
  CHECK(alarm.attention(kPour, {}, seconds(1000)).now.empty());
  // A top read now shows the head of a run that ended half an hour ago.
  const Finding head = at(finding("head-high", Severity::stop, 0), 100, 200);
  CHECK(alarm.attention(kPour, {head}, seconds(2000)).now.size() == 1);
  CHECK(alarm.attention(kPour, {head}, seconds(20000)).now.size() == 1);
  CHECK(alarm.saw(head));
  CHECK_FALSE(alarm.saw(head));
  const Attention after = alarm.attention(kPour, {head}, seconds(20001));
  CHECK(after.now.empty());
  CHECK(after.behind.stops == 1);  // dimmed, never gone
  // Another run of the same row is news of its own.
  const Finding again = at(finding("head-high", Severity::stop, 0), 300, 400);
  CHECK(alarm.attention(kPour, {head, again}, seconds(20002)).now == std::vector<Finding>{again});
  // What stood when a pour was first looked at is none, and open.
  Alarm fresh;
  CHECK(fresh.attention(kPour, {head}, seconds(2000)).now.empty());
  CHECK(fresh.attention(kPour, {head}, seconds(2005)).behind.gravest == head);
}

TEST_CASE("a stop that is still so is not dimmed by a look; a mend is") {
  Alarm alarm;
  CHECK(alarm.attention(kPour, {}, seconds(0)).now.empty());
  const Finding stop = at(finding("head-high", Severity::stop, 0), 100, 1000);
  const Finding mend = at(finding("temp-out", Severity::mend, 1), 100, 1000);
  CHECK(alarm.attention(kPour, {stop, mend}, seconds(1000)).now.size() == 2);
  alarm.saw(stop);
  alarm.saw(mend);
  CHECK(alarm.attention(kPour, {stop, mend}, seconds(1060)).now == std::vector<Finding>{stop});
  CHECK(alarm.attention(kPour, {stop, mend}, seconds(1061)).now.empty());
}

TEST_CASE("what was accepted is open no more") {
  Finding accepted = at(finding("run-short", Severity::mend, 0), 0, 100);
  accepted.group = "run-short W1 R1";
  const auto found = Alarm{}.attention(kPour, {accepted}, seconds(101), {accepted.group});
  CHECK(found.now.empty());
  CHECK_FALSE(found.behind.gravest);
}
