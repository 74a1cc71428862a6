#include "record/model/held_to.h"

#include "check/check.h"
#include "check/say_finding.h"

namespace rb {

std::vector<LimitLine> held_to(const Plan& plan, const Voice& voice) {
  const Limits& l = plan.limits;
  std::vector<LimitLine> limits;
  const auto add = [&](const char* name, const Amount& value, LimitFrom from, const char* rule) {
    Source source{.code = Source::Code::plan};
    if (from == LimitFrom::standard) {
      source.code = Source::Code::standard;
      if (const RuleCard* card = find_card(rule)) source.words = card->source;
    }
    limits.push_back({name, value, source_text(source, voice)});
  };
  add(said("dose at least"), amount(l.dose_min.value), l.dose_min.from, "dose-low");
  add(said("run of a row at most"), amount(l.dose_max.value), l.dose_max.from, "run-long");
  // What no rule's card tells the source of.
  const auto own = [&](const char* name, const Amount& value, bool given, const char* words) {
    Source source{.code = given ? Source::Code::plan : Source::Code::standard};
    if (!given) source.words = words;
    limits.push_back({name, value, source_text(source, voice)});
  };
  if (plan.motor_type) {
    own(said("speed under which a second counts as the square of its share"),
        amount(plan.motor_type->working()), plan.motor_type->work_speed.has_value(),
        said("0.8 of the motors' greatest speed: a choice of this project"));
  }
  add(said("under-dosed share of a lift at most"), share(l.under_share_max.value),
      l.under_share_max.from, "dose-low");
  add(said("window of the rate of rise"), amount(l.rise_window.value), l.rise_window.from,
      "rise-fast");
  add(said("age of a load at most"), amount(l.load_age_max.value), l.load_age_max.from, "load-old");
  add(said("concrete not colder than"), amount(l.temp_min.value), l.temp_min.from, "temp-out");
  add(said("concrete not warmer than"), amount(l.temp_max.value), l.temp_max.from, "temp-out");
  add(said("placed against net volume within"), share(l.volume_tolerance.value),
      l.volume_tolerance.from, "volume-off");
  add(said("spacing of insertions, times the radius of action"),
      Amount{Measure::number, l.insert_spacing_factor.value}, l.insert_spacing_factor.from,
      "insert-sparse");
  add(said("insertions into the lift below"), amount(l.knit_depth.value), l.knit_depth.from,
      "insert-sparse");
  add(said("insertion at a point at least"), amount(l.insert_least.value), l.insert_least.from,
      "insert-few");
  add(said("insertion at a point at most"), amount(l.insert_most.value), l.insert_most.from,
      "insert-long");
  own(said("vibration counts until this share of the time to set"), share(l.plastic_share.value),
      l.plastic_share.from == LimitFrom::plan, said("until it sets: a choice of this project"));
  add(said("layer of insertions at most"), amount(l.insert_layer.value), l.insert_layer.from,
      "insert-few");
  add(said("warning before a joint sets"), amount(l.knit_margin.value), l.knit_margin.from,
      "knit-near");
  return limits;
}

}  // namespace rb
