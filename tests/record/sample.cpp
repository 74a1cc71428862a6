#include "sample.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <array>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"

namespace rb::test {

namespace {

const char* kPlan = R"({"site":"Peñón Court, east core, level 14","name":"Wall W1, axis C to F",
"units":"@units","people":[{"id":"f1","name":"Inés Acuña","role":"foreman"},
{"id":"q1","name":"Joost van der Meulen","role":"inspector"},{"id":"s1","name":"R. Ōta","role":"superintendent"}],
"mixes":[{"id":"C40","unit_weight":23.8,"slump":0.16,"initial_set_h":5.5,"set_ref_temp":20,"cement_class":"retarded"}],
"elements":[{"id":"W1","kind":"wall","length":12.0,"height":4.2,"thickness":0.3,"form_rating_kpa":60,"form_mass_kg_m2":58,
"rise_limit":2.0,"bays":[3,3,3,3],"openings":[{"x":4,"z":1.1,"w":1.2,"h":1.5}],"lifts":[1.4,2.8,4.2],
"rows":[@rows]}]})";

std::string plan(const std::string& units) {
  std::string rows;
  for (int r = 1; r <= 4; ++r) {
    std::string motors;
    for (int m = 1; m <= 6; ++m) {
      motors += fmt::format(R"({}{{"id":"R{}M{}","x":{},"reach_x":1.0,"reach_z":0.7}})",
                            m > 1 ? "," : "", r, m, 2 * m - 1);
    }
    rows += fmt::format(R"({}{{"id":"R{}","side":"near","z":{},"motors":[{}],"serves":[{}]}})",
                        r > 1 ? "," : "", r, 0.6 + 1.1 * (r - 1), motors, std::min(r, 3));
  }
  std::string text = kPlan;
  text.replace(text.find("@units"), 6, units);
  text.replace(text.find("@rows"), 5, rows);
  return text;
}

class Story {
 public:
  // A line at so many seconds after 10:00 UTC, 5 in the morning there.
  void at(int second, const std::string& by, const std::string& what, const std::string& id = {},
          int entered_after = 1) {
    const Moment moment = *parse_moment("2026-03-02T10:00:00.000Z") + std::chrono::seconds{second};
    std::string line = fmt::format(R"({{"at":"{}","by":"{}",{}}})", to_text(moment), by, what);
    // What a book of before holds may be longer than what one takes now.
    auto event = parse_event(line, "sample", Bounds::as_it_is);
    REQUIRE_MESSAGE(event, to_text(event.error()));
    event->id = EventId{id.empty() ? fmt::format("e{}", events.size()) : id};
    event->entry = Entry{moment + std::chrono::seconds{entered_after},
                         seconds(second + entered_after), "boot-1"};
    events.push_back(*event);
  }
  void run(int from, int to, const std::string& row) {
    at(from, "f1", fmt::format(R"("do":"run","element":"W1","row":"{}","vpm":6000)", row));
    at(to, "f1", fmt::format(R"("do":"rest","element":"W1","row":"{}")", row));
  }
  std::vector<Event> events;
};

}  // namespace

