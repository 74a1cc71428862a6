// What the record tells of those who signed and of the plan amended under way. Inside this room.
#pragma once

#include "check/review.h"
#include "record/model/daily_record.h"
#include "record/model/names.h"

namespace rb {

/// Every role gets a line; one that has not signed gets an empty one to sign by hand.
void put_signatures(PourRecord& record, const PourState& state, const Names& names);
void put_amendments(PourRecord& record, const PourState& state, const Names& names);
/// What stands of each finding, and who said so.
void put_review(PourRecord& record, const PourState& state, const CheckReport& report,
                const Names& names);

}  // namespace rb
