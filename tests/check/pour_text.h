// Small pours for the rules' tests, written as the pour scripts a tablet would keep: a plan in
// pieces, and events at seconds after the opening. Numbers are SI, as in the script.
#pragma once

#include <doctest/doctest.h>

#include <functional>
#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include "check/say_finding.h"

namespace rb {
struct Event;
}

namespace rb::test {

/// Equal but for the rounding of sums.
inline doctest::Approx about(double v) {
  return doctest::Approx(v).epsilon(1e-9);
}

struct MotorText {
  std::string id;
  double x = 0;
  double reach_x = 1;
  double reach_z = 0.6;
};

/// A row of a plan. `serves` is a JSON list; left out, the plan's reader works it out.
std::string row_text(const std::string& id, double z, const std::vector<MotorText>& motors,
                     const std::string& serves = "[1]", const std::string& side = "near");
/// A row whose two motors, at x = 1 and 3 m, reach all of a face 4 m long.
std::string full_row(const std::string& id, double z, const std::string& serves = "[1]",
                     const std::string& side = "near", double reach_z = 0.6);

/// Limits under which concrete of no known load is taken as fresh as it comes, and a mix whose Q is
/// known: what is not about the age of loads counts from when concrete came.
inline const std::string kFresh = R"("load_age_max_s":0)";
inline const std::string kQ = R"(,"set_q_k":5000)";

/// One element W1: a wall of two bays of 2 m with a row R1 that reaches 0 to 1.2 m of it.
struct PlanText {
  std::string kind = "wall";
  double length = 4, height = 1.8, thickness = 0.25;
  std::string bays = "[2,2]";
  std::string openings = "[]";
  std::string lifts = "[0.6,1.2,1.8]";
  std::vector<std::string> rows{full_row("R1", 0.6)};
  std::string element{};  ///< more fields of the element: R"("form_rating_kpa":30)"
  std::string other{};    ///< a second element, as JSON
  std::string mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":5)";
  std::string people{R"({"id":"f1","name":"A. Reyes","role":"foreman"},)"
                     R"({"id":"q1","name":"K. Lindqvist","role":"inspector"},)"
                     R"({"id":"s1","name":"T. Moreau","role":"superintendent"})"};
  std::string limits{};  ///< fields of the limits
  std::string more{};    ///< more fields of the plan
  [[nodiscard]] std::string json() const;
};

/// The unit a finding's figures stand in, as a script writes it.
std::string unit_of(const Finding& finding);

/// What the checker found, with the state it looked at.
struct Checked {
  PourState state;
  CheckReport report;

  [[nodiscard]] std::vector<Finding> of(const std::string& rule) const;
  [[nodiscard]] bool has(const std::string& rule) const { return !of(rule).empty(); }
  [[nodiscard]] Finding only(
      const std::string& rule) const;  ///< fails the test unless there is one
  [[nodiscard]] std::string says(const Finding& finding) const {
    return sentence(finding, *state.plan, kTerminal);
  }
  [[nodiscard]] LiftReport lift(int lift) const;
  [[nodiscard]] std::vector<std::string> rules() const;  ///< found, each once, sorted
};

class Pour {
 public:
  explicit Pour(PlanText plan = {}, std::string opened = "2026-03-02T05:00:00.000Z");

  /// An event so many seconds after the opening; `what` is its fields from "do" on.
  Pour& at(double seconds, const std::string& what);
  /// A lift placed from one moment to another, to a top.
  Pour& placed(int lift, double from, double to, double top);
  Pour& ran(const std::string& row, double from, double to, const std::string& side = "near");
  /// A load batched, arrived, and discharged from one moment to another.
  Pour& load(const std::string& ticket, double volume, double batched, double from, double to);
  /// Leaves out the lines that hold a text; there must be one.
  Pour& without(const std::string& text);

  /// Changes a text in the lines that hold it and `line`; there must be one.
  Pour& changed(const std::string& line, const std::string& old, const std::string& with);
  /// All from a moment on comes so much later, the times its lines tell with it.
  Pour& later(double from, double by);

  [[nodiscard]] std::string moment(double seconds) const;  ///< RFC 3339
  [[nodiscard]] std::string script() const;
  [[nodiscard]] Checked checked() const;             ///< the finished look
  [[nodiscard]] Checked live(double seconds) const;  ///< as the tablet has it at that moment

  PlanText plan;
  /// What a book tells of its events besides their lines.
  std::function<void(std::vector<Event>&)> in_book{};

 private:
  [[nodiscard]] PourState state(double until) const;
  [[nodiscard]] std::string line(double seconds, const std::string& what) const;

  std::string opened_;
  std::vector<std::pair<double, std::string>> events_;
};

// Events of W1, as fields of a line.
std::string ready(const std::string& item, bool ok);
/// No motors named: all of the row's.
std::string hang(const std::string& row, const std::vector<std::string>& motors = {},
                 bool cables = true, const std::string& side = "near");
std::string take_down(const std::string& row, const std::string& side = "near");
std::string lift_start(int lift);
/// Bay 0: all bays.
std::string top(double height, int bay = 0);
std::string bay_start(int lift, int bay);
std::string lift_end(int lift, double height, int bay = 0);
std::string run(const std::string& row, const std::string& side = "near", double vpm = 6000);
std::string rest(const std::string& row, const std::string& side = "near");
/// Group 3, 0.27 m apart and 0.15 m down: within every limit.
std::string insert(int lift, int bay = 0, double spacing = 0.27, double depth_below = 0.15,
                   int group = 3);
std::string temp(double degrees);
/// By the one who has the role in the plan unless told.
std::string sign(const std::string& role, const std::string& by = {});
inline const std::string kClose = R"("do":"pour-close")";

/// A whole pour of three lifts that no rule has anything against.
Pour good_pour();

}  // namespace rb::test
