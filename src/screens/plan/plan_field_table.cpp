// The figures of a plan, each told once.
#include "screens/plan/plan_field_table.h"

#include <algorithm>
#include <array>

namespace rb::screens {

namespace {

using D = PlanDraft;
using R = FieldRef;
using Value = std::optional<double>;

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

Trunk trunk_of(const PlanDraft& d) {
  return d.wish.trunk.value_or(Trunk{});
}
Generator generator_of(const PlanDraft& d) {
  return d.wish.generator.value_or(Generator{});
}

// Nothing and zero are a figure not given.
Value given(double value) {
  return value > 0 ? Value{value} : Value{};
}
Value size(Length length) {
  return given(in_metres(length));
}

double same(double v) {
  return v;
}
double in_celsius(Celsius t) {
  return t.degrees;
}
double in_kelvin(trade::ActivationTemperature q) {
  return q.kelvin;
}
trade::ActivationTemperature activation(double v) {
  return trade::ActivationTemperature{v};
}

// A limit: the product's own until it is given.
template <auto kLimit, auto kNumber, auto kMake>
constexpr FieldRow limit_row(PlanField field, const char* label, Measure measure) {
  return {field,
          label,
          measure,
          [](const D& d, const R&) { return Value{kNumber((d.plan.limits.*kLimit).value)}; },
          [](D& d, const R&, double v) {
            d.plan.limits.*kLimit = {kMake(v), LimitFrom::plan};
          },
          nullptr,
          [](const D& d, const R&) { return (d.plan.limits.*kLimit).from == LimitFrom::standard; }};
}

// A member of the element, or of the mix, that a figure is of.
template <auto kMember, class Draft>
auto& member(Draft& d, const R& r) {
  if constexpr (requires { element(d, r).*kMember; }) {
    return element(d, r).*kMember;
  } else {
    return d.plan.mixes[r.of].*kMember;
  }
}

// What an element or a mix may leave unsaid.
template <auto kMember, auto kNumber, auto kMake>
constexpr FieldRow may_row(PlanField field, const char* label, Measure measure) {
  return {field,
          label,
          measure,
          [](const D& d, const R& r) {
            const auto& value = member<kMember>(d, r);
            return value ? Value{kNumber(*value)} : Value{};
          },
          [](D& d, const R& r, double v) { member<kMember>(d, r) = kMake(v); },
          [](D& d, const R& r) { member<kMember>(d, r).reset(); }};
}

constexpr FieldRow unless_deck(FieldRow row) {
  row.listed = [](const D& d, const R& r) { return element(d, r).kind != ElementKind::deck; };
  return row;
}

// Named by the pages in their own places.
constexpr std::array kNamed{
    FieldRow{PlanField::length, said("length"), Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).length); },
             [](D& d, const R& r, double v) { set_length(d, r.of, metres(v)); }},
    FieldRow{PlanField::height, said("height"), Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).height); },
             [](D& d, const R& r, double v) { set_height(d, r.of, metres(v)); }},
    FieldRow{PlanField::thickness, said("thickness"), Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).thickness); },
             [](D& d, const R& r, double v) { set_thickness(d, r.of, metres(v)); }},
    may_row<&Element::form_rating, in_kilopascals, kilopascals>(
        PlanField::form_rating, said("form rating"), Measure::pressure),
    may_row<&Element::rise_limit, in_metres_per_hour, metres_per_hour>(
        PlanField::rise_limit, said("rise limit"), Measure::rate),
    FieldRow{PlanField::bay_count, said("bays"), Measure::count,
             [](const D& d, const R& r) { return Value(element(d, r).bays.size()); },
             [](D& d, const R& r, double v) { set_bay_count(d, r.of, static_cast<int>(v)); }},
    FieldRow{PlanField::bay, said("bay {}"), Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).bays[r.item]); },
             [](D& d, const R& r, double v) { set_bay(d, r.of, r.item, metres(v)); }},
    FieldRow{PlanField::lift_count, said("lifts"), Measure::count,
             [](const D& d, const R& r) { return Value(element(d, r).lifts.size()); },
             [](D& d, const R& r, double v) { set_lift_count(d, r.of, static_cast<int>(v)); }},
    FieldRow{PlanField::lift, said("top of lift {}"), Measure::length,
             [](const D& d, const R& r) { return size(element(d, r).lifts[r.item]); },
             [](D& d, const R& r, double v) { set_lift(d, r.of, r.item, metres(v)); }},
    FieldRow{PlanField::row, said("row {}, {} motors"), Measure::length,
             [](const D& d, const R& r) { return Value{in_metres(element(d, r).rows[r.item].z)}; },
             [](D& d, const R& r, double v) { set_row_height(d, r.of, r.item, metres(v)); }},
    FieldRow{PlanField::row_lowest, said("lowest row"), Measure::length,
             [](const D& d, const R& r) { return size(pattern(d, r).lowest); },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.lowest = metres(v);
               set_pattern(d, r.of, p);
             }},
    FieldRow{PlanField::row_apart, said("row to row"), Measure::length,
             [](const D& d, const R& r) { return size(pattern(d, r).apart); },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.apart = metres(v);
               set_pattern(d, r.of, p);
             }},
    FieldRow{PlanField::row_motors, said("motors a row"), Measure::count,
             [](const D& d, const R& r) {
               const auto& rows = element(d, r).rows;
               return rows.empty() ? Value{} : Value(rows.front().motors.size());
             },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.motors = static_cast<int>(v);
               set_pattern(d, r.of, p);
             }},
    FieldRow{PlanField::reach_x, said("reach to each side"), Measure::length,
             [](const D& d, const R& r) { return size(pattern(d, r).reach_x); },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.reach_x = metres(v);
               set_pattern(d, r.of, p);
             }},
    FieldRow{PlanField::reach_z, said("reach up and down"), Measure::length,
             [](const D& d, const R& r) { return size(pattern(d, r).reach_z); },
             [](D& d, const R& r, double v) {
               RowPattern p = pattern(d, r);
               p.reach_z = metres(v);
               set_pattern(d, r.of, p);
             }},
    may_row<&Element::reach_pressure, in_metres, metres>(
        PlanField::reach_pressure, said("pressure reach down"), Measure::length),
    FieldRow{
        PlanField::unit_weight, said("unit weight"), Measure::unit_weight,
        [](const D& d, const R& r) {
          return Value{in_kilonewtons_per_m3(d.plan.mixes[r.of].unit_weight)};
        },
        [](D& d, const R& r, double v) { d.plan.mixes[r.of].unit_weight = kilonewtons_per_m3(v); }},
    FieldRow{PlanField::slump, said("slump"), Measure::small_length,
             [](const D& d, const R& r) { return Value{in_metres(d.plan.mixes[r.of].slump)}; },
             [](D& d, const R& r, double v) { d.plan.mixes[r.of].slump = metres(v); }},
    FieldRow{
        PlanField::initial_set, said("initial set"), Measure::long_span,
        [](const D& d, const R& r) { return Value{in_seconds(d.plan.mixes[r.of].initial_set)}; },
        [](D& d, const R& r, double v) { d.plan.mixes[r.of].initial_set = seconds(v); }},
    FieldRow{PlanField::set_temp, said("measured at"), Measure::temperature,
             [](const D& d, const R& r) { return Value{d.plan.mixes[r.of].set_reference.degrees}; },
             [](D& d, const R& r, double v) { d.plan.mixes[r.of].set_reference = celsius(v); }},
};

