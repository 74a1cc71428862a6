#include "pour/plan/plan_power_json.h"

#include "pour/plan/plan_writing.h"

namespace rb {

namespace {

constexpr Span kVolts{0, 1000, "V", true};
constexpr Span kAmps{0, 5000, "A", true};
constexpr Span kForce{0, 500, "kN", true};
constexpr Span kSpeed{0, 60000, "vpm", true};
constexpr Span kWire{0, 1000, "mm2", true};
constexpr Span kCord{0, 2000, "m", true};
constexpr Span kRating{0, 10000, "kVA", true};
constexpr Span kShareOfRating{0, 1, "(a share over 0, at most 1)", true};
constexpr long kMostHeads = 100;

Fields inner(Fields& f, const char* field) {
  return {f.object(field), inside(f.where(), field), f.bounds()};
}

Cable read_cord(Fields& f) {
  return {square_metres(tidy(f.number("mm2", kWire)) * 1e-6), metres(f.number("length", kCord))};
}

Trunk read_trunk(Fields f, const Inverter& inverter) {
  Trunk trunk{read_cord(f)};
  for (const std::string& named : f.ids("motors", most::kMotors)) {
    const MotorId motor{named};
    if (!feeds(inverter, motor)) {
      f.refuse("motors",
               {said("names {motor}, which inverter {inverter} does not feed"),
                {{"motor", named}, {"inverter", inverter.id.text}}},
               said("Name motors of the inverter's own list, or none for all of them"));
    }
    trunk.motors.push_back(motor);
  }
  return trunk;
}

Generator read_generator(Fields f) {
  Generator generator;
  generator.id = f.maybe_id("id");
  generator.rating = kilovoltamperes(tidy(f.number("kva", kRating)));
  generator.derate = f.maybe_number("derate", kShareOfRating);
  return generator;
}

Internal read_internal(Fields f) {
  return {static_cast<int>(f.integer("heads", 1, kMostHeads)), amperes(f.number("amps", kAmps))};
}

Inverter read_inverter(Fields f) {
  Inverter inverter;
  inverter.id = InverterId{f.id("id")};
  inverter.volts = volts(f.number("volts", kVolts));
  inverter.max_amps = amperes(f.number("max_amps", kAmps));
  for (const std::string& motor : f.ids("motors", most::kMotors))
    inverter.motors.emplace_back(motor);
  if (f.has("cable")) {
    Fields cable = inner(f, "cable");
    inverter.cable = read_cord(cable);
  }
  if (f.has("trunk")) inverter.trunk = read_trunk(inner(f, "trunk"), inverter);
  if (f.has("generator")) inverter.generator = read_generator(inner(f, "generator"));
  if (f.has("internal")) inverter.internal = read_internal(inner(f, "internal"));
  return inverter;
}

// One machine has one rating.
void same_generators_alike(const Fields& plan, const std::vector<Inverter>& power) {
  for (const Inverter& a : power) {
    for (const Inverter& b : power) {
      if (!a.generator || !b.generator || a.generator->id.empty()) continue;
      if (a.generator->id != b.generator->id || a.generator == b.generator) continue;
      plan.refuse("power",
                  {said("gives generator {id} two ratings, at {one} and at {other}"),
                   {{"id", a.generator->id}, {"one", a.id.text}, {"other", b.id.text}}},
                  said("Give one machine the same kva and derate wherever it is named"));
    }
  }
}

}  // namespace

std::vector<Inverter> read_power(Fields& plan) {
  std::vector<Inverter> power;
  const auto items = plan.objects("power", most::kInverters);
  power.reserve(items.size());
  for (const Fields& item : items) power.push_back(read_inverter(item));
  same_generators_alike(plan, power);
  return power;
}

std::optional<MotorType> read_motor_type(Fields& plan) {
  if (!plan.has("motor_type")) return std::nullopt;
  Fields type = inner(plan, "motor_type");
  MotorType read{amperes(type.number("amps", kAmps)),
                 kilonewtons(tidy(type.number("force_kn", kForce))),
                 vibrations_per_minute(tidy(type.number("vpm_max", kSpeed)))};
  if (type.has("vpm_work")) {
    const Frequency work = vibrations_per_minute(tidy(type.number("vpm_work", kSpeed)));
    if (work > read.top_speed) type.refuse("vpm_work", said("is above vpm_max"));
    read.work_speed = work;
  }
  return read;
}

namespace {

Json ids_json(const std::vector<MotorId>& motors) {
  Json list = Json::array();
  for (const MotorId& motor : motors) list.push_back(motor.text);
  return list;
}

Json cord_json(const Cable& cord) {
  return {{"mm2", tidy(in_square_metres(cord.section) * 1e6)}, {"length", in_metres(cord.length)}};
}

}  // namespace

Json inverter_json(const Inverter& inverter) {
  Json json{{"id", inverter.id.text},
            {"volts", in_volts(inverter.volts)},
            {"max_amps", in_amperes(inverter.max_amps)},
            {"motors", ids_json(inverter.motors)}};
  if (inverter.cable) json["cable"] = cord_json(*inverter.cable);
  if (inverter.trunk) {
    json["trunk"] = cord_json(*inverter.trunk);
    if (!inverter.trunk->motors.empty()) json["trunk"]["motors"] = ids_json(inverter.trunk->motors);
  }
  if (const auto& generator = inverter.generator) {
    json["generator"] = {{"kva", tidy(in_kilovoltamperes(generator->rating))}};
    if (!generator->id.empty()) json["generator"]["id"] = generator->id;
    if (generator->derate) json["generator"]["derate"] = *generator->derate;
  }
  if (inverter.internal) {
    json["internal"] = {{"heads", inverter.internal->heads},
                        {"amps", in_amperes(inverter.internal->amps)}};
  }
  return json;
}

Json motor_type_json(const MotorType& type) {
  Json json{{"amps", in_amperes(type.amps)},
            {"force_kn", tidy(in_kilonewtons(type.force))},
            {"vpm_max", tidy(in_vibrations_per_minute(type.top_speed))}};
  if (type.work_speed) json["vpm_work"] = tidy(in_vibrations_per_minute(*type.work_speed));
  return json;
}

}  // namespace rb
