#include "screens/plan/plan_pages.h"

#include <algorithm>
#include <array>
#include <initializer_list>

#include "pour/log/kinds_paper.h"
#include "screens/plan/plan_field_table.h"
#include "screens/plan/plan_fields.h"
#include "trade/pressure/cited.h"

namespace rb::screens {

namespace {

using Page = PlanEdit::Page;
using Name = PlanEdit::Name;

struct Shape {
  ElementKind kind;
  trade::Section section;
  Word word;
};
constexpr std::array kShapes{
    Shape{ElementKind::wall, trade::Section::rect, Word::plan_wall},
    Shape{ElementKind::column, trade::Section::rect, Word::plan_column},
    Shape{ElementKind::column, trade::Section::round, Word::plan_round_column},
    Shape{ElementKind::deck, trade::Section::rect, Word::plan_deck}};
constexpr std::array kCements{Word::plan_cement_plain, Word::plan_cement_retarded,
                              Word::plan_cement_blended, Word::plan_cement_blended_retarded,
                              Word::plan_cement_high_blend};
constexpr std::array kCementClasses{
    trade::CementClass::plain, trade::CementClass::retarded, trade::CementClass::blended,
    trade::CementClass::blended_retarded, trade::CementClass::high_blend};
constexpr std::array kMethods{trade::PressureMethod::aci347, trade::PressureMethod::ciria108,
                              trade::PressureMethod::din18218};
// In the order of event::Role.
constexpr std::array kRoles{Word::plan_foreman, Word::plan_inspector, Word::plan_superintendent};

template <class Items, class Item>
std::size_t place_in(const Items& items, const Item& item) {
  const auto found = std::find(items.begin(), items.end(), item);
  return found == items.end() ? 0 : static_cast<std::size_t>(found - items.begin());
}

template <class Items>
std::size_t place_in_ids(const Items& items, const std::string& id) {
  const auto found =
      std::find_if(items.begin(), items.end(), [&](const auto& i) { return i.id.text == id; });
  return found == items.end() ? 0 : static_cast<std::size_t>(found - items.begin());
}

std::size_t shape_place(const Element& e) {
  const auto found = std::find_if(kShapes.begin(), kShapes.end(), [&](const Shape& s) {
    return s.kind == e.kind && s.section == e.section;
  });
  return found == kShapes.end() ? 0 : static_cast<std::size_t>(found - kShapes.begin());
}

// The foreman's, where a plan names a role that is none of ours.
std::size_t role_place(const std::string& role) {
  const auto words = words_of(event::Role{});
  return place_in(words, role);
}

void go(PlanEdit& edit, Page page, std::size_t of) {
  edit.page = page;
  edit.of = of;
  edit.turn = 0;
  edit.computed.reset();
}

class Tiles {
 public:
  Tiles(const Say& say, const PlanEdit& edit) : say_(say), edit_(edit) {}

  std::vector<PlanTile> of_page() {
    // In the order of Page.
    using Fill = void (*)(Tiles&);
    static constexpr std::array<Fill, 9> kFills{
        [](Tiles& t) { t.pour(); },     [](Tiles& t) { t.element(); },
        [](Tiles& t) { t.bays(); },     [](Tiles& t) { t.lifts(); },
        [](Tiles& t) { t.rows(); },     [](Tiles& t) { t.mix(); },
        [](Tiles& t) { t.person(); },   [](Tiles& t) { t.limits(); },
        [](Tiles& t) { t.computing(); }};
    static_assert(static_cast<std::size_t>(Page::compute) + 1 == kFills.size());
    kFills.at(static_cast<std::size_t>(edit_.page))(*this);
    return std::move(out_);
  }

 private:
  [[nodiscard]] const PlanDraft& draft() const { return edit_.draft; }
  [[nodiscard]] const Plan& plan() const { return edit_.draft.plan; }
  [[nodiscard]] const Element& shown() const { return plan().elements[edit_.of]; }
  [[nodiscard]] const ElementGuesses& guesses() const { return draft().guesses[edit_.of]; }