constexpr std::array kOfLifts{
    may_row<&Element::joint_age_max, in_seconds, seconds>(PlanField{"joint_age"},
                                                          said("joint age, most"), Measure::age),
    may_row<&Element::strip_after, in_seconds, seconds>(
        PlanField{"strip_after"}, said("strip after, least"), Measure::long_span),
    may_row<&Element::strip_strength, in_megapascals, megapascals>(
        PlanField{"strip_strength"}, said("strip at, least"), Measure::strength),
    may_row<&Element::cure_start_within, in_seconds, seconds>(
        PlanField{"cure_start_within"}, said("curing begins within"), Measure::long_span),
    may_row<&Element::cure_for, in_seconds, seconds>(PlanField{"cure_for"},
                                                     said("cured for, least"), Measure::long_span),
    unless_deck(may_row<&Element::thickness_top, in_metres, metres>(
        PlanField{"thickness_top"}, said("thickness at the top"), Measure::length)),
};

constexpr std::array kOfMix{
    may_row<&Mix::strength, in_megapascals, megapascals>(
        PlanField{"strength"}, said("strength at 28 days"), Measure::strength),
    may_row<&Mix::set_q, in_kelvin, activation>(PlanField{"set_q"}, said("Q of its setting"),
                                                Measure::kelvin),
    may_row<&Mix::temp_low, in_celsius, celsius>(PlanField{"temp_low"}, said("untested, coldest"),
                                                 Measure::temperature),
    may_row<&Mix::temp_high, in_celsius, celsius>(PlanField{"temp_high"}, said("untested, warmest"),
                                                  Measure::temperature),
};

