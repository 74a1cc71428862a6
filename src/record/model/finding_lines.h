// The findings of a pour as lines of the record, with what became of each. Inside this room.
#pragma once

#include "record/model/daily_record.h"
#include "record/model/names.h"
#include "words/sentence.h"

namespace rb {

/// Findings cause by cause, each with what was said of its cause; what was not judged; how many
/// causes are open, accepted and sent back.
void put_findings(PourRecord& record, const PourState& state, const CheckReport& report,
                  const Voice& voice);

}  // namespace rb
