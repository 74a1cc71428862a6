#include "screens/event_words.h"

#include <algorithm>
#include <array>

#include "screens/ready_view.h"

namespace rb::screens {

namespace {

class InWords {
 public:
  InWords(const Say& say, Naming naming) : say_(say), naming_(naming) {}

  std::string operator()(const event::PourOpen&) const { return say_(Word::ev_open); }
  std::string operator()(const event::Ready& e) const {
    return say_(e.ok ? Word::ev_ready : Word::ev_not_ready, ready_name(say_, e.item));
  }
  std::string operator()(const event::Hang& e) const { return row(Word::ev_hang, e.place); }
  std::string operator()(const event::TakeDown& e) const {
    return row(Word::ev_take_down, e.place);
  }
  std::string operator()(const event::LiftStart& e) const {
    return on(e.element, say_(Word::ev_lift_start, e.lift));
  }
  std::string operator()(const event::Top& e) const {
    return on(e.element, in_bay(say_(Word::ev_top, say_.height(e.height)), e.bay));
  }
  std::string operator()(const event::LiftEnd& e) const {
    return on(e.element, in_bay(say_(Word::ev_lift_end, e.lift, say_.height(e.height)), e.bay));
  }
  std::string operator()(const event::Run& e) const { return row(Word::ev_run, e.place); }
  std::string operator()(const event::Rest& e) const { return row(Word::ev_rest, e.place); }
  std::string operator()(const event::Insert& e) const {
    return on(e.element, in_bay(say_(Word::ev_insert, e.lift), e.bay));
  }
  std::string operator()(const event::Truck& e) const {
    return say_(Word::ev_truck, e.ticket.text);
  }
  std::string operator()(const event::Discharge& e) const {
    std::string text = say_(e.ended ? Word::ev_discharge : Word::ev_discharge_began, e.ticket.text);
    return e.element ? on(*e.element, std::move(text)) : text;
  }
  std::string operator()(const event::Test& e) const { return say_(Word::ev_test, e.ticket.text); }
  std::string operator()(const event::AirTemp& e) const {
    return say_(Word::ev_air, say_.temperature(e.temp));
  }
  std::string operator()(const event::Hold& e) const { return say_(Word::ev_hold, e.reason); }
  std::string operator()(const event::Resume&) const { return say_(Word::ev_resume); }
  std::string operator()(const event::Note& e) const { return say_(Word::ev_note, e.text); }
  std::string operator()(const event::Fix&) const { return say_(Word::ev_fix); }
  std::string operator()(const event::Strike&) const { return say_(Word::ev_strike); }
  std::string operator()(const event::PourClose&) const { return say_(Word::ev_close); }
  std::string operator()(const event::Sign& e) const { return say_(Word::ev_sign, e.role); }
  std::string operator()(const event::Strip& e) const {
    return say_(Word::ev_strip, e.element.text);
  }
  std::string operator()(const event::Blemish& e) const { return say_(Word::ev_blemish, e.kind); }
  std::string operator()(const event::Repair& e) const { return say_(Word::ev_repair, e.note); }
  std::string operator()(const event::Penetration& e) const {
    return say_(Word::ev_penetration, e.mix.text, say_.pressure(e.resistance));
  }

