#include "good_pours.h"

#include <fmt/format.h>

#include <algorithm>

#include "pour/log/event.h"

namespace rb::test {

namespace {

PlanText planned() {
  PlanText plan;
  plan.mix =
      R"("unit_weight":24,"slump":0.12,"initial_set_h":8,"air":5,"density":2400,"density_tol":50)";
  return plan;
}

PlanText with_rows(PlanText plan,
                   const std::function<std::string(const std::string&, double)>& row) {
  plan.rows.clear();
  std::string motors;
  for (int lift = 1; lift <= 4; ++lift) {
    const std::string id = fmt::format("R{}", lift);
    plan.rows.push_back(row(id, (lift * 6 - 3) / 10.0));
    motors += fmt::format(R"({}"{}-1","{}-2")", lift > 1 ? "," : "", id, id);
  }
  plan.height = 2.4;
  plan.lifts = "[0.6,1.2,1.8,2.4]";
  plan.element = R"("form_rating_kpa":50,"rise_limit":1.5)";
  plan.more = R"("power":[{"id":"I1","volts":42,"max_amps":20,"motors":[)" + motors +
              R"(],"cable":{"mm2":4,"length":25}}],)"
              R"("motor_type":{"amps":7.5,"force_kn":4,"vpm_max":6000})";
  return plan;
}

void tested(Pour& pour, double at, const std::string& ticket) {
  pour.at(at, R"("do":"test","ticket":")" + ticket +
                  R"(","temp":18,"slump":0.12,"air":5,"density":2400)");
}

// A slab dries at less than a third of what would crack it, even one of hot concrete at two thirds:
// 5 (36^2.5 - 0.8 x 33^2.5) 7.6e-6 = 0.11 kg/m2/h at 18 degC.
const std::string kMild = R"("do":"air-temp","temp":15,"humidity":80,"wind":1)";

void closed(Pour& pour, double at) {
  pour.at(at, kClose).at(at + 100, sign("foreman")).at(at + 200, sign("inspector"));
}

Pour begun(const PlanText& plan) {
  Pour pour{plan};
  pour.in_book = tap;
  return pour.at(60, ready("form braced", true)).at(70, ready("ties tight", true));
}

// Four lifts of 15 minutes, one every half hour, each run through its row as it stands.
Pour lifts(const PlanText& plan, double load, bool inserted) {
  Pour pour = begun(plan);
  for (int lift = 1; lift <= 4; ++lift) pour.at(120, hang(fmt::format("R{}", lift)));
  pour.load("T1", load, -600, 500, 3600).load("T2", load, 2400, 4100, 7000);
  tested(pour, 520, "T1");
  tested(pour, 4120, "T2");
  for (int lift = 1; lift <= 4; ++lift) {
    const double start = 600 + 1800 * (lift - 1);
    pour.placed(lift, start, start + 900, (lift * 6) / 10.0);
    pour.ran(fmt::format("R{}", lift), start + 900, start + 1000);
    if (!inserted) continue;
    pour.at(start + 1050, insert(lift, 0, 0.27, lift > 1 ? 0.15 : 0) + R"(,"points":8,"heads":1)");
  }
  closed(pour, 7200);
  return pour;
}

}  // namespace

Pour good_wall() {
  const PlanText plan = with_rows(planned(), [](const std::string& id, double z) {
    return full_row(id, z, "[" + id.substr(1) + "]");
  });
  return lifts(plan, 1.2, false);
}

Pour good_column() {
  PlanText plan = planned();
  plan.kind = "column";
  plan.length = plan.thickness = 0.6;
  plan.bays = "[0.6]";
  plan = with_rows(plan, [](const std::string& id, double z) {
    return row_text(id, z, {{id + "-1", 0.15, 0.2}, {id + "-2", 0.45, 0.2}},
                    "[" + id.substr(1) + "]");
  });
  return lifts(plan, 0.432, true);
}

Pour good_deck() {
  PlanText plan = planned();
  plan.kind = "deck";
  plan.length = 6;
  plan.height = 4;
  plan.thickness = 0.2;
  plan.bays = "[3,3]";
  plan.lifts = "[0.2]";
  plan.rows.clear();
  Pour pour = begun(plan);
  pour.load("T1", 2.4, -600, 500, 1500).load("T2", 2.4, 0, 1500, 2400);
  tested(pour, 520, "T1");
  tested(pour, 1520, "T2");
  pour.at(530, kMild);
  pour.at(600, lift_start(1)).at(1400, lift_end(1, 0.2, 1));
  pour.at(601, bay_start(1, 1)).at(1500, bay_start(1, 2));
  pour.at(1450, insert(1, 1, 0.27, 0) + R"(,"points":80,"heads":1)");
  pour.at(2400, lift_end(1, 0.2, 2));
  pour.at(2450, insert(1, 2, 0.27, 0) + R"(,"points":80,"heads":1)");
  closed(pour, 3000);
  return pour;
}

void tap(std::vector<Event>& events) {
  std::stable_sort(events.begin(), events.end(),
                   [](const Event& a, const Event& b) { return a.at < b.at; });
  for (Event& event : events) {
    event.entry =
        Entry{event.at, seconds(1000) + between(events.front().at, event.at), "b1", event.at};
  }
}

Pour& in_book(Pour& pour, const std::function<void(std::vector<Event>&)>& change) {
  pour.in_book = [change](std::vector<Event>& events) {
    tap(events);
    change(events);
  };
  return pour;
}

Pour& never_ran(Pour& pour, const std::string& row) {
  pour.without(R"("do":"run","element":"W1","row":")" + row);
  return pour.without(R"("do":"rest","element":"W1","row":")" + row);
}

}  // namespace rb::test
