#include <fmt/format.h>

#include <algorithm>
#include <cstdio>

#include "app/book_pours.h"
#include "cli/commands.h"
#include "pour/outlook/form.h"
#include "pour/outlook/loads.h"

namespace rb {

namespace {

struct Spot {
  Length x, z;
};

std::optional<Spot> parse_spot(const std::string& text) {
  double x = 0;
  double z = 0;
  int used = 0;
  if (std::sscanf(text.c_str(), "%lf,%lf%n", &x, &z, &used) != 2) return std::nullopt;
  if (static_cast<std::size_t>(used) != text.size() || !(x >= 0) || !(z >= 0)) return std::nullopt;
  return Spot{metres(x), metres(z)};
}

// Which motor, on which row, a shaker of a side is.
std::vector<std::string> names_of(const Element& element, Side side) {
  std::vector<std::string> names;
  for (const Row& row : element.rows) {
    if (row.side != side) continue;
    for (const Motor& motor : row.motors) names.push_back(row.id.text + "/" + motor.id.text);
  }
  return names;
}

// What is known of a load as its concrete came: its age, what was measured on it, water added.
std::string load_words(const PourState& state, const TruckState& truck, Seconds came) {
  std::string words = truck.ticket.text;
  if (truck.what) {
    const Seconds batched = state.told(*truck.ref, truck.what->batched);
    words += fmt::format(", batched {}, {:.0f} min old", to_text(state.moment(batched)),
                         in_seconds(came - batched) / 60);
    if (truck.what->water_added) {
      words += fmt::format(", {:g} m3 of water added", in_cubic_metres(*truck.what->water_added));
    }
  } else {
    words += ", its truck not entered: age not known";
  }
  for (const TestState& test : state.tests) {
    if (test.what.ticket != truck.ticket) continue;
    if (test.what.slump) words += fmt::format(", slump {:g} m", in_metres(*test.what.slump));
    if (test.what.temp) words += fmt::format(", {:g} degC", test.what.temp->degrees);
  }
  return words;
}

}  // namespace

Exit run_dose(const DoseWish& wish) {
  const auto spot = parse_spot(wish.at);
  if (!spot) {
    return report({Error::Kind::input, "--at", "is \"" + wish.at + "\"",
                   "Give x,z in metres from the element's lower left, such as 4.5,1.2"});
  }
  if (wish.side != "near" && wish.side != "far") {
    return report({Error::Kind::input, "--side", "is \"" + wish.side + "\"", "Use near or far"});
  }
  const Side side = wish.side == "near" ? Side::near_side : Side::far_side;
  const auto book = Logbook::open(wish.book, Access::read);
  if (!book) return report(book.error());
  const auto pour = chosen_pours(*book, wish.pour);
  if (!pour) return report(pour.error());
  const auto read = read_pour(*book, pour->front());
  if (!read) return report(read.error());
  const Exit fine = tell_unread(book->file(), *read) ? Exit::book : Exit::fine;
  if (!read->state) return report(no_plan(book->file(), *read).value());
  const PourState& state = *read->state;
  const Element* element = state.plan->find(ElementId{wish.element});
  if (element == nullptr) {
    return report({Error::Kind::input, "--element", "the plan has no " + wish.element, {}});
  }
  if (spot->x > element->length || spot->z > element->rise_height()) {
    return report({Error::Kind::input,
                   "--at",
                   fmt::format("is off the face of {} ({:g} x {:g} m)", wish.element,
                               in_metres(element->length), in_metres(element->rise_height())),
                   {}});
  }
  const auto index = static_cast<std::size_t>(element - state.plan->elements.data());
  const trade::Face face = face_of(state, index, {side});
  const auto story = trade::spot_story(face, 0, spot->x, spot->z);
  fmt::print("{} {} side, x {:.2f} m, z {:.2f} m, bay {}\n", wish.element, wish.side,
             in_metres(spot->x), in_metres(spot->z), element->bay_at(spot->x) + 1);
  if (!story) {
    fmt::print("  no concrete came here (above the top, or in an opening)\n");
    return fine;
  }
  const auto moment = [&](Seconds at) { return to_text(state.moment(at)); };
  fmt::print("  concrete came  {}\n", moment(story->came));
  for (const std::size_t load : loads_at(state, index, story->came)) {
    fmt::print("  of ticket      {}\n", load_words(state, state.trucks[load], story->came));
  }
  const auto& lifts = state.elements[index].lifts;
  const std::size_t bay = element->bay_at(spot->x);
  const auto lift = std::find_if(lifts.rbegin(), lifts.rend(),
                                 [&](const LiftState& l) { return l.started <= story->came; });
  if (lift != lifts.rend() && lift->start_missing(bay)) {
    fmt::print("  start of bay {} not tapped: it may have come later, and got less, than this\n",
               bay + 1);
  }
  const auto names = names_of(*element, side);
  const trade::Face whole =
      face_of(state, index, {side}, shaking(state, index, state.last, Unended::to_next_event),
              set_steps(state, index, SetSide::hard));
  const auto to_set = trade::spot_story(whole, 0, spot->x, spot->z);
  for (const auto& shaken : story->shaken) {
    std::string by;
    for (const std::size_t i : shaken.shakers) by += " " + names[i];
    fmt::print("  shaken         {} to {}  {:.1f} s by{}", moment(shaken.when.from),
               moment(shaken.when.to), in_seconds(shaken.when.to - shaken.when.from), by);
    if (shaken.when.work < 1) fmt::print(", a second counts {:.2f}", shaken.when.work);
    fmt::print("\n");
  }
  if (to_set->dose > story->dose || to_set->sets > story->sets) {
    fmt::print("  workable until {}\n  after that     {:.1f} s, not counted\n", moment(story->sets),
               in_seconds(to_set->dose - story->dose));
  }
  fmt::print("  initial set    {}\n  dose           {:.1f} s (least {:g} s)\n",
             moment(to_set->sets), in_seconds(story->dose),
             in_seconds(state.plan->limits.dose_min.value));
  return fine;
}

}  // namespace rb
