// What is reviewed, amended and found broken: it reads, writes and folds; a bad field is refused by
// its name; what is taken back leaves no trace.
#include <doctest/doctest.h>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "pour/outlook/form.h"

using namespace rb;

namespace {

const std::string kPlan =
    R"({"mixes":[{"id":"A","unit_weight":24,"slump":0.12,"initial_set_h":5}],)"
    R"("people":[{"id":"f1","name":"A. Reyes","role":"foreman"},)"
    R"({"id":"q1","name":"K. Lindqvist","role":"inspector"}],)"
    R"("elements":[{"id":"W1","length":4,"height":3,"thickness":0.3,"bays":[2,2],"lifts":[0.6,1.2],)"
    R"("rows":[{"id":"R1","side":"near","z":0.5,"serves":[1],"motors":[)"
    R"({"id":"M1","x":1,"reach_x":1,"reach_z":0.6},{"id":"M2","x":3,"reach_x":1,"reach_z":0.6}]}]}]})";
const std::string kFigures = R"("figures":"0123456789abcdef")";

std::string line(const std::string& at, const std::string& what, const char* by = "f1") {
  return R"({"at":"2026-03-02T05:)" + at + R"(:00.000Z","by":")" + by + "\"," + what + "}\n";
}
std::string opened() {
  return line("00", R"("do":"pour-open","pour":"P","plan":)" + kPlan);
}

PourState folded(const std::string& lines) {
  const auto script = read_script(opened() + lines, "a.jsonl");
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  const auto again = read_script(write_script(script->events), "again.jsonl");
  REQUIRE(again);
  CHECK(again->events == script->events);
  auto state = fold(script->events);
  REQUIRE(state);
  // One by one it comes to the same.
  auto grown = fold(std::span{script->events}.first(1));
  REQUIRE(grown);
  for (std::size_t i = 1; i < script->events.size(); ++i) extend(*grown, script->events[i]);
  CHECK(*grown == *state);
  return *std::move(state);
}

std::string refusal(const std::string& what) {
  const auto event = parse_event(line("01", what), "line 2");
  REQUIRE_FALSE(event);
  return to_text(event.error());
}
std::string refused(const std::string& lines) {
  const auto script = read_script(opened() + lines, "a.jsonl");
  REQUIRE_FALSE(script);
  return to_text(script.error());
}
bool says(const std::string& text, const char* part) {
  CAPTURE(text);
  return text.find(part) != std::string::npos;
}

// Seconds a place of the row shook.
double shook(const PourState& state, std::size_t place) {
  const auto rows = shaking(state, 0, state.last, Unended::to_next_event);
  double sum = 0;
  for (const auto& span : rows[0][place].spans()) sum += in_seconds(span.to - span.from);
  return sum;
}

const std::string kRow = R"("element":"W1","row":"R1")";
const std::string kRun = R"("do":"run",)" + kRow;
const std::string kRest = R"("do":"rest",)" + kRow;
const std::string kHang = R"("do":"hang",)" + kRow + R"(,"motors":[],"cables":true)";
std::string out(const char* motor) {
  return R"("do":"motor-out","motor":")" + std::string{motor} + '"';
}

}  // namespace

TEST_CASE("a finding is accepted or sent back for its figures, by name, with a reason") {
  const std::string accept = R"("do":"accept","finding":"dose-low/W1/1",)" + kFigures;
  const PourState state =
      folded(line("10", accept + R"(,"note":"seen on the form")", "q1") + line("11", accept, "q1") +
             line("12", R"("do":"send-back","finding":"dose-low/W1/1",)" + kFigures +
                            R"(,"reason":"cores first")") +
             line("13", accept));
  REQUIRE(state.reviews.size() == 3);  // said twice, it was said once
  CHECK(state.log[2].sense == LogEntry::Sense::repeats);
  CHECK(state.reviews[0].accepted);
  CHECK(state.reviews[0].why == "seen on the form");
  CHECK_FALSE(state.reviews[1].accepted);
  CHECK(state.reviews[1].why == "cores first");
  CHECK(state.reviews[2].accepted);
  const PourState struck = folded(line("10", R"("id":"a",)" + accept) +
                                  line("11", R"("do":"strike","target":"a","why":"wrong one")"));
  CHECK(struck.reviews.empty());
}

