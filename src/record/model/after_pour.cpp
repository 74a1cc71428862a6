#include "record/model/after_pour.h"

#include "pour/outlook/hardening.h"
#include "record/model/names.h"

namespace rb {

namespace {

void put_specimens(PourRecord& record, const PourState& state, const Names& names) {
  for (const TestState& test : state.tests) {
    for (const SpecimenId& specimen : test.what.specimens) {
      SpecimenLine line{
          test.what.ticket.text, specimen.text, names.moment(test.at), {}, {}, {}, {}};
      bool broken = false;
      for (const SpecimenState& result : state.specimens) {
        if (result.what.specimen != specimen) continue;
        line.broken = names.moment(result.at);
        line.age = seconds(result.what.age_days * 86400);
        line.strength = result.what.strength;
        line.by = names.by(result.ref);
        record.specimens.push_back(line);
        broken = true;
      }
      if (!broken) record.specimens.push_back(std::move(line));
    }
  }
}

}  // namespace

void put_after_pour(PourRecord& record, const PourState& state) {
  const Names names{state};
  for (const CureState& cure : state.cures) {
    record.cures.push_back({names.element(cure.element), names.moment(cure.from),
                            names.moment(cure.to), cure.how, names.by(cure.ref)});
  }
  for (const ConcreteTempState& temp : state.concrete_temps) {
    record.concrete_temps.push_back({names.moment(temp.at), names.element(temp.element),
                                     temp.what.z, temp.what.x, temp.what.temp, names.by(temp.ref)});
  }
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    for (const MaturityAt& place : maturity(state, e, state.last)) {
      record.maturities.push_back({names.element(e), place.z, place.x,
                                   static_cast<int>(place.readings), names.moment(place.from),
                                   names.moment(place.to), place.equivalent_age,
                                   trade::in_degree_hours(place.nurse_saul), place.strength});
    }
  }
  for (const PermitState& permit : state.permits) {
    record.permits.push_back({names.moment(permit.at), names.element(permit.element),
                              permit.what.side ? to_text(*permit.what.side) : "both",
                              permit.what.why, names.by(permit.ref)});
  }
  put_specimens(record, state, names);
}

}  // namespace rb