 private:
  [[nodiscard]] std::string row(Word id, const RowPlace& place) const {
    return on(place.element, say_(id, row_name(say_, place, naming_.two_sides)));
  }
  [[nodiscard]] std::string on(const ElementId& element, std::string text) const {
    return naming_.elements ? element.text + ": " + text : std::move(text);
  }
  [[nodiscard]] std::string in_bay(std::string text, std::optional<int> bay) const {
    return bay ? say_(Word::in_bay, text, *bay) : std::move(text);
  }
  const Say& say_;
  Naming naming_;
};

struct RuleWords {
  const char* rule;
  Word title, advice;
};

constexpr std::array kRules{
    RuleWords{"dose-low", Word::rule_dose_low, Word::do_dose_low},
    RuleWords{"dose-high", Word::rule_dose_high, Word::do_dose_high},
    RuleWords{"run-short", Word::rule_run_short, Word::do_run_short},
    RuleWords{"run-long", Word::rule_run_long, Word::do_run_long},
    RuleWords{"row-missed", Word::rule_row_missed, Word::do_row_missed},
    RuleWords{"row-empty", Word::rule_row_empty, Word::do_row_empty},
    RuleWords{"head-high", Word::rule_head_high, Word::do_head_high},
    RuleWords{"rise-fast", Word::rule_rise_fast, Word::do_rise_fast},
    RuleWords{"lift-deep", Word::rule_lift_deep, Word::do_lift_deep},
    RuleWords{"knit-late", Word::rule_knit_late, Word::do_knit_late},
    RuleWords{"top-fell", Word::rule_top_fell, Word::do_top_fell},
    RuleWords{"load-old", Word::rule_load_old, Word::do_load_old},
    RuleWords{"temp-out", Word::rule_temp_out, Word::do_temp_out},
    RuleWords{"volume-off", Word::rule_volume_off, Word::do_volume_off},
    RuleWords{"power-over", Word::rule_power_over, Word::do_power_over},
    RuleWords{"volts-low", Word::rule_volts_low, Word::do_volts_low},
    RuleWords{"speed-out", Word::rule_speed_out, Word::do_speed_out},
    RuleWords{"cable-open", Word::rule_cable_open, Word::do_cable_open},
    RuleWords{"row-far", Word::rule_row_far, Word::do_row_far},
    RuleWords{"insert-missing", Word::rule_insert_missing, Word::do_insert_missing},
    RuleWords{"insert-sparse", Word::rule_insert_sparse, Word::do_insert_sparse},
    RuleWords{"clock-step", Word::rule_clock_step, Word::do_clock_step},
    RuleWords{"run-unended", Word::rule_run_unended, Word::do_run_unended},
    RuleWords{"ready-open", Word::rule_ready_open, Word::do_ready_open},
    RuleWords{"unsigned", Word::rule_unsigned, Word::do_unsigned},
    RuleWords{"entered-before", Word::rule_entered_before, Word::do_entered_before},
    RuleWords{"kept-late", Word::rule_kept_late, Word::do_kept_late},
    RuleWords{"from-script", Word::rule_from_script, Word::do_from_script},
};

const RuleWords* words_of(const std::string& rule) {
  const auto found = std::find_if(kRules.begin(), kRules.end(),
                                  [&](const RuleWords& r) { return rule == r.rule; });
  return found == kRules.end() ? nullptr : &*found;
}

}  // namespace

std::string event_words(const Say& say, const Happening& what, Naming naming) {
  return std::visit(InWords{say, naming}, what);
}

std::string row_name(const Say& say, const RowPlace& place, bool two_sides) {
  if (!two_sides) return place.row.text;
  return place.row.text + " " +
         say(place.side == Side::near_side ? Word::near_side : Word::far_side);
}

std::string rule_title(const Say& say, const std::string& rule) {
  const RuleWords* words = words_of(rule);
  return words == nullptr ? rule : say(words->title);
}

std::string rule_advice(const Say& say, const Finding& finding) {
  const RuleWords* words = words_of(finding.rule);
  return words == nullptr ? finding.advice : say(words->advice);
}

std::string finding_place(const Say& say, const Plan& plan, const Finding& finding) {
  std::string place;
  const auto add = [&](const std::string& part) {
    if (!place.empty()) place += ", ";
    place += part;
  };
  const Element* element = nullptr;
  if (finding.element && *finding.element < plan.elements.size()) {
    element = &plan.elements[*finding.element];
    if (plan.elements.size() > 1) add(element->id.text);
  }
  if (finding.lift) add(say(Word::place_lift, *finding.lift));
  if (finding.bay) add(say(Word::place_bay, *finding.bay + 1));
  if (finding.row && element != nullptr && *finding.row < element->rows.size()) {
    const Row& row = element->rows[*finding.row];
    const bool two = element->has_rows(Side::near_side) && element->has_rows(Side::far_side);
    add(say(Word::place_row, row_name(say, {element->id, row.side, row.id}, two)));
  }
  if (finding.inverter) add(say(Word::place_inverter, finding.inverter->text));
  if (finding.ticket) add(say(Word::place_ticket, finding.ticket->text));
  return place;
}

std::string finding_figures(const Say& say, const Finding& finding) {
  if (!finding.measured) return {};
  std::string measured = say.figure(*finding.measured, finding.unit);
  if (!finding.limit) return measured;
  return say(Word::finding_limit, measured, say.figure(*finding.limit, finding.unit));
}

}  // namespace rb::screens