  void figure(PlanField field, std::size_t item = 0, bool guessed = false) {
    const FieldRef ref{field, edit_.of, item};
    std::string label = field_label(say_, draft(), ref);
    if (is_default(draft(), ref)) label += " \u00B7 " + say_(Word::plan_default);
    // What it is called in tests and touches does not change with the language.
    out_.push_back({{.id = "plan " + field_label(Say{}, draft(), ref),
                     .value = field_text(say_, draft(), ref),
                     .label = label,
                     .guessed = guessed},
                    [ref](PlanEdit& edit) {
                      edit.field = ref;
                      edit.typed.clear();
                      edit.computed.reset();
                    }});
  }
  void figures(std::initializer_list<PlanField> fields, bool guessed = false) {
    for (const PlanField field : fields) figure(field, 0, guessed);
  }
  // What the table lists on this page.
  void listed() {
    for (const FieldRow& row : field_rows()) {
      const FieldRef ref{row.field, edit_.of, 0};
      if (row.page != edit_.page || !is_asked(draft(), ref, row)) continue;
      figure(row.field);
    }
  }
  void text(Name name, const std::string& id, const std::string& value, Word label,
            bool guessed = false) {
    out_.push_back({{.id = "plan " + id,
                     .value = value.empty() ? "\u2013" : value,
                     .label = say_(label),
                     .guessed = guessed,
                     .free_text = true,
                     .symbol = Symbol::pencil},
                    [name, value](PlanEdit& edit) {
                      edit.naming = name;
                      edit.text = value;
                    }});
  }
  void choice(const std::string& id, const std::string& value, Word label,
              std::function<void(PlanEdit&)> next) {
    out_.push_back({{.id = "plan " + id, .value = value, .label = say_(label)}, std::move(next)});
  }
  void page(const std::string& id, const std::string& value, const std::string& label, Page to,
            std::size_t of, bool guessed, bool free_text = false) {
    out_.push_back({{.id = "plan " + id,
                     .value = value,
                     .label = label,
                     .guessed = guessed,
                     .free_text = free_text,
                     .symbol = Symbol::forward},
                    [to, of](PlanEdit& edit) { go(edit, to, of); }});
  }
  void add(const std::string& id, Word what, std::function<void(PlanEdit&)> more) {
    out_.push_back({{.id = "plan add " + id,
                     .value = say_(Word::plan_add),
                     .label = say_(what),
                     .symbol = Symbol::plus,
                     .look = Look::act},
                    std::move(more)});
  }

  void pour() {
    text(Name::pour, "name", plan().name, Word::plan_name, draft().name_guessed);
    text(Name::site, "site", plan().site, Word::plan_site);
    choice("units", say_(plan().units == Units::us ? Word::units_us : Word::units_si),
           Word::plan_units, [](PlanEdit& edit) {
             Units& units = edit.draft.plan.units;
             units = units == Units::si ? Units::us : Units::si;
           });
    for (std::size_t i = 0; i < plan().elements.size(); ++i) {
      const Element& e = plan().elements[i];
      const ElementGuesses& g = draft().guesses[i];
      const std::string sizes = say_.height_bare(e.length) + " \u00D7 " + say_.height(e.height);
      page("element " + e.id.text, e.id.text, sizes, Page::element, i, g.bays || g.lifts || g.rows,
           true);
    }
    add("element", Word::plan_element, [](PlanEdit& edit) {
      add_element(edit.draft);
      go(edit, Page::element, edit.draft.plan.elements.size() - 1);
    });
    for (std::size_t i = 0; i < plan().mixes.size(); ++i) {
      const Mix& m = plan().mixes[i];
      page("mix " + m.id.text, m.id.text, say_(Word::plan_mix), Page::mix, i, draft().mix_guessed,
           true);
    }
    for (std::size_t i = 0; i < plan().people.size(); ++i) {
      const Person& p = plan().people[i];
      page("person " + p.id.text, p.name.empty() ? "\u2013" : p.name,
           say_(kRoles[role_place(p.role)]), Page::person, i, false, true);
    }
    page("limits", method_name(), say_(Word::plan_limits), Page::limits, 0, false);
    add("mix", Word::plan_mix, [](PlanEdit& edit) {
      add_mix(edit.draft);
      go(edit, Page::mix, edit.draft.plan.mixes.size() - 1);
    });
    add("person", Word::plan_people, [](PlanEdit& edit) {
      add_person(edit.draft);
      go(edit, Page::person, edit.draft.plan.people.size() - 1);
    });
  }

