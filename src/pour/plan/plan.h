// The plan of a pour: what stands there, what hangs on it and the limits it is held to.
// Plain values; lengths along an element run from its left end as seen from the near side (x) and
// up from its base (z). Read from and written to JSON by plan_json.h.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/ids.h"
#include "base/measure.h"
#include "base/quantity.h"
#include "trade/concrete/setting.h"
#include "trade/concrete/strength.h"
#include "trade/pressure/pressure.h"
#include "trade/shape/patch.h"
#include "trade/shape/section.h"

namespace rb {

enum class ElementKind { wall, column, deck };
enum class Side { near_side, far_side };

const char* to_text(ElementKind kind);
const char* to_text(Side side);

struct Person {
  PersonId id;
  std::string name;
  std::string role;  ///< more than one with commas between: "foreman, inspector"
  bool operator==(const Person&) const = default;

  /// Whether the plan gives this one that role; upper case and spaces around make no difference.
  [[nodiscard]] bool has_role(std::string_view asked) const;
};

struct Mix {
  MixId id;
  UnitWeight unit_weight;
  Length slump;
  std::optional<Length> slump_tolerance{};
  Seconds initial_set{};  ///< at set_reference
  Celsius set_reference{20};
  trade::CementClass cement = trade::CementClass::plain;
  /// Of its setting (Ea/R of ASTM C1074); none: nobody tested it.
  std::optional<trade::ActivationTemperature> set_q{};
  std::optional<Celsius> temp_low{}, temp_high{};  ///< between which it is to come
  std::optional<double> air{}, air_tolerance{};    ///< per cent of the volume; points of it
  std::optional<MassPerVolume> density{}, density_tolerance{};
  std::optional<Pressure> strength{};  ///< specified at 28 days
  bool operator==(const Mix&) const = default;
};

using trade::Patch;  ///< a rectangle on the face: an opening, or a congested zone

/// Where reinforcement or embedded parts crowd the form. With a least dose of its own the zone's
/// part of each lift is judged for itself.
struct CongestedZone : Patch {
  std::optional<Seconds> dose_min{};
  bool operator==(const CongestedZone&) const = default;
};

/// A place on a row where a motor hangs, named for the motor planned there.
struct Motor {
  MotorId id;
  Length x;
  Length reach_x;  ///< half-width it works over
  Length reach_z;  ///< half-height it works over
  bool operator==(const Motor&) const = default;
};

struct Row {
  RowId id;
  Side side = Side::near_side;
  Length z;
  std::vector<Motor> motors;
  std::vector<int> serves;  ///< lift numbers, from 1
  bool operator==(const Row&) const = default;
};

/// Under a deck, hanging below its soffit; across it from edge to edge, or along all of it. It is
/// filled and worked before the first layer, in the same lift.
struct Beam {
  std::optional<Length> x;  ///< of its left edge; none: it runs along the deck
  Length width, depth;      ///< below the soffit
  bool operator==(const Beam&) const = default;
};

struct Element {
  ElementId id;
  ElementKind kind = ElementKind::wall;
  Length length, height, thickness;
  trade::Section section = trade::Section::rect;  ///< round: its thickness is its length too
  std::optional<Length>
      thickness_top{};    ///< where it tapers up its height: `thickness` at its foot
  double batter_deg = 0;  ///< slope of the face off plumb, degrees
  std::optional<Pressure> form_rating;
  std::optional<MassPerArea> form_mass;
  std::optional<Velocity> rise_limit;
  std::vector<ElementId> meets{};            ///< elements whose concrete this one's lies against
  std::optional<Seconds> joint_age_max{};    ///< the contract's: from one layer to the next on it
  std::optional<Seconds> strip_after{};      ///< no form is stripped sooner after its last concrete
  std::optional<Pressure> strip_strength{};  ///< nor before this is shown of its last concrete
  bool strip_permit = false;                 ///< nor before somebody gives leave
  /// What its concrete reaches by equivalent age at 20 degC, by tests of the mix; may be empty.
  std::vector<trade::StrengthPoint> strength_curve{};
  std::optional<Seconds> cure_start_within{};  ///< of its last concrete
  std::optional<Seconds> cure_for{};           ///< at least
  /// How far below a row its motors make concrete press as liquid; none: twice their reach.
  std::optional<Length> reach_pressure{};
  std::vector<Length> bays;  ///< lengths from left to right; never empty
  std::vector<Patch> openings;
  std::vector<Beam> beams{};
  std::vector<CongestedZone> congested;
  std::vector<Length> lifts;  ///< planned tops
  std::vector<Row> rows;
  bool operator==(const Element&) const = default;

