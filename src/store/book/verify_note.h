// How what ails a book is noted while it is looked through: the first event it is about, and no
// more faults than anybody reads. Inside this room.
#pragma once

#include <string>
#include <utility>

#include "store/book/verify.h"

namespace rb::store {

inline constexpr std::size_t kMostFaults = 50;

inline void note(VerifyReport& report, std::string fault) {
  if (report.faults.size() < kMostFaults) report.faults.push_back(std::move(fault));
}

inline void note(VerifyReport& report, const EventId& event, std::string fault) {
  if (!report.first_bad) report.first_bad = event;
  note(report, std::move(fault));
}

}  // namespace rb::store
