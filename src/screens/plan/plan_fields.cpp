#include "screens/plan/plan_fields.h"

#include <algorithm>
#include <array>

#include "screens/entry/number_pad.h"

namespace rb::screens {

namespace {

using Value = std::optional<double>;

constexpr int kMostMotors = 999;  // at hand, and hands to hang them: what three figures hold

const Element& element(const PlanDraft& d, const FieldRef& r) {
  return d.plan.elements[r.of];
}
Element& element(PlanDraft& d, const FieldRef& r) {
  return d.plan.elements[r.of];
}
RowPattern pattern(const PlanDraft& d, const FieldRef& r) {
  return d.guesses[r.of].pattern;
}

// The planner's cord; what is not given of it is nothing.
Cable cable_of(const PlanDraft& d) {
  return d.wish.cable.value_or(Cable{});
}

// Nothing and zero are a figure not given.
Value given(double value) {
  return value > 0 ? Value{value} : Value{};
}
Value size(Length length) {
  return given(in_metres(length));
}

struct FieldRow {
  PlanField field;
  Word label;
  Measure measure;
  Value (*get)(const PlanDraft&, const FieldRef&);
  void (*put)(PlanDraft&, const FieldRef&, double);
};
using D = PlanDraft;
using R = FieldRef;

constexpr std::array kFields{
    FieldRow{PlanField::length, Word::plan_length, Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).length); },
             [](D& d, const R& r, double v) { set_length(d, r.of, metres(v)); }},
    FieldRow{PlanField::height, Word::plan_height, Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).height); },
             [](D& d, const R& r, double v) { set_height(d, r.of, metres(v)); }},
    FieldRow{PlanField::thickness, Word::plan_thickness, Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).thickness); },
             [](D& d, const R& r, double v) { set_thickness(d, r.of, metres(v)); }},
    FieldRow{PlanField::form_rating, Word::plan_rating, Measure::pressure,
             [](const D& d, const R& r) {
               const auto& rating = element(d, r).form_rating;
               return rating ? Value{in_kilopascals(*rating)} : Value{};
             },
             [](D& d, const R& r, double v) { element(d, r).form_rating = kilopascals(v); }},
    FieldRow{PlanField::rise_limit, Word::plan_rise_limit, Measure::rate,
             [](const D& d, const R& r) {
               const auto& limit = element(d, r).rise_limit;
               return limit ? Value{in_metres_per_hour(*limit)} : Value{};
             },
             [](D& d, const R& r, double v) { element(d, r).rise_limit = metres_per_hour(v); }},
    FieldRow{PlanField::bay_count, Word::plan_bays, Measure::count,
             [](const D& d, const R& r) { return Value(element(d, r).bays.size()); },
             [](D& d, const R& r, double v) { set_bay_count(d, r.of, static_cast<int>(v)); }},
    FieldRow{PlanField::bay, Word::plan_bay, Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).bays[r.item]); },
             [](D& d, const R& r, double v) { set_bay(d, r.of, r.item, metres(v)); }},
    FieldRow{PlanField::lift_count, Word::plan_lifts, Measure::count,
             [](const D& d, const R& r) { return Value(element(d, r).lifts.size()); },
             [](D& d, const R& r, double v) { set_lift_count(d, r.of, static_cast<int>(v)); }},
    FieldRow{PlanField::lift, Word::plan_lift, Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).lifts[r.item]); },
             [](D& d, const R& r, double v) { set_lift(d, r.of, r.item, metres(v)); }},
    FieldRow{PlanField::row, Word::plan_row, Measure::length,
             [](const D& d, const R& r) { return Value{in_metres(element(d, r).rows[r.item].z)}; },
             [](D& d, const R& r, double v) { set_row_height(d, r.of, r.item, metres(v)); }},
    FieldRow{PlanField::row_lowest, Word::plan_row_lowest, Measure::length,
             [](const D& d, const R& r) { return size(pattern(d, r).lowest); },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.lowest = metres(v);
               set_pattern(d, r.of, p);
             }},
    FieldRow{PlanField::row_apart, Word::plan_row_apart, Measure::length,
             [](const D& d, const R& r) { return size(pattern(d, r).apart); },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.apart = metres(v);
               set_pattern(d, r.of, p);
             }},
    FieldRow{PlanField::row_motors, Word::plan_row_motors, Measure::count,
             [](const D& d, const R& r) {
               const auto& rows = element(d, r).rows;
               return rows.empty() ? Value{} : Value(rows.front().motors.size());
             },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.motors = static_cast<int>(v);
               set_pattern(d, r.of, p);
             }},
    FieldRow{PlanField::reach_x, Word::plan_reach_x, Measure::length,
             [](const D& d, const R& r) { return size(pattern(d, r).reach_x); },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.reach_x = metres(v);
               set_pattern(d, r.of, p);
             }},
    FieldRow{PlanField::reach_z, Word::plan_reach_z, Measure::length,
             [](const D& d, const R& r) { return size(pattern(d, r).reach_z); },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.reach_z = metres(v);
               set_pattern(d, r.of, p);
             }},
    FieldRow{PlanField::reach_pressure, Word::plan_reach_pressure, Measure::length,
             [](const D& d, const R& r) {
               const auto& reach = element(d, r).reach_pressure;
               return reach ? Value{in_metres(*reach)} : Value{};
             },
             [](D& d, const R& r, double v) { element(d, r).reach_pressure = metres(v); }},
    FieldRow{
        PlanField::unit_weight, Word::plan_unit_weight, Measure::unit_weight,
        [](const D& d, const R& r) {
          return Value{in_kilonewtons_per_m3(d.plan.mixes[r.of].unit_weight)};
        },
        [](D& d, const R& r, double v) { d.plan.mixes[r.of].unit_weight = kilonewtons_per_m3(v); }},
    FieldRow{PlanField::slump, Word::plan_slump, Measure::small_length,
             [](const D& d, const R& r) { return Value{in_metres(d.plan.mixes[r.of].slump)}; },
             [](D& d, const R& r, double v) { d.plan.mixes[r.of].slump = metres(v); }},
    FieldRow{
        PlanField::initial_set, Word::plan_set, Measure::long_span,
        [](const D& d, const R& r) { return Value{in_seconds(d.plan.mixes[r.of].initial_set)}; },
        [](D& d, const R& r, double v) { d.plan.mixes[r.of].initial_set = seconds(v); }},
    FieldRow{PlanField::set_temp, Word::plan_set_temp, Measure::temperature,
             [](const D& d, const R& r) { return Value{d.plan.mixes[r.of].set_reference.degrees}; },
             [](D& d, const R& r, double v) { d.plan.mixes[r.of].set_reference = celsius(v); }},
    FieldRow{PlanField::dose_min, Word::plan_dose_min, Measure::span,
             [](const D& d, const R&) { return Value{in_seconds(d.plan.limits.dose_min.value)}; },
             [](D& d, const R&, double v) {
               d.plan.limits.dose_min = {seconds(v), LimitFrom::plan};
             }},
    FieldRow{PlanField::dose_max, Word::plan_dose_max, Measure::span,
             [](const D& d, const R&) { return Value{in_seconds(d.plan.limits.dose_max.value)}; },
             [](D& d, const R&, double v) {
               d.plan.limits.dose_max = {seconds(v), LimitFrom::plan};
             }},
    FieldRow{PlanField::under_share, Word::plan_under_share, Measure::share,
             [](const D& d, const R&) { return Value{d.plan.limits.under_share_max.value}; },
             [](D& d, const R&, double v) {
               d.plan.limits.under_share_max = {v, LimitFrom::plan};
             }},
    FieldRow{
        PlanField::rise_window, Word::plan_rise_window, Measure::age,
        [](const D& d, const R&) { return Value{in_seconds(d.plan.limits.rise_window.value)}; },
        [](D& d, const R&, double v) {
          d.plan.limits.rise_window = {seconds(v), LimitFrom::plan};
        }},
    FieldRow{
        PlanField::load_age, Word::plan_load_age, Measure::age,
        [](const D& d, const R&) { return Value{in_seconds(d.plan.limits.load_age_max.value)}; },
        [](D& d, const R&, double v) {
          d.plan.limits.load_age_max = {seconds(v), LimitFrom::plan};
        }},
    FieldRow{PlanField::temp_min, Word::plan_temp_min, Measure::temperature,
             [](const D& d, const R&) { return Value{d.plan.limits.temp_min.value.degrees}; },
             [](D& d, const R&, double v) {
               d.plan.limits.temp_min = {celsius(v), LimitFrom::plan};
             }},
    FieldRow{PlanField::temp_max, Word::plan_temp_max, Measure::temperature,
             [](const D& d, const R&) { return Value{d.plan.limits.temp_max.value.degrees}; },
             [](D& d, const R&, double v) {
               d.plan.limits.temp_max = {celsius(v), LimitFrom::plan};
             }},
    FieldRow{PlanField::volume_tolerance, Word::plan_volume_off, Measure::share,
             [](const D& d, const R&) { return Value{d.plan.limits.volume_tolerance.value}; },
             [](D& d, const R&, double v) {
               d.plan.limits.volume_tolerance = {v, LimitFrom::plan};
             }},
    FieldRow{PlanField::insert_factor, Word::plan_insert_factor, Measure::factor,
             [](const D& d, const R&) { return Value{d.plan.limits.insert_spacing_factor.value}; },
             [](D& d, const R&, double v) {
               d.plan.limits.insert_spacing_factor = {v, LimitFrom::plan};
             }},
    FieldRow{PlanField::knit_depth, Word::plan_knit_depth, Measure::small_length,
             [](const D& d, const R&) { return Value{in_metres(d.plan.limits.knit_depth.value)}; },
             [](D& d, const R&, double v) {
               d.plan.limits.knit_depth = {metres(v), LimitFrom::plan};
             }},
    FieldRow{PlanField::motor_force, Word::plan_motor_force, Measure::force,
             [](const D& d, const R&) { return given(in_kilonewtons(d.wish.motor.force)); },
             [](D& d, const R&, double v) { d.wish.motor.force = kilonewtons(v); }},
    FieldRow{PlanField::motor_amps, Word::plan_motor_amps, Measure::current,
             [](const D& d, const R&) { return given(in_amperes(d.wish.motor.amps)); },
             [](D& d, const R&, double v) { d.wish.motor.amps = amperes(v); }},
    FieldRow{PlanField::motor_speed, Word::plan_motor_speed, Measure::speed,
             [](const D& d, const R&) {
               return given(in_vibrations_per_minute(d.wish.motor.top_speed));
             },
             [](D& d, const R&, double v) { d.wish.motor.top_speed = vibrations_per_minute(v); }},
    FieldRow{PlanField::concrete_temp, Word::plan_concrete_temp, Measure::temperature,
             [](const D& d, const R&) { return Value{d.wish.concrete.degrees}; },
             [](D& d, const R&, double v) { d.wish.concrete = celsius(v); }},
    FieldRow{PlanField::rise_wished, Word::plan_rise_wished, Measure::rate,
             [](const D& d, const R&) { return given(in_metres_per_hour(d.wish.rise_wished)); },
             [](D& d, const R&, double v) { d.wish.rise_wished = metres_per_hour(v); }},
    FieldRow{PlanField::motors_at_hand, Word::plan_motors_at_hand, Measure::count,
             [](const D& d, const R&) {
               return d.wish.motors_at_hand ? Value(*d.wish.motors_at_hand) : Value{};
             },
             [](D& d, const R&, double v) { d.wish.motors_at_hand = static_cast<std::size_t>(v); }},
    FieldRow{PlanField::crew, Word::plan_crew, Measure::count,
             [](const D& d, const R&) { return Value(d.wish.crew); },
             [](D& d, const R&, double v) { d.wish.crew = static_cast<int>(v); }},
    FieldRow{PlanField::hang_time, Word::plan_hang_time, Measure::age,
             [](const D& d, const R&) { return Value{in_seconds(d.wish.hang_time)}; },
             [](D& d, const R&, double v) { d.wish.hang_time = seconds(v); }},
    FieldRow{PlanField::load, Word::plan_load, Measure::volume,
             [](const D& d, const R&) { return given(in_cubic_metres(d.wish.load)); },
             [](D& d, const R&, double v) { d.wish.load = cubic_metres(v); }},
    FieldRow{PlanField::trucks_per_hour, Word::plan_trucks, Measure::per_hour,
             [](const D& d, const R&) { return d.wish.trucks_per_hour; },
             [](D& d, const R&, double v) { d.wish.trucks_per_hour = v; }},
    FieldRow{PlanField::haul, Word::plan_haul, Measure::age,
             [](const D& d, const R&) { return Value{in_seconds(d.wish.haul)}; },
             [](D& d, const R&, double v) { d.wish.haul = seconds(v); }},
    FieldRow{PlanField::form_mass, Word::plan_form_mass, Measure::mass_per_area,
             [](const D& d, const R& r) {
               const auto& own = element(d, r).form_mass;
               return given(in_kilograms_per_m2(own.value_or(d.wish.form_mass)));
             },
             [](D& d, const R& r, double v) { element(d, r).form_mass = kilograms_per_m2(v); }},
    FieldRow{PlanField::inverter_volts, Word::plan_inverter_volts, Measure::potential,
             [](const D& d, const R&) { return given(in_volts(d.wish.volts)); },
             [](D& d, const R&, double v) { d.wish.volts = volts(v); }},
    FieldRow{PlanField::inverter_amps, Word::plan_inverter_amps, Measure::current,
             [](const D& d, const R&) {
               return given(in_amperes(d.wish.inverter_amps.value_or(Current{})));
             },
             [](D& d, const R&, double v) { d.wish.inverter_amps = amperes(v); }},
    FieldRow{
        PlanField::cord_section, Word::plan_cord_section, Measure::wire_section,
        [](const D& d, const R&) { return given(in_square_metres(cable_of(d).section) * 1e6); },
        [](D& d, const R&, double v) {
          d.wish.cable = Cable{square_metres(v / 1e6), cable_of(d).length};
        }},
    FieldRow{PlanField::cord_length, Word::plan_cord_length, Measure::length,
             [](const D& d, const R&) { return size(cable_of(d).length); },
             [](D& d, const R&, double v) {
               d.wish.cable = Cable{cable_of(d).section, metres(v)};
             }},
};

