// The photos of a pour, those of a blemish together. Inside this room.
#pragma once

#include "record/model/daily_record.h"
#include "record/model/names.h"

namespace rb {

/// After the record's blemishes were put.
void put_photos(PourRecord& record, const PourState& state, const Names& names,
                const PhotoSource& source);

}  // namespace rb
