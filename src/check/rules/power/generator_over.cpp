// generator-over: more ran at once than the generator behind the inverters gives.
#include "check/rule.h"

namespace rb {

namespace {

void look_generator_over(const Look& look, const Rule& rule, Findings& out) {
  for (const GeneratorReport& load : look.generators) {
    if (!over(load.takes, load.gives)) continue;
    const auto& power = look.plan().power;
    const Inverter& first = power[load.inverters.front()];
    std::string fed;
    for (const std::size_t i : load.inverters) fed += (fed.empty() ? "" : ", ") + power[i].id.text;
    Finding f = found(rule);
    f.inverter = first.id;
    f.from = load.from;
    f.to = load.to;
    f.measured = amount(load.takes);
    f.limit = amount(load.gives);
    f.source = {.code = Source::Code::plan, .field = "power[].generator"};
    if (!first.generator->derate) {
      f.source.words = said("derate is not given: 0.8 of the rating, a choice of this project");
    }
    f.sentence = said(
        "the generator of {inverters}: {motors} motors at once take {measured}; it gives {limit}");
    f.facts = {{"inverters", fed}, {"motors", counted(load.motors)}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kGeneratorOver{
    {"generator-over", said("Generator overloaded"), Severity::mend, Cost::perhaps,
     "motors that slow down, and a dose that is lost with their speed",
     said("S = sqrt(3) U I of what runs at once against kva x derate; losses of the inverters and "
          "starting currents not counted"),
     "kva x derate of the generator; without derate 0.8 of it, a choice of this project",
     "plan, by a licensed electrician",
     said("Run fewer rows at once on it, or bring a larger generator; a licensed electrician "
          "decides")},
    look_generator_over};

}  // namespace rb
