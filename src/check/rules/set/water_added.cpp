// water-added: water was put into a truck on site.
#include "check/rule.h"

namespace rb {

namespace {

void look_water_added(const Look& look, const Rule& rule, Findings& out) {
  for (const TruckState& truck : look.state.trucks) {
    if (!truck.what || !truck.what->water_added || *truck.what->water_added <= Volume{}) continue;
    Finding f = found(rule);
    f.element = truck.element();
    f.ticket = truck.ticket;
    f.from = f.to = look.state.told(*truck.ref, truck.what->arrived);
    f.measured = amount(*truck.what->water_added);
    f.limit = amount(Volume{});
    f.ref = truck.ref;
    f.sentence = said("ticket {ticket}: {measured} of water added to {volume} of concrete");
    f.facts = {{"volume", amount(truck.what->volume)}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kWaterAdded{
    {"water-added", said("Water added on site"), Severity::mend, Cost::perhaps,
     "weaker concrete that sets later and presses harder on the form",
     said("ASTM C94 lets water be added once, at arrival, within the mix's water (from memory)"),
     "none", "plan, by the engineer",
     said("Test slump and temperature again; tell the inspector before more of it is placed")},
    look_water_added};

}  // namespace rb