const FieldRow& row_of(const FieldRef& ref) {
  return *std::find_if(kFields.begin(), kFields.end(),
                       [&](const FieldRow& row) { return row.field == ref.field; });
}

Value typed_value(const FieldRef& ref, const std::string& typed, Units units) {
  const Measure measure = row_of(ref).measure;
  if (measure == Measure::length) {
    const auto length = typed_height(typed, units);
    // Feet and inches leave no tail of digits in the plan.
    return length ? Value{from_shown(in_metres(*length), measure, Units::si)} : Value{};
  }
  const auto shown = typed_number(typed);
  return shown ? Value{from_shown(*shown, measure, units)} : Value{};
}

std::string with_unit(const std::string& figure, Measure measure, Units units) {
  const std::string unit = unit_text(measure, units);
  return unit.empty() ? figure : figure + " " + unit;
}

}  // namespace

std::string field_label(const Say& say, const PlanDraft& draft, const FieldRef& ref) {
  const FieldRow& row = row_of(ref);
  if (ref.field == PlanField::bay || ref.field == PlanField::lift) {
    return say(row.label, ref.item + 1);
  }
  if (ref.field == PlanField::row) {
    const Row& at = element(draft, ref).rows[ref.item];
    std::string name = at.id.text;
    if (element(draft, ref).has_rows(Side::far_side)) {
      name += " " + say(at.side == Side::near_side ? Word::near_side : Word::far_side);
    }
    return say(row.label, name, at.motors.size());
  }
  if (ref.field == PlanField::height && element(draft, ref).kind == ElementKind::deck) {
    return say(Word::plan_width);
  }
  return say(row.label);
}

