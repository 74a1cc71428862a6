// `rescue`: a new book of all that is whole in a damaged one.
#include <fmt/format.h>

#include "cli/commands.h"
#include "store/copies/rescue.h"

namespace rb {

Exit run_rescue(const RescueWish& wish) {
  const auto rescued = store::rescue_book(
      wish.from, wish.to, wish.mirror.empty() ? std::nullopt : std::optional(wish.mirror));
  if (!rescued) return report(rescued.error());
  fmt::print("Book {}: {} events are whole and kept in {}\n", rescued->tag, rescued->events,
             wish.to.string());
  if (rescued->from_mirror > 0) {
    fmt::print("  {} of them from the mirror, each with its hash checked\n", rescued->from_mirror);
  }
  if (rescued->last_good > 0) {
    fmt::print("  the old chain is whole up to event {}-{}, hash {}\n", rescued->tag,
               rescued->last_good, rescued->last_good_hash);
  }
  if (rescued->name_lost) fmt::print("  the old book's own name is lost; a new one was given\n");
  for (const DamagedEvent& event : rescued->lost) {
    fmt::print("  lost: {}{}\n", event.id.text,
               event.pour ? " of pour " + event.pour->text : std::string(" of a pour not known"));
  }
  for (const std::string& fault : rescued->faults) fmt::print("  fault: {}\n", fault);
  for (const std::string& photo : rescued->photos) fmt::print("  lacking: {}\n", photo);
  const bool whole = rescued->lost.empty() && rescued->photos.empty() && rescued->faults.empty() &&
                     !rescued->name_lost;
  if (whole) fmt::print("Nothing was lost.\n");
  return whole ? Exit::fine : Exit::findings;
}

}  // namespace rb
