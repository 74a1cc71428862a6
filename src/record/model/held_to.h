// The limits the checker held a pour to, each with where it comes from. Inside this room.
#pragma once

#include <vector>

#include "pour/plan/plan.h"
#include "record/model/daily_record.h"
#include "words/sentence.h"

namespace rb {

std::vector<LimitLine> held_to(const Plan& plan, const Voice& voice);

}  // namespace rb