Sample sample_pour(const char* units, int more_runs, const std::string& note) {
  Story s;
  s.at(-1800, "f1", R"("do":"pour-open","pour":"P-2026-014","plan":)" + plan(units));
  s.at(-1500, "f1", R"("do":"ready","item":"form braced and plumb","ok":true)");
  s.at(-1440, "f1", R"("do":"ready","item":"safety cables on every motor","ok":true)");
  s.at(
      -1380, "f1",
      R"("do":"ready","item":"stand-by vibrator tried","ok":false,"note":"spare inverter due 05:30")");
  s.at(-900, "f1", R"("do":"air-temp","temp":11.5)");
  for (int row = 1; row <= 2; ++row) {
    s.at(
        -600 + row, "f1",
        fmt::format(
            R"("do":"hang","element":"W1","row":"R{0}","motors":["R{0}M1","R{0}M2","R{0}M3","R{0}M4","R{0}M5","R{0}M6"],"cables":true)",
            row));
  }
  const char* kWhen[3] = {"2026-03-02T09:31:00Z", "2026-03-02T10:22:00Z", "2026-03-02T11:40:00Z"};
  for (int truck = 0; truck < 3; ++truck) {
    const int t = truck * 3600;
    s.at(t - 120, "q1",
         fmt::format(
             R"("do":"truck","ticket":"{}","mix":"C40","volume":5.0,"batched":"{}","arrived":"{}")",
             48120 + truck, kWhen[truck], kWhen[truck]));
    s.at(t - 60, "q1",
         fmt::format(R"("do":"test","ticket":"{}","slump":0.15,"temp":{},"air":2.1)", 48120 + truck,
                     18.5 + truck));
    s.at(t, "f1", fmt::format(R"("do":"discharge","ticket":"{}","element":"W1")", 48120 + truck));
  }
  s.at(600, "q1", R"("do":"test","ticket":"48120","slump":0.14,"temp":19.0)");
  for (int lift = 1; lift <= 3; ++lift) {
    const int t = (lift - 1) * 3600;
    s.at(t + 30, "f1", fmt::format(R"("do":"lift-start","element":"W1","lift":{})", lift));
    s.at(t + 1500, "f1",
         fmt::format(R"("do":"top","element":"W1","height":{},"bay":2)", 1.4 * lift - 0.5),
         lift == 2 ? "top2" : "", lift == 2 ? 900 : 1);
    s.at(t + 2700, "f1",
         fmt::format(R"("do":"lift-end","element":"W1","lift":{},"height":{})", lift, 1.4 * lift));
    s.run(t + 2710, t + 2710 + 95, fmt::format("R{}", lift));
    if (lift < 3) s.run(t + 2820, t + 2820 + (lift == 2 ? 60 : 110), fmt::format("R{}", lift + 1));
  }
  s.at(
      3000, "f1",
      R"("do":"insert","element":"W1","lift":1,"group":3,"spacing":0.45,"seconds":12,"depth_below":0.15)");
  s.at(3200, "f1", R"("do":"hold","reason":"pump line blocked at the elbow")");
  s.at(3560, "f1", R"("do":"resume","reason":"line cleared")");
  s.at(5600, "f1", R"("do":"take-down","element":"W1","row":"R1")");
  s.at(
      5900, "f1",
      R"("do":"hang","element":"W1","row":"R3","motors":["R1M1","R1M2","R1M3","R1M4","R1M5","R1M6"],"cables":false)");
  s.at(6000, "f1", R"("do":"run","element":"W1","row":"R2")");
  s.at(6001, "f1", R"("do":"run","element":"W1","row":"R2")");
  s.at(6100, "f1", R"("do":"rest","element":"W1","row":"R2")");
  s.at(
      6200, "f1",
      R"("do":"note","text":"Paste at the joint of bay 2, ≤ 5 mm; tied off. Temperature 19 °C.","element":"W1","lift":2)");
  s.at(6300, "f1",
       R"("do":"fix","target":"top2","set":{"height":2.35},"why":"read from the wrong mark")");
  s.at(6400, "q1", R"("do":"note","text":"=SUM(A1:A9) typed by mistake")", "wrong");
  s.at(6500, "q1", R"("do":"strike","target":"wrong","why":"not meant for this pour")");
  if (!note.empty()) {
    s.at(6600, "q1", R"("do":"note","text":)" + note);
  }
  for (int i = 0; i < more_runs; ++i) s.run(9300 + 20 * i, 9310 + 20 * i, "R4");
  const int end = 10800 + 20 * more_runs;
  s.at(end, "f1", R"("do":"pour-close")");
  s.at(
      end + 600, "f1",
      R"("do":"sign","role":"foreman","verdict":"placed as logged","comment":"Row 3 ran short on lift 2; seen and vibrated by hand.")");
  s.at(end + 86400, "q1", R"("do":"strip","element":"W1","side":"near")");
  s.at(
      end + 86460, "q1",
      R"("do":"blemish","element":"W1","side":"near","kind":"honeycomb","x":6.2,"z":2.6,"w":0.5,"h":0.2,"note":"behind the form tie")",
      "bl1");
  s.at(end + 90000, "q1",
       R"("do":"repair","target":"bl1","note":"cut back and filled, procedure R-2")");

  auto folded = fold(s.events);
  REQUIRE_MESSAGE(folded, to_text(folded.error()));
  Sample made{*folded, {}, {}};
  CheckReport& report = made.report;
  report.asof = AsOf::end(made.state);
  const auto& lifts = made.state.elements[0].lifts;
  for (std::size_t i = 0; i < lifts.size(); ++i) {
    LiftReport l;
    l.index = i;
    l.lift = lifts[i].lift;
    l.placed_from = lifts[i].started;
    l.placed_to = lifts[i].last_reading;
    l.top = metres(1.4 * static_cast<double>(i + 1));
    l.rise_mean = metres_per_hour(1.887);
    l.rise_window = metres_per_hour(i == 1 ? 2.31 : 1.9);
    l.rise_limit = metres_per_hour(2.0);
    l.under_share = i == 1 ? 0.057 : 0.004;
    l.min_dose = seconds(i == 1 ? 60 : 92);
    l.mean_dose = seconds(118.25);
    report.lifts.push_back(l);
  }
  for (std::size_t i = 0; i < made.state.runs.size(); ++i) {
    report.runs.push_back({i, kilopascals(21.5 + static_cast<double>(i % 7))});
  }
  Finding stop;
  stop.rule = "cable-open";
  stop.severity = Severity::stop;
  stop.element = 0;
  stop.row = 2;
  stop.side = Side::near_side;
  stop.from = seconds(7000);
  stop.source.words = "common practice, no source";
  stop.advice = "Stop the row. Fix and look at every safety cable, then log the hang again.";
  stop.sentence = "W1 row R3 ran with its cables not confirmed";
  Finding mend;
  mend.rule = "dose-low";
  mend.severity = Severity::mend;
  mend.element = 0;
  mend.lift = 2;
  mend.bay = 1;
  mend.side = Side::near_side;
  mend.from = seconds(3630);
  mend.to = seconds(8000);
  mend.measured = share(0.057);
  mend.limit = share(0.02);
  mend.source = {.code = Source::Code::standard, .words = "the plan gives none"};
  mend.advice = "Run row R3 again while the concrete still yields, or vibrate bay 2 by hand.";
  mend.sentence = "{measured} of lift {lift} got less than {90 s}";
  Finding rise = mend;
  rise.rule = "rise-fast";
  rise.measured = amount(metres_per_hour(2.31));
  rise.limit = amount(metres_per_hour(2.0));
  rise.source = {.code = Source::Code::plan, .field = "rise_limit"};
  rise.advice = "Slow the pump. The form designer's rating governs.";
  rise.sentence = "lift {lift} rose by {measured}";
  Finding noted;
  noted.rule = "unsigned";
  noted.advice = "Have the inspector sign.";
  noted.source.words = "house rule";
  noted.sentence = "no signature of an inspector";
  report.findings = {stop, mend, rise, noted};

  SideDose dose{0, Side::near_side, {}};
  for (int i = 0; i < 240; ++i) {
    const double x = 0.05 * i;
    const double wave = 20 * ((i / 10) % 4);
    dose.patches.push_back(
        {metres(x), metres(0), metres(0.05), metres(1.1), seconds(95), seconds(205)});
    dose.patches.push_back(
        {metres(x), metres(1.1), metres(0.05), metres(1.5), seconds(110 - wave), seconds(10)});
    dose.patches.push_back(
        {metres(x), metres(2.6), metres(0.05), metres(0.3), seconds(0), seconds(0)});
    dose.patches.push_back(
        {metres(x), metres(2.9), metres(0.05), metres(1.0), seconds(130), seconds(560)});
  }
  made.dose.push_back(std::move(dose));
  return made;
}

