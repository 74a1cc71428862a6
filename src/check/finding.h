// What the checker found: one value a finding, each tied to a place, a time, a limit and its
// source. Data, no prose: say_finding.h makes the words, in the reader's language and units.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/measure.h"
#include "pour/log/state.h"
#include "words/sentence.h"

namespace rb {

enum class Severity {
  stop,  ///< someone can be hurt or the work lost: stop and put right
  mend,  ///< put right now, or the face will show it
  note,  ///< worth knowing
};
const char* to_text(Severity severity);

/// Where a limit comes from.
struct Source {
  enum class Code {
    rule,      ///< as the rule's card says
    plan,      ///< the plan gives it
    standard,  ///< the plan gives none: the program's own figure
    measured,  ///< readings on the concrete itself
  };
  Code code = Code::rule;
  const char* field = "";  ///< of the plan, "form_rating_kpa"
  const char* words = "";  ///< a clause or practice, in English; may hold names of `facts`
  Facts facts{};
  bool operator==(const Source& other) const;
};

struct Finding {
  std::string rule;  ///< the rule's id, "dose-low"
  Severity severity = Severity::note;
  std::optional<std::size_t> element, bay, row;  ///< indices into the plan
  std::optional<int> lift;
  std::optional<Side> side;
  std::optional<TicketId> ticket;  ///< the load it is about
  std::optional<InverterId> inverter;
  std::optional<Seconds> from, to;  ///< on the pour's clock
  std::optional<Amount> measured, limit;
  Source source;
  const char* advice = "";      ///< what to do, in English: the card's
  const char* sentence = "";    ///< in English, with the names of places, figures and `facts`
  Facts facts{};                ///< what the sentence tells besides place, measured and limit
  std::optional<EventRef> ref;  ///< the event it is about
  /// What it measured goes on growing by itself until somebody acts.
  bool growing = false;
  std::string group;  ///< id of its cause: findings with the same are one thing gone wrong
  bool operator==(const Finding& other) const;
};

}  // namespace rb
