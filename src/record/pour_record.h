// One pour of the daily record.
#pragma once

#include "record/daily_record.h"

namespace rb {

PourRecord make_pour_record(const RecordInput& input);

}  // namespace rb
