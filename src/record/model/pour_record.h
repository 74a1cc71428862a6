// One pour of the daily record.
#pragma once

#include "record/model/daily_record.h"

namespace rb {

/// `voice`: whose words and units its sentences are in.
PourRecord make_pour_record(const RecordInput& input, const Voice& voice);

}  // namespace rb
