#include "screens/view/ready_view.h"

#include <algorithm>
#include <array>

#include "pour/outlook/walk_down.h"

namespace rb::screens {

namespace {

constexpr std::array kNames{
    Word::ready_form,    Word::ready_ties,    Word::ready_bracing, Word::ready_rebar,
    Word::ready_motors,  Word::ready_cables,  Word::ready_cords,   Word::ready_inverter,
    Word::ready_spares,  Word::ready_standby, Word::ready_access,  Word::ready_ppe,
    Word::ready_weather,
};
static_assert(kNames.size() == kWalkDown.size());

}  // namespace

std::vector<ReadyLine> make_ready_lines(const PourState& state) {
  std::vector<ReadyLine> lines;
  lines.reserve(kWalkDown.size());
  for (std::size_t i = 0; i < kWalkDown.size(); ++i) {
    lines.push_back({.item = kWalkDown[i], .word = kNames[i]});
  }
  for (const ReadyState& answer : state.ready) {  // in order of time: the last one stands
    auto line = std::find_if(lines.begin(), lines.end(),
                             [&](const ReadyLine& l) { return l.item == answer.what.item; });
    if (line == lines.end()) line = lines.insert(line, {.item = answer.what.item});
    line->ok = answer.what.ok;
    line->since = state.moment(answer.at);
    line->note = answer.what.note;
  }
  return lines;
}

ReadyCounts count(const std::vector<ReadyLine>& lines) {
  ReadyCounts counts{.all = static_cast<int>(lines.size())};
  for (const ReadyLine& line : lines) {
    if (!line.ok) continue;
    ++counts.answered;
    if (!*line.ok) ++counts.not_ok;
  }
  return counts;
}

std::string ready_name(const Say& say, const std::string& item) {
  const auto* point = std::find(kWalkDown.begin(), kWalkDown.end(), item);
  if (point == kWalkDown.end()) return item;
  return say(kNames[static_cast<std::size_t>(point - kWalkDown.begin())]);
}

}  // namespace rb::screens
