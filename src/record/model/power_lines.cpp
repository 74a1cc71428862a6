#include "record/model/power_lines.h"

#include <fmt/format.h>

#include <algorithm>

#include "record/model/names.h"
#include "trade/motors/power.h"

namespace rb {

namespace {

std::string cords_text(const Inverter& inverter, const Voice& voice) {
  std::string text;
  const auto add = [&](Said english, const Cable& cord) {
    const Saying saying{english,
                        {{"section", fmt::format("{:g}", in_square_metres(cord.section) * 1e6)},
                         {"length", amount(cord.length)}}};
    text += (text.empty() ? "" : "; ") + words_of(saying, voice);
  };
  if (inverter.trunk) add(said("trunk {section} mm2, {length~}"), *inverter.trunk);
  if (inverter.cable) add(said("own cord {section} mm2, {length~}"), *inverter.cable);
  return text;
}

std::string generator_text(const Generator& generator, const Voice& voice) {
  const Facts facts{{"rating", fmt::format("{:g}", in_kilovoltamperes(generator.rating))},
                    {"derate", fmt::format("{:g}", generator.derate.value_or(trade::kDerate))}};
  const Saying saying{generator.derate ? said("{rating} kVA x {derate}")
                                       : said("{rating} kVA x {derate}, our own choice"),
                      facts};
  return (generator.id.empty() ? "" : generator.id + ": ") + words_of(saying, voice);
}

}  // namespace

std::vector<PowerLine> power_lines(const PourState& state, const CheckReport& report,
                                   const Voice& voice) {
  const Names names{state};
  std::vector<PowerLine> lines;
  lines.reserve(state.plan->power.size());
  for (std::size_t i = 0; i < state.plan->power.size(); ++i) {
    const Inverter& inverter = state.plan->power[i];
    PowerLine line{.inverter = inverter.id.text,
                   .gives = inverter.max_amps,
                   .cords = cords_text(inverter, voice)};
    for (const PowerReport& seen : report.power) {
      if (seen.inverter != i) continue;
      line.motors = seen.all.motors;
      line.at = names.moment(seen.all.from);
      line.amps = seen.all.amps;
      if (seen.trunk) line.trunk_amps = seen.trunk->amps;
      line.lost = seen.lost;
    }
    if (inverter.generator) {
      line.generator = generator_text(*inverter.generator, voice);
      line.generator_gives = inverter.generator->gives();
    }
    for (const GeneratorReport& seen : report.generators) {
      const auto& fed = seen.inverters;
      if (std::find(fed.begin(), fed.end(), i) != fed.end()) line.generator_takes = seen.takes;
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

std::vector<SettingLine> setting_lines(const PourState& state) {
  const Names names{state};
  std::vector<SettingLine> lines;
  lines.reserve(state.speeds.size() + state.trips.size());
  const auto inverter = [&](std::size_t i) { return state.plan->power[i].id.text; };
  for (const SpeedState& set : state.speeds) {
    lines.push_back({names.moment(set.at), inverter(set.inverter), "set", set.what.speed,
                     set.what.volts, names.by(set.ref)});
  }
  for (const TripState& trip : state.trips) {
    lines.push_back({.at = names.moment(trip.at),
                     .inverter = inverter(trip.inverter),
                     .what = "tripped",
                     .by = names.by(trip.ref)});
  }
  std::stable_sort(lines.begin(), lines.end(),
                   [](const SettingLine& a, const SettingLine& b) { return a.at < b.at; });
  return lines;
}

}  // namespace rb
