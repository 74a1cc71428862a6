#include "screens/view/event_words.h"

#include <algorithm>

#include "check/check.h"
#include "pour/log/kind_fields.h"
#include "pour/outlook/gates.h"
#include "pour/plan/amend.h"
#include "screens/view/ready_view.h"

namespace rb::screens {

namespace {

// The facts of an event's words, from the fields of its kind.
class EventFacts {
 public:
  EventFacts(const Say& say, Naming naming) : say_(say), naming_(naming) {}

  template <class Kind, class T>
  void add(const Kind& kind, const Field<Kind, T>& field) {
    // What was chosen is told in the reader's words, not in those it was kept with.
    if constexpr (std::is_same_v<T, std::string> && requires { kind.chosen; }) {
      if (kind.chosen) {
        facts.push_back({field.name, Term{event::says(*kind.chosen)}});
        return;
      }
    }
    if constexpr (std::is_same_v<Kind, event::Blemish> && std::is_same_v<T, std::string>) {
      const auto defect = event::defect_named(kind.*(field.at));
      if (defect && std::string_view{field.name} == "kind") {
        facts.push_back({field.name, Term{to_text(*defect)}});
        return;
      }
    }
    add(field.name, kind.*(field.at));
  }
  template <class Kind, class T>
  void add(const Kind& kind, const PlaceField<Kind, T>& field) {
    const T& place = kind.*(field.at);
    add("element", place.element);
    facts.push_back({"row", row_name(say_, place, naming_.two_sides)});
  }
  template <class Kind, class T>
  void add(const Kind& /*kind*/, const PatchField<Kind, T>& /*field*/) {}
  template <class Kind, class T>
  void add(const Kind& /*kind*/, const ObjectField<Kind, T>& /*field*/) {}
  template <class Kind, class T>
  void add(const Kind& /*kind*/, const ValueField<Kind, T>& /*field*/) {}
  template <class Kind, class T>
  void add(const Kind& /*kind*/, const OutlineField<Kind, T>& /*field*/) {}

  Facts facts;
  std::optional<ElementId> element;
  std::optional<int> bay;

 private:
  template <class T>
  void add(const char* name, const std::optional<T>& value) {
    if constexpr (std::is_same_v<T, int>) {
      if (std::string_view{name} == "bay") bay = value;
    }
    if (value) add(name, *value);
  }
  void add(const char* name, const ElementId& id) {
    element = id;
    facts.push_back({name, id.text});
  }
  template <class Tag>
  void add(const char* name, const Id<Tag>& id) {
    facts.push_back({name, id.text});
  }
  void add(const char* name, const std::string& text) {
    const bool item = std::string_view{name} == "item";
    const char* gate = std::string_view{name} == "rule" ? gate_words(text) : nullptr;
    if (std::string_view{name} == "finding") {
      facts.push_back({name, finding_name(say_, text)});
      return;
    }
    facts.push_back({name, item   ? ready_name(say_, text)
                           : gate ? std::string{told(say_.language, gate)}
                                  : text});
  }
  void add(const char* name, int value) { facts.push_back({name, std::to_string(value)}); }
  void add(const char* name, Length value) { facts.push_back({name, say_.height(value)}); }
  void add(const char* name, Celsius value) { facts.push_back({name, say_.temperature(value)}); }
  void add(const char* name, Pressure value) {
    if (std::string_view{name} == "strength_mpa") {
      facts.push_back({name, Amount{Measure::strength, in_megapascals(value)}});
    } else {
      facts.push_back({name, say_.pressure(value)});
    }
  }
  void add(const char* name, Frequency value) { facts.push_back({name, amount(value)}); }
  void add(const char* name, Side value) { facts.push_back({name, Term{to_text(value)}}); }
  void add(const char* name, event::Role value) { facts.push_back({name, Term{to_text(value)}}); }
  // What no sentence tells.
  template <class T>
  void add(const char* /*name*/, const T& /*value*/) {}

  const Say& say_;
  Naming naming_;
};

}  // namespace

std::string event_words(const Say& say, const Happening& what, Naming naming) {
  if (const auto* amend = std::get_if<event::Amend>(&what)) {
    return filled(said("Plan amended, {what}: {now}").english,
                  {{"what", Clause{amended_what(amend->path)}},
                   {"now", Clause{amended_value(amend->path, amend->value)}}},
                  say.voice());
  }
  EventFacts told(say, naming);
  const char* sentence = std::visit(
      [&]<class Kind>(const Kind& kind) {
        for_fields<Kind>([&](const auto& field) { told.add(kind, field); });
        return kind.says();
      },
      what);
  std::string text = filled(sentence, told.facts, say.voice());
  if (told.bay) text = say(Word::in_bay, text, *told.bay);
  // A pour of one element need not name it.
  const auto named = names_in(sentence);
  const bool says_it = std::find(named.begin(), named.end(), "element") != named.end();
  return naming.elements && told.element && !says_it ? told.element->text + ": " + text : text;
}

std::string finding_name(const Say& say, const std::string& key) {
  const auto end = key.find_first_of("/#");
  std::string place = end == std::string::npos ? std::string{} : key.substr(end);
  if (const auto event = place.rfind('#'); event != std::string::npos) place.erase(event);
  std::replace(place.begin(), place.end(), '/', ' ');
  return rule_title(say, key.substr(0, end)) + (place.empty() ? "" : "," + place);
}

std::string row_name(const Say& say, const RowPlace& place, bool two_sides) {
  if (!two_sides) return place.row.text;
  return place.row.text + " " +
         say(place.side == Side::near_side ? Word::near_side : Word::far_side);
}

std::string rule_title(const Say& say, const std::string& rule) {
  const RuleCard* card = find_card(rule);
  return card == nullptr ? rule : told(say.language, card->title);
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

std::string role_words(const Say& say, const std::string& role) {
  if (role == "foreman") return say(Word::role_foreman);
  if (role == "inspector") return say(Word::role_inspector);
  if (role == "superintendent") return say(Word::role_superintendent);
  return role;
}

std::string finding_time(const Say& say, const PourState& state, const Finding& finding) {
  const auto begun = finding.from ? finding.from : finding.to;
  if (!begun) return {};
  std::string time = say.clock_short(state.moment(*begun));
  const std::string end = finding.to ? say.clock_short(state.moment(*finding.to)) : time;
  if (end != time) time += "\u2013" + end;
  return time;
}

std::string finding_figures(const Say& say, const Finding& finding) {
  std::string measured = measured_text(finding, say.voice());
  if (!finding.limit || measured.empty()) return measured;
  return say(Word::finding_limit, measured, limit_text(finding, say.voice()));
}

}  // namespace rb::screens
