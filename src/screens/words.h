// Every word the screens write, by id. One table a language (words_en.cpp, words_es.cpp); a word
// missing from a table, or out of place in it, fails the build. `{}` stands for what is filled in.
#pragma once

#include <fmt/format.h>

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

namespace rb::screens {

enum class Language { english, spanish };

enum class Word {
  // everywhere
  product,
  back,
  cancel,
  keep,
  close,
  earlier,
  later,
  page_of,
  kept,
  kept_at,
  // pours
  pours,
  pours_none,
  pours_none_do,
  pour_open,
  pour_placing,
  pour_closed,
  pour_from,
  // pour: lift
  start_lift,
  end_lift,
  top_reading,
  lift_placing,
  lift_placed,
  lift_first,
  lifts_all_placed,
  top_now,
  top_between,
  planned_to,
  rise_of,
  rise_limit_none,
  rise_unknown,
  rise_over,
  about,
  // pour: rows
  run,
  rest,
  running,
  near_side,
  far_side,
  seconds_more,
  enough,
  seconds_over,
  ran,
  not_run_yet,
  head_of,
  head_only,
  caution_head,
  caution_no_concrete,
  caution_not_hung,
  caution_cables,
  for_this_lift,
  rows_none,
  row_title,
  row_at,
  row_reach,
  row_motors,
  row_hung_cables,
  row_hung_open,
  row_not_hung,
  hang_cables_fixed,
  hang_cables_open,
  take_down,
  take_down_running,
  run_anyway_title,
  run_anyway_text,
  run_anyway,
  do_not_run,
  // pour: actions
  hold,
  resume,
  note,
  more,
  on_hold_since,
  hold_title,
  hold_pump,
  hold_trucks,
  hold_rain,
  hold_form,
  hold_vibrator,
  hold_other,
  note_title,
  note_typed,
  note_leak,
  note_form_moved,
  note_motor_loose,
  note_mix_dry,
  note_mix_wet,
  note_visit,
  space_key,
  // pour: last taps
  last_taps,
  last_taps_none,
  last_taps_all,
  take_back,
  taken_back_why,
  tap_to_correct,
  struck,
  corrected,
  entered_late,
  counts_not,
  // attention and findings
  all_quiet,
  needs_hand,
  findings,
  findings_none,
  findings_counts,
  finding_limit,
  finding_source,
  what_to_do,
  weight_stop,
  weight_mend,
  weight_note,
  place_lift,
  place_bay,
  place_row,
  advice_defer,
  // number pad
  pad_top_title,
  pad_end_title,
  pad_all_bays,
  pad_bay,
  pad_too_high,
  pad_lower,
  pad_empty,
  pad_guess,
  // correcting
  correct_title,
  correct_reads,
  correct_time,
  correct_height,
  correct_row,
  correct_strike,
  correct_to,
  correct_why,
  earlier_minute,
  earlier_ten,
  later_ten,
  later_minute,
  why_mistake,
  why_wrong_row,
  why_wrong_height,
  why_wrong_time,
  why_told_later,
  why_typed,
  next_step,
  // events in words
  ev_open,
  ev_ready,
  ev_hang,
  ev_take_down,
  ev_lift_start,
  ev_top,
  ev_lift_end,
  ev_run,
  ev_rest,
  ev_insert,
  ev_truck,
  ev_discharge,
  ev_test,
  ev_air,
  ev_hold,
  ev_resume,
  ev_note,
  ev_fix,
  ev_strike,
  ev_close,
  ev_sign,
  ev_strip,
  ev_blemish,
  ev_repair,
  in_bay,
  // more
  more_title,
  settings,
  close_pour,
  close_pour_ask,
  close_pour_rows,
  pour_is_closed,
  all_pours,
  choose_element,
  // settings
  set_theme,
  set_sun,
  set_night,
  set_language,
  set_units,
  units_plan,
  units_si,
  units_us,
  set_diagonal,
  diagonal_check,
  hand,
  hand_right,
  hand_left,
  quit,
  quit_ask,
  // trouble
  trouble,
  trouble_repeats,
  not_kept,
  // rules, by their ids; a title and what to do
  rule_dose_low,
  rule_dose_high,
  rule_run_short,
  rule_run_long,
  rule_row_missed,
  rule_row_empty,
  rule_head_high,
  rule_rise_fast,
  rule_lift_deep,
  rule_knit_late,
  rule_top_fell,
  rule_load_old,
  rule_temp_out,
  rule_volume_off,
  rule_power_over,
  rule_volts_low,
  rule_speed_out,
  rule_cable_open,
  rule_row_far,
  rule_insert_missing,
  rule_insert_sparse,
  rule_clock_step,
  rule_run_unended,
  rule_ready_open,
  rule_unsigned,
  do_dose_low,
  do_dose_high,
  do_run_short,
  do_run_long,
  do_row_missed,
  do_row_empty,
  do_head_high,
  do_rise_fast,
  do_lift_deep,
  do_knit_late,
  do_top_fell,
  do_load_old,
  do_temp_out,
  do_volume_off,
  do_power_over,
  do_volts_low,
  do_speed_out,
  do_cable_open,
  do_row_far,
  do_insert_missing,
  do_insert_sparse,
  do_clock_step,
  do_run_unended,
  do_ready_open,
  do_unsigned,
  count_
};
inline constexpr std::size_t kWords = static_cast<std::size_t>(Word::count_);

struct WordEntry {
  Word word;
  const char* text;
};
using WordTable = std::array<WordEntry, kWords>;

/// Every word is there, in order, and none is empty: asked by static_assert beside each table.
constexpr bool complete(const WordTable& table) {
  for (std::size_t i = 0; i < kWords; ++i) {
    if (table[i].word != static_cast<Word>(i)) return false;
    if (table[i].text == nullptr || table[i].text[0] == '\0') return false;
  }
  return true;
}

const WordTable& table_of(Language language);
const char* word(Language language, Word id);

/// A word with its gaps filled.
template <class... Args>
std::string filled(Language language, Word id, Args&&... args) {
  return fmt::format(fmt::runtime(word(language, id)), std::forward<Args>(args)...);
}

}  // namespace rb::screens
