#include "record/model/load_lines.h"

#include <set>

#include "record/model/names.h"

namespace rb {

namespace {

class Loads {
 public:
  explicit Loads(const PourState& state) : state_(state), names_(state) {}

  std::vector<TruckLine> lines() {
    for (const TruckState& truck : state_.trucks) load(truck);
    for (const TestState& test : state_.tests) {
      if (!told_.contains(test.ref)) put_test(more(test.what.ticket), test);
    }
    return std::move(lines_);
  }

 private:
  TruckLine& more(const TicketId& ticket) {
    TruckLine line;
    line.ticket = ticket.text;
    return lines_.emplace_back(std::move(line));
  }

  void load(const TruckState& truck) {
    TruckLine& line = more(truck.ticket);
    if (truck.what) {
      line.mix = truck.what->mix.text;
      line.volume = truck.what->volume;
      line.batched = truck.what->batched;
      line.arrived = truck.what->arrived;
      line.water_added = truck.what->water_added;
      line.returned = truck.what->returned;
    }
    if (!truck.parts.empty()) {
      put_part(line, truck.parts.front());
      const auto poured = names_.moment(truck.ended() ? truck.ended() : truck.discharged());
      if (poured && line.batched) line.age = between(*line.batched, *poured);
    }
    bool first = true;
    for (const TestState& test : state_.tests) {
      if (test.what.ticket != truck.ticket) continue;
      told_.insert(test.ref);
      put_test(first ? lines_.back() : more(truck.ticket), test);
      first = false;
    }
    for (std::size_t i = 1; i < truck.parts.size(); ++i) {
      put_part(more(truck.ticket), truck.parts[i]);
    }
  }

  void put_part(TruckLine& line, const PartState& part) const {
    if (part.element) line.element = names_.element(*part.element);
    line.part = part.volume;
    line.discharged = names_.moment(part.from);
    line.ended = names_.moment(part.to);
  }

  void put_test(TruckLine& line, const TestState& test) const {
    line.tested = names_.moment(test.at);
    line.slump = test.what.slump;
    line.temp = test.what.temp;
    line.air = test.what.air;
    line.density = test.what.density;
  }

  const PourState& state_;
  Names names_;
  std::set<EventRef> told_;
  std::vector<TruckLine> lines_;
};

}  // namespace

std::vector<TruckLine> load_lines(const PourState& state) {
  return Loads{state}.lines();
}

}  // namespace rb
