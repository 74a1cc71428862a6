// `calc pressure|rise|wait|size`: what bears on a form and what hangs on it.
#include <fmt/format.h>

#include "cli/calc.h"
#include "cli/say_both.h"
#include "cli/unit_input.h"
#include "trade/concrete/placing.h"
#include "trade/concrete/setting.h"
#include "trade/motors/sizing.h"
#include "trade/pressure/pressure.h"
#include "trade/pressure/rerun_wait.h"
#include "trade/shape/bounds.h"

namespace rb {

namespace {

struct FormAsked {
  trade::PressureMethod method = trade::PressureMethod::aci347;
  trade::PressureCase c;
};

FormAsked read_form(const PressureWish& wish, OptionReading& read) {
  FormAsked asked;
  asked.method = read.choose("--method", trade::parse_pressure_method(wish.method), wish.method,
                             said("Use aci347, ciria108 or din18218"));
  trade::PressureCase& c = asked.c;
  c.shape = read.choose("--shape", trade::parse_form_shape(wish.shape), wish.shape,
                        said("Use wall or column"));
  c.cement = read.choose("--cement", trade::parse_cement_class(wish.cement), wish.cement,
                         said("Use plain, retarded, blended, blended-retarded or high-blend"));
  c.unit_weight = read.get(read_unit_weight("--unit-weight", wish.unit_weight));
  c.form_height = c.pour_height = read.get(read_length("--height", wish.height));
  c.temperature = read.get(read_temperature("--temp", wish.temperature));
  c.slump = read.get(read_length("--slump", wish.slump));
  c.set_time = read.get(read_time("--set-time", wish.set_time));
  c.external_vibration = true;
  return asked;
}

// What the pressure rests on that nobody is asked for.
void tell_form_defaults() {
  default_taken("height of the pour", "that of the form");
  default_taken("external vibration", "yes");
}

void tell_source(trade::PressureMethod method) {
  if (method != trade::PressureMethod::din18218) return;
  fmt::print("The formulas of DIN 18218:2010 are from memory: hold them to the standard.\n");
}

}  // namespace

Exit calc_pressure(const PressureWish& wish) {
  OptionReading read;
  const auto [method, c] = read_form(wish, read);
  const Velocity rise = read.get(read_rise("--rise", wish.rise));
  std::optional<Pressure> rating;
  if (!wish.rating.empty()) rating = read.get(read_pressure("--rating", wish.rating));
  if (read.error()) return report(*read.error());

  const Pressure liquid = trade::full_liquid_head(c.unit_weight, c.pour_height);
  const auto pressure = trade::method_pressure(method, c, rise);
  if (pressure) {
    say("greatest lateral pressure", both(*pressure));
    say("reached at a depth of", both(trade::liquid_depth(c.unit_weight, *pressure)));
  } else if (pressure.error().kind == Error::Kind::refused) {
    say("the method does not hold", to_text(pressure.error()));
  } else {
    return report(pressure.error());
  }
  say("full liquid head", both(liquid));
  if (rating) {
    const auto allowed = trade::rise_for_rating(method, c, *rating);
    if (!allowed) {
      say("rise at the rating", to_text(allowed.error()));
    } else {
      say("rise at the rating", *allowed ? both(**allowed) : "any: it bears the full liquid head");
    }
  }
  if (const auto words = trade::vibration_caution(method, c)) fmt::print("{}\n", *words);
  tell_form_defaults();
  tell_source(method);
  caution("the form designer");
  return Exit::fine;
}

Exit calc_rise(const RiseWish& wish) {
  OptionReading read;
  const auto [method, c] = read_form(wish.form, read);
  const Pressure rating = read.get(read_pressure("--rating", wish.form.rating));
  std::optional<Area> plan;
  if (!wish.length.empty() || !wish.thickness.empty()) {
    plan = read.get(read_length("--length", wish.length)) *
           read.get(read_length("--thickness", wish.thickness));
  }
  if (read.error()) return report(*read.error());
  const auto allowed = trade::rise_for_rating(method, c, rating);
  say("full liquid head", both(trade::full_liquid_head(c.unit_weight, c.pour_height)));
  if (!allowed && allowed.error().kind == Error::Kind::input) return report(allowed.error());
  if (!allowed) {
    say("the method does not hold", to_text(allowed.error()));
    say("rise allowed", "none: the form does not bear the full liquid head");
    caution("the form designer");
    return Exit::findings;
  }
  if (!*allowed) {
    say("rise allowed", "any: the form bears the full liquid head");
  } else {
    say("rise allowed", both(**allowed));
    if (plan) {
      const auto placing = trade::placing_for(**allowed, *plan);
      if (!placing) return report(placing.error());
      const double m3 = trade::in_cubic_metres_per_hour(*placing);
      say("placing at that rise",
          fmt::format("{:.2f} m3/h  ({:.2f} yd3/h)", m3, in_cubic_yards(cubic_metres(m3))));
    }
  }
  if (const auto words = trade::vibration_caution(method, c)) fmt::print("{}\n", *words);
  tell_form_defaults();
  tell_source(method);
  caution("the form designer");
  return *allowed && **allowed <= Velocity{} ? Exit::findings : Exit::fine;
}

Exit calc_wait(const WaitWish& wish) {
  OptionReading read;
  const Length placed = read.get(read_length("--placed", wish.placed));
  const Velocity rise = read.get(read_rise("--rise", wish.rise));
  trade::HeadLimit limit;
  limit.low = read.get(read_length("--low", wish.low));
  limit.high = read.get(read_length("--high", wish.high));
  limit.rating = read.get(read_pressure("--rating", wish.rating));
  limit.unit_weight = read.get(read_unit_weight("--unit-weight", wish.unit_weight));
  const Seconds initial = read.get(read_time("--initial-set", wish.initial_set));
  const Celsius reference = read.get(read_temperature("--reference", wish.reference));
  const Celsius temperature = read.get(read_temperature("--temp", wish.temperature));
  const Seconds since = read.get(read_time("--since", wish.since));
  if (read.error()) return report(*read.error());
  if (const auto bad = trade::outside(
          said("calc wait"),
          {{Said{"--placed"}, in_metres(placed), 0, 50, "m"},
           {Said{"--low"}, in_metres(limit.low), 0, 50, "m"},
           {Said{"--high"}, in_metres(limit.high), 0, 60, "m"},
           {Said{"--rating"}, in_kilopascals(limit.rating), 1, 2000, "kPa"},
           {Said{"--unit-weight"}, in_kilonewtons_per_m3(limit.unit_weight), 10, 45, "kN/m3"},
           {Said{"--since"}, in_seconds(since), 0, 7 * 86400, "s"}})) {
    return report(*bad);
  }
  if (limit.low >= limit.high) {
    return report({Error::Kind::input, "--low, --high", "the lower reach is not below the upper",
                   "Give the heights the row works between, from the base"});
  }
  // It must have set: the later of the two.
  const auto sets = trade::time_to_reach(initial, temperature, {reference, trade::kSlowSet});
  if (!sets) return report(sets.error());
  const auto quick = trade::time_to_reach(initial, temperature, {reference, trade::kQuickSet});
  if (!quick) return report(quick.error());
  const auto place = trade::placing_time(placed, rise);
  if (!place) return report(place.error());
  trade::TopCurve top;
  top.read(Seconds{}, Length{});
  top.read(*place, placed);
  const Seconds late = std::max(*sets, *quick);
  const std::vector<trade::SetStep> steps{{Seconds{}, late}};
  const auto wait = trade::wait_before_running(top, steps, limit, *place + since);
  const Length head = std::max(Length{}, placed - std::max(Length{}, limit.low));
  say("head if the row ran now", both(trade::full_liquid_head(limit.unit_weight, head)));
  say("initial set, late side", span_text(late));
  say("wait before running",
      wait ? span_text(*wait) : "never: by then nothing in its reach is plastic");
  default_taken("Q of the mix",
                fmt::format("{:.0f} K and {:.0f} K, our own choice, the later of both",
                            trade::kQuickSet.kelvin, trade::kSlowSet.kelvin));
  fmt::print(
      "Only concrete past its initial set stops counting (common practice, no source), and only if "
      "no more is placed meanwhile.\n");
  caution("the form designer");
  return wait ? Exit::fine : Exit::findings;
}

Exit calc_size(const SizeWish& wish) {
  OptionReading read;
  trade::SizingCase c;
  c.length = read.get(read_length("--length", wish.length));
  c.height = read.get(read_length("--height", wish.height));
  c.thickness = read.get(read_length("--thickness", wish.thickness));
  c.unit_weight = read.get(read_unit_weight("--unit-weight", wish.unit_weight));
  c.form_mass = read.get(read_mass_per_area("--form-mass", wish.form_mass));
  c.motor.force = read.get(read_force("--force", wish.force));
  c.motor.reach_x = read.get(read_length("--reach-x", wish.reach_x));
  c.motor.reach_z = read.get(read_length("--reach-z", wish.reach_z));
  if (!wish.reach_pressure.empty()) {
    c.motor.reach_pressure = read.get(read_length("--reach-pressure", wish.reach_pressure));
  }
  c.deepest_lift = read.get(read_length("--lift", wish.lift));
  if (!wish.rating.empty()) c.rating = read.get(read_pressure("--rating", wish.rating));
  if (read.error()) return report(*read.error());
  const auto sized = trade::size_rows(c);
  if (!sized) return report(sized.error());
  say("motors on a row", fmt::format("{}", sized->motors.size()));
  say("apart", both(sized->spacing));
  say("force a motor's share wants", both(c.motor.force / sized->force_share));
  say("rows", fmt::format("{}", sized->rows.size()));
  for (const trade::SizedRow& row : sized->rows) {
    say("  at a height of", fmt::format("{}, lifts {}, head {}", both(row.z),
                                        fmt::join(row.lifts, " "), both(row.head)));
  }
  say("lifts", fmt::format("{} of about {}", sized->lifts.size(),
                           both(c.height / static_cast<double>(sized->lifts.size()))));
  say("motors, leapfrogged", fmt::format("{}", sized->sets * sized->motors.size()));
  if (!c.motor.reach_pressure) {
    fmt::print(
        "No --reach-pressure given: heads down to twice --reach-z below a row, our own choice.\n");
  }
  if (!c.rating) fmt::print("No --rating given: no head is too high.\n");
  default_taken("overlap of rows", both(c.knit_depth));
  default_taken("thinnest lift", both(trade::kThinnestLift));
  default_taken("kept of the rating",
                fmt::format("{:.0f} %, our own choice", trade::kHeadKept * 100));
  default_taken("motors", "move up a row at a time, the next hung a lift ahead");
  fmt::print("Sizing 0.5 (form + 0.2 concrete): from memory of ACI 309R. Trial runs decide.\n");
  caution("the form designer");
  return Exit::fine;
}

}  // namespace rb
