#include "check/face/stripped.h"

#include "pour/log/log_entry.h"

namespace rb {

std::vector<Stripped> stripped(const Look& look) {
  std::vector<Stripped> all;
  all.reserve(look.state.strips.size());
  for (const EventRef ref : look.state.strips) {
    const LogEntry& entry = look.state.log[ref];
    const auto& strip = std::get<event::Strip>(entry.event.what);
    const Element* element = look.plan().find(strip.element);
    if (element == nullptr) continue;
    const auto index = static_cast<std::size_t>(element - look.plan().elements.data());
    const Seconds at = look.state.clock(entry.when);
    if (const auto verdict = judge_strip(look.state, index, strip.side, at)) {
      all.push_back({index, strip.side, ref, at, *verdict});
    }
  }
  return all;
}

std::string leave_by(const Look& look, const StripVerdict& verdict) {
  if (!verdict.permit) return {};
  const PersonId& by = look.state.log[look.state.permits[*verdict.permit].ref].event.by;
  const Person* person = look.plan().find(by);
  return person == nullptr || person->name.empty() ? by.text : person->name;
}

}  // namespace rb
