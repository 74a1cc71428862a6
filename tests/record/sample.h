// An invented pour with everything a record can show, folded from script lines. The checker's
// report is made up here: what the checker finds is tested elsewhere.
#pragma once

#include "record/model/daily_record.h"

namespace rb::test {

struct Sample {
  PourState state;
  CheckReport report;
  std::vector<SideDose> dose;
  PhotoSource photos{};
  [[nodiscard]] RecordInput input() const { return {state, report, dose, {}, false, photos}; }
};

inline constexpr std::chrono::minutes kOffset{-300};
inline const BookFacts kBook{
    "TABLET-07", "9f2c41d07be5a8136402cc7e11d3f0a95b6e8840f17a2d3c4e5f60718293a4b5", 187};

/// `more_runs` extra runs of row R4, ten seconds each; `note` one more note.
Sample sample_pour(const char* units = "si", int more_runs = 0, const std::string& note = {});

/// The same with photos: of its blemish one that is whole (a PNG), one missing, one altered; of the
/// repair one that cannot be drawn; of the element one that is whole.
Sample photographed_pour(const char* units = "si");

/// The record of that pour's day, 2 March 2026 five hours behind UTC.
DailyRecord sample_record(const char* units = "si", int more_runs = 0,
                          const std::string& note = {});

}  // namespace rb::test
