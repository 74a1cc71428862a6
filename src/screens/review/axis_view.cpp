#include "screens/review/axis_view.h"

#include <algorithm>

#include "pour/log/log_entry.h"
#include "pour/outlook/form.h"
#include "pour/outlook/loads.h"

namespace rb::screens {

namespace {

// What is nearer than this share of the axis is one mark: no eye tells it apart.
constexpr double kFinest = 1.0 / 1500;

// Spans of a line in order of time, those that touch to the eye as one.
class Lane {
 public:
  Lane(std::vector<AxisSpan>& out, Seconds finest) : out_(out), finest_(finest) {}
  void add(Seconds from, Seconds to, std::uint8_t line = 0) {
    if (!out_.empty() && out_.back().line == line && from - out_.back().to < finest_ &&
        from >= out_.back().from) {
      out_.back().to = std::max(out_.back().to, to);
    } else {
      out_.push_back({from, to, line});
    }
  }

 private:
  std::vector<AxisSpan>& out_;
  Seconds finest_;
};

void add_tops(AxisView& view, const ElementState& there, Seconds finest) {
  for (const trade::TopCurve& top : there.tops) {
    auto& line = view.tops.emplace_back();
    for (const trade::SurfacePoint& point : top.points()) {
      // Of readings that stand in one place the last.
      if (line.size() > 1 && point.at - line[line.size() - 2].at < finest) line.pop_back();
      line.push_back(point);
    }
  }
}

void add_work(AxisView& view, const PourState& state, std::size_t element, Seconds finest) {
  const ElementState& there = state.elements[element];
  Lane runs{view.runs, finest};
  Lane moves{view.moves, finest};
  view.rows = static_cast<std::uint8_t>(std::min<std::size_t>(there.rows.size(), 250));
  for (std::size_t row = 0; row < view.rows; ++row) {
    for (const std::size_t r : there.rows[row].runs) {
      const RunState& run = state.runs[r];
      runs.add(run.from, counts_until(state, run, state.last, Unended::to_next_event),
               static_cast<std::uint8_t>(row));
    }
  }
  for (const HangState& hang : state.hangs) {
    if (hang.element == element) moves.add(hang.from, hang.from);
  }
  for (const LiftState& lift : there.lifts) {
    const Seconds open = lift.next_start.value_or(state.last);
    view.lifts.push_back({lift.lift, lift.started, lift.ended.value_or(open)});
  }
}

void add_concrete(AxisView& view, const PourState& state, std::size_t element, Seconds finest) {
  Lane trucks{view.trucks, finest};
  Lane tests{view.tests, finest};
  for (const LoadSpan& load : load_spans(state, element)) {
    trucks.add(load.from, std::min(load.to, state.last));
  }
  for (const TestState& test : state.tests) {
    if (may_be_of(state, test, element)) tests.add(test.at, test.at);
  }
}

void add_holds(AxisView& view, const PourState& state, std::size_t element) {
  for (const HoldState& hold : state.holds) {
    view.holds.push_back({hold.from, hold.to.value_or(state.last), 0});
  }
  for (const OverrideState& gone_on : state.overrides) {
    if (gone_on.element.value_or(element) == element) {
      view.holds.push_back({gone_on.at, gone_on.at, 1});
    }
  }
}

void add_findings(AxisView& view, const CheckReport& report, std::size_t element, Seconds finest) {
  for (int severity = 2; severity >= 0; --severity) {  // the gravest are drawn last, over the rest
    std::vector<AxisSpan> line;
    for (const Finding& finding : report.findings) {
      if (static_cast<int>(finding.severity) != severity) continue;
      if (finding.element.value_or(element) != element) continue;
      if (!finding.from && !finding.to) continue;
      const Seconds from = finding.from.value_or(*(finding.to ? finding.to : finding.from));
      line.push_back({from, std::max(from, finding.to.value_or(from)), 0});
    }
    std::sort(line.begin(), line.end(),
              [](const AxisSpan& a, const AxisSpan& b) { return a.from < b.from; });
    Lane lane{view.findings, finest};
    for (const AxisSpan& span : line) {
      lane.add(span.from, span.to, static_cast<std::uint8_t>(severity));
    }
  }
}

}  // namespace

AxisView make_axis_view(const PourState& state, const CheckReport& report, std::size_t element) {
  AxisView view;
  view.height = state.plan->elements[element].rise_height();
  // What comes days after the close, curing or a repair, would leave the pour itself no room.
  const Seconds end = state.closed ? state.clock(*state.closed) : state.last;
  view.events.reserve(state.taps.size());
  for (const EventRef ref : state.order) {
    const LogEntry& entry = state.log[ref];
    const Seconds at = state.clock(entry.when);
    if (!entry.struck && at <= end) view.events.push_back(at);
  }
  if (view.events.empty()) return view;
  view.begin = view.events.front();
  view.end = std::max(end, view.begin + Seconds{60});
  const Seconds finest = (view.end - view.begin) * kFinest;
  add_tops(view, state.elements[element], finest);
  add_work(view, state, element, finest);
  add_concrete(view, state, element, finest);
  add_holds(view, state, element);
  add_findings(view, report, element, finest);
  return view;
}

MomentSeen make_moment_seen(const PourState& state, std::size_t element, Seconds at) {
  MomentSeen seen;
  const ElementState& there = state.elements[element];
  const Element& planned = state.plan->elements[element];
  for (const LiftState& lift : there.lifts) {
    const Seconds ended = lift.ended.value_or(lift.next_start.value_or(state.last));
    if (lift.started <= at && at <= ended) seen.lift = lift.lift;
  }
  for (std::size_t row = 0; row < there.rows.size(); ++row) {
    const auto& runs = there.rows[row].runs;
    const auto next =
        std::upper_bound(runs.begin(), runs.end(), at,
                         [&](Seconds m, std::size_t run) { return m < state.runs[run].from; });
    if (next == runs.begin()) continue;
    const RunState& run = state.runs[*(next - 1)];
    if (at <= counts_until(state, run, state.last, Unended::to_next_event)) {
      seen.running.push_back({planned.id, planned.rows[row].side, planned.rows[row].id});
    }
  }
  const Moment moment = state.moment(at);
  auto after = std::upper_bound(state.order.begin(), state.order.end(), moment,
                                [&](Moment m, EventRef ref) { return m < state.log[ref].when; });
  while (after != state.order.begin()) {
    --after;
    if (state.log[*after].struck) continue;
    seen.last = *after;
    break;
  }
  seen.held = std::any_of(state.holds.begin(), state.holds.end(), [&](const HoldState& hold) {
    return hold.from <= at && at < hold.to.value_or(state.last);
  });
  return seen;
}

}  // namespace rb::screens