  [[nodiscard]] std::string method_name() const { return trade::cited(plan().pressure_method); }

  void element() {
    const Element& e = shown();
    text(Name::element, "id", e.id.text, Word::plan_element);
    const std::size_t shape = shape_place(e);
    choice("kind", say_(kShapes[shape].word), Word::plan_kind, [shape](PlanEdit& edit) {
      const Shape& next = kShapes[(shape + 1) % kShapes.size()];
      set_kind(edit.draft, edit.of, next.kind);
      set_section(edit.draft, edit.of, next.section);
    });
    figures({PlanField::length, PlanField::height});
    if (e.section != trade::Section::round) figure(PlanField::thickness);
    figures({PlanField::form_rating, PlanField::rise_limit});
    page("bays", std::to_string(e.bays.size()), say_(Word::plan_bays), Page::bays, edit_.of,
         guesses().bays);
    page("lifts", std::to_string(e.lifts.size()), say_(Word::plan_lifts), Page::lifts, edit_.of,
         guesses().lifts);
    page("rows", std::to_string(e.rows.size()), say_(Word::plan_rows), Page::rows, edit_.of,
         guesses().rows);
  }

  void bays() {
    figure(PlanField::bay_count, 0, guesses().bays);
    for (std::size_t i = 0; i < shown().bays.size(); ++i) figure(PlanField::bay, i);
  }

  void lifts() {
    figure(PlanField::lift_count, 0, guesses().lifts);
    for (std::size_t i = 0; i < shown().lifts.size(); ++i) figure(PlanField::lift, i);
    listed();
    choice("strip leave", say_(shown().strip_permit ? Word::plan_asked : Word::plan_not_asked),
           Word::plan_strip_leave, [](PlanEdit& edit) {
             bool& asked = edit.draft.plan.elements[edit.of].strip_permit;
             asked = !asked;
           });
  }

  void rows() {
    const bool guessed = guesses().rows;
    const bool deck = shown().kind == ElementKind::deck;
    page("compute", say_(Word::plan_compute),
         say_(deck ? Word::plan_compute_deck : Word::plan_compute_what), Page::compute, edit_.of,
         false);
    out_.back().tile.look = Look::act;
    figures({PlanField::row_lowest, PlanField::row_apart, PlanField::row_motors}, guessed);
    const bool both = guesses().pattern.both_sides;
    choice("sides", say_(both ? Word::plan_side_both : Word::plan_side_one), Word::plan_sides,
           [](PlanEdit& edit) {
             RowPattern pattern = edit.draft.guesses[edit.of].pattern;
             pattern.both_sides = !pattern.both_sides;
             set_pattern(edit.draft, edit.of, pattern);
           });
    figure(PlanField::reach_x, 0, guessed);
    figure(PlanField::reach_z, 0, guessed);
    figure(PlanField::reach_pressure);
    for (std::size_t i = 0; i < shown().rows.size(); ++i) figure(PlanField::row, i);
  }

  void computing() {
    if (plan().mixes.size() > 1) {
      const std::string shown_mix = wish_for(draft(), edit_.of).mix.id.text;
      choice("planned mix", shown_mix, Word::plan_mix, [shown_mix](PlanEdit& edit) {
        const auto& mixes = edit.draft.plan.mixes;
        const std::size_t at = place_in_ids(mixes, shown_mix);
        edit.draft.wish.mix.id = mixes[(at + 1) % mixes.size()].id;
        edit.computed.reset();
      });
      out_.back().tile.free_text = true;
    }
    listed();
  }

