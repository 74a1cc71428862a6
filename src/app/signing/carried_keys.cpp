#include "app/signing/carried_keys.h"

#include <algorithm>

#include "app/book_pours.h"

namespace rb {

namespace {

constexpr std::size_t kMostPours = 30;

bool is_same(const Person& here, const Plan& there, const event::Enrol& key) {
  const Person* known = there.find(here.id);
  if (known == nullptr || known->name.empty() || known->name != here.name) return false;
  return !key.role || here.has_role(to_text(*key.role));
}

}  // namespace

Result<std::vector<event::Enrol>> carried_keys(const Logbook& book, const PourState& state) {
  std::vector<const Person*> without;
  for (const Person& person : state.plan->people) {
    if (enrolled(state, person.id) == nullptr) without.push_back(&person);
  }
  std::vector<event::Enrol> keys;
  auto pours = book.pours_with(event::Enrol::kWord);
  if (!pours) return Failed{pours.error()};
  if (pours->size() > kMostPours) pours->resize(kMostPours);
  for (const PourId& pour : *pours) {
    if (without.empty()) break;
    if (pour == state.pour) continue;
    const auto read = read_pour(book, pour);
    if (!read || !read->state) continue;  // what ails it is told where it is looked at
    std::erase_if(without, [&](const Person* person) {
      const EnrolState* made = enrolled(*read->state, person->id);
      if (made == nullptr || !is_same(*person, *read->state->plan, made->what)) return false;
      event::Enrol& key = keys.emplace_back(made->what);
      if (key.from.empty()) key.from = pour;
      return true;
    });
  }
  return keys;
}

}  // namespace rb
