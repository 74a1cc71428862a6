// Enrolments and signatures as the log has them: who may, what came after. The digits stand for
// keys; whether a signature holds is tested in tests/sign.
#include <doctest/doctest.h>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "pour/outlook/signatures.h"

using namespace rb;

namespace {

const std::string kPeople = R"("people":[{"id":"f1","name":"A. Reyes","role":"foreman"},)"
                            R"({"id":"f2","name":"B. Okafor","role":"foreman"},)"
                            R"({"id":"q1","name":"K. Lindqvist","role":"inspector"},)"
                            R"({"id":"b1","name":"T. Moreau","role":"foreman, inspector"}],)";

std::string line(const std::string& at, const std::string& what, const std::string& by) {
  return R"({"at":"2026-03-02T05:)" + at + R"(:00.000Z","by":")" + by + "\"," + what + "}\n";
}
std::string opened(const std::string& people) {
  return line("00",
              R"("do":"pour-open","pour":"P","plan":{)" + people +
                  R"("mixes":[{"id":"A","unit_weight":24,"slump":0.12,"initial_set_h":5}],)"
                  R"("elements":[{"id":"W1","length":4,"height":3,"thickness":0.3}]})",
              "f1");
}

std::string digits(char digit, std::size_t bytes) {
  return std::string(2 * bytes, digit);
}
// The key of a person is a digit again and again.
std::string enrol(const std::string& person, char key, const std::string& more = {}) {
  return R"("do":"enrol","person":")" + person + R"(","key":")" + digits(key, 32) +
         R"(","salt":")" + digits('1', 16) + R"(","rounds":3,"memory_kib":65536,"sealed":")" +
         digits('2', 72) + R"(","made":"2026-03-02T05:01:00.000Z")" + more;
}
std::string witness(const std::string& person, char key) {
  return R"(,"witness":")" + person + R"(","witness_key":")" + digits(key, 32) +
         R"(","witness_signature":")" + digits('3', 64) + '"';
}
std::string sign(const std::string& role, char key, int events, const std::string& more = {}) {
  return R"("do":"sign","role":")" + role + R"(","verdict":"accepted","key":")" + digits(key, 32) +
         R"(","book":"u","number":9,"hash":")" + digits('4', 32) + R"(","events":)" +
         std::to_string(events) + R"(,"signature":")" + digits('5', 64) + '"' + more;
}
const std::string kNote = R"("do":"note","text":"seen")";

Result<PourState> fold_of(const std::string& lines, const std::string& people = kPeople) {
  const auto script = read_script(opened(people) + lines, "a.jsonl");
  if (!script) return Failed{script.error()};
  const auto again = read_script(write_script(script->events), "again.jsonl");
  REQUIRE(again);
  CHECK(again->events == script->events);
  return fold(script->events);
}
PourState folded(const std::string& lines, const std::string& people = kPeople) {
  auto state = fold_of(lines, people);
  REQUIRE_MESSAGE(state, (state ? "" : to_text(state.error())));
  return *std::move(state);
}
std::string refused(const std::string& lines, const std::string& people = kPeople) {
  const auto state = fold_of(lines, people);
  REQUIRE_FALSE(state);
  return to_text(state.error());
}
bool says(const std::string& text, const char* part) {
  CAPTURE(text);
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the first of a pour enrols without a witness, the next before one of another role") {
  const PourState state = folded(line("01", enrol("f1", 'a'), "f1") +
                                 line("02", enrol("f2", 'b'), "f2") +  // no other role has a key
                                 line("03", enrol("q1", 'c', witness("f1", 'a')), "q1"));
  REQUIRE(state.enrolments.size() == 3);
  CHECK(state.enrolments[0].what.witness.empty());
  CHECK(state.enrolments[2].what.witness == PersonId{"f1"});
  CHECK(enrolled(state, PersonId{"q1"})->what.key.digits == digits('c', 32));
  const std::string first = line("01", enrol("f1", 'a'), "f1");
  CHECK(says(refused(first + line("02", enrol("q1", 'c'), "q1")),
             "needs a witness of another role: A. Reyes has a key"));
  CHECK(says(refused(first + line("02", enrol("f2", 'c', witness("f1", 'a')), "f2")),
             "has no other role than B. Okafor"));
  CHECK(says(refused(first + line("02", enrol("q1", 'c', witness("f1", 'd')), "q1")),
             "A. Reyes has no such key"));
  CHECK(says(refused(first + line("02", enrol("q1", 'c', witness("f2", 'd')), "q1")),
             "B. Okafor has no such key"));
}

TEST_CASE("an enrolment is made by the person, who stands in the plan, with a key of one's own") {
  CHECK(
      says(refused(line("01", enrol("q1", 'a'), "f1")), "A. Reyes entered a key for K. Lindqvist"));
  CHECK(says(refused(line("01", enrol("x1", 'a'), "x1")), "x1 is not among the people"));
  CHECK(says(refused(line("01", enrol("f1", 'a', R"(,"role":"inspector")"), "f1")),
             "does not give A. Reyes the role of inspector"));
  CHECK(says(refused(line("01", enrol("f1", 'a'), "f1") + line("02", enrol("f2", 'a'), "f2")),
             "A. Reyes has this key already"));
}

