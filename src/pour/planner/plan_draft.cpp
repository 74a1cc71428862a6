#include "pour/planner/plan_draft.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "pour/plan/most.h"
#include "pour/plan/plan_json.h"
#include "pour/plan/serves.h"

namespace rb {

namespace {

constexpr Length kBay = metres(3.0);
constexpr Length kLift = metres(0.5);
constexpr Length kMotorsApart = metres(1.2);
constexpr Length kBelowTop = metres(0.15);  // no row hangs closer to the top of the form

Length to_millimetre(Length length) {
  return metres(std::round(in_metres(length) * 1000.0) / 1000.0);
}

int parts_of(Length whole, Length part) {
  // A hair of allowance: 3.0 m in lifts of 0.5 m are six, whatever the last digit says.
  return std::clamp(static_cast<int>(std::ceil(whole / part - 1e-6)), 1, kMostParts);
}

// Equal parts to the millimetre; the last takes what rounding left.
std::vector<Length> equal_bays(Length whole, int count) {
  std::vector<Length> bays(static_cast<std::size_t>(count),
                           to_millimetre(whole / static_cast<double>(count)));
  Length others;
  for (std::size_t i = 0; i + 1 < bays.size(); ++i) others += bays[i];
  bays.back() = to_millimetre(whole - others);
  return bays;
}

std::vector<Length> equal_lifts(Length rise, int count) {
  std::vector<Length> tops;
  for (int i = 1; i < count; ++i) {
    tops.push_back(to_millimetre(rise * static_cast<double>(i) / static_cast<double>(count)));
  }
  tops.push_back(rise);
  return tops;
}

void work_out_serves(Element& element) {
  for (Row& row : element.rows) row.serves = lifts_in_reach(row, element);
}

int motors_in(const Element& element, const RowPattern& pattern) {
  return pattern.motors > 0 ? std::min(pattern.motors, kMostParts)
                            : parts_of(element.length, kMotorsApart);
}

// Two sets of motors a side, hung in turn: the one below comes down and goes up over the other.
std::string motor_id(int row, bool far, int across, int i) {
  const int set = row % 2 + (far ? 2 : 0);
  return fmt::format("M{}", set * across + i + 1);
}

std::vector<Length> row_heights(const Element& element, const RowPattern& pattern) {
  const Length rise = element.rise_height();
  std::vector<Length> heights;
  if (rise <= Length{} || pattern.apart <= Length{}) return heights;
  const Length highest = std::max(rise - kBelowTop, rise / 2.0);
  Length z = std::min(pattern.lowest, highest);
  while (static_cast<int>(heights.size()) < kMostParts) {
    heights.push_back(to_millimetre(z));
    if (z + pattern.reach_z >= rise || z >= highest) break;
    z = std::min(z + pattern.apart, highest);
  }
  return heights;
}

std::vector<Row> rows_by(const Element& element, const RowPattern& pattern) {
  std::vector<Row> rows;
  const int across = motors_in(element, pattern);
  int number = 0;
  for (const Length& z : row_heights(element, pattern)) {
    for (const bool far : {false, true}) {
      if (far && !pattern.both_sides) continue;
      Row row;
      row.id = RowId{fmt::format("R{}", number + 1)};
      row.side = far ? Side::far_side : Side::near_side;
      row.z = z;
      for (int i = 0; i < across; ++i) {
        const double part = (i + 0.5) / across;
        row.motors.push_back({MotorId{motor_id(number, far, across, i)},
                              to_millimetre(element.length * part), pattern.reach_x,
                              pattern.reach_z});
      }
      rows.push_back(std::move(row));
    }
    ++number;
  }
  return rows;
}

void guess_bays(PlanDraft& draft, std::size_t i) {
  Element& element = draft.plan.elements[i];
  element.bays.clear();
  if (element.length <= Length{}) return;
  element.bays =
      equal_bays(element.length,
                 element.section == trade::Section::round ? 1 : parts_of(element.length, kBay));
  draft.guesses[i].bays = true;
}

void guess_lifts(PlanDraft& draft, std::size_t i) {
  Element& element = draft.plan.elements[i];
  element.lifts.clear();
  const Length rise = element.rise_height();
  if (rise <= Length{}) return;
  element.lifts = equal_lifts(rise, parts_of(rise, kLift));
  draft.guesses[i].lifts = true;
}

// A deck is shaken by internal vibrators as a rule: no rows are guessed for it.
void guess_rows(PlanDraft& draft, std::size_t i) {
  Element& element = draft.plan.elements[i];
  element.rows.clear();
  draft.guesses[i].rows = false;
  if (element.length <= Length{} || element.kind == ElementKind::deck) return;
  element.rows = rows_by(element, draft.guesses[i].pattern);
  work_out_serves(element);
  draft.guesses[i].rows = !element.rows.empty();
}

template <class Items>
std::string free_id(const Items& items, const std::string& letter) {
  for (std::size_t n = 1;; ++n) {
    std::string id = letter + std::to_string(n);
    const bool taken = std::any_of(items.begin(), items.end(),
                                   [&](const auto& item) { return item.id.text == id; });
    if (!taken) return id;
  }
}

}  // namespace

PlanDraft empty_plan(Units units) {
  PlanDraft draft;
  draft.plan.units = units;
  draft.plan.people.push_back({PersonId{"P1"}, "", "foreman"});
  add_mix(draft);
  return draft;
}

PlanDraft copy_of(const Plan& plan) {
  PlanDraft draft;
  draft.plan = plan;
  draft.name_guessed = true;
  for (const Element& element : plan.elements) {
    draft.guesses.push_back({.pattern = pattern_of(element)});
  }
  if (plan.motor_type) draft.wish.motor = *plan.motor_type;
  if (!plan.power.empty()) {
    const Inverter& inverter = plan.power.front();
    draft.wish.volts = inverter.volts;
    draft.wish.inverter_amps = inverter.max_amps;
    draft.wish.cable = inverter.cable;
    draft.wish.trunk = inverter.trunk;
    if (draft.wish.trunk) draft.wish.trunk->motors.clear();
    draft.wish.generator = inverter.generator;
    draft.wish.internal = inverter.internal;
  }
  return draft;
}

void add_element(PlanDraft& draft) {
  Element element;
  element.id = ElementId{free_id(draft.plan.elements, "W")};
  draft.plan.elements.push_back(std::move(element));
  draft.guesses.emplace_back();
}

void remove_element(PlanDraft& draft, std::size_t element) {
  const auto at = static_cast<std::ptrdiff_t>(element);
  draft.plan.elements.erase(draft.plan.elements.begin() + at);
  draft.guesses.erase(draft.guesses.begin() + at);
}

void add_mix(PlanDraft& draft) {
  Mix mix;
  mix.id = MixId{free_id(draft.plan.mixes, "X")};
  mix.unit_weight = kilonewtons_per_m3(24.0);
  mix.slump = millimetres(120);
  mix.initial_set = hours(5.0);
  draft.plan.mixes.push_back(std::move(mix));
  draft.mix_guessed = true;
}

void add_person(PlanDraft& draft) {
  draft.plan.people.push_back({PersonId{free_id(draft.plan.people, "P")}, "", "foreman"});
}

void set_section(PlanDraft& draft, std::size_t element, trade::Section section) {
  Element& changed = draft.plan.elements[element];
  ElementGuesses& kept = draft.guesses[element];
  if (section == trade::Section::round && changed.section != section) {
    kept.flat_thickness = changed.thickness;
    kept.flat_openings = std::exchange(changed.openings, {});
  } else if (section == trade::Section::rect && kept.flat_thickness) {
    changed.thickness = *std::exchange(kept.flat_thickness, std::nullopt);
    changed.openings = std::exchange(kept.flat_openings, {});
  }
  changed.section = section;
  set_length(draft, element, changed.length);
}

void set_kind(PlanDraft& draft, std::size_t element, ElementKind kind) {
  Element& changed = draft.plan.elements[element];
  changed.kind = kind;
  if (kind != ElementKind::column) set_section(draft, element, trade::Section::rect);
  if (kind == ElementKind::deck) changed.thickness_top.reset();
  guess_lifts(draft, element);
  guess_rows(draft, element);
}

void set_length(PlanDraft& draft, std::size_t element, Length length) {
  Element& changed = draft.plan.elements[element];
  changed.length = length;
  if (changed.section == trade::Section::round) changed.thickness = length;
  guess_bays(draft, element);
  guess_rows(draft, element);
}

void set_height(PlanDraft& draft, std::size_t element, Length height) {
  Element& changed = draft.plan.elements[element];
  changed.height = height;
  if (changed.kind == ElementKind::deck) return;  // a deck's height is its width in plan
  guess_lifts(draft, element);
  guess_rows(draft, element);
}

void set_thickness(PlanDraft& draft, std::size_t element, Length thickness) {
  Element& changed = draft.plan.elements[element];
  changed.thickness = thickness;
  if (changed.section == trade::Section::round && changed.length != thickness) {
    set_length(draft, element, thickness);
  }
  if (changed.kind == ElementKind::deck) guess_lifts(draft, element);
}

void set_bay_count(PlanDraft& draft, std::size_t element, int count) {
  Element& changed = draft.plan.elements[element];
  changed.bays =
      equal_bays(changed.length,
                 changed.section == trade::Section::round ? 1 : std::clamp(count, 1, kMostParts));
  draft.guesses[element].bays = false;
}

void set_lift_count(PlanDraft& draft, std::size_t element, int count) {
  Element& changed = draft.plan.elements[element];
  changed.lifts = equal_lifts(changed.rise_height(), std::clamp(count, 1, kMostParts));
  work_out_serves(changed);
  draft.guesses[element].lifts = false;
}

void set_bay(PlanDraft& draft, std::size_t element, std::size_t bay, Length length) {
  Element& changed = draft.plan.elements[element];
  changed.bays[bay] = length;
  draft.guesses[element].bays = false;
  if (bay + 1 >= changed.bays.size()) return;
  Length others;
  for (std::size_t i = 0; i + 1 < changed.bays.size(); ++i) others += changed.bays[i];
  if (others < changed.length) changed.bays.back() = to_millimetre(changed.length - others);
}

void set_lift(PlanDraft& draft, std::size_t element, std::size_t lift, Length top) {
  Element& changed = draft.plan.elements[element];
  changed.lifts[lift] = top;
  work_out_serves(changed);
  draft.guesses[element].lifts = false;
}

void set_pattern(PlanDraft& draft, std::size_t element, const RowPattern& pattern) {
  Element& changed = draft.plan.elements[element];
  draft.guesses[element].pattern = pattern;
  draft.guesses[element].rows = false;
  changed.rows = rows_by(changed, pattern);
  work_out_serves(changed);
}

void set_row_height(PlanDraft& draft, std::size_t element, std::size_t row, Length z) {
  Element& changed = draft.plan.elements[element];
  changed.rows[row].z = z;
  changed.rows[row].serves = lifts_in_reach(changed.rows[row], changed);
  draft.guesses[element].rows = false;
}

std::vector<OpenGuess> open_guesses(const PlanDraft& draft) {
  std::vector<OpenGuess> open;
  if (draft.name_guessed) open.push_back({Guessed::name, 0});
  if (draft.mix_guessed) open.push_back({Guessed::mix, 0});
  for (std::size_t i = 0; i < draft.guesses.size(); ++i) {
    if (draft.guesses[i].bays) open.push_back({Guessed::bays, i});
    if (draft.guesses[i].lifts) open.push_back({Guessed::lifts, i});
    if (draft.guesses[i].rows) open.push_back({Guessed::rows, i});
  }
  return open;
}

void confirm(PlanDraft& draft, const OpenGuess& guess) {
  switch (guess.what) {
    case Guessed::name:
      draft.name_guessed = false;
      return;
    case Guessed::mix:
      draft.mix_guessed = false;
      return;
    case Guessed::bays:
      draft.guesses[guess.element].bays = false;
      return;
    case Guessed::lifts:
      draft.guesses[guess.element].lifts = false;
      return;
    case Guessed::rows:
      draft.guesses[guess.element].rows = false;
      return;
  }
}

void confirm_all(PlanDraft& draft) {
  for (const OpenGuess& guess : open_guesses(draft)) confirm(draft, guess);
}

Result<Plan> finished(const PlanDraft& draft) {
  const Saying where = said("the plan");
  if (draft.plan.name.find_first_not_of(' ') == std::string::npos) {
    return fail(Error::Kind::input, where, said("has no name"), said("Name the pour"));
  }
  return parse_plan(to_json(draft.plan), where);
}

PourId new_pour_id(const std::string& name, const std::string& day,
                   const std::vector<PourId>& taken) {
  std::string plain = day;
  bool gap = true;
  for (const char c : name) {
    const auto u = static_cast<unsigned char>(c);
    const bool letter = (u >= '0' && u <= '9') || (u >= 'a' && u <= 'z') || (u >= 'A' && u <= 'Z');
    if (letter) {
      if (gap) plain += '-';
      plain += u >= 'A' && u <= 'Z' ? static_cast<char>(u - 'A' + 'a') : c;
    }
    gap = !letter;
  }
  plain.resize(std::min(plain.size(), most::kIdBytes - 10));  // room for a number behind it
  PourId id{plain};
  for (int n = 2; std::find(taken.begin(), taken.end(), id) != taken.end(); ++n) {
    id = PourId{fmt::format("{}-{}", plain, n)};
  }
  return id;
}

}  // namespace rb
