#include "pour/log/may_happen.h"

#include <algorithm>
#include <string_view>
#include <tuple>
#include <type_traits>

#include "pour/log/log_entry.h"
#include "pour/log/places.h"

namespace rb {

namespace {

// What reads above the planned top of the form is refused; a hand's breadth is left for freeboard.
constexpr Length kAboveForm = metres(0.1);

using Answer = std::optional<Refusal>;

Answer wrong(Saying why) {
  return Refusal{LogEntry::Sense::wrong, std::move(why)};
}
Answer repeats(Saying why) {
  return Refusal{LogEntry::Sense::repeats, std::move(why)};
}

constexpr Volume kVolumeHair = cubic_metres(1e-6);  // of sums

class Judge {
 public:
  Judge(const PourState& state, const LogEntry& entry, EventRef ref)
      : state_(state), entry_(entry), ref_(ref), at_(state.clock(entry.when)) {}

  // A kind that asks nothing of its own may be, where the plan has the places it names.
  template <class Kind>
  Answer operator()(const Kind& e) const {
    Answer no;
    std::optional<std::size_t> element;
    const auto look = [&](const auto& field) {
      if (!no) no = off_plan(e, field, element);
    };
    std::apply([&](const auto&... field) { (look(field), ...); }, Kind::fields());
    return no;
  }

  Answer operator()(const event::PourOpen&) const {
    if (ref_ != 0) return wrong(said("the pour is already open"));
    return {};
  }
  Answer operator()(const event::TakeDown& e) const {
    if (auto no = unplaced(e.place)) return no;
    const auto [element, row] = place(e.place);
    if (state_.hanging(element, row) == nullptr && state_.running(element, row) == nullptr) {
      return repeats({said("row {row} is not hung"), {{"row", e.place.row.text}}});
    }
    return {};
  }

  Answer operator()(const event::LiftStart& e) const {
    const auto element = element_index(plan(), e.element);
    if (!element) return unknown(e.element);
    if (const LiftState* now = state_.placing(*element); now && now->lift == e.lift) {
      return repeats({said("lift {lift} is already being placed"), {{"lift", count(e.lift)}}});
    }
    return {};
  }
  Answer operator()(const event::BayStart& e) const {
    const auto element = element_index(plan(), e.element);
    if (!element) return unknown(e.element);
    if (auto no = no_bay(*element, e.bay)) return no;
    const ElementState& there = state_.elements[*element];
    const auto started = latest_lift(there, e.lift);
    if (!started) return not_begun(e.element, e.lift);
    const LiftState& lift = there.lifts[*started];
    const auto bay = static_cast<std::size_t>(e.bay) - 1;
    const Facts facts{{"bay", count(e.bay)}, {"lift", count(e.lift)}};
    if (lift.bays[bay].started) {
      return repeats({said("bay {bay} of lift {lift} had been started"), facts});
    }
    // Only the first concrete of a bay can start it.
    if (lift.bay_ended[bay] || lift.top[bay] > lift.bottom[bay]) {
      return repeats({said("a top in bay {bay} of lift {lift} had been read before"), facts});
    }
    return {};
  }
  Answer operator()(const event::Top& e) const { return unreadable(e.element, e.height, e.bay); }
  Answer operator()(const event::LiftEnd& e) const {
    const auto element = element_index(plan(), e.element);
    if (!element) return unknown(e.element);
    if (auto no = too_high(*element, e.height)) return no;
    if (!latest_lift(state_.elements[*element], e.lift)) return not_begun(e.element, e.lift);
    return no_bay(*element, e.bay);
  }

  Answer operator()(const event::Run& e) const {
    if (auto no = unplaced(e.place)) return no;
    const auto [element, row] = place(e.place);
    // Motors that an inverter's trip has stopped may be started again beside those that ran on.
    const RunState* on = state_.running(element, row);
    if (on != nullptr && on->trips.empty()) {
      return repeats({said("row {row} was already running"), {{"row", e.place.row.text}}});
    }
    return {};
  }
  Answer operator()(const event::Rest& e) const {
    if (auto no = unplaced(e.place)) return no;
    const auto [element, row] = place(e.place);
    if (state_.running(element, row) == nullptr) {
      return repeats({said("row {row} was not running"), {{"row", e.place.row.text}}});
    }
    // The close ended what ran: a rest said later moves no figure.
    if (state_.closed) return repeats(said("the pour is already closed"));
    return {};
  }

