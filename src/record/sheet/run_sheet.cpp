#include "record/sheet/run_sheet.h"

#include <fmt/format.h>

#include <cmath>

#include "pour/planner/planned_vibrators.h"
#include "record/model/clean_text.h"
#include "record/sheet/sheet_words.h"
#include "trade/motors/power.h"

namespace rb {

namespace {

class Telling : SheetWords {
 public:
  Telling(const PlannedPour& planned, const PlanWish& wish, const RunSheetManner& manner)
      : SheetWords(planned, manner), wish_(wish) {}

  RunSheet told() {
    const Said title = element().kind == ElementKind::column ? said("Run sheet: column {element}")
                       : of_deck()                           ? said("Run sheet: deck {element}")
                                                             : said("Run sheet: wall {element}");
    sheet_.title = say({title, {{"element", clean_text(element().id.text)}}});
    const Plan& plan = planned().plan;
    sheet_.about = clean_text(plan.site);
    if (!plan.name.empty())
      sheet_.about += (sheet_.about.empty() ? "" : " · ") + clean_text(plan.name);
    form_words();
    facts();
    if (!of_deck()) rows();
    feed();
    loads();
    before();
    lines();
    guesses();
    cautions();
    return std::move(sheet_);
  }

 private:
  void form_words() {
    sheet_.rows_title = say(said("Rows, from the top"));
    sheet_.feed_title = say(said("Feed and cords"));
    sheet_.loads_title = say(said("Trucks"));
    sheet_.before_title =
        say(of_deck() ? said("Before the first layer") : said("Before the first lift"));
    sheet_.lines_title = say(said("Step by step"));
    sheet_.guesses_title = say(said("What this plan guessed"));
    sheet_.cautions_title = say(said("Cautions"));
    sheet_.true_time = say(said("true time"));
    sheet_.initials = say(said("initials"));
    sheet_.time = say(said("time"));
    sheet_.step = say(said("step"));
    sheet_.page_of = told_as(said("page {} of {}"));
    sheet_.foot = say(said("Risebook run sheet. A plan that advises; nothing on it was seen."));
  }

  void fact(Said name, std::string value) {
    sheet_.facts.emplace_back(say(name), std::move(value));
  }

  void facts() {
    const PlannedPour& p = planned();
    std::string size = fmt::format("{} × {} × {}", length(element().length),
                                   length(element().height), length(element().thickness));
    if (element().thickness_top) size += fmt::format(" – {}", length(*element().thickness_top));
    fact(said("Size"), size);
    fact(said("Concrete"),
         say({said("{volume} at {temp}"),
              {{"volume", amount(p.concrete)}, {"temp", amount(wish_.concrete)}}}));
    fact(said("Trucks"), truck_fact());
    if (of_deck()) return deck_facts();
    fact(said("Rise"), rise_fact());
    fact(said("Form and ties"), form_fact());
    fact(said("Motors"),
         say({said("{all} at {speed}: {row} a row, {apart} apart, the first {edge} from the left"),
              {{"all", counted(p.motors)},
               {"speed", amount(wish_.motor.top_speed)},
               {"row", counted(p.motors_a_row)},
               {"apart", length(p.spacing)},
               {"edge", length(p.spacing / 2.0)}}}));
    fact(said("Crew at the motors"), crew_fact());
    if (p.insert_too) fact(said("Internal vibrators"), insert_fact());
    if (p.lifts.size() > 1) {
      fact(said("Joints"),
           say({said("the oldest is {age} old when it is knitted; it sets after {sets}"),
                {{"age", amount(p.joint_age, Measure::any_span), Rounding::up},
                 {"sets", amount(p.sets, Measure::any_span), Rounding::down}}}));
    }
    fact(said("From first lift to last rest"), span(p.duration));
  }

  void deck_facts() {
    const PlannedPour& p = planned();
    fact(said("Placing"),
         say({said("{rate}, bay by bay: no faster than it is inserted"),
              {{"rate", Amount{Measure::placing, trade::in_cubic_metres_per_hour(p.placing)},
                Rounding::down}}}));
    fact(said("Internal vibrators"), insert_fact());
    if (!element().beams.empty()) {
      Length deepest;
      for (const Beam& beam : element().beams) deepest = std::max(deepest, beam.depth);
      fact(said("Beams under it"),
           say({said("{beams}, to {deep} below the deck: fill and insert them first, bay by bay"),
                {{"beams", counted(element().beams.size())}, {"deep", length(deepest)}}}));
    }
    fact(said("Joints"),
         say({said("the oldest is {age} old when it is worked; it sets after {sets}"),
              {{"age", amount(p.joint_age, Measure::any_span), Rounding::up},
               {"sets", amount(p.sets, Measure::any_span), Rounding::down}}}));
    fact(said("From first concrete to last insertion"), span(p.duration));
  }

