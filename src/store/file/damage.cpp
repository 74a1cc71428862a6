#include "store/file/damage.h"

namespace rb {

std::vector<DamagedEvent> damage_of(const Damage& damage, const PourId& pour,
                                    std::int64_t first_whole, std::int64_t last_whole) {
  std::vector<DamagedEvent> events;
  for (const auto& event : damage.events) {
    const bool among = event.number > first_whole && event.number < last_whole;
    if (event.pour ? *event.pour == pour : among) events.push_back(event);
  }
  return events;
}

std::string what_of(const DamagedEvent& event) {
  std::string what =
      event.missing ? "nothing of it can be read" : "what reads of it does not fit its hash";
  if (!event.pour) what += "; it may be of another pour";
  return what;
}

std::string ids_text(const std::vector<DamagedEvent>& events) {
  std::string text;
  for (std::size_t i = 0; i < events.size();) {
    std::size_t end = i + 1;
    while (end < events.size() && events[end].number == events[end - 1].number + 1) ++end;
    if (!text.empty()) text += ", ";
    text += events[i].id.text;
    if (end - i > 1) text += (end - i == 2 ? ", " : " to ") + events[end - 1].id.text;
    i = end;
  }
  return text;
}

}  // namespace rb
