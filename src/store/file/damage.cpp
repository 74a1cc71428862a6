#include "store/file/damage.h"

#include "base/said.h"

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
  // Each a sentence of its own, that is told whole in the reader's language.
  if (event.pour) {
    return event.missing ? said("nothing of it can be read").english
                         : said("what reads of it does not fit its hash").english;
  }
  return event.missing
             ? said("nothing of it can be read; it may be of another pour").english
             : said("what reads of it does not fit its hash; it may be of another pour").english;
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
