// What the record tells of tops as they were read and of joints between lifts. Inside this room.
#pragma once

#include "record/model/daily_record.h"

namespace rb {

/// The lift begun last on an element by then; none: before the first.
std::optional<int> lift_at(const PourState& state, std::size_t element, Seconds at);
/// In order of time.
void put_tops(PourRecord& record, const PourState& state);
/// Joints that the next lift's concrete has come upon, from below, from the left.
void put_joints(PourRecord& record, const PourState& state);

}  // namespace rb
