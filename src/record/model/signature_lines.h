// What the record tells of those who signed and of the plan amended under way. Inside this room.
#pragma once

#include "record/model/daily_record.h"
#include "record/model/names.h"
#include "words/sentence.h"

namespace rb {

/// Every role gets a line; one that has not signed gets an empty one to sign by hand.
void put_signatures(PourRecord& record, const PourState& state, const Names& names,
                    const Voice& voice);
void put_amendments(PourRecord& record, const PourState& state, const Names& names,
                    const Voice& voice);

}  // namespace rb
