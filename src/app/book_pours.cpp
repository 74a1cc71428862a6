#include "app/book_pours.h"

#include "pour/fold.h"

namespace rb {

Result<std::vector<PourState>> pours_of(const Logbook& book,
                                        const std::optional<std::string>& pour) {
  const auto all = book.pours();
  if (!all) return Failed{all.error()};
  std::vector<PourState> states;
  std::string known;
  for (const PourSummary& summary : *all) {
    known += (known.empty() ? "" : ", ") + summary.pour.text;
    if (pour && summary.pour.text != *pour) continue;
    const auto events = book.events(summary.pour);
    if (!events) return Failed{events.error()};
    auto state = fold(*events);
    if (!state) return Failed{state.error()};
    states.push_back(std::move(*state));
  }
  if (states.empty() && pour) {
    return fail(Error::Kind::input, book.file().string(), "holds no pour " + *pour,
                known.empty() ? "It holds no pour yet" : "It holds " + known);
  }
  return states;
}

}  // namespace rb