constexpr std::array kOfLimits{
    limit_row<&Limits::dose_min, in_seconds, seconds>(PlanField{"dose_min"},
                                                      said("vibration, least"), Measure::span),
    limit_row<&Limits::dose_max, in_seconds, seconds>(PlanField{"dose_max"},
                                                      said("vibration, most"), Measure::span),
    limit_row<&Limits::under_share_max, same, same>(PlanField{"under_share"},
                                                    said("under-vibrated, most"), Measure::share),
    limit_row<&Limits::rise_window, in_seconds, seconds>(PlanField{"rise_window"},
                                                         said("rise measured over"), Measure::age),
    limit_row<&Limits::load_age_max, in_seconds, seconds>(PlanField{"load_age"},
                                                          said("load age, most"), Measure::age),
    limit_row<&Limits::temp_min, in_celsius, celsius>(
        PlanField{"temp_min"}, said("concrete, coldest"), Measure::temperature),
    limit_row<&Limits::temp_max, in_celsius, celsius>(
        PlanField{"temp_max"}, said("concrete, warmest"), Measure::temperature),
    limit_row<&Limits::volume_tolerance, same, same>(PlanField{"volume_tolerance"},
                                                     said("volume tolerance"), Measure::share),
    limit_row<&Limits::insert_spacing_factor, same, same>(
        PlanField{"insert_factor"}, said("insertion spacing, radii"), Measure::factor),
    limit_row<&Limits::knit_depth, in_metres, metres>(PlanField{"knit_depth"}, said("knit depth"),
                                                      Measure::small_length),
    limit_row<&Limits::knit_margin, in_seconds, seconds>(
        PlanField{"knit_margin"}, said("warn before a joint sets"), Measure::age),
    limit_row<&Limits::plastic_share, same, same>(PlanField{"plastic_share"},
                                                  said("workable, share of set"), Measure::share),
    limit_row<&Limits::insert_least, in_seconds, seconds>(PlanField{"insert_least"},
                                                          said("insertion, least"), Measure::span),
    limit_row<&Limits::insert_most, in_seconds, seconds>(PlanField{"insert_most"},
                                                         said("insertion, most"), Measure::span),
    limit_row<&Limits::insert_layer, in_metres, metres>(
        PlanField{"insert_layer"}, said("insertion layer, most"), Measure::small_length),
};

