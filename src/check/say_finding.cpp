#include "check/say_finding.h"

#include <array>
#include <string_view>
#include <utility>

namespace rb {

namespace {

// Which way measured and limit are rounded: over a greatest, up and down; under a least, the other.
std::pair<Rounding, Rounding> roundings(const Finding& finding) {
  if (!finding.measured || !finding.limit) return {Rounding::nearest, Rounding::nearest};
  if (finding.measured->si < finding.limit->si) return {Rounding::down, Rounding::up};
  return {Rounding::up, Rounding::down};
}

Facts facts_of(const Finding& finding, const Plan& plan) {
  Facts facts = finding.facts;
  const auto add = [&](const char* name, FactValue value, Rounding rounding = Rounding::nearest) {
    facts.push_back({name, std::move(value), rounding});
  };
  if (finding.element) {
    const Element& element = plan.elements[*finding.element];
    add("element", element.id.text);
    if (finding.row) add("row", element.rows[*finding.row].id.text);
  }
  if (finding.lift) add("lift", count(*finding.lift));
  if (finding.bay) add("bay", count(static_cast<double>(*finding.bay) + 1));
  if (finding.side) add("side", Term{to_text(*finding.side)});
  if (finding.ticket) add("ticket", finding.ticket->text);
  if (finding.inverter) add("inverter", finding.inverter->text);
  const auto [measured, limit] = roundings(finding);
  if (finding.measured) add("measured", *finding.measured, measured);
  if (finding.limit) add("limit", *finding.limit, limit);
  return facts;
}

// A plan's field in plain words; whoever writes the plan reads its name at a terminal.
const char* field_words(std::string_view field) {
  constexpr std::array<std::pair<std::string_view, const char*>, 14> kFields{{
      {"cure_for_s", said("how long it is cured")},
      {"cure_start_within_s", said("when curing begins")},
      {"dose_min_s", said("least vibration")},
      {"form_rating_kpa", said("the form's rating")},
      {"initial_set_h", said("the mix's initial set")},
      {"joint_age_max_s", said("the oldest joint the contract allows")},
      {"lifts", said("the planned lifts")},
      {"motor_type.vpm_max", said("the motors' greatest speed")},
      {"power[].generator", said("the generator's rating")},
      {"rise_limit", said("limit of rise")},
      {"strength_mpa", said("the mix's strength at 28 days")},
      {"strip_permit", said("leave to strip")},
      {"strip_strength_mpa", said("the strength before stripping")},
      {"strip_after_s", said("the time before stripping")},
  }};
  for (const auto& [name, words] : kFields) {
    if (name == field) return words;
  }
  return "";
}

bool same(const char* a, const char* b) {
  return std::string_view{a} == std::string_view{b};
}

}  // namespace

bool Source::operator==(const Source& other) const {
  return code == other.code && same(field, other.field) && same(words, other.words) &&
         facts == other.facts;
}

bool Finding::operator==(const Finding& o) const {
  return rule == o.rule && severity == o.severity && element == o.element && bay == o.bay &&
         row == o.row && lift == o.lift && side == o.side && ticket == o.ticket &&
         inverter == o.inverter && from == o.from && to == o.to && measured == o.measured &&
         limit == o.limit && source == o.source && same(advice, o.advice) &&
         same(sentence, o.sentence) && facts == o.facts && ref == o.ref && growing == o.growing &&
         group == o.group;
}

std::string sentence(const Finding& finding, const Plan& plan, const Voice& voice) {
  return filled(finding.sentence, facts_of(finding, plan), voice);
}

std::string source_text(const Source& source, const Voice& voice) {
  std::string words = filled(source.words, source.facts, voice);
  switch (source.code) {
    case Source::Code::rule:
    case Source::Code::measured:
      return words;
    case Source::Code::standard:
      return std::string{told(voice.language, "default")} + ": " + words;
    case Source::Code::plan:
      break;
  }
  std::string text = told(voice.language, "plan");
  const char* named = field_words(source.field);
  if (*source.field != '\0') {
    text += std::string{": "} +
            (voice.plain || *named == '\0' ? source.field : told(voice.language, named));
  }
  // Words that go on from the field bring their own joint (" of the zone", ", plus a tenth").
  const bool goes_on = words.starts_with(' ') || words.starts_with(',');
  return words.empty() || goes_on ? text + words : text + "; " + words;
}

std::string advice_text(const Finding& finding, const Voice& voice) {
  return filled(finding.advice, {}, voice);
}

std::string measured_text(const Finding& finding, const Voice& voice) {
  return finding.measured ? amount_text(*finding.measured, voice, roundings(finding).first)
                          : std::string{};
}

std::string limit_text(const Finding& finding, const Voice& voice) {
  return finding.limit ? amount_text(*finding.limit, voice, roundings(finding).second)
                       : std::string{};
}

std::string sentence(const NotJudged& gap, const Plan& plan, const Voice& voice) {
  Facts facts;
  if (gap.element) facts.push_back({"element", plan.elements[*gap.element].id.text});
  if (gap.lift) facts.push_back({"lift", count(*gap.lift)});
  if (gap.bay) facts.push_back({"bay", counted(*gap.bay + 1)});
  if (gap.inverter) facts.push_back({"inverter", gap.inverter->text});
  return filled(gap.sentence, facts, voice);
}

}  // namespace rb
