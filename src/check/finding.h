// What the checker found: one value a finding, each tied to a place, a time, a limit and its
// source.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "pour/state.h"

namespace rb {

enum class Weight {
  stop,  ///< someone can be hurt or the work lost: stop and put right
  mend,  ///< put right now, or the face will show it
  note,  ///< worth knowing
};
const char* to_text(Weight weight);

struct Finding {
  std::string rule;  ///< the rule's id, "dose-low"
  Weight weight = Weight::note;
  std::optional<std::size_t> element, bay, row;  ///< indices into the plan
  std::optional<int> lift;
  std::optional<Side> side;
  std::optional<TicketId> ticket;  ///< the load it is about
  std::optional<InverterId> inverter;
  std::optional<Seconds> from, to;        ///< on the pour's clock
  std::optional<double> measured, limit;  ///< in `unit`, SI
  std::string unit;                       ///< "s", "kPa", "m/h", "1" (a share), ""
  std::string source;  ///< where the limit comes from: plan, standard, or common practice
  std::string advice;  ///< what to do, in plain words
  std::string says;    ///< one sentence with numbers and places, SI (screens word their own)
  std::optional<EventRef> ref;  ///< the event it is about
  bool operator==(const Finding&) const = default;
};

}  // namespace rb
