// What the record tells of inverters, cords and generators. Inside this room.
#pragma once

#include "record/model/daily_record.h"
#include "words/sentence.h"

namespace rb {

/// A line an inverter of the plan, run or not.
std::vector<PowerLine> power_lines(const PourState& state, const CheckReport& report,
                                   const Voice& voice);
/// In order of time.
std::vector<SettingLine> setting_lines(const PourState& state);

}  // namespace rb
