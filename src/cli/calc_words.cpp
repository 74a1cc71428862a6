// The formulas of the command line and their options.
#include "cli/calc.h"
#include "cli/command_words.h"

namespace rb {

namespace {

void add_form_formulas(CommandWords& words, CLI::App& calc) {
  auto& pressure = words.wish<PressureWish>();
  auto& pressure_words = words.add_formula(calc, "pressure", "Lateral pressure on a form",
                                           [&] { return calc_pressure(pressure); });
  pressure_words.add_option("--method", pressure.method, "aci347, ciria108 or din18218");
  pressure_words.add_option("--shape", pressure.shape, "wall or column");
  pressure_words.add_option("--cement", pressure.cement,
                            "plain, retarded, blended, blended-retarded or high-blend");
  pressure_words.add_option("--unit-weight", pressure.unit_weight, "\"24 kN/m3\" or \"150 pcf\"");
  pressure_words.add_option("--height", pressure.height, "of the form: \"3.6 m\"")->required();
  pressure_words.add_option("--rise", pressure.rise, "\"1.5 m/h\" or \"5 ft/h\"")->required();
  pressure_words.add_option("--temp", pressure.temperature, "of the concrete: \"15 C\"");
  pressure_words.add_option("--slump", pressure.slump, "\"120 mm\"");
  pressure_words.add_option("--set-time", pressure.set_time, "initial set, for DIN 18218: \"5 h\"");
  pressure_words.add_option("--rating", pressure.rating, "of the form, \"60 kPa\": the rise at it");

  auto& rise = words.wish<RiseWish>();
  auto& rise_words = words.add_formula(calc, "rise", "The rate of rise a form's rating allows",
                                       [&] { return calc_rise(rise); });
  rise_words.add_option("--rating", rise.form.rating, "of the form: \"60 kPa\"")->required();
  rise_words.add_option("--height", rise.form.height, "of the form: \"3.6 m\"")->required();
  rise_words.add_option("--method", rise.form.method, "aci347, ciria108 or din18218");
  rise_words.add_option("--shape", rise.form.shape, "wall or column");
  rise_words.add_option("--cement", rise.form.cement,
                        "plain, retarded, blended, blended-retarded or high-blend");
  rise_words.add_option("--unit-weight", rise.form.unit_weight, "\"24 kN/m3\" or \"150 pcf\"");
  rise_words.add_option("--temp", rise.form.temperature, "of the concrete: \"15 C\"");
  rise_words.add_option("--slump", rise.form.slump, "\"120 mm\"");
  rise_words.add_option("--set-time", rise.form.set_time, "initial set, for DIN 18218: \"5 h\"");
  rise_words.add_option("--length", rise.length, "of the element, for the rate of placing");
  rise_words.add_option("--thickness", rise.thickness, "of the element");

  auto& wait = words.wish<WaitWish>();
  auto& wait_words =
      words.add_formula(calc, "wait", "How long a row must rest under a head over the rating",
                        [&] { return calc_wait(wait); });
  wait_words.add_option("--placed", wait.placed, "height of the concrete: \"3 m\"")->required();
  wait_words.add_option("--rise", wait.rise, "it rose evenly at: \"1.5 m/h\"")->required();
  wait_words.add_option("--low", wait.low, "lower reach of the row: \"0.4 m\"")->required();
  wait_words.add_option("--high", wait.high, "upper reach of the row: \"1.6 m\"")->required();
  wait_words.add_option("--rating", wait.rating, "of the form: \"50 kPa\"")->required();
  wait_words.add_option("--initial-set", wait.initial_set, "at the reference: \"5 h\"")->required();
  wait_words.add_option("--unit-weight", wait.unit_weight, "\"25 kN/m3\"");
  wait_words.add_option("--reference", wait.reference, "\"20 C\"");
  wait_words.add_option("--temp", wait.temperature, "of the concrete: \"12 C\"");
  wait_words.add_option("--since", wait.since, "since the last of it came: \"30 min\"");
}

void add_set_formulas(CommandWords& words, CLI::App& calc) {
  auto& set = words.wish<SetWish>();
  auto& set_words = words.add_formula(calc, "set", "Time to initial set by equivalent age",
                                      [&] { return calc_set(set); });
  set_words.add_option("--initial-set", set.initial_set, "at the reference: \"5 h\"")->required();
  set_words.add_option("--reference", set.reference, "\"20 C\"");
  set_words.add_option("--temp", set.temperature, "of the concrete: \"12 C\"");
  set_words.add_option("--history", set.history, "instead: \"0 h 18 C, 3 h 24 C\"");
  set_words.add_option("--q", set.q, "Ea/R of the mix, in kelvin: 5000");

  auto& knit = words.wish<KnitWish>();
  auto& knit_words = words.add_formula(calc, "knit", "How long two lifts may lie apart",
                                       [&] { return calc_knit(knit); });
  knit_words.add_option("--initial-set", knit.set.initial_set, "at the reference: \"5 h\"")
      ->required();
  knit_words.add_option("--reference", knit.set.reference, "\"20 C\"");
  knit_words.add_option("--temp", knit.set.temperature, "of the concrete: \"12 C\"");
  knit_words.add_option("--history", knit.set.history, "instead: \"0 h 18 C, 3 h 24 C\"");
  knit_words.add_option("--q", knit.set.q, "Ea/R of the mix, in kelvin: 5000");
  knit_words.add_option("--lift", knit.lift, "depth of a lift: \"500 mm\"")->required();
  knit_words.add_option("--rise", knit.rise, "while it is placed: \"1.5 m/h\"")->required();
  knit_words.add_option("--run", knit.run, "of a row for a lift: \"105 s\"");
  knit_words.add_option("--rows", knit.rows, "run for a lift, one at a time");
}

void add_motor_formulas(CommandWords& words, CLI::App& calc) {
  auto& size = words.wish<SizeWish>();
  auto& size_words = words.add_formula(calc, "size", "Rows and motors for a face",
                                       [&] { return calc_size(size); });
  size_words.add_option("--length", size.length, "\"12 m\"")->required();
  size_words.add_option("--height", size.height, "\"3.6 m\"")->required();
  size_words.add_option("--thickness", size.thickness, "\"300 mm\"")->required();
  size_words.add_option("--force", size.force, "of a motor: \"4 kN\"")->required();
  size_words.add_option("--rating", size.rating, "of the form: \"60 kPa\"");
  size_words.add_option("--unit-weight", size.unit_weight, "\"25 kN/m3\"");
  size_words.add_option("--form-mass", size.form_mass, "\"60 kg/m2\"");
  size_words.add_option("--reach-x", size.reach_x, "half-width a motor works over");
  size_words.add_option("--reach-z", size.reach_z, "half-height a motor works over");
  size_words.add_option("--reach-pressure", size.reach_pressure,
                        "below a running row concrete presses as liquid; else twice --reach-z");
  size_words.add_option("--lift", size.lift, "deepest: \"500 mm\"");

  auto& force = words.wish<ForceWish>();
  auto& force_words = words.add_formula(calc, "force", "Centrifugal force, and the force needed",
                                        [&] { return calc_force(force); });
  force_words.add_option("--eccentric", force.eccentric, "mass: \"0.4 kg\"")->required();
  force_words.add_option("--radius", force.radius, "\"20 mm\"")->required();
  force_words.add_option("--speed", force.speed, "\"6000 vpm\"")->required();
  force_words.add_option("--form", force.form, "mass of form in reach: \"150 kg\"");
  force_words.add_option("--concrete", force.concrete, "mass of concrete in reach: \"900 kg\"");

  auto& cord = words.wish<VoltsWish>();
  auto& cord_words = words.add_formula(calc, "volts", "Three-phase voltage drop in a cord",
                                       [&] { return calc_volts(cord); });
  cord_words.add_option("--volts", cord.volts, "of the inverter: \"42 V\"");
  cord_words
      .add_option("--amps", cord.amps, "of one motor, or all that goes through the cord: \"7.5 A\"")
      ->required();
  cord_words.add_option("--section", cord.section, "of a motor's own cord: \"4 mm2\"");
  cord_words.add_option("--length", cord.length, "of a motor's own cord: \"25 m\"");
  cord_words.add_option("--trunk-section", cord.trunk_section, "of a cord motors share: \"6 mm2\"");
  cord_words.add_option("--trunk-length", cord.trunk_length, "of a cord motors share: \"20 m\"");
  cord_words.add_option("--motors", cord.motors, "on the trunk at once");
  cord_words.add_option("--speed", cord.speed, "\"6000 vpm\" or \"100 Hz\"");

  auto& amps = words.wish<AmpsWish>();
  auto& amps_words = words.add_formula(calc, "amps", "Load of an inverter and of a generator",
                                       [&] { return calc_amps(amps); });
  amps_words.add_option("--motors", amps.motors, "that run at once")->required();
  amps_words.add_option("--amps", amps.amps, "of one in each phase: \"4.2 A\"")->required();
  amps_words.add_option("--inverter", amps.inverter, "gives in each phase: \"40 A\"")->required();
  amps_words.add_option("--volts", amps.volts, "of the inverter: \"42 V\"");
  amps_words.add_option("--generator", amps.generator, "rating: \"10 kVA\"");
  amps_words.add_option("--inverters", amps.inverters, "alike on the generator");
  amps_words.add_option("--derate", amps.derate, "of the rating it gives on the site: \"85 %\"");
}

}  // namespace

void add_formulas(CommandWords& words) {
  CLI::App& calc = *words.app().add_subcommand("calc", "Single formulas; a unit on every number");
  calc.require_subcommand(1);
  add_form_formulas(words, calc);
  add_motor_formulas(words, calc);
  add_set_formulas(words, calc);
}

}  // namespace rb
