#include "pour/log/may_happen.h"

#include <algorithm>

#include "pour/log/places.h"
#include "pour/plan/amend.h"

namespace rb {

namespace {

using No = std::optional<Refusal>;

No cannot_be(Saying why) {
  return Refusal{LogEntry::Sense::wrong, std::move(why)};
}
No said_before(Saying why) {
  return Refusal{LogEntry::Sense::repeats, std::move(why)};
}

std::string name_of(const Person& person) {
  return person.name.empty() ? person.id.text : person.name;
}
std::string name_of(const Plan& plan, const PersonId& id) {
  const Person* person = plan.find(id);
  return person == nullptr ? id.text : name_of(*person);
}

// A role of ours in the reader's language; what else a plan may say, as it stands.
FactValue role_word(const std::string& role) {
  for (const char* known : event::words_of(event::Role{})) {
    if (role == known) return Term{known};
  }
  return role;
}

FactValue able_to_sign(const Plan& plan, event::Role role) {
  std::string names;
  for (const Person& person : plan.people) {
    if (!person.has_role(to_text(role))) continue;
    if (!names.empty()) names += ", ";
    names += name_of(person);
  }
  if (names.empty()) return Term{said("nobody in the plan; correct the people of the plan")};
  return names;
}

// A plan that names nobody leaves it to the crew.
No without_role(const Plan& plan, const PersonId& by, event::Role role) {
  if (plan.people.empty()) return {};
  const Person* person = plan.find(by);
  if (person != nullptr && person->has_role(to_text(role))) return {};
  Facts facts{{"person", name_of(plan, by)},
              {"role", Term{to_text(role)}},
              {"able", able_to_sign(plan, role)}};
  if (person == nullptr) {
    return cannot_be(
        {said("{person} is not among the people of the plan and cannot sign as {role}; "
              "who can: {able}"),
         std::move(facts)});
  }
  if (person->role.empty()) {
    return cannot_be(
        {said("{person} cannot sign as {role}: the plan gives no role; who can: {able}"),
         std::move(facts)});
  }
  facts.push_back({"has", role_word(person->role)});
  return cannot_be({said("{person} cannot sign as {role}: the role in the plan is {has}; who can: "
                         "{able}"),
                    std::move(facts)});
}

// One person stands for one role in a pour, unless the plan gives both.
No second_role(const PourState& state, const PersonId& by, event::Role role) {
  const Person* person = state.plan->find(by);
  for (const EventRef ref : state.signs) {
    const Event& before = state.log[ref].event;
    const auto& sign = std::get<event::Sign>(before.what);
    if (before.by != by || sign.role == role) continue;
    const bool both = person != nullptr && person->has_role(to_text(role)) &&
                      person->has_role(to_text(sign.role));
    if (both) continue;
    return cannot_be(
        {said("{person} has signed this pour as {other} and cannot sign as {role} too"),
         {{"person", name_of(*state.plan, by)},
          {"other", Term{to_text(sign.role)}},
          {"role", Term{to_text(role)}}}});
  }
  return {};
}

bool of_another_role(const PourState& state, const event::Enrol& a, const event::Enrol& b) {
  const Person* one = state.plan->find(a.person);
  const Person* other = state.plan->find(b.person);
  if (one == nullptr || other == nullptr) return a.role && b.role && a.role != b.role;
  const auto roles = event::words_of(event::Role{});
  return std::any_of(roles.begin(), roles.end(), [&](const char* role) {
    return other->has_role(role) && !one->has_role(role);
  });
}

// Somebody who could witness it: of another role, with a key.
const EnrolState* able_to_witness(const PourState& state, const event::Enrol& enrol) {
  for (const EnrolState& known : state.enrolments) {
    if (known.what.person != enrol.person && of_another_role(state, enrol, known.what)) {
      return &known;
    }
  }
  return nullptr;
}

No unwitnessed(const PourState& state, const event::Enrol& e) {
  if (!e.from.empty()) return {};  // witnessed, or not, where it was made
  const std::string who = name_of(*state.plan, e.person);
  if (e.witness.empty()) {
    const EnrolState* able = able_to_witness(state, e);
    if (able == nullptr) return {};
    return cannot_be({said("the key of {person} needs a witness of another role: {able} has a key"),
                      {{"person", who}, {"able", name_of(*state.plan, able->what.person)}}});
  }
  const Facts facts{{"person", who}, {"witness", name_of(*state.plan, e.witness)}};
  const EnrolState* witness = enrolled(state, e.witness);
  if (witness == nullptr || witness->what.key != *e.witness_key) {
    return cannot_be({said("{witness} has no such key in this pour and cannot witness"), facts});
  }
  if (e.witness == e.person || !of_another_role(state, e, witness->what)) {
    return cannot_be({said("{witness} has no other role than {person} and cannot witness"), facts});
  }
  return {};
}

// The blemish or repair that is meant.
const Event* aimed_at(const PourState& state, EventRef ref, const EventId& target) {
  const auto known = state.memory.ids.find(target.text);
  if (known == state.memory.ids.end() || known->second >= ref) return nullptr;
  return &state.log[known->second].event;
}

No reviewed_so(const PourState& state, bool accepted, const std::string& finding,
               const Hex& figures) {
  for (auto known = state.reviews.rbegin(); known != state.reviews.rend(); ++known) {
    if (known->finding != finding || known->figures != figures) continue;
    if (known->accepted != accepted) break;
    return said_before(accepted ? said("it was already accepted for these figures")
                                : said("it was already sent back for these figures"));
  }
  return {};
}

No off_the_plan(const PourState& state, const ElementId& id) {
  if (element_index(*state.plan, id)) return {};
  return cannot_be({said("element {element} is not in the plan"), {{"element", id.text}}});
}

}  // namespace

No refused_review(const PourState& state, const LogEntry& entry, const event::Sign& sign) {
  const PersonId& by = entry.event.by;
  if (auto no = without_role(*state.plan, by, sign.role)) return no;
  const EnrolState* own = enrolled(state, by);
  const Facts facts{{"person", name_of(*state.plan, by)}};
  if (!sign.key) {
    if (own == nullptr) return {};
    return cannot_be(
        {said("{person} has a key in this pour and signs with it: enter the PIN"), facts});
  }
  if (own == nullptr || own->what.key != *sign.key) {
    return cannot_be(
        {said("the key it is signed with is not the one of {person} in this pour"), facts});
  }
  return second_role(state, by, sign.role);
}

No refused_review(const PourState& state, const LogEntry& entry, const event::Enrol& enrol) {
  const Plan& plan = *state.plan;
  const Facts facts{{"person", name_of(plan, enrol.person)}, {"by", name_of(plan, entry.event.by)}};
  if (entry.event.by != enrol.person) {
    return cannot_be({said("{by} entered a key for {person}: everybody enrols with a PIN of their "
                           "own"),
                      facts});
  }
  if (!plan.people.empty() && plan.find(enrol.person) == nullptr) {
    return cannot_be({said("{person} is not among the people of the plan"), facts});
  }
  if (enrol.role && !plan.people.empty() &&
      !plan.find(enrol.person)->has_role(to_text(*enrol.role))) {
    return cannot_be({said("the plan does not give {person} the role of {role}"),
                      {facts.front(), {"role", Term{to_text(*enrol.role)}}}});
  }
  for (const EnrolState& known : state.enrolments) {
    if (known.what.key != enrol.key) continue;
    if (known.what.person == enrol.person) {
      return said_before({said("this key of {person} was already enrolled"), facts});
    }
    return cannot_be(
        {said("{other} has this key already"), {{"other", name_of(plan, known.what.person)}}});
  }
  return unwitnessed(state, enrol);
}

No refused_review(const PourState& state, EventRef ref, const event::Repair& repair) {
  const Event* aim = aimed_at(state, ref, repair.target);
  if (aim != nullptr && std::holds_alternative<event::Blemish>(aim->what)) return {};
  return cannot_be(
      {said("there is no blemish {blemish} to repair"), {{"blemish", repair.target.text}}});
}

No refused_review(const PourState& state, EventRef ref, const event::Reinspect& reinspect) {
  const Event* aim = aimed_at(state, ref, reinspect.target);
  if (aim != nullptr && (std::holds_alternative<event::Blemish>(aim->what) ||
                         std::holds_alternative<event::Repair>(aim->what))) {
    return {};
  }
  return cannot_be({said("there is no blemish or repair {target} to look at again"),
                    {{"target", reinspect.target.text}}});
}

No refused_review(const PourState& state, EventRef ref, const event::Photo& photo) {
  if (photo.element) {
    if (auto no = off_the_plan(state, *photo.element)) return no;
  }
  if (photo.target.empty()) return {};
  const Event* aim = aimed_at(state, ref, photo.target);
  if (aim != nullptr && (std::holds_alternative<event::Blemish>(aim->what) ||
                         std::holds_alternative<event::Repair>(aim->what))) {
    return {};
  }
  return cannot_be({said("there is no blemish or repair {target} to be on a photo"),
                    {{"target", photo.target.text}}});
}

No refused_review(const PourState& state, const event::Accept& accept) {
  return reviewed_so(state, true, accept.finding, accept.figures);
}
No refused_review(const PourState& state, const event::SendBack& sent) {
  return reviewed_so(state, false, sent.finding, sent.figures);
}

No refused_review(const PourState& state, const event::MotorOut& out) {
  if (out.element) {
    if (auto no = off_the_plan(state, *out.element)) return no;
  }
  if (!places_of(state, out).empty()) return {};
  for (const MotorOutState& known : state.motors_out) {
    if (known.what.motor == out.motor) {
      return said_before(
          {said("motor {motor} was already out of work"), {{"motor", out.motor.text}}});
    }
  }
  for (const Element& element : state.plan->elements) {
    for (const Row& row : element.rows) {
      if (place_of(row, {}, out.motor)) return {};
    }
  }
  return cannot_be(
      {said("motor {motor} is not in the plan and hangs nowhere"), {{"motor", out.motor.text}}});
}

No refused_review(const PourState& state, Seconds at, const event::Amend& amend) {
  const auto plan = amended(*state.plan, amend.path, amend.value, Bounds::as_it_is);
  if (!plan) return cannot_be(as_saying(plan.error()));
  if (!plan->row_moved) return {};
  const auto [element, row] = *plan->row_moved;
  const auto& runs = state.elements[element].rows[row].runs;
  if (std::none_of(runs.begin(), runs.end(),
                   [&](std::size_t run) { return state.runs[run].from <= at; })) {
    return {};
  }
  return cannot_be({said("row {row} has run at its height by then: add a row where it hangs now"),
                    {{"row", state.plan->elements[element].rows[row].id.text}}});
}

}  // namespace rb
