// The record as tables: one description of every column, used by all writers.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "base/measure.h"
#include "base/moment.h"
#include "record/model/daily_record.h"

namespace rb {

/// Where a column is wanted: everywhere, or only on paper (words) or in data (raw lines, SI).
enum class On { both, paper, data };

struct Column {
  std::string key;      ///< "rise_mean"; the writers add the unit
  std::string heading;  ///< "Mean rise": English, and the key in the catalogues
  Measure measure = Measure::text;
  On on = On::both;
  bool word = false;  ///< its texts are words of ours, told in the reader's language (shown.h)
};

/// Nothing, text, yes or no, a number in the measure's SI unit, or a moment.
using Cell = std::variant<std::monostate, std::string, bool, double, Moment>;

struct Table {
  std::string key;    ///< "lifts"
  std::string title;  ///< "Lifts": English, and the key in the catalogues
  std::vector<Column> columns;
  std::vector<std::vector<Cell>> rows;  ///< each as long as `columns`
};

/// The tables of one pour, in the order they are printed; empty ones too.
std::vector<Table> tables_of(const PourRecord& pour, Units units);

/// The pours of the day, a line each: what the record's first page shows.
Table day_table(const DailyRecord& record);

/// What stands in the place of a pour that cannot be shown: its damaged events.
Table table_of(const PourWithoutPlan& pour, const Language& language);

/// The same tables over all pours, the pour's id in a first column; before them the day's and one
/// of the pours, and last, from the second edition on, which edition it is and which was before.
std::vector<Table> tables_of(const DailyRecord& record);

/// "rise_mean_mh".
std::string key_with_unit(const Column& column);

}  // namespace rb
