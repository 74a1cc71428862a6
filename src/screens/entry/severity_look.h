// How a severity is told: in a word, a sign and a colour.
#pragma once

#include "check/finding.h"
#include "screens/glass/widgets.h"
#include "screens/words/words.h"

namespace rb::screens {

struct SeverityLook {
  Look look;
  Symbol symbol;
  Word word;
};

inline SeverityLook look_of(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return {Look::stop, Symbol::stop_sign, Word::severity_stop};
    case Severity::mend:
      return {Look::mend, Symbol::mend_sign, Word::severity_mend};
    case Severity::note:
      break;
  }
  return {Look::off, Symbol::note_sign, Word::severity_note};
}

}  // namespace rb::screens