  void mix() {
    const Mix& m = plan().mixes[edit_.of];
    text(Name::mix, "mix id", m.id.text, Word::plan_mix);
    figures({PlanField::unit_weight, PlanField::slump, PlanField::initial_set, PlanField::set_temp},
            draft().mix_guessed);
    listed();
    const std::size_t cement = place_in(kCementClasses, m.cement);
    choice("cement", say_(kCements[cement]), Word::plan_cement, [cement](PlanEdit& edit) {
      edit.draft.plan.mixes[edit.of].cement = kCementClasses[(cement + 1) % kCements.size()];
    });
  }

  void person() {
    const Person& p = plan().people[edit_.of];
    text(Name::person, "person", p.name, Word::plan_name);
    const std::size_t role = role_place(p.role);
    choice("role", say_(kRoles[role]), Word::plan_role, [role](PlanEdit& edit) {
      edit.draft.plan.people[edit.of].role = words_of(event::Role{})[(role + 1) % kRoles.size()];
    });
  }

  void limits() {
    const std::size_t method = place_in(kMethods, plan().pressure_method);
    choice("method", trade::cited(kMethods[method]), Word::plan_pressure, [method](PlanEdit& edit) {
      edit.draft.plan.pressure_method = kMethods[(method + 1) % kMethods.size()];
    });
    listed();
  }

  const Say& say_;
  const PlanEdit& edit_;
  std::vector<PlanTile> out_;
};

}  // namespace

std::vector<PlanTile> plan_tiles(const Say& say, const PlanEdit& edit) {
  return Tiles(say, edit).of_page();
}

std::string plan_page_title(const Say& say, const PlanEdit& edit) {
  const Plan& plan = edit.draft.plan;
  const auto of_element = [&](Word what) {
    return plan.elements[edit.of].id.text + " \u00B7 " + say(what);
  };
  switch (edit.page) {
    case Page::pour:
      return plan.name.empty() ? say(Word::plan_title) : plan.name;
    case Page::element:
      return of_element(kShapes[shape_place(plan.elements[edit.of])].word);
    case Page::bays:
      return of_element(Word::plan_bays);
    case Page::lifts:
      return of_element(Word::plan_lifts);
    case Page::rows:
      return of_element(Word::plan_rows);
    case Page::mix:
      return plan.mixes[edit.of].id.text + " \u00B7 " + say(Word::plan_mix);
    case Page::person:
      return say(Word::plan_people);
    case Page::limits:
      return say(Word::plan_limits);
    case Page::compute:
      return of_element(plan.elements[edit.of].kind == ElementKind::deck ? Word::plan_compute_deck
                                                                         : Word::plan_compute_what);
  }
  return {};
}

std::optional<Page> page_before(Page page) {
  if (page == Page::pour) return std::nullopt;
  if (page == Page::compute) return Page::rows;
  const bool of_element = page == Page::bays || page == Page::lifts || page == Page::rows;
  return of_element ? Page::element : Page::pour;
}

bool may_remove(const PlanEdit& edit) {
  if (edit.page == Page::mix) return edit.draft.plan.mixes.size() > 1;
  return edit.page == Page::element || edit.page == Page::person;
}

void remove_shown(PlanEdit& edit) {
  Plan& plan = edit.draft.plan;
  const auto at = static_cast<std::ptrdiff_t>(edit.of);
  if (edit.page == Page::element) remove_element(edit.draft, edit.of);
  if (edit.page == Page::mix) plan.mixes.erase(plan.mixes.begin() + at);
  if (edit.page == Page::person) plan.people.erase(plan.people.begin() + at);
  go(edit, Page::pour, 0);
}

}  // namespace rb::screens