  Answer operator()(const event::Truck& e) const {
    if (auto no = unmixed(e.mix)) return no;
    const auto truck = truck_of(state_, e.ticket);
    if (truck && state_.trucks[*truck].what) {
      return wrong({said("ticket {ticket} was already entered"), {{"ticket", e.ticket.text}}});
    }
    if (e.returned && *e.returned > e.volume) {
      return wrong({said("more came back ({returned~}) than ticket {ticket} brought ({volume~})"),
                    {{"returned", amount(*e.returned)},
                     {"ticket", e.ticket.text},
                     {"volume", amount(e.volume)}}});
    }
    return {};
  }
  Answer operator()(const event::Discharge& e) const {
    if (e.element && !element_index(plan(), *e.element)) return unknown(*e.element);
    const auto ended = discharge_ended(state_, entry_, e);
    if (ended && *ended < at_) return wrong(said("the discharge ends before it begins"));
    const auto known = truck_of(state_, e.ticket);
    return known ? no_part(state_.trucks[*known], e, ended) : std::nullopt;
  }
  Answer operator()(const event::Test& e) const {
    for (std::size_t i = 0; i < e.specimens.size(); ++i) {
      const SpecimenId& specimen = e.specimens[i];
      const auto end = e.specimens.begin() + static_cast<std::ptrdiff_t>(i);
      if (ticket_of(state_, specimen) || std::find(e.specimens.begin(), end, specimen) != end) {
        return wrong({said("specimens: {specimen} was already taken; give each an id of its own"),
                      {{"specimen", specimen.text}}});
      }
    }
    return {};
  }

  Answer operator()(const event::Hold&) const {
    if (on_hold()) return repeats(said("the pour is already on hold"));
    return {};
  }
  Answer operator()(const event::Resume&) const {
    if (!on_hold()) return repeats(said("the pour is not on hold"));
    return {};
  }
  Answer operator()(const event::PourClose&) const {
    if (state_.closed) return repeats(said("the pour is already closed"));
    return {};
  }
  Answer operator()(const event::Sign& e) const { return refused_review(state_, entry_, e); }
  Answer operator()(const event::Blemish& e) const {
    const auto index = element_index(plan(), e.element);
    if (!index) return unknown(e.element);
    const Element& element = plan().elements[*index];
    if (e.patch.x > element.length || e.patch.z > element.rise_height()) {
      return off_face(e.element);
    }
    return {};
  }
  Answer operator()(const event::Repair& e) const { return refused_review(state_, ref_, e); }
  Answer operator()(const event::Reinspect& e) const { return refused_review(state_, ref_, e); }
  Answer operator()(const event::Photo& e) const { return refused_review(state_, ref_, e); }
  Answer operator()(const event::Accept& e) const { return refused_review(state_, e); }
  Answer operator()(const event::SendBack& e) const { return refused_review(state_, e); }
  Answer operator()(const event::MotorOut& e) const { return refused_review(state_, e); }
  Answer operator()(const event::Amend& e) const { return refused_review(state_, at_, e); }
  Answer operator()(const event::Enrol& e) const { return refused_review(state_, entry_, e); }
  Answer operator()(const event::Override& e) const {
    if (!e.element) return {};
    const auto element = element_index(plan(), *e.element);
    if (!element) return unknown(*e.element);
    if (!e.row) return {};
    return unplaced({*e.element, e.side.value_or(Side::near_side), *e.row});
  }
  Answer operator()(const event::CureStart& e) const {
    const auto element = element_index(plan(), e.element);
    if (!element) return unknown(e.element);
    if (state_.curing(*element) == nullptr) return {};
    return repeats({said("the curing of {element} had been begun"), {{"element", e.element.text}}});
  }
  Answer operator()(const event::CureEnd& e) const {
    const auto element = element_index(plan(), e.element);
    if (!element) return unknown(e.element);
    if (state_.curing(*element) != nullptr) return {};
    return repeats({said("{element} was not under curing"), {{"element", e.element.text}}});
  }
  Answer operator()(const event::ConcreteTemp& e) const {
    const auto index = element_index(plan(), e.element);
    if (!index) return unknown(e.element);
    const Element& element = plan().elements[*index];
    if ((e.x && *e.x > element.length) || (e.z && *e.z > element.rise_height() + kAboveForm)) {
      return off_face(e.element);
    }
    return {};
  }
  Answer operator()(const event::Specimen& e) const {
    if (ticket_of(state_, e.specimen)) return {};
    return wrong({said("field specimen (or id): no test by then took a specimen {specimen}; log it "
                       "with the test that took it, or correct its id"),
                  {{"specimen", e.specimen.text}}});
  }
  Answer operator()(const event::Penetration& e) const {
    if (auto no = unmixed(e.mix)) return no;
    if (state_.clock(e.mixed) >= at_) return wrong(said("the sample was mixed after it was read"));
    return {};
  }

