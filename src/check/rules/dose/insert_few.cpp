// insert-few: what only insertions consolidate was not reached by them, or points are short.
#include <algorithm>

#include "check/rule.h"
#include "check/vibrated.h"

namespace rb {

namespace {

struct BayLook {
  const Look& look;
  const LiftReport& report;
  std::size_t bay;
  [[nodiscard]] const Element& element() const { return look.element(report); }
  [[nodiscard]] Length low() const { return look.lift(report).bottom[bay]; }
  [[nodiscard]] Length high() const { return look.lift(report).top[bay]; }
  [[nodiscard]] bool into(const InsertState& insert) const {
    return goes_into(look, insert, report, bay);
  }

  // Of the lift's height, the share no insertion that counts worked.
  [[nodiscard]] double under_share() const {
    std::vector<trade::Band> bands;
    for (const InsertState& insert : look.state.inserts) {
      if (!into(insert)) continue;
      const auto& sets = look.faces[report.element].sets;
      if (const auto band = worked_by(look.state, insert, bay, sets)) bands.push_back(*band);
    }
    std::sort(bands.begin(), bands.end(),
              [](const trade::Band& a, const trade::Band& b) { return a.from < b.from; });
    Length under;
    Length reached = low();
    for (const trade::Band& band : bands) {
      if (band.from > reached) under += std::min(band.from, high()) - reached;
      reached = std::min(high(), std::max(reached, band.to));
      if (reached >= high()) break;
    }
    under += std::max(Length{}, high() - reached);
    return under / (high() - low());
  }
};

Finding found_in(const Rule& rule, const BayLook& bay) {
  Finding f = found(rule);
  f.element = bay.report.element;
  f.lift = bay.report.lift;
  f.bay = bay.bay;
  f.from = bay.report.placed_from;
  f.to = bay.report.placed_to;
  f.ref = bay.look.lift(bay.report).ref;
  return f;
}

void look_bay(const BayLook& bay, const Rule& rule, Findings& out) {
  double points = 0;
  double times = 0;
  bool told = true;  // how many points each insertion was
  std::optional<Seconds> shortest;
  const InsertState* last = nullptr;
  for (const InsertState& insert : bay.look.state.inserts) {
    if (!bay.into(insert)) continue;
    ++times;
    points += insert.what.points.value_or(0);
    told = told && insert.what.points;
    shortest = std::min(shortest.value_or(insert.what.each), insert.what.each);
    last = &insert;
  }
  if (last == nullptr) return;  // unvibrated or insert-missing tells it
  const PointsWanted wanted =
      points_wanted(bay.look.plan(), bay.element(), bay.bay, widest_apart(bay.look.plan(), *last),
                    bay.low(), bay.high());
  const double all = wanted.all();
  // Beside rows they need not cover the height, but some must count.
  const double height = bay.under_share();
  const double under = bay.element().rows.empty() || height > 1 - kRounding ? height : 0.0;
  const auto& most = bay.look.plan().limits.under_share_max;
  if (under > most.value) {
    Finding f = found_in(rule, bay);
    f.measured = share(under);
    f.limit = share(most.value);
    f.source = limit_source(rule, most.from);
    const Seconds least = bay.look.plan().limits.insert_least.value;
    f.sentence =
        *shortest < least
            ? said(
                  "{element} lift {lift} bay {bay}: {measured} of its height not reached by "
                  "insertions that count (limit {limit}): {each} at a point, at least {least}")
            : said(
                  "{element} lift {lift} bay {bay}: {measured} of its height not reached by "
                  "insertions that count (limit {limit}); points wanted {wanted}, layers "
                  "{layers}, insertions logged {times}");
    f.facts = {{"wanted", count(all)},
               {"layers", count(wanted.layers)},
               {"times", count(times)},
               {"each", amount(*shortest)},
               {"least", amount(least)}};
    out.push_back(std::move(f));
  } else if (told && points < all) {
    Finding f = found_in(rule, bay);
    f.measured = count(points);
    f.limit = count(all);
    f.sentence = said(
        "{element} lift {lift} bay {bay}: {measured} points worked; its {layers} layers want "
        "{limit}");
    f.facts = {{"layers", count(wanted.layers)}};
    out.push_back(std::move(f));
  }
}

void look_insert_few(const Look& look, const Rule& rule, Findings& out) {
  for (const LiftReport& report : look.lifts) {
    if (!by_insertions(look.element(report)) || !look.settled(report)) continue;
    const LiftState& lift = look.lift(report);
    for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
      if (lift.top[bay] > lift.bottom[bay]) look_bay({look, report, bay}, rule, out);
    }
  }
}

}  // namespace

extern const Rule kInsertFew{
    {"insert-few", said("Too few insertions"), Severity::mend, Cost::perhaps,
     "concrete that no vibrator reached while it was plastic: honeycomb",
     said("spacing 1.5 x radius of action (ACI 309R, from memory; radii read); layers of {0.6 m} "
          "(UFGS 03301A, read); from 5 s at a point (read: army training text)"),
     "under_share_max of the height, where nothing but insertions works; points a layer x layers "
     "where they are logged; insert_s_min 5 s, insert_layer_m 0.6 m",
     "plan, by the engineer",
     said("Insert what was left out while it is plastic, layer by layer, and log the points; else "
          "mark the place to be inspected when stripped")},
    look_insert_few};

}  // namespace rb