TEST_CASE("bad fields of an enrolment or a signature are refused by name") {
  const auto refusal = [](const std::string& what) {
    const auto event = parse_event(line("01", what, "f1"), "line 2");
    REQUIRE_FALSE(event);
    return to_text(event.error());
  };
  CHECK(says(refusal(R"("do":"enrol","person":"f1","key":"00")"), "field key"));
  CHECK(says(refusal(enrol("f1", 'a', R"(,"witness":"q1")")), "field witness_key: is missing"));
  CHECK(says(refusal(enrol("f1", 'a', R"(,"witness_key":")" + digits('a', 32) + '"')),
             "field witness_key: stands without witness"));
  CHECK(says(
      refusal(R"("do":"sign","role":"foreman","verdict":"ok","key":")" + digits('a', 32) + '"'),
      "field book: is missing beside key"));
  CHECK(says(refusal(R"("do":"sign","role":"foreman","verdict":"ok","number":3)"),
             "field number: stands without key"));
}

TEST_CASE("a key signs for its own person, in the role the plan gives; the newest key counts") {
  const std::string two =
      line("01", enrol("f1", 'a'), "f1") + line("02", enrol("q1", 'c', witness("f1", 'a')), "q1");
  const PourState state = folded(two + line("10", sign("foreman", 'a', 3), "f1") +
                                 line("11", enrol("f1", 'd', witness("q1", 'c')), "f1") +
                                 line("12", sign("foreman", 'd', 5), "f1"));
  const auto signatures = signatures_of(state);
  REQUIRE(signatures.size() == 2);
  CHECK(signatures[0].enrolment == std::size_t{0});  // what was signed keeps the old key
  CHECK(signatures[1].enrolment == std::size_t{2});
  CHECK(
      says(refused(two + line("10", sign("inspector", 'a', 3), "f1")), "cannot sign as inspector"));
  CHECK(says(refused(two + line("10", sign("inspector", 'a', 3), "q1")),
             "is not the one of K. Lindqvist"));
  CHECK(says(refused(two + line("11", enrol("f1", 'd', witness("q1", 'c')), "f1") +
                     line("12", sign("foreman", 'a', 4), "f1")),
             "is not the one of A. Reyes"));
}

TEST_CASE("who has a key signs with it; who has none signs by name as before") {
  const std::string plain = R"("do":"sign","role":"foreman","verdict":"accepted")";
  CHECK(folded(line("10", plain, "f1")).signs.size() == 1);
  CHECK(
      says(refused(line("01", enrol("f1", 'a'), "f1") + line("10", plain, "f1")), "enter the PIN"));
}

TEST_CASE("one person signs in one role, unless the plan gives both") {
  const PourState both =
      folded(line("01", enrol("b1", 'a'), "b1") + line("10", sign("foreman", 'a', 2), "b1") +
             line("11", sign("inspector", 'a', 3), "b1"));
  CHECK(both.signs.size() == 2);
  CHECK(
      says(refused(line("01", enrol("f1", 'a'), "f1") + line("10", sign("foreman", 'a', 2), "f1") +
                       line("11", sign("inspector", 'a', 3), "f1"),
                   ""),  // a plan that names nobody
           "has signed this pour as foreman and cannot sign as inspector too"));
}

TEST_CASE("a signature by key and an enrolment are not changed, but struck") {
  const std::string lines = line("01", R"("id":"e",)" + enrol("f1", 'a'), "f1") +
                            line("10", R"("id":"s",)" + sign("foreman", 'a', 2), "f1");
  CHECK(
      says(refused(lines +
                   line("11", R"("do":"fix","target":"s","set":{"verdict":"x"},"why":"y")", "f1")),
           "what a key signed cannot be changed"));
  CHECK(says(
      refused(lines + line("11", R"("do":"fix","target":"e","set":{"rounds":1},"why":"y")", "f1")),
      "an enrolment cannot be changed"));
  CHECK(folded(lines + line("11", R"("do":"strike","target":"s","why":"too soon")", "f1"))
            .signs.empty());
}

TEST_CASE("what came after is counted from what was signed, and what may change it apart") {
  const std::string start = line("01", enrol("f1", 'a'), "f1") + line("02", kNote, "f1");
  // The note of 05:05 came into the book before the signature, and after what it is over.
  const std::string lines =
      start + line("05", kNote, "f1") + line("10", sign("foreman", 'a', 3), "f1") +
      line("11", R"("do":"strip","element":"W1","side":"near")", "f1") +
      line("12",
           R"("id":"b","do":"blemish","element":"W1","side":"near",)"
           R"("kind":"bug holes","x":1,"z":1,"w":0.1,"h":0.1)",
           "f1") +
      line("13", R"("do":"fix","target":"b","set":{"w":0.2},"why":"y")", "f1");
  const auto one = signatures_of(folded(lines));
  REQUIRE(one.size() == 1);
  CHECK(one[0].after == 4);
  CHECK(one[0].unsettled == 1);
  const auto more =
      signatures_of(folded(lines + line("20", R"("id":"n",)" + kNote, "f1") +
                           line("21", R"("do":"strike","target":"n","why":"y")", "f1")));
  CHECK(more[0].after == 6);
  CHECK(more[0].unsettled == 3);
}