 private:
  [[nodiscard]] const Plan& plan() const { return *state_.plan; }
  // What a field names that the plan has not; `element`: the one named before.
  template <class Kind, class Other>
  [[nodiscard]] Answer off_plan(const Kind&, const Other&, std::optional<std::size_t>&) const {
    return {};
  }
  template <class Kind, class T>
  [[nodiscard]] Answer off_plan(const Kind& e, const Field<Kind, T>& field,
                                std::optional<std::size_t>& element) const {
    const std::optional<T> value{e.*(field.at)};
    return lacks(value, field.name, element);
  }
  template <class Kind, class T>
  [[nodiscard]] Answer off_plan(const Kind& e, const Field<Kind, std::optional<T>>& field,
                                std::optional<std::size_t>& element) const {
    return lacks(e.*(field.at), field.name, element);
  }
  template <class Kind>
  [[nodiscard]] Answer off_plan(const Kind& e, const PlaceField<Kind, RowPlace>& field,
                                std::optional<std::size_t>&) const {
    return unplaced(e.*(field.at));
  }
  template <class T>
  [[nodiscard]] Answer lacks(const std::optional<T>& value, std::string_view name,
                             std::optional<std::size_t>& element) const {
    if (!value) return {};
    if constexpr (std::is_same_v<T, ElementId>) {
      element = element_index(plan(), *value);
      if (!element) return unknown(*value);
    } else if constexpr (std::is_same_v<T, InverterId>) {
      return unpowered(*value);
    } else if constexpr (std::is_same_v<T, MixId>) {
      return unmixed(*value);
    } else if constexpr (std::is_same_v<T, int>) {
      if (element && name == "bay") return no_bay(*element, value);
    }
    return {};
  }
  static Answer not_begun(const ElementId& element, int lift) {
    return wrong({said("lift {lift} of {element} has not been started by then"),
                  {{"lift", count(lift)}, {"element", element.text}}});
  }
  static Answer unknown(const ElementId& id) {
    return wrong({said("element {element} is not in the plan"), {{"element", id.text}}});
  }
  static Answer off_face(const ElementId& id) {
    return wrong({said("the place is off the face of {element}"), {{"element", id.text}}});
  }
  [[nodiscard]] Answer unmixed(const MixId& mix) const {
    if (plan().find(mix) == nullptr) {
      return wrong({said("mix {mix} is not in the plan"), {{"mix", mix.text}}});
    }
    return {};
  }
  [[nodiscard]] Answer unpowered(const InverterId& inverter) const {
    if (inverter_index(plan(), inverter)) return {};
    return wrong({said("inverter {inverter} is not in the plan"), {{"inverter", inverter.text}}});
  }
  [[nodiscard]] Answer unplaced(const RowPlace& place) const {
    if (row_at(state_, place)) return {};
    if (!element_index(plan(), place.element)) return unknown(place.element);
    return wrong({said("row {row} on the {side} side of {element} is not in the plan"),
                  {{"row", place.row.text},
                   {"side", Term{to_text(place.side)}},
                   {"element", place.element.text}}});
  }
  // Of a place the plan has.
  [[nodiscard]] std::pair<std::size_t, std::size_t> place(const RowPlace& place) const {
    return *row_at(state_, place);
  }
  [[nodiscard]] Answer no_bay(std::size_t element, std::optional<int> bay) const {
    const std::size_t bays = plan().elements[element].bays.size();
    if (!bay || static_cast<std::size_t>(*bay) <= bays) return {};
    return wrong({said("bay {bay} is not in the plan; {element} has {bays}"),
                  {{"bay", count(*bay)},
                   {"element", plan().elements[element].id.text},
                   {"bays", counted(bays)}}});
  }
  [[nodiscard]] Answer too_high(std::size_t element, Length height) const {
    const Element& planned = plan().elements[element];
    if (height <= planned.rise_height() + kAboveForm) return {};
    return wrong({said("a top of {height~} is above the form of {element} ({form~})"),
                  {{"height", amount(height)},
                   {"element", planned.id.text},
                   {"form", amount(planned.rise_height())}}});
  }
  [[nodiscard]] Answer unreadable(const ElementId& id, Length height,
                                  std::optional<int> bay) const {
    const auto element = element_index(plan(), id);
    if (!element) return unknown(id);
    if (auto no = too_high(*element, height)) return no;
    return no_bay(*element, bay);
  }
  // The end of a discharge that goes on, or one more part of a load.
  [[nodiscard]] Answer no_part(const TruckState& truck, const event::Discharge& e,
                               std::optional<Seconds> ended) const {
    const auto open = part_ended(state_, truck, e);
    if (open) {
      if (!ended) return discharged_already(e);
      if (*ended < truck.parts[*open].from)
        return wrong(said("the discharge ends before it began"));
    } else if (!truck.parts.empty()) {
      // A second tap tells nothing new; another element, or a part of what is left, does.
      const auto element = e.element ? element_index(plan(), *e.element) : std::nullopt;
      const bool elsewhere = element && !truck.may_be_in(*element);
      const auto left = truck.left();
      if (!elsewhere && !e.volume && (!left || *left <= Volume{})) return discharged_already(e);
    }
    if (!truck.what || !e.volume) return {};
    Volume others;
    for (std::size_t i = 0; i < truck.parts.size(); ++i) {
      if (i != open) others += truck.parts[i].volume.value_or(Volume{});
    }
    const Volume had = truck.what->volume - truck.what->returned.value_or(Volume{});
    if (others + *e.volume <= had + kVolumeHair) return {};
    return wrong({said("ticket {ticket} holds {volume~}: {parts~} are too much"),
                  {{"ticket", e.ticket.text},
                   {"volume", amount(had)},
                   {"parts", amount(others + *e.volume)}}});
  }
  static Answer discharged_already(const event::Discharge& e) {
    return repeats({said("ticket {ticket} was already discharged"), {{"ticket", e.ticket.text}}});
  }
  [[nodiscard]] bool on_hold() const { return !state_.holds.empty() && !state_.holds.back().to; }

  const PourState& state_;
  const LogEntry& entry_;
  EventRef ref_;
  Seconds at_;
};

}  // namespace

std::optional<Refusal> refused(const PourState& state, const LogEntry& entry, EventRef ref) {
  return std::visit(Judge{state, entry, ref}, entry.event.what);
}

std::optional<std::size_t> part_ended(const PourState& state, const TruckState& truck,
                                      const event::Discharge& e) {
  const auto element = e.element ? element_index(*state.plan, *e.element) : std::nullopt;
  for (std::size_t i = truck.parts.size(); i-- > 0;) {
    const PartState& part = truck.parts[i];
    if (!part.to && (!element || part.may_be_in(*element))) return i;
  }
  return std::nullopt;
}

std::optional<Seconds> discharge_ended(const PourState& state, const LogEntry& entry,
                                       const event::Discharge& e) {
  if (!e.ended) return std::nullopt;
  return state.clock(*e.ended == entry.event.at ? entry.when : *e.ended);
}

}  // namespace rb
