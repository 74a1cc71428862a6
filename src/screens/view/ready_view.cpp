#include "screens/view/ready_view.h"

#include <algorithm>
#include <array>

namespace rb::screens {

namespace {

struct ReadyPoint {
  const char* item;  // in scripts and books: never changed, only added to
  Word word;
};
// Common practice, no source.
constexpr std::array kPoints{
    ReadyPoint{"form", Word::ready_form},
    ReadyPoint{"ties", Word::ready_ties},
    ReadyPoint{"bracing", Word::ready_bracing},
    ReadyPoint{"rebar", Word::ready_rebar},
    ReadyPoint{"motors tight", Word::ready_motors},
    ReadyPoint{"safety cables", Word::ready_cables},
    ReadyPoint{"cords", Word::ready_cords},
    ReadyPoint{"inverter setting", Word::ready_inverter},
    ReadyPoint{"spare motors", Word::ready_spares},
    ReadyPoint{"standby internal vibrators", Word::ready_standby},
    ReadyPoint{"access", Word::ready_access},
    ReadyPoint{"ppe", Word::ready_ppe},
    ReadyPoint{"weather", Word::ready_weather},
};

}  // namespace

std::vector<ReadyLine> make_ready_lines(const PourState& state) {
  std::vector<ReadyLine> lines;
  lines.reserve(kPoints.size());
  for (const ReadyPoint& point : kPoints) lines.push_back({.item = point.item, .word = point.word});
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
  const auto point = std::find_if(kPoints.begin(), kPoints.end(),
                                  [&](const ReadyPoint& p) { return item == p.item; });
  return point == kPoints.end() ? item : say(point->word);
}

}  // namespace rb::screens