  [[nodiscard]] std::string truck_fact() const {
    const PlannedPour& p = planned();
    if (p.loads.size() == 1) {
      return say({said("one of {load}, all of it"), {{"load", amount(p.load)}}});
    }
    return say({said("{trucks}, at most {load}, the last {last}; {rate} an hour"),
                {{"trucks", counted(p.trucks)},
                 {"load", amount(p.load)},
                 {"last", amount(p.loads.back().volume)},
                 {"rate", Amount{Measure::factor, p.trucks_an_hour}}}});
  }

  [[nodiscard]] std::string rise_fact() const {
    const PlannedPour& p = planned();
    const auto limit = most_rise(wish_);
    const Saying rise =
        limit ? Saying{said("{rise}, never over {limit}"),
                       {{"rise", amount(p.rise)}, {"limit", amount(*limit), Rounding::down}}}
              : Saying{said("{rise}; the form bears the full liquid head"),
                       {{"rise", amount(p.rise)}}};
    return say(rise);
  }

  [[nodiscard]] std::string form_fact() const {
    const PlannedPour& p = planned();
    Pressure head;
    for (const LiftStep& lift : p.lifts) head = std::max(head, lift.head);
    return say(
        {said("bear {rating} at the most; {pressure} at this rise, {head} under a running row"),
         {{"rating", amount(wish_.form_rating), Rounding::down},
          {"pressure", amount(p.pressure), Rounding::up},
          {"head", amount(head), Rounding::up}}});
  }

  [[nodiscard]] std::string crew_fact() const {
    const PlannedPour& p = planned();
    const Fact hands{"hands", count(wish_.crew)};
    if (p.waits <= Seconds{}) return say({said("{hands} hands: no wait"), {hands}});
    const Fact waits{"waits", amount(p.waits, Measure::any_span), Rounding::up};
    if (p.hands_no_wait) {
      return say({said("{hands} hands wait {waits} in all; {more} hands: no wait"),
                  {hands, waits, {"more", count(*p.hands_no_wait)}}});
    }
    if (p.motors_no_wait) {
      return say({said("{hands} hands wait {waits} in all; only {more} motors need no wait"),
                  {hands, waits, {"more", counted(*p.motors_no_wait)}}});
    }
    return say({said("{hands} hands wait {waits} in all"), {hands, waits}});
  }

  [[nodiscard]] std::string insert_fact() const {
    int heads = 0;
    for (const LiftStep& lift : planned().lifts) {
      int now = 0;
      for (const InsertStep& insert : lift.inserts) {
        now = of_deck() ? insert.heads : now + insert.heads;  // the same go from bay to bay
      }
      heads = std::max(heads, now);
    }
    const auto& group = planned_vibrators();
    return say({said("{heads} at once, heads of {least} to {most}"),
                {{"heads", count(heads)},
                 {"least", Amount{Measure::small_length, in_metres(group.head.least)}},
                 {"most", Amount{Measure::small_length, in_metres(group.head.most)}}}});
  }

  void rows() {
    sheet_.rows.headings = {say(said("row")), say(said("height")), say(said("motors")),
                            say(said("for lifts")), say(said("greatest head"))};
    for (std::size_t r = element().rows.size(); r-- > 0;) {
      const Row& row = element().rows[r];
      Pressure head;
      for (const LiftStep& lift : planned().lifts) {
        if (std::find(lift.rows.begin(), lift.rows.end(), r) == lift.rows.end()) continue;
        head = std::max(head, head_on(r, lift, wish_));
      }
      sheet_.rows.rows.push_back({row_name(r), length(row.z), motors(r),
                                  fmt::format("{}", fmt::join(row.serves, ", ")),
                                  amount_in(amount(head), Rounding::up)});
    }
  }

  void feed() {
    const Plan& plan = planned().plan;
    if (plan.power.empty()) return;
    sheet_.feed.headings = {say(said("inverter")), say(said("motors")), say(said("all running")),
                            say(said("it gives")), say(said("cord of a motor"))};
    for (const Inverter& inverter : plan.power) {
      const Current drawn = wish_.motor.amps * static_cast<double>(inverter.motors.size());
      std::string cord = "–";
      if (inverter.cable) {
        cord = fmt::format("{}, {}",
                           amount_in({Measure::wire_section,
                                      trade::in_square_millimetres(inverter.cable->section)}),
                           length(inverter.cable->length));
      }
      sheet_.feed.rows.push_back({inverter.id.text, motors_of(inverter.motors),
                                  amount_in(amount(drawn), Rounding::up),
                                  amount_in(amount(inverter.max_amps), Rounding::down), cord});
    }
    const Current row = wish_.motor.amps * static_cast<double>(planned().motors_a_row);
    const double kva = trade::in_kilovoltamperes(trade::apparent_power(wish_.volts, row));
    fact(said("Feed"),
         say({said("{volts}; a running row takes {amps}, {kva} kVA, before what inverters lose"),
              {{"volts", amount(wish_.volts)},
               {"amps", amount(row), Rounding::up},
               {"kva", Amount{Measure::factor, std::ceil(kva * 10) / 10}}}}));
  }