std::string field_text(const Say& say, const PlanDraft& draft, const FieldRef& ref) {
  const FieldRow& row = row_of(ref);
  const Value value = row.get(draft, ref);
  if (!value) return "\u2013";
  if (row.measure == Measure::length) return say.height(metres(*value));
  return with_unit(entry_text(*value, row.measure, say.units), row.measure, say.units);
}

std::string typed_text(const FieldRef& ref, const std::string& typed, Units units) {
  if (typed.empty()) return "\u2013";
  const Measure measure = row_of(ref).measure;
  const std::size_t mark = typed.find('\'');
  if (measure == Measure::length && units == Units::us) {
    if (mark == std::string::npos) return typed + "\u2032";
    return fmt::format("{}\u2032 {}\u2033", typed.substr(0, mark), typed.substr(mark + 1));
  }
  return with_unit(typed, measure, units);
}

bool is_length(const FieldRef& ref) {
  return row_of(ref).measure == Measure::length;
}

bool may_clear(const FieldRef& ref) {
  using enum PlanField;
  constexpr std::array kMayClear{form_rating,     rise_limit,    reach_pressure, motors_at_hand,
                                 trucks_per_hour, inverter_amps, cord_section,   cord_length};
  return std::find(kMayClear.begin(), kMayClear.end(), ref.field) != kMayClear.end();
}