Sample photographed_pour(const char* units) {
  Sample made = sample_pour(units);
  std::vector<Event> events;
  for (const LogEntry& entry : made.state.log) events.push_back(entry.event);
  const EventRef mended = made.state.repairs.at(0);
  const std::string repair = made.state.log[mended].event.id.text;
  const std::array<std::string, 5> targets{"bl1", "bl1", "bl1", repair, ""};
  for (std::size_t i = 0; i < targets.size(); ++i) {
    Event event = events.back();
    event.id = EventId{fmt::format("ph{}", i)};
    event::Photo photo;
    if (targets.at(i).empty()) {
      photo.element = ElementId{"W1"};
    } else {
      photo.target = EventId{targets.at(i)};
    }
    photo.sha256 = Hex{std::string(63, '0') + std::to_string(i)};
    photo.name = fmt::format("IMG_{}.jpg", i);
    photo.bytes = 1000 + static_cast<int>(i);
    event.what = photo;
    events.push_back(event);
  }
  auto folded = fold(events);
  REQUIRE_MESSAGE(folded, to_text(folded.error()));
  made.state = *folded;
  REQUIRE(made.state.photos.size() == targets.size());
  const std::string png = dose_map_png(make_dose_map(made.state, made.dose.at(0)), {}, 600, {});
  made.photos = [png](const std::string& sha256) -> PhotoFile {
    switch (sha256.back()) {
      case '1':
        return {PhotoStanding::missing, {}};
      case '2':
        return {PhotoStanding::altered, {}};
      case '3':
        return {PhotoStanding::whole, "\xFF\xD8\xFF no photo at all \xFF\xD9"};
      default:
        return {PhotoStanding::whole, png};
    }
  };
  return made;
}

DailyRecord sample_record(const char* units, int more_runs, const std::string& note) {
  const Sample sample = sample_pour(units, more_runs, note);
  return make_daily_record({sample.input()}, *parse_day("2026-03-02", kOffset), kOffset, kBook);
}

}  // namespace rb::test