  [[nodiscard]] const Row* find_row(const RowId& row, Side side) const;
  /// The bay (from 0) that holds x, the last one for x at or beyond the end.
  [[nodiscard]] std::size_t bay_at(Length x) const;
  [[nodiscard]] Length bay_start(std::size_t bay) const;
  [[nodiscard]] bool has_rows(Side side) const;
  /// How far the concrete rises: the height, or a deck's thickness (whose height is its plan
  /// width).
  [[nodiscard]] Length rise_height() const {
    return kind == ElementKind::deck ? thickness : height;
  }
  /// A deck of one layer: no concrete comes on its top.
  [[nodiscard]] bool one_layer() const { return kind == ElementKind::deck && lifts.size() <= 1; }
  /// How far the concrete goes in behind the face it is drawn by: a deck is seen along its length,
  /// and goes in by its height.
  [[nodiscard]] Length through() const { return kind == ElementKind::deck ? height : thickest(); }
  [[nodiscard]] Length thickest() const {
    return std::max(thickness, thickness_top.value_or(thickness));
  }
  [[nodiscard]] trade::Taper taper() const;
  /// In plan, a bay of it where it is thickest.
  [[nodiscard]] Area bay_area(std::size_t bay) const;
  /// Of concrete in the beams under a bay; where two cross it counts once.
  [[nodiscard]] Volume beam_volume(std::size_t bay) const;
  /// How much of a beam's length lies under a bay.
  [[nodiscard]] Length beam_in(const Beam& beam, std::size_t bay) const;
  /// Of concrete between two heights of a bay, openings out; beams count with its lowest part.
  [[nodiscard]] Volume volume(std::size_t bay, Length from, Length to) const;
};

/// Whether the plan names one as meeting the other.
bool meet(const Element& a, const Element& b);

struct Cable {
  Area section;
  Length length;
  bool operator==(const Cable&) const = default;
};

/// A cord from an inverter that several of its motors share.
struct Trunk : Cable {
  std::vector<MotorId> motors{};  ///< none named: all that the inverter feeds
  bool operator==(const Trunk&) const = default;
};

/// What an inverter is plugged into. Inverters that name the same one share it.
struct Generator {
  std::string id{};  ///< may be empty: then those of the same figures are taken to be one
  ApparentPower rating;
  std::optional<double> derate{};  ///< share of the rating it gives on the site
  /// With the derating the plan gives, else trade::kDerate.
  [[nodiscard]] ApparentPower gives() const;
  bool operator==(const Generator&) const = default;
};

/// Internal vibrators on an inverter beside the motors of rows.
struct Internal {
  int heads = 0;  ///< at once
  Current amps;   ///< of each
  bool operator==(const Internal&) const = default;
};

struct Inverter {
  InverterId id;
  Potential volts;
  Current max_amps;
  std::vector<MotorId> motors;
  std::optional<Cable> cable{};  ///< of each motor alone
  std::optional<Trunk> trunk{};
  std::optional<Generator> generator{};
  std::optional<Internal> internal{};
  bool operator==(const Inverter&) const = default;
};
bool feeds(const Inverter& inverter, const MotorId& motor);
/// Whether it feeds the motor through its trunk; without one, no.
bool feeds_by_trunk(const Inverter& inverter, const MotorId& motor);

struct MotorType {
  Current amps;
  Force force;
  Frequency top_speed;
  std::optional<Frequency> work_speed{};  ///< from which on a second counts whole
  /// The plan's, else 0.8 of the greatest (trade/motors/force.h).
  [[nodiscard]] Frequency working() const;
  bool operator==(const MotorType&) const = default;
};

enum class LimitFrom { plan, standard };  ///< given in the plan, or the product's default

template <class T>
struct Limit {
  T value;
  LimitFrom from = LimitFrom::standard;
  bool operator==(const Limit&) const = default;
};

/// Limits of the checker; where a default comes from is told by the rule that uses it.
struct Limits {
  Limit<Seconds> dose_min{seconds(90)};
  Limit<Seconds> dose_max{seconds(120)};
  Limit<double> under_share_max{0.02};
  Limit<Seconds> rise_window{seconds(1800)};
  Limit<Seconds> load_age_max{seconds(5400)};
  Limit<Celsius> temp_min{celsius(10)};
  Limit<Celsius> temp_max{celsius(35)};
  Limit<double> volume_tolerance{0.08};
  Limit<double> insert_spacing_factor{1.5};
  Limit<Length> knit_depth{metres(0.15)};
  Limit<Seconds> knit_margin{seconds(900)};
  Limit<Seconds> insert_least{seconds(5)};
  Limit<Seconds> insert_most{seconds(15)};
  Limit<Length> insert_layer{metres(0.6)};
  Limit<double> plastic_share{1.0};  ///< of the time to set; vibrated later it does not count
  bool operator==(const Limits&) const = default;
};

struct Plan {
  std::string site;
  std::string name;
  Units units = Units::si;
  std::vector<Person> people;
  std::vector<Mix> mixes;
  std::vector<Element> elements;
  std::vector<Inverter> power;
  std::optional<MotorType> motor_type;
  Limits limits;
  trade::PressureMethod pressure_method = trade::PressureMethod::aci347;
  std::string extra;  ///< fields this version does not know, kept as a JSON object's text
  bool operator==(const Plan&) const = default;

  [[nodiscard]] const Element* find(const ElementId& element) const;
  /// The generators of `power`, each with the places there of what it feeds.
  [[nodiscard]] std::vector<std::vector<std::size_t>> by_generator() const;
  [[nodiscard]] const Mix* find(const MixId& mix) const;
  [[nodiscard]] const Person* find(const PersonId& person) const;
};

}  // namespace rb
