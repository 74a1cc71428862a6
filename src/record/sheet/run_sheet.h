// A planned pour as a sheet of paper that is taped to the form: what it says, in one language and
// one system of units, before it is drawn.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "pour/planner/run_steps.h"
#include "words/sentence.h"

namespace rb {

struct RunSheetManner {
  Voice voice;  ///< not plain; its clock is not asked
  /// When the first lift begins, from midnight; none: hours and minutes are told from it.
  std::optional<std::chrono::minutes> start;
};

/// A line of the sheet, with room for the true time and initials.
struct SheetLine {
  RunStepKind kind = RunStepKind::lift;
  std::string clock, says;
  bool hold = false;  ///< nothing goes on before it is done
};

/// Cells as they are told; the first line is the headings.
struct SheetTable {
  std::vector<std::string> headings;
  std::vector<std::vector<std::string>> rows;
};

struct RunSheet {
  std::string title, about;  ///< "Run sheet: wall W1", site and pour
  std::vector<std::pair<std::string, std::string>> facts;
  SheetTable rows, feed, loads;
  std::vector<std::string> before;  ///< hold points before the first lift
  std::vector<SheetLine> lines;
  std::vector<std::string> guesses, cautions;
  /// Words of the form itself.
  std::string rows_title, feed_title, loads_title, before_title, lines_title, guesses_title,
      cautions_title, true_time, initials, time, step, page_of, foot;
};

/// "05:30", from midnight; none: no time of day.
std::optional<std::chrono::minutes> read_day_time(const std::string& text);

RunSheet run_sheet(const PlannedPour& planned, const PlanWish& wish, const RunSheetManner& manner);

}  // namespace rb
