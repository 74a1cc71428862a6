#include "pour/plan/plan.h"

#include "trade/motors/force.h"
#include "trade/motors/power.h"

#include <algorithm>

namespace rb {

const char* to_text(ElementKind kind) {
  switch (kind) {
    case ElementKind::wall:
      return "wall";
    case ElementKind::column:
      return "column";
    case ElementKind::deck:
      return "deck";
  }
  return "";
}

const char* to_text(Side side) {
  return side == Side::near_side ? "near" : "far";
}

namespace {

template <class Items, class Wanted>
auto find_by_id(const Items& items, const Wanted& id) {
  const auto found =
      std::find_if(items.begin(), items.end(), [&](const auto& item) { return item.id == id; });
  return found == items.end() ? nullptr : &*found;
}

}  // namespace

const Row* Element::find_row(const RowId& row, Side side) const {
  const auto found = std::find_if(rows.begin(), rows.end(),
                                  [&](const Row& r) { return r.id == row && r.side == side; });
  return found == rows.end() ? nullptr : &*found;
}

std::size_t Element::bay_at(Length x) const {
  Length end;
  for (std::size_t bay = 0; bay < bays.size(); ++bay) {
    end += bays[bay];
    if (x < end) return bay;
  }
  return bays.size() - 1;
}

Length Element::bay_start(std::size_t bay) const {
  Length start;
  for (std::size_t i = 0; i < bay; ++i) start += bays[i];
  return start;
}

trade::Taper Element::taper() const {
  if (kind == ElementKind::deck) return {height, height, thickness};
  return {thickness, thickness_top.value_or(thickness), height};
}

Area Element::bay_area(std::size_t bay) const {
  return trade::section_area(section, bays[bay], through());
}

namespace {

Length across_in(const Element& element, const Beam& beam, std::size_t bay) {
  const Length start = element.bay_start(bay);
  const Length from = std::max(*beam.x, start);
  const Length to = std::min(*beam.x + beam.width, start + element.bays[bay]);
  return std::max(Length{}, to - from);
}

}  // namespace

Length Element::beam_in(const Beam& beam, std::size_t bay) const {
  if (!beam.x) return bays[bay];
  return across_in(*this, beam, bay) > Length{} ? through() : Length{};
}

Volume Element::beam_volume(std::size_t bay) const {
  Volume sum;
  for (const Beam& beam : beams) {
    const Length wide = beam.x ? across_in(*this, beam, bay) : beam.width;
    sum += wide * beam.depth * (beam.x ? through() : bays[bay]);
    if (!beam.x) continue;
    for (const Beam& other : beams) {
      if (!other.x) sum -= wide * other.width * std::min(beam.depth, other.depth);
    }
  }
  return sum;
}

Volume Element::volume(std::size_t bay, Length from, Length to) const {
  const trade::Taper thick = taper();
  if (section == trade::Section::round) {
    return trade::volume_between(section, bays[bay], thick, from, to);
  }
  // Between the edges of openings the net width stays as it is, so the middle's thickness is the
  // mean.
  std::vector<Length> cuts{from, to};
  if (!thick.even()) {
    for (const Patch& o : openings) {
      for (const Length& edge : {o.z, o.z + o.h}) {
        if (edge > from && edge < to) cuts.push_back(edge);
      }
    }
    std::sort(cuts.begin(), cuts.end());
  }
  Volume sum;
  if (from <= Length{} && to > Length{}) sum += beam_volume(bay);
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    const Patch slab{bay_start(bay), cuts[i - 1], bays[bay], cuts[i] - cuts[i - 1]};
    sum += (slab.w * slab.h - trade::covered(openings, slab)) *
           thick.at((cuts[i - 1] + cuts[i]) / 2.0);
  }
  return sum;
}

bool Element::has_rows(Side side) const {
  return std::any_of(rows.begin(), rows.end(), [&](const Row& row) { return row.side == side; });
}

namespace {

// As it is compared: without spaces around, in small letters.
std::string plain(std::string_view word) {
  const auto space = [](char c) { return c == ' ' || c == '\t'; };
  while (!word.empty() && space(word.front())) word.remove_prefix(1);
  while (!word.empty() && space(word.back())) word.remove_suffix(1);
  std::string small{word};
  for (char& c : small) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return small;
}

}  // namespace

bool Person::has_role(std::string_view asked) const {
  const std::string wanted = plain(asked);
  std::string_view left = role;
  while (true) {
    const std::size_t comma = left.find(',');
    if (plain(left.substr(0, comma)) == wanted) return !wanted.empty();
    if (comma == std::string_view::npos) return false;
    left.remove_prefix(comma + 1);
  }
}

bool meet(const Element& a, const Element& b) {
  const auto names = [](const Element& one, const Element& other) {
    return std::find(one.meets.begin(), one.meets.end(), other.id) != one.meets.end();
  };
  return names(a, b) || names(b, a);
}

bool feeds(const Inverter& inverter, const MotorId& motor) {
  return std::find(inverter.motors.begin(), inverter.motors.end(), motor) != inverter.motors.end();
}

bool feeds_by_trunk(const Inverter& inverter, const MotorId& motor) {
  if (!inverter.trunk || !feeds(inverter, motor)) return false;
  const auto& named = inverter.trunk->motors;
  return named.empty() || std::find(named.begin(), named.end(), motor) != named.end();
}

ApparentPower Generator::gives() const {
  return rating * derate.value_or(trade::kDerate);
}

// One without a name is known by its figures: two alike may be two machines, but if they are one,
// it bears both loads.
std::vector<std::vector<std::size_t>> Plan::by_generator() const {
  std::vector<std::vector<std::size_t>> all;
  for (std::size_t i = 0; i < power.size(); ++i) {
    if (!power[i].generator) continue;
    const auto same = std::find_if(all.begin(), all.end(), [&](const auto& fed) {
      return power[fed.front()].generator == power[i].generator;
    });
    if (same == all.end()) {
      all.push_back({i});
    } else {
      same->push_back(i);
    }
  }
  return all;
}

Frequency MotorType::working() const {
  return work_speed.value_or(top_speed * trade::kWorkingShare);
}

const Element* Plan::find(const ElementId& element) const {
  return find_by_id(elements, element);
}
const Mix* Plan::find(const MixId& mix) const {
  return find_by_id(mixes, mix);
}
const Person* Plan::find(const PersonId& person) const {
  return find_by_id(people, person);
}

}  // namespace rb
