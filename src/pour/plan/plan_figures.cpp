#include "pour/plan/plan_figures.h"

#include <array>

#include "pour/plan/plan_spans.h"

namespace rb {

namespace {

// A number stands in JSON in the unit of its span.
template <class Owner>
struct Figure {
  const char* field;
  Span span;
  std::optional<double> (*get)(const Owner&);
  void (*put)(Owner&, double);
};

// A change of unit leaves a tail of digits; what needs none is read and written as it stands.
double as_told(double v) {
  return v;
}
double celsius_of(Celsius t) {
  return t.degrees;
}
double kelvin_of(trade::ActivationTemperature q) {
  return q.kelvin;
}
trade::ActivationTemperature activation(double v) {
  return trade::ActivationTemperature{v};
}

// What an element or a mix may leave unsaid.
template <class Owner, auto kMember, auto kNumber, auto kMake, auto kTidy = as_told>
constexpr Figure<Owner> may(const char* field, Span span) {
  return {field, span,
          [](const Owner& owner) {
            const auto& value = owner.*kMember;
            return value ? std::optional{kTidy(kNumber(*value))} : std::nullopt;
          },
          [](Owner& owner, double v) { owner.*kMember = kMake(kTidy(v)); }};
}

// A limit: the product's own until the plan gives it.
template <auto kMember, auto kNumber, auto kMake>
constexpr Figure<Limits> limit(const char* field, Span span) {
  return {field, span,
          [](const Limits& limits) {
            const auto& given = limits.*kMember;
            return given.from == LimitFrom::plan ? std::optional{kNumber(given.value)}
                                                 : std::nullopt;
          },
          [](Limits& limits, double v) {
            limits.*kMember = {kMake(v), LimitFrom::plan};
          }};
}

using E = Element;
constexpr std::array kOfElement{
    may<E, &E::thickness_top, in_metres, metres>("thickness_top", span::kThickness),
    may<E, &E::form_rating, in_kilopascals, kilopascals, tidy>("form_rating_kpa", span::kPressure),
    may<E, &E::form_mass, in_kilograms_per_m2, kilograms_per_m2>("form_mass_kg_m2",
                                                                 span::kMassPerArea),
    may<E, &E::rise_limit, in_metres_per_hour, metres_per_hour, tidy>("rise_limit", span::kRise),
    may<E, &E::joint_age_max, in_seconds, seconds>("joint_age_max_s", span::kSeconds),
    may<E, &E::strip_after, in_seconds, seconds>("strip_after_s", span::kMonth),
    may<E, &E::strip_strength, in_megapascals, megapascals, tidy>("strip_strength_mpa",
                                                                  span::kStrength),
    may<E, &E::cure_start_within, in_seconds, seconds>("cure_start_within_s", span::kMonth),
    may<E, &E::cure_for, in_seconds, seconds>("cure_for_s", span::kQuarter),
    may<E, &E::reach_pressure, in_metres, metres>("reach_pressure_z", span::kReach),
};

using M = Mix;
constexpr std::array kOfMix{
    may<M, &M::slump_tolerance, in_metres, metres>("slump_tol", span::kSlump),
    may<M, &M::set_q, kelvin_of, activation>("set_q_k", span::kActivation),
    may<M, &M::temp_low, celsius_of, celsius>("temp_low", span::kTemp),
    may<M, &M::temp_high, celsius_of, celsius>("temp_high", span::kTemp),
    may<M, &M::strength, in_megapascals, megapascals, tidy>("strength_mpa", span::kStrength),
    may<M, &M::air, as_told, as_told>("air", span::kAir),
    may<M, &M::air_tolerance, as_told, as_told>("air_tol", span::kAir),
    may<M, &M::density, in_kilograms_per_m3, kilograms_per_m3>("density", span::kDensity),
    may<M, &M::density_tolerance, in_kilograms_per_m3, kilograms_per_m3>("density_tol",
                                                                         span::kDensityTolerance),
};

using L = Limits;
constexpr std::array kOfLimits{
    limit<&L::dose_min, in_seconds, seconds>("dose_min_s", span::kSeconds),
    limit<&L::dose_max, in_seconds, seconds>("dose_max_s", span::kSeconds),
    limit<&L::under_share_max, as_told, as_told>("under_share_max", span::kShare),
    limit<&L::rise_window, in_seconds, seconds>("rise_window_s", {1, 86400, "s"}),
    limit<&L::load_age_max, in_seconds, seconds>("load_age_max_s", span::kSeconds),
    limit<&L::temp_min, celsius_of, celsius>("temp_min", span::kTemp),
    limit<&L::temp_max, celsius_of, celsius>("temp_max", span::kTemp),
    limit<&L::volume_tolerance, as_told, as_told>("volume_tolerance", span::kShare),
    limit<&L::insert_spacing_factor, as_told, as_told>("insert_spacing_factor", {0, 10, "", true}),
    limit<&L::knit_depth, in_metres, metres>("knit_depth", {0, 5, "m"}),
    limit<&L::knit_margin, in_seconds, seconds>("knit_margin_s", span::kSeconds),
    limit<&L::insert_least, in_seconds, seconds>("insert_s_min", span::kSeconds),
    limit<&L::insert_most, in_seconds, seconds>("insert_s_max", span::kSeconds),
    limit<&L::plastic_share, as_told, as_told>("plastic_share", {0.1, 1, ""}),
    limit<&L::insert_layer, in_metres, metres>("insert_layer_m", {0, 5, "m", true}),
};

template <class Figures, class Owner>
void read_all(Fields& f, const Figures& figures, Owner& owner) {
  for (const auto& figure : figures) {
    if (const auto v = f.maybe_number(figure.field, figure.span)) figure.put(owner, *v);
  }
}

template <class Figures, class Owner>
void write_all(Json& json, const Figures& figures, const Owner& owner) {
  for (const auto& figure : figures) {
    if (const auto v = figure.get(owner)) json[figure.field] = *v;
  }
}

}  // namespace

void read_figures(Fields& f, Element& element) {
  read_all(f, kOfElement, element);
}
void read_figures(Fields& f, Mix& mix) {
  read_all(f, kOfMix, mix);
}
void read_figures(Fields& f, Limits& limits) {
  read_all(f, kOfLimits, limits);
}
void write_figures(Json& json, const Element& element) {
  write_all(json, kOfElement, element);
}
void write_figures(Json& json, const Mix& mix) {
  write_all(json, kOfMix, mix);
}
void write_figures(Json& json, const Limits& limits) {
  write_all(json, kOfLimits, limits);
}

}  // namespace rb
