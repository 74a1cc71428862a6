// What the record tells of an element after its last lift: curing, temperatures, maturity, leave to
// strip, specimens. Inside this room.
#pragma once

#include "record/model/daily_record.h"

namespace rb {

void put_after_pour(PourRecord& record, const PourState& state);

}  // namespace rb
