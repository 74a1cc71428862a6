// The record's words and figures as its reader sees them: the one place where a value becomes text,
// for paper, page and workbook and for the texts that JSON carries beside its values.
#pragma once

#include <string>

#include "record/model/table.h"
#include "words/sentence.h"

namespace rb {

class Shown {
 public:
  explicit Shown(const DailyRecord& record);

  /// Words of ours in the reader's language; what is none of them as it stands.
  [[nodiscard]] std::string told(const std::string& english) const;
  [[nodiscard]] std::string told(Said english) const;
  [[nodiscard]] std::string say(Said sentence, Facts facts = {}) const;

  [[nodiscard]] std::string title(const Table& table) const;
  /// "Mean rise (m/h)"
  [[nodiscard]] std::string heading(const Column& column) const;
  /// A cell without its unit, which stands in the heading. Empty: nothing is known.
  [[nodiscard]] std::string text(const Cell& cell, const Column& column) const;
  /// A figure with its unit.
  [[nodiscard]] std::string figure(const Amount& amount) const;
  /// The clock on the record's day; a moment of another day has its date before it.
  [[nodiscard]] std::string when(Moment moment) const;

  [[nodiscard]] std::string long_day() const;  ///< "Monday 2 March 2026"
  [[nodiscard]] std::string record_title() const;
  /// What of a pour belongs to the days before and after, in sentences.
  [[nodiscard]] std::vector<std::string> other_days(const PourRecord& pour) const;
  /// "Dose on W1, near side"
  [[nodiscard]] std::string map_title(const DoseMap& map) const;
  /// "local, UTC-05:00", and what the clocks did where they were changed on that day.
  [[nodiscard]] std::string clock_words() const;
  /// "Edition 2. The one before it: FILE, SHA-256 ..."; empty for a first edition.
  [[nodiscard]] std::string edition() const;

  [[nodiscard]] const Voice& voice() const { return voice_; }
  [[nodiscard]] Units units() const { return voice_.units; }

 private:
  const DailyRecord& record_;
  Voice voice_;
};

/// How the record's reader reads: language, units, clock.
Voice voice_of(const DailyRecord& record);

}  // namespace rb