bool is_given(const PlanDraft& draft, const FieldRef& ref) {
  return row_of(ref).get(draft, ref).has_value();
}

bool is_figure(const FieldRef& ref, const std::string& typed, Units units) {
  const Value value = typed_value(ref, typed, units);
  if (!value) return false;
  if (row_of(ref).measure == Measure::count) {
    const bool parts = ref.field < PlanField::motor_force;
    return *value >= 1 && *value <= (parts ? kMostParts : kMostMotors);
  }
  // Zero is a size only where the reader may say so: a row at the base, a share, a tolerance.
  return *value > 0 || (ref.field != PlanField::row_apart && ref.field != PlanField::bay);
}

void put_field(PlanDraft& draft, const FieldRef& ref, const std::string& typed, Units units) {
  const Value value = typed_value(ref, typed, units);
  if (value) row_of(ref).put(draft, ref, *value);
}

void clear_field(PlanDraft& draft, const FieldRef& ref) {
  if (ref.field == PlanField::form_rating) element(draft, ref).form_rating.reset();
  if (ref.field == PlanField::rise_limit) element(draft, ref).rise_limit.reset();
  if (ref.field == PlanField::reach_pressure) element(draft, ref).reach_pressure.reset();
  if (ref.field == PlanField::motors_at_hand) draft.wish.motors_at_hand.reset();
  if (ref.field == PlanField::trucks_per_hour) draft.wish.trucks_per_hour.reset();
  if (ref.field == PlanField::inverter_amps) draft.wish.inverter_amps.reset();
  if (ref.field == PlanField::cord_section) draft.wish.cable = Cable{{}, cable_of(draft).length};
  if (ref.field == PlanField::cord_length) draft.wish.cable = Cable{cable_of(draft).section, {}};
}

bool is_default(const PlanDraft& draft, const FieldRef& ref) {
  const Limits& limits = draft.plan.limits;
  const auto standard = [](const auto& limit) { return limit.from == LimitFrom::standard; };
  switch (ref.field) {
    case PlanField::dose_min:
      return standard(limits.dose_min);
    case PlanField::dose_max:
      return standard(limits.dose_max);
    case PlanField::under_share:
      return standard(limits.under_share_max);
    case PlanField::rise_window:
      return standard(limits.rise_window);
    case PlanField::load_age:
      return standard(limits.load_age_max);
    case PlanField::temp_min:
      return standard(limits.temp_min);
    case PlanField::temp_max:
      return standard(limits.temp_max);
    case PlanField::volume_tolerance:
      return standard(limits.volume_tolerance);
    case PlanField::insert_factor:
      return standard(limits.insert_spacing_factor);
    case PlanField::knit_depth:
      return standard(limits.knit_depth);
    case PlanField::form_mass:
      return !element(draft, ref).form_mass;
    default:
      break;
  }
  if (ref.field < PlanField::motor_force) return false;
  const Value usual = row_of(ref).get(PlanDraft{}, ref);
  return usual && usual == row_of(ref).get(draft, ref);
}

}  // namespace rb::screens