TEST_CASE("bad fields of review are refused by name") {
  CHECK(says(refusal(R"("do":"accept","finding":"x","figures":"0123")"), "field figures"));
  CHECK(says(refusal(R"("do":"accept","finding":"x","figures":"0123456789ABCDEF")"),
             "field figures"));
  CHECK(says(refusal(R"("do":"accept",)" + kFigures), "field finding: is missing"));
  CHECK(says(refusal(R"("do":"send-back","finding":"x",)" + kFigures), "field reason"));
  CHECK(says(refusal(R"("do":"motor-out")"), "field motor"));
  CHECK(says(refusal(R"("do":"reinspect","target":"b1")"), "field ok"));
  CHECK(says(refusal(R"("do":"amend","path":"name","why":"x")"), "field value"));
  CHECK(says(refusal(R"("do":"amend","path":"name","value":"x")"), "field why"));
}

TEST_CASE("a motor out of work shakes nothing from then on, until the row is hung anew") {
  // Ran 10 min, of which the last 4 with one motor; then 5 min; then, hung anew, 3 min.
  const std::string lines = line("01", kHang) + line("02", kRun) + line("08", out("M2")) +
                            line("12", kRest) + line("20", kRun) + line("25", kRest);
  const PourState before = folded(lines);
  CHECK(shook(before, 0) == 900);
  CHECK(shook(before, 1) == 360);
  const PourState after = folded(lines + line("30", kHang) + line("31", kRun) + line("34", kRest));
  CHECK(shook(after, 0) == 1080);
  CHECK(shook(after, 1) == 540);
  REQUIRE(after.motors_out.size() == 1);
  CHECK(after.motors_out[0].places == std::vector<MotorOutState::Place>{{0, 0, 1}});
  CHECK(after.hangs[1].cables);  // the same hang, a place poorer
  CHECK(after.hangs[1].ref == after.hangs[0].ref);
}

TEST_CASE("a row never logged as hung counts whole up to the motor's end") {
  const PourState state = folded(line("02", kRun) + line("08", out("M1")) + line("12", kRest));
  CHECK(shook(state, 0) == 360);
  CHECK(shook(state, 1) == 600);
  CHECK(state.hanging(0, 0) == nullptr);  // nobody logged it as hung
  const PourState both = folded(line("02", kRun) + line("08", out("M1")) + line("10", out("M2")) +
                                line("12", kRest) + line("13", kRun) + line("14", kRest));
  CHECK(shook(both, 0) == 360);
  CHECK(shook(both, 1) == 480);
}

TEST_CASE("a motor out of work stays so over a take-down nobody answers with a hang") {
  const std::string down = R"("do":"take-down",)" + kRow;
  const std::string lines = line("01", kHang) + line("02", kRun) + line("04", out("M2")) +
                            line("06", down) + line("10", kRun) + line("15", kRest);
  const PourState state = folded(lines);
  CHECK(state.hanging(0, 0) == nullptr);
  CHECK(shook(state, 0) == 420);  // the first run, never rested, counts to the next event
  CHECK(shook(state, 1) == 120);
  const PourState again = folded(lines + line("20", kHang) + line("21", kRun) + line("22", kRest));
  CHECK(shook(again, 1) == 180);
}

TEST_CASE("with its last motor out a run is over, and a rest says nothing new") {
  const PourState state = folded(line("01", kHang) + line("02", kRun) + line("08", out("M1")) +
                                 line("09", out("M2")) + line("12", kRest));
  REQUIRE(state.runs.size() == 1);
  CHECK(state.runs[0].to == seconds(540));
  CHECK(state.log.back().sense == LogEntry::Sense::repeats);
  const PourState struck =
      folded(line("01", kHang) + line("02", kRun) + line("08", out("M1")) +
             line("09", R"("id":"o",)" + out("M2")) + line("12", kRest) +
             line("13", R"("do":"strike","target":"o","why":"it was M1 alone")"));
  CHECK(struck.runs[0].to == seconds(720));
  CHECK(shook(struck, 1) == 600);
}

TEST_CASE("a spare out of work leaves the place it stood in") {
  const std::string hang = R"("do":"hang",)" + kRow + R"(,"motors":["S9","M2"],"cables":true)";
  const PourState state =
      folded(line("01", hang) + line("02", kRun) + line("08", out("S9")) + line("12", kRest));
  CHECK(shook(state, 0) == 360);
  CHECK(shook(state, 1) == 600);
}

TEST_CASE("a motor nobody knows is refused; one out already, or hung nowhere, says nothing new") {
  CHECK(says(refused(line("08", out("M7"))), "motor M7 is not in the plan and hangs nowhere"));
  CHECK(says(refused(line("08", out("M1") + R"(,"element":"W9")")), "element W9"));
  const PourState state = folded(line("01", kHang) + line("08", out("M1")) + line("09", out("M1")));
  CHECK(state.log.back().sense == LogEntry::Sense::repeats);
  const PourState down =
      folded(line("01", kHang) + line("05", R"("do":"take-down",)" + kRow) + line("08", out("M1")));
  REQUIRE(down.motors_out.size() == 1);
  CHECK(down.motors_out[0].places.empty());
}