constexpr std::array kOfPlanner{
    FieldRow{PlanField::motor_force, said("motor's force"), Measure::force,
             [](const D& d, const R&) { return given(in_kilonewtons(d.wish.motor.force)); },
             [](D& d, const R&, double v) { d.wish.motor.force = kilonewtons(v); }},
    FieldRow{PlanField::motor_amps, said("motor's amps"), Measure::current,
             [](const D& d, const R&) { return given(in_amperes(d.wish.motor.amps)); },
             [](D& d, const R&, double v) { d.wish.motor.amps = amperes(v); }},
    FieldRow{PlanField{"concrete_temp"}, said("concrete will come at"), Measure::temperature,
             [](const D& d, const R&) { return Value{d.wish.concrete.degrees}; },
             [](D& d, const R&, double v) { d.wish.concrete = celsius(v); }},
    FieldRow{PlanField{"rise_wished"}, said("rise wished"), Measure::rate,
             [](const D& d, const R&) { return given(in_metres_per_hour(d.wish.rise_wished)); },
             [](D& d, const R&, double v) { d.wish.rise_wished = metres_per_hour(v); }},
    FieldRow{PlanField{"motors_at_hand"}, said("motors at hand"), Measure::count,
             [](const D& d, const R&) {
               return d.wish.motors_at_hand ? Value(*d.wish.motors_at_hand) : Value{};
             },
             [](D& d, const R&, double v) { d.wish.motors_at_hand = static_cast<std::size_t>(v); },
             [](D& d, const R&) { d.wish.motors_at_hand.reset(); }},
    FieldRow{PlanField{"crew"}, said("hands to hang them"), Measure::count,
             [](const D& d, const R&) { return Value(d.wish.crew); },
             [](D& d, const R&, double v) { d.wish.crew = static_cast<int>(v); }},
    FieldRow{PlanField{"hang_time"}, said("to hang a motor"), Measure::age,
             [](const D& d, const R&) { return Value{in_seconds(d.wish.hang_time)}; },
             [](D& d, const R&, double v) { d.wish.hang_time = seconds(v); }},
    FieldRow{PlanField{"load"}, said("a truck brings"), Measure::volume,
             [](const D& d, const R&) { return given(in_cubic_metres(d.wish.load)); },
             [](D& d, const R&, double v) { d.wish.load = cubic_metres(v); }},
    FieldRow{PlanField{"trucks_per_hour"}, said("trucks that can come"), Measure::per_hour,
             [](const D& d, const R&) { return d.wish.trucks_per_hour; },
             [](D& d, const R&, double v) { d.wish.trucks_per_hour = v; },
             [](D& d, const R&) { d.wish.trucks_per_hour.reset(); }},
    FieldRow{PlanField{"haul"}, said("plant to form"), Measure::age,
             [](const D& d, const R&) { return Value{in_seconds(d.wish.haul)}; },
             [](D& d, const R&, double v) { d.wish.haul = seconds(v); }},
    FieldRow{PlanField{"form_mass"}, said("form's face"), Measure::mass_per_area,
             [](const D& d, const R& r) {
               const auto& own = element(d, r).form_mass;
               return given(in_kilograms_per_m2(own.value_or(d.wish.form_mass)));
             },
             [](D& d, const R& r, double v) { element(d, r).form_mass = kilograms_per_m2(v); },
             nullptr, [](const D& d, const R& r) { return !element(d, r).form_mass; }},
    FieldRow{PlanField{"motor_speed"}, said("motor's speed"), Measure::speed,
             [](const D& d, const R&) {
               return given(in_vibrations_per_minute(d.wish.motor.top_speed));
             },
             [](D& d, const R&, double v) { d.wish.motor.top_speed = vibrations_per_minute(v); }},
    FieldRow{PlanField{"inverter_volts"}, said("inverter's volts"), Measure::potential,
             [](const D& d, const R&) { return given(in_volts(d.wish.volts)); },
             [](D& d, const R&, double v) { d.wish.volts = volts(v); }},
    FieldRow{PlanField{"inverter_amps"}, said("inverter's amps"), Measure::current,
             [](const D& d, const R&) {
               return given(in_amperes(d.wish.inverter_amps.value_or(Current{})));
             },
             [](D& d, const R&, double v) { d.wish.inverter_amps = amperes(v); },
             [](D& d, const R&) { d.wish.inverter_amps.reset(); }},
    FieldRow{
        PlanField{"cord_section"}, said("cord, copper"), Measure::wire_section,
        [](const D& d, const R&) { return given(in_square_metres(cable_of(d).section) * 1e6); },
        [](D& d, const R&, double v) {
          d.wish.cable = Cable{square_metres(v / 1e6), cable_of(d).length};
        },
        [](D& d, const R&) {
          d.wish.cable = Cable{{}, cable_of(d).length};
        }},
    FieldRow{PlanField{"cord_length"}, said("cord's length"), Measure::length,
             [](const D& d, const R&) { return size(cable_of(d).length); },
             [](D& d, const R&, double v) {
               d.wish.cable = Cable{cable_of(d).section, metres(v)};
             },
             [](D& d, const R&) {
               d.wish.cable = Cable{cable_of(d).section, {}};
             }},
    FieldRow{
        PlanField{"trunk_section"}, said("trunk, copper"), Measure::wire_section,
        [](const D& d, const R&) { return given(in_square_metres(trunk_of(d).section) * 1e6); },
        [](D& d, const R&, double v) {
          d.wish.trunk = Trunk{{square_metres(v / 1e6), trunk_of(d).length}};
        },
        [](D& d, const R&) {
          d.wish.trunk = Trunk{{{}, trunk_of(d).length}};
        }},
    FieldRow{PlanField{"trunk_length"}, said("trunk's length"), Measure::length,
             [](const D& d, const R&) { return size(trunk_of(d).length); },
             [](D& d, const R&, double v) {
               d.wish.trunk = Trunk{{trunk_of(d).section, metres(v)}};
             },
             [](D& d, const R&) {
               d.wish.trunk = Trunk{{trunk_of(d).section, {}}};
             }},
    FieldRow{PlanField{"generator_rating"}, said("generator"), Measure::apparent_power,
             [](const D& d, const R&) { return given(in_kilovoltamperes(generator_of(d).rating)); },
             [](D& d, const R&, double v) {
               Generator generator = generator_of(d);
               generator.rating = kilovoltamperes(v);
               d.wish.generator = generator;
             },
             [](D& d, const R&) { d.wish.generator.reset(); }},
    FieldRow{PlanField{"generator_derate"}, said("it gives on site"), Measure::share,
             [](const D& d, const R&) { return generator_of(d).derate; },
             [](D& d, const R&, double v) {
               Generator generator = generator_of(d);
               generator.derate = v;
               d.wish.generator = generator;
             },
             [](D& d, const R&) {
               Generator generator = generator_of(d);
               generator.derate.reset();
               d.wish.generator = generator;
             }},
};

