#include "cli/plan_text.h"

#include <fmt/format.h>

#include <cmath>

#include <nlohmann/json.hpp>

#include "cli/say_both.h"
#include "pour/log/event_json.h"
#include "pour/outlook/form.h"
#include "pour/plan/plan_json.h"

namespace rb {

namespace {

const Element& element_of(const PlannedPour& planned) {
  return planned.plan.elements.front();
}

std::string row_text(const PlannedPour& planned, std::size_t row) {
  const Element& element = element_of(planned);
  const Row& r = element.rows[row];
  const bool two = element.has_rows(Side::far_side);
  return two ? fmt::format("{} {}", r.id.text, to_text(r.side)) : r.id.text;
}

std::string motors_text(const PlannedPour& planned, std::size_t row) {
  const auto& motors = element_of(planned).rows[row].motors;
  if (motors.size() == 1) return motors.front().id.text;
  return fmt::format("{} to {}", motors.front().id.text, motors.back().id.text);
}

std::string move_text(const PlannedPour& planned, const MotorsMove& move) {
  const std::string where =
      move.from ? fmt::format("{} -> {}", row_text(planned, *move.from), row_text(planned, move.to))
                : "hang " + row_text(planned, move.to);
  return fmt::format("{} ({}, {}, cables on)", where, motors_text(planned, move.to),
                     span_text(move.takes));
}

std::string clock_from_start(Seconds at) {
  const auto minutes = std::lround(at.count() / 60);
  return fmt::format("{}:{:02}", minutes / 60, minutes % 60);
}

template <class Items, class Word>
std::string listed(const Items& items, Word word) {
  std::string text;
  for (const auto& item : items) text += (text.empty() ? "" : ", ") + word(item);
  return text;
}

// "1 motor", "3 motors".
std::string how_many(std::size_t count, const char* thing) {
  return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

void rows_text(std::string& out, const PlannedPour& planned) {
  const Element& element = element_of(planned);
  out += fmt::format("\nRows ({} each, {} apart, the first {} from the left)\n",
                     how_many(planned.motors_a_row, "motor"), both(planned.spacing),
                     both(planned.spacing / 2.0));
  for (std::size_t r = element.rows.size(); r-- > 0;) {
    const Row& row = element.rows[r];
    out += fmt::format("  {:<9} at {:<22} {:<12} works for lift {}\n", row_text(planned, r),
                       both(row.z), motors_text(planned, r), fmt::join(row.serves, ", "));
  }
  out += fmt::format("  {} in all, leapfrogged (every row with its own: {})",
                     how_many(planned.motors, "motor"), planned.motors_unmoved);
  if (!planned.plan.power.empty()) out += "; " + how_many(planned.plan.power.size(), "inverter");
  out += fmt::format("\n  a motor has {:.0f} % of the force its share of the form wants\n",
                     planned.force_share * 100);
}

// "what          figures", the figures in a column.
struct Lines {
  std::string& out;
  void operator()(const char* what, const std::string& figures) const {
    out += fmt::format("  {:<32} {}\n", what, figures);
  }
};

std::string loads_text(const PlannedPour& planned) {
  std::string loads = fmt::format("{} of {}", planned.trucks, both(planned.load));
  if (planned.trucks > 1) loads += ", the last of " + both(planned.loads.back().volume);
  return loads;
}

void pace_text(std::string& out, const PlannedPour& planned) {
  const Lines line{out};
  out += "\nPace\n";
  line("rise while a lift is placed", both(planned.rise));
  line("set by", to_text(planned.sets_rise));
  line("rise the form's rating allows",
       planned.rise_allowed ? both(*planned.rise_allowed) : "any: it bears the full liquid head");
  line("pressure at that rise",
       both(planned.pressure) + (planned.method_holds ? "" : "  the full liquid head"));
  line("concrete", both(planned.concrete));
  line("loads", loads_text(planned));
  line("trucks an hour", fmt::format("{:.1f}, pauses counted", planned.trucks_an_hour));
  line("oldest joint when knitted",
       fmt::format("{}; it sets after {}", span_text(planned.joint_age), span_text(planned.sets)));
  line("from first lift to last rest", span_text(planned.duration));
  std::string waits = planned.waits > Seconds{} ? span_text(planned.waits) : "none";
  if (planned.hands_no_wait)
    waits +=
        "; " + how_many(static_cast<std::size_t>(*planned.hands_no_wait), "hand") + ": no wait";
  if (planned.motors_no_wait) {
    waits += fmt::format("; no wait with {}", how_many(*planned.motors_no_wait, "motor"));
  }
  line("waits for motors being moved", waits);
  out += "\nWhat binds (share of each limit used; over 100 %: the plan waits for it)\n";
  for (const LimitUse& use : planned.uses) {
    out += fmt::format("  {:<12} {:>4.0f} %\n", to_text(use.limit), use.share * 100);
  }
}

bool of_deck(const PlannedPour& planned) {
  return element_of(planned).kind == ElementKind::deck;
}

void deck_text(std::string& out, const PlannedPour& planned) {
  const Lines line{out};
  const Amount rate{Measure::placing, trade::in_cubic_metres_per_hour(planned.placing)};
  out += "\nPace\n";
  line("placing",
       fmt::format("{}, set by {}", amount_text(rate, Units::si), to_text(planned.sets_rise)));
  line("concrete", both(planned.concrete));
  line("loads", loads_text(planned));
  line("trucks an hour", fmt::format("{:.1f}", planned.trucks_an_hour));
  line("oldest joint when worked",
       fmt::format("{}; it sets after {}", span_text(planned.joint_age), span_text(planned.sets)));
  line("from first concrete to last point", span_text(planned.duration));
  out += "\nRun sheet\n";
  for (const LiftStep& step : planned.lifts) {
    out += fmt::format("  layer {} at {}: place to {}, {}, {}\n", step.lift,
                       clock_from_start(step.begins), both(step.top), both(step.concrete),
                       span_text(step.place));
    for (const InsertStep& in : step.inserts) {
      out += fmt::format("      bay {} at {}; full and insert {} points with {} at {}, {}\n",
                         in.bay + 1, clock_from_start(in.fills), in.points, in.heads,
                         clock_from_start(in.begins), span_text(in.takes));
    }
  }
}

void sheet_text(std::string& out, const PlannedPour& planned) {
  out += "\nRun sheet\n  before: ";
  out += listed(planned.before, [&](const MotorsMove& m) { return move_text(planned, m); });
  out += "\n";
  for (const LiftStep& step : planned.lifts) {
    out += fmt::format("  lift {} at {}: place to {}, {}, {}\n", step.lift,
                       clock_from_start(step.begins), both(step.top), both(step.concrete),
                       span_text(step.place));
    for (const MotorsMove& m : step.moves) {
      if (m.begins >= step.rested()) continue;
      out += fmt::format("      at {}: {}\n", clock_from_start(m.begins), move_text(planned, m));
    }
    if (planned.insert_too) out += "      insert in every bay, into the lift below too\n";
    out += fmt::format("      then run {} for {} each, one at a time; head {}\n",
                       listed(step.rows, [&](std::size_t row) { return row_text(planned, row); }),
                       span_text(step.run), both(step.head));
    for (const MotorsMove& m : step.moves) {
      if (m.begins < step.rested()) continue;
      out += fmt::format("      at {}: {}\n", clock_from_start(m.begins), move_text(planned, m));
    }
    if (step.pause > Seconds{}) {
      out += fmt::format("      wait {} until the motors hang\n", span_text(step.pause));
    }
  }
}

nlohmann::json move_json(const PlannedPour& planned, const MotorsMove& move) {
  const Element& element = element_of(planned);
  nlohmann::json json{{"side", to_text(element.rows[move.to].side)},
                      {"to", element.rows[move.to].id.text},
                      {"begins_s", in_seconds(move.begins)},
                      {"takes_s", in_seconds(move.takes)}};
  json["from"] = move.from ? nlohmann::json(element.rows[*move.from].id.text) : nlohmann::json();
  return json;
}

nlohmann::json moves_json(const PlannedPour& planned, const std::vector<MotorsMove>& moves) {
  auto list = nlohmann::json::array();
  for (const MotorsMove& move : moves) list.push_back(move_json(planned, move));
  return list;
}

nlohmann::json inserts_json(const LiftStep& step) {
  auto list = nlohmann::json::array();
  for (const InsertStep& in : step.inserts) {
    list.push_back({{"bay", in.bay + 1},
                    {"points", in.points},
                    {"heads", in.heads},
                    {"fills_s", in_seconds(in.fills)},
                    {"filled_s", in_seconds(in.filled)},
                    {"begins_s", in_seconds(in.begins)},
                    {"takes_s", in_seconds(in.takes)}});
  }
  return list;
}

nlohmann::json lift_json(const PlannedPour& planned, const LiftStep& step) {
  auto rows = nlohmann::json::array();
  for (const std::size_t row : step.rows) {
    const Row& r = element_of(planned).rows[row];
    rows.push_back({{"side", to_text(r.side)}, {"row", r.id.text}});
  }
  return {{"lift", step.lift},
          {"bottom", in_metres(step.bottom)},
          {"top", in_metres(step.top)},
          {"volume", in_cubic_metres(step.concrete)},
          {"place_s", in_seconds(step.place)},
          {"rows", rows},
          {"run_s", in_seconds(step.run)},
          {"gap_s", in_seconds(step.gap)},
          {"pause_s", in_seconds(step.pause)},
          {"head_kpa", in_kilopascals(step.head)},
          {"begins_s", in_seconds(step.begins)},
          {"moves", moves_json(planned, step.moves)},
          {"inserts", inserts_json(step)}};
}

}  // namespace

std::string plan_text(const PlannedPour& planned, const PlanRequest& request) {
  const Element& element = element_of(planned);
  std::string out = fmt::format("{} {}: {} long, {} {}, {} thick\n", to_text(element.kind),
                                element.id.text, both(element.length), both(element.height),
                                of_deck(planned) ? "wide" : "high", both(element.thickness));
  if (of_deck(planned)) {
    deck_text(out, planned);
  } else {
    rows_text(out, planned);
    pace_text(out, planned);
    sheet_text(out, planned);
  }
  if (!planned.forced.empty()) {
    out += "\nThe first guesses gave no plan\n  " + planned.forced.text() + "\n";
  }
  if (!planned.guesses.empty()) {
    out += "\nWhat this plan guessed\n";
    for (const GuessTold& guess : planned.guesses) {
      out += fmt::format("  {} {}\n", guess.changed ? "changed:" : "binds:  ", guess.words.text());
    }
  }
  if (!request.taken.empty()) {
    out += "\nTaken for granted (give your own)\n";
    for (const PlanInput* input : request.taken) {
      out += fmt::format("  --{:<13} {:<10} {}\n", input->name, input->fallback, input->source);
    }
  }
  out +=
      of_deck(planned)
          ? "\nNobody is under the deck while concrete is placed; the falsework designer's "
            "drawings "
            "govern.\nThis plan advises. Local codes, the falsework designer, a licensed "
            "electrician and "
            "licensed practice decide.\n"
          : "\nThe top half metre or so wants internal vibration or spading too (ACI 309R, from "
            "memory).\n"
            "Form vibrators make liquid what they reach: the form designer must agree to them on "
            "the "
            "form.\nThis plan advises. Local codes, the form designer, a licensed electrician and "
            "licensed practice decide.\n";
  return out;
}

std::string plan_json(const PlannedPour& planned) {
  nlohmann::json json;
  json["plan"] = nlohmann::json::parse(to_json(planned.plan));
  json["before"] = moves_json(planned, planned.before);
  json["lifts"] = nlohmann::json::array();
  for (const LiftStep& step : planned.lifts) json["lifts"].push_back(lift_json(planned, step));
  json["pace"] = {{"rise_mh", in_metres_per_hour(planned.rise)},
                  {"rise_allowed_mh",
                   planned.rise_allowed ? nlohmann::json(in_metres_per_hour(*planned.rise_allowed))
                                        : nlohmann::json()},
                  {"set_by", to_text(planned.sets_rise)},
                  {"pressure_kpa", in_kilopascals(planned.pressure)},
                  {"placing_m3h", trade::in_cubic_metres_per_hour(planned.placing)},
                  {"volume", in_cubic_metres(planned.concrete)},
                  {"load", in_cubic_metres(planned.load)},
                  {"trucks", planned.trucks},
                  {"trucks_per_hour", planned.trucks_an_hour},
                  {"joint_age_s", in_seconds(planned.joint_age)},
                  {"sets_s", in_seconds(planned.sets)},
                  {"duration_s", in_seconds(planned.duration)},
                  {"motors", planned.motors},
                  {"motors_per_row", planned.motors_a_row},
                  {"force_share", planned.force_share}};
  json["loads"] = nlohmann::json::array();
  for (const PlannedLoad& load : planned.loads) {
    json["loads"].push_back({{"volume", in_cubic_metres(load.volume)},
                             {"begins_s", in_seconds(load.begins)},
                             {"ends_s", in_seconds(load.ends)}});
  }
  json["pace"]["waits_s"] = in_seconds(planned.waits);
  if (planned.hands_no_wait) json["pace"]["hands_no_wait"] = *planned.hands_no_wait;
  if (planned.motors_no_wait) json["pace"]["motors_no_wait"] = *planned.motors_no_wait;
  json["guesses"] = nlohmann::json::array();
  for (const GuessTold& guess : planned.guesses) {
    json["guesses"].push_back({{"changed", guess.changed}, {"says", guess.words.text()}});
  }
  if (!planned.forced.empty()) json["forced"] = planned.forced.text();
  json["limits"] = nlohmann::json::object();
  for (const LimitUse& use : planned.uses) json["limits"][to_text(use.limit)] = use.share;
  return json.dump(2);
}

}  // namespace rb