namespace {
const std::string kBlemish =
    R"("id":"b1","do":"blemish","element":"W1","side":"near","kind":"honeycomb","x":1,"z":0.2,"w":1,"h":0.4)";
const std::string kSha =
    R"("sha256":")" + std::string(64, 'a') + R"(","name":"face.jpg","bytes":4321)";
}  // namespace

TEST_CASE(
    "a blemish has its outline and depth, a repair its method, and both are looked at again") {
  const PourState state = folded(
      line("10", kBlemish + R"(,"depth":0.03,"outline":[[1,0.2],[2,0.2],[1,0.6]])") +
      line("11", R"("id":"r1","do":"repair","target":"b1","note":"patched","method":"cut out",)"
                 R"("product":"mortar R4","who":"crew 2")") +
      line("12", R"("do":"reinspect","target":"r1","ok":true,"note":"sound")", "q1") +
      line("13", R"("do":"reinspect","target":"b1","ok":false)", "q1") +
      line("14", R"("do":"photo","target":"b1",)" + kSha) +
      line("15", R"("do":"photo","element":"W1",)" + kSha) +
      line("16", R"("do":"inspect","element":"W1","side":"far","note":"by lamp")", "q1"));
  CHECK(state.inspections.size() == 1);
  CHECK(state.reinspections.size() == 2);
  CHECK(state.photos.size() == 2);
  const auto& blemish = std::get<event::Blemish>(state.log[state.blemishes[0]].event.what);
  CHECK(in_square_metres(blemish.area()) == doctest::Approx(0.2));  // half of 1 m x 0.4 m
  CHECK(blemish.depth == metres(0.03));
  const auto& repair = std::get<event::Repair>(state.log[state.repairs[0]].event.what);
  CHECK(repair.product == "mortar R4");
}

TEST_CASE("what is wrong with a blemish, a re-inspection or a photo is refused by name") {
  const std::string ends = R"(,"outline":[[1,0.2],[2,0.2]])";
  CHECK(says(refusal(kBlemish + ends), "field outline: needs three points"));
  CHECK(says(refusal(kBlemish + R"(,"outline":[[1,0.2],[2.5,0.2],[1,0.6]])"),
             "field outline: leaves the patch"));
  CHECK(says(refusal(kBlemish + R"(,"outline":[[1,"a"]])"), "field outline: is"));
  CHECK(says(refusal(R"("do":"photo",)" + kSha), "field target: is missing"));
  CHECK(says(refusal(R"("do":"photo","element":"W1","sha256":"abc","name":"a.jpg","bytes":1)"),
             "field sha256"));
  CHECK(says(refusal(R"("do":"photo","element":"W1","name":"../a.jpg","bytes":1,"sha256":")" +
                     std::string(64, '0') + '"'),
             "field name"));
  CHECK(says(refusal(R"("do":"photo","element":"W1","name":"a.jpg","bytes":0,"sha256":")" +
                     std::string(64, '0') + '"'),
             "field bytes"));
  CHECK(says(refused(line("10", R"("id":"n","do":"note","text":"x")") +
                     line("11", R"("do":"reinspect","target":"n","ok":true)")),
             "no blemish or repair n to look at again"));
  CHECK(says(refused(line("10", R"("id":"n","do":"note","text":"x")") +
                     line("11", R"("do":"photo","target":"n",)" + kSha)),
             "no blemish or repair n to be on a photo"));
  CHECK(says(refused(line("11", R"("do":"photo","target":"n",)" + kSha)),
             "field target: names \"n\""));
}

TEST_CASE("blemishes go by the trade's names, however they were written") {
  using event::Defect;
  CHECK(event::defect_named("honeycomb") == Defect::honeycomb);
  CHECK(event::defect_named("Bug-holes") == Defect::bug_holes);
  CHECK(event::defect_named("SAND_STREAK") == Defect::sand_streak);
  CHECK_FALSE(event::defect_named("rust"));
  CHECK_FALSE(event::defect_named(""));
  CHECK_FALSE(event::defect_named("bug"));
  const auto words = event::words_of(Defect{});
  for (std::size_t i = 0; i < words.size(); ++i) {
    CHECK(event::defect_named(words[i]) == static_cast<Defect>(i));
    CHECK(std::string{to_text(static_cast<Defect>(i))} == words[i]);
  }
}