template <std::size_t... N>
constexpr auto joined(const std::array<FieldRow, N>&... parts) {
  std::array<FieldRow, (N + ...)> all{};
  auto to = all.begin();
  ((to = std::copy(parts.begin(), parts.end(), to)), ...);
  return all;
}

template <std::size_t N>
constexpr auto on(PlanEdit::Page page, std::array<FieldRow, N> rows) {
  for (FieldRow& row : rows) row.page = page;
  return rows;
}

using Page = PlanEdit::Page;
// A deck has no rows: what the planner asks of it.
bool asked_of(const D& d, const R& r, PlanField field) {
  static constexpr std::array kOfDeck{PlanField{"concrete_temp"}, PlanField{"crew"},
                                      PlanField{"load"}, PlanField{"trucks_per_hour"},
                                      PlanField{"haul"}};
  return element(d, r).kind != ElementKind::deck ||
         std::find(kOfDeck.begin(), kOfDeck.end(), field) != kOfDeck.end();
}

constexpr auto kFields = joined(kNamed, on(Page::lifts, kOfLifts), on(Page::mix, kOfMix),
                                on(Page::limits, kOfLimits), on(Page::compute, kOfPlanner));

}  // namespace

bool is_asked(const PlanDraft& draft, const FieldRef& ref, const FieldRow& row) {
  if (row.listed != nullptr && !row.listed(draft, ref)) return false;
  return row.page != Page::compute || asked_of(draft, ref, row.field);
}

std::span<const FieldRow> field_rows() {
  return kFields;
}

}  // namespace rb::screens
