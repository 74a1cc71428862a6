#include "tablet.h"

#include "pour/log/event.h"
#include "pour/outlook/walk_down.h"
#include "pour/plan/plan_json.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <iterator>

namespace rb::test {

using namespace rb::screens;

Tablet::Tablet(std::vector<Event> all, Moment at, TabletSpec spec)
    : ui(spec.settings), events(std::move(all)), now(at), spec_(spec) {
  refold();
  frame();
  frame();
}

void Tablet::refold() {
  const auto folded = fold(events);
  REQUIRE_MESSAGE(folded, (folded ? "" : to_text(folded.error())));
  state = *folded;
  if (checking) report = check(*state, AsOf::now(*state, now));
  pours = {make_pour_card(*state)};
}

void Tablet::restart(std::vector<Event> all, Moment at) {
  events = std::move(all);
  now = at;
  in_pour = true;
  trouble_.reset();
  ui.drafts() = Drafts{};
  refold();
}

Scale Tablet::scale() const {
  return {spec_.width, spec_.height, ui.settings().diagonal_inches};
}

Box Tablet::glass() const {
  return {0, 0, static_cast<float>(spec_.width), static_cast<float>(spec_.height)};
}

UiInput Tablet::input() const {
  return {.width_px = spec_.width, .height_px = spec_.height};
}

void Tablet::keep(const KeepEvent& wish) {
  ++wanted;
  Event event;
  event.id = EventId{"t" + std::to_string(events.size())};
  event.at = wish.at;
  event.by = PersonId{"foreman"};
  event.what = wish.what;
  event.uncertain = wish.uncertain;
  event.entry = Entry{now, now.time_since_epoch(), "boot"};
  const auto may = admissible(*state, event);
  if (!may && refusing) {
    ++refused;
    trouble_ = Trouble{to_text(may.error()), true};
    CHECK(!may.error().what.empty());
    return;
  }
  CAPTURE(kind_text(event.what));
  REQUIRE_MESSAGE(may, (may ? "" : to_text(may.error())));
  trouble_.reset();
  events.push_back(event);
  extend(*state, event);
  if (checking) report = check(*state, AsOf::now(*state, now));
  pours = {make_pour_card(*state)};
}

void Tablet::open_pour(const OpenPour& wish) {
  Event event;
  event.id = EventId{"t0"};
  event.at = wish.at;
  event.by = PersonId{"foreman"};
  event.what = event::PourOpen{PourId{"new"}, wish.plan};
  event.entry = Entry{now, now.time_since_epoch(), "boot"};
  events = {event};
  refold();
  in_pour = true;
}

void Tablet::run(const UiInput& input) {
  World world{.now = now, .pours = &pours, .photos = photos, .trouble = trouble_};
  if (in_pour) {
    world.state = &*state;
    world.report = &report;
  }
  const UiOutput out = ui.frame(input, world);
  last_change = out.next_change;
  if (out.tone) last_tone = out.tone;
  last_press = out.press;
  for (const Intent& intent : out.intents) {
    if (const auto* wish = std::get_if<KeepEvent>(&intent)) {
      keep(*wish);
      continue;
    }
    if (const auto* settings = std::get_if<ChangeSettings>(&intent)) ui.set(settings->settings);
    if (const auto* fresh = std::get_if<OpenPour>(&intent)) open_pour(*fresh);
    if (std::holds_alternative<LeavePour>(intent)) in_pour = false;
    if (std::holds_alternative<PutTroubleAway>(intent)) trouble_.reset();
    if (std::holds_alternative<GoToPour>(intent)) in_pour = true;
    others.push_back(intent);
  }
}

void Tablet::frame() {
  run(input());
}

void Tablet::touch(Touch::Kind kind, Point at) {
  UiInput in = input();
  in.touch = Touch{kind, at, now, now.time_since_epoch()};
  run(in);
}

void Tablet::tap_at(Point at, Seconds held) {
  touch(Touch::Kind::down, at);
  now = after(now, held);
  touch(Touch::Kind::up, at);
  frame();
  ++taps;
}

void Tablet::tap_id(const std::string& id) {
  const SeenTarget* target = find_id(id);
  REQUIRE_MESSAGE(target != nullptr, "no target ", id);
  REQUIRE_MESSAGE(target->target.enabled, "not enabled: ", id);
  tap_at(target->target.box.middle());
  wait(Seconds{0.5});
}

void Tablet::tap(const std::string& words) {
  const SeenTarget* target = find(words);
  if (target == nullptr) {
    std::string all;
    for (const std::string& text : written()) all += text + " | ";
    FAIL("nothing reads \"", words, "\" alone: ", all);
  }
  REQUIRE_MESSAGE(target->target.enabled, "not enabled: ", words);
  tap_at(target->target.box.middle());
  wait(Seconds{0.5});
}

std::optional<Press> Tablet::feed(const Touch& made) {
  UiInput in = input();
  in.touch = made;
  run(in);
  return last_press;
}

void Tablet::stand(const Stall& stall) {
  UiInput in = input();
  in.stall = stall;
  run(in);
}

void Tablet::unlock() {
  frame();  // locked in the last one, drawn so in this
  for (const char* corner : {"wipe 1", "wipe 2"}) {
    const SeenTarget* target = find_id(corner);
    REQUIRE_MESSAGE(target != nullptr, corner);
    tap_at(target->target.box.middle(), Seconds{2.2});
  }
  REQUIRE_FALSE(ui.wiping());
}

void Tablet::type(const std::string& letters) {
  UiInput in = input();
  in.typed = {letters};
  run(in);
}

void Tablet::escape() {
  UiInput in = input();
  in.escape = true;
  run(in);
}

void Tablet::wait(Seconds span) {
  now = after(now, span);
  frame();
}

bool Tablet::says(const std::string& words) const {
  for (const SeenText& text : ui.probe().texts) {
    if (text.text.find(words) != std::string::npos) return true;
  }
  return false;
}

const SeenTarget* Tablet::find_id(const std::string& id) const {
  for (const SeenTarget& target : ui.probe().targets) {
    if (target.target.id == id) return &target;
  }
  return nullptr;
}

const SeenTarget* Tablet::find(const std::string& words) const {
  const SeenTarget* found = nullptr;
  for (const SeenTarget& target : ui.probe().targets) {
    if (target.text == words) return &target;
    if (target.text.rfind(words + " ", 0) != 0) continue;
    if (found != nullptr) return nullptr;
    found = &target;
  }
  return found;
}

std::vector<std::string> Tablet::written() const {
  std::vector<std::string> all;
  for (const SeenTarget& target : ui.probe().targets) all.push_back(target.text);
  return all;
}

void keys(Tablet& tablet, const std::string& what) {
  for (const char key : what) tablet.tap_id(std::string("key ") + key);
}

bool has(const Tablet& tablet, const std::string& rule) {
  const auto& found = tablet.report.findings;
  return std::any_of(found.begin(), found.end(), [&](const Finding& f) { return f.rule == rule; });
}

std::vector<Event> events_of(const std::string& path, Moment until) {
  std::ifstream file(path);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  auto script = read_script(text, path);
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  std::vector<Event> events = script->events;
  std::erase_if(events, [&](const Event& e) { return e.at > until; });
  for (std::size_t i = 0; i < events.size(); ++i) {
    if (events[i].id.empty()) events[i].id = EventId{"s" + std::to_string(i)};
    events[i].entry = Entry{events[i].at, events[i].at.time_since_epoch(), "boot"};
  }
  return events;
}

std::vector<Event> small_pour(Moment at) {
  const std::string plan =
      R"({"site":"Yard","name":"Trial wall","units":"si",)"
      R"("people":[{"id":"foreman","name":"A. Reyes","role":"foreman"}],)"
      R"("mixes":[{"id":"A","unit_weight":24,"slump":0.12,"initial_set_h":5}],)"
      R"("elements":[{"id":"W1","kind":"wall","length":4,"height":1.8,"thickness":0.25,)"
      R"("form_rating_kpa":30,"rise_limit":4,"bays":[2,2],"lifts":[0.6,1.2,1.8],)"
      R"("rows":[{"id":"R1","side":"near","z":0.4,"motors":[{"id":"M1","x":1,"reach_x":1,)"
      R"("reach_z":0.6},{"id":"M2","x":3,"reach_x":1,"reach_z":0.6}],"serves":[1,2]},)"
      R"({"id":"R2","side":"near","z":1.3,"motors":[{"id":"M3","x":1,"reach_x":1,)"
      R"("reach_z":0.6},{"id":"M4","x":3,"reach_x":1,"reach_z":0.6}],"serves":[2,3]}]}]})";
  auto parsed = parse_plan(plan, "the test's plan");
  REQUIRE_MESSAGE(parsed, (parsed ? "" : to_text(parsed.error())));
  Event open;
  open.id = EventId{"t0"};
  open.at = at;
  open.by = PersonId{"foreman"};
  open.what = event::PourOpen{PourId{"P1"}, std::make_shared<const Plan>(*parsed)};
  open.entry = Entry{at, at.time_since_epoch(), "boot"};
  return {open};
}

namespace {

// Put at the end, at the moment of the opening.
void put(std::vector<Event>& events, Happening what) {
  Event event = events.front();
  event.id = EventId{"r" + std::to_string(events.size())};
  event.what = std::move(what);
  events.push_back(std::move(event));
}

}  // namespace

std::vector<Event> in_order(std::vector<Event> events) {
  for (const char* point : kWalkDown) put(events, event::Ready{point, true, {}});
  put(events, event::Test{TicketId{"0"}, std::nullopt, celsius(20), {}, {}});
  return events;
}

std::vector<Event> hung(std::vector<Event> events) {
  const auto plan = std::get<event::PourOpen>(events.front().what).plan;
  for (const Element& element : plan->elements) {
    for (const Row& row : element.rows) {
      put(events, event::Hang{{element.id, row.side, row.id}, {}, true});
    }
  }
  return events;
}

std::vector<Event> hung_pour(Moment at) {
  return hung(ready_pour(at));
}

std::vector<Event> ready_pour(Moment at) {
  return in_order(small_pour(at));
}

void place_lift_1(Tablet& tablet, const std::vector<std::string>& hung) {
  for (const std::string& row : hung) {
    tablet.tap(row);
    tablet.tap("HUNG, CABLES FIXED");
  }
  tablet.tap("START LIFT 1");
  tablet.wait(seconds(900));
  tablet.tap("END LIFT 1");
  tablet.tap("KEEP");
}

}  // namespace rb::test