  void loads() {
    sheet_.loads.headings = {say(said("no.")),      say(said("load")), say(said("at the form")),
                             say(said("empty by")), sheet_.true_time,  say(said("ticket"))};
    for (std::size_t i = 0; i < planned().loads.size(); ++i) {
      const PlannedLoad& load = planned().loads[i];
      sheet_.loads.rows.push_back({std::to_string(i + 1), amount_in(amount(load.volume)),
                                   clock(load.begins), clock(load.ends), "", ""});
    }
  }

  void before() {
    if (of_deck()) return before_deck();
    for (const Said hold :
         {said("Form, ties and bracing walked down; the form designer has agreed to vibrators on "
               "it"),
          said("Power and cords looked at by a licensed electrician; every motor turns"),
          said("Every motor on its bracket and its own safety cable"),
          said("Internal vibrators, a spare motor and a spare inverter at hand and tried"),
          said("The plant knows loads and times; who calls the next truck is named")}) {
      sheet_.before.push_back(say(hold));
    }
  }

  void before_deck() {
    for (const Said hold :
         {said("Falsework, form and bracing walked down; the falsework designer has agreed to the "
               "order of bays"),
          said("Power and cords looked at by a licensed electrician; every vibrator runs"),
          said("A spare vibrator for every three, and a spare feed, at hand and tried"),
          said("Air temperature, humidity and wind measured; what keeps the surface from drying is "
               "at hand"),
          said("The plant knows loads and times; who calls the next truck is named")}) {
      sheet_.before.push_back(say(hold));
    }
  }

  void lines() {
    for (const RunStep& step : run_steps(planned())) {
      const SheetStep told = tell_step(step, wish_);
      sheet_.lines.push_back({step.kind, clock(step.at), told.says, told.hold});
    }
  }

  void guesses() {
    const PlannedPour& p = planned();
    if (!p.forced.empty()) {
      sheet_.guesses.push_back(
          say({said("The first guesses gave no plan: {why}"), {{"why", Clause{p.forced}}}}));
    }
    for (const GuessTold& guess : p.guesses) {
      sheet_.guesses.push_back(say(
          guess.changed ? Saying{said("Changed: {what}"), {{"what", Clause{guess.words}}}}
                        : Saying{said("{what}: give your own"), {{"what", Clause{guess.words}}}}));
    }
  }

  void cautions() {
    if (of_deck()) return deck_cautions();
    for (const Said caution :
         {said("Form pressure: while a row runs, reckon with the full liquid head down to where it "
               "presses. The form designer's rating and drawings govern. Keep people clear of the "
               "form while concrete rises."),
          said("Electricity: low voltage at the motor does not make the inverter's supply side "
               "harmless. A licensed electrician decides on the feed, under the local code."),
          said("Overhead motors: each hangs by its bracket and a separate safety cable. Nobody "
               "stands below while motors are hung, moved or taken down."),
          said("This sheet advises. It replaces neither local codes, nor the form designer, nor "
               "licensed practice. If a hold is not met, stop.")}) {
      sheet_.cautions.push_back(say(caution));
    }
  }

  void deck_cautions() {
    for (const Said caution :
         {said("Falsework: heap no concrete, and place in the order of bays. The falsework "
               "designer's drawings govern. Nobody is under the deck while concrete is placed."),
          said("Electricity: low voltage at a vibrator does not make its supply side harmless. A "
               "licensed electrician decides on the feed, under the local code."),
          said("This sheet advises. It replaces neither local codes, nor the form designer, nor "
               "licensed practice. If a hold is not met, stop.")}) {
      sheet_.cautions.push_back(say(caution));
    }
  }

  const PlanWish& wish_;
  RunSheet sheet_;
};

}  // namespace

std::optional<std::chrono::minutes> read_day_time(const std::string& text) {
  const auto digit = [&](std::size_t i) { return text[i] >= '0' && text[i] <= '9'; };
  if (text.size() != 5 || text[2] != ':' || !digit(0) || !digit(1) || !digit(3) || !digit(4)) {
    return std::nullopt;
  }
  const int hours = (text[0] - '0') * 10 + text[1] - '0';
  const int minutes = (text[3] - '0') * 10 + text[4] - '0';
  if (hours > 23 || minutes > 59) return std::nullopt;
  return std::chrono::minutes{hours * 60 + minutes};
}

RunSheet run_sheet(const PlannedPour& planned, const PlanWish& wish, const RunSheetManner& manner) {
  return Telling{planned, wish, manner}.told();
}

}  // namespace rb
