// load-old: a load was discharged too long after batching, or is about to be.
#include "check/rule.h"

namespace rb {

namespace {

// Until when a load has aged: the end of its discharge, or its beginning where no end was logged.
// While the pour goes on it ages in the truck, too, and at the form until its end is logged.
std::optional<Seconds> aged_until(const Look& look, const TruckState& truck) {
  // What is left of it ages on.
  if (truck.ended() && truck.left().value_or(Volume{}) <= Volume{}) return truck.ended();
  if (look.asof.live && !look.state.closed) return look.asof.at;
  return truck.ended() ? truck.ended() : truck.discharged();
}

void look_load_old(const Look& look, const Rule& rule, Findings& out) {
  const auto& limit = look.plan().limits.load_age_max;
  for (const std::size_t t : look.trucks_at_issue) {
    const TruckState& truck = look.state.trucks[t];
    const auto until = aged_until(look, truck);
    if (!truck.what || !until) continue;
    const Seconds batched = look.state.told(*truck.ref, truck.what->batched);
    const Seconds age = *until - batched;
    if (!over(age, limit.value)) continue;
    Finding f = found(rule);
    f.element = truck.element();
    f.ticket = truck.ticket;
    f.from = batched;
    // One that waits is told of when it grows old; it may have been sent back since.
    f.to = truck.discharged() ? *until : batched + limit.value;
    f.measured = amount(age, Measure::age);
    f.limit = amount(limit.value, Measure::age);
    f.source = limit_source(rule, limit.from);
    f.ref = truck.parts.empty() ? truck.ref : truck.parts.back().ref;
    f.sentence = truck.discharged()
                     ? said("ticket {ticket}: discharged {measured} after batching, limit {limit}")
                     : said("ticket {ticket}: waits {measured} after batching, limit {limit}");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kLoadOld{
    {"load-old", said("Load too old"), Severity::mend, Cost::perhaps,
     "concrete that is stiffening before it is placed",
     said("ASTM C94, 90 min until its 2021 edition left the figure to the purchaser"),
     "load_age_max_s 5400 s, batching to end of discharge", "plan, by the purchaser",
     said("Test slump and temperature; ask the inspector before placing more of it")},
    look_load_old};

}  // namespace rb
