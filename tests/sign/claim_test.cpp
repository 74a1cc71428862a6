// What is signed: any field of a signature or of a witnessed enrolment changed, and it holds no
// more.
#include <doctest/doctest.h>

#include "pour/log/event_json.h"
#include "sign/claim.h"

using namespace rb;

namespace {

sign::PersonKey key(const char* digits) {
  auto pin = sign::Pin::read(digits);
  REQUIRE(pin);
  const auto sealed = sign::make_key(*pin, {1, 64});
  REQUIRE(sealed);
  auto opened = sign::open_key(*sealed, *pin);
  REQUIRE(opened);
  return *std::move(opened);
}

const PourId kPour{"W1 north"};

Event signed_event(const sign::PersonKey& by) {
  event::Sign sign{.role = event::Role::inspector, .verdict = "accepted", .comment = "cores taken"};
  sign.book = "3f2b";
  sign.number = 412;
  sign.hash = Hex{std::string(64, '7')};
  sign.events = 398;
  sign.open = {"dose-low/W1/2", "head-high/W1/near/R2#17"};
  Event event{.at = *parse_moment("2026-03-02T14:30:00.000Z"), .by = PersonId{"q1"}, .what = sign};
  sign::sign_with(by, kPour, event);
  return event;
}

}  // namespace

TEST_CASE("a signature holds over what it was made for, read back from its line too") {
  const Event event = signed_event(key("204816"));
  CHECK(sign::holds(kPour, event));
  const auto again = parse_event(to_line(event), "line");
  REQUIRE(again);
  CHECK(*again == event);
  CHECK(sign::holds(kPour, *again));
  CHECK_FALSE(sign::holds(PourId{"W1 south"}, event));
}

TEST_CASE("any field of a signature changed, and it does not hold") {
  const sign::PersonKey other = key("112358");
  const auto held = [&](auto change) {
    Event event = signed_event(key("204816"));
    change(event, std::get<event::Sign>(event.what));
    return sign::holds(kPour, event);
  };
  CHECK(held([](Event&, event::Sign&) {}));
  CHECK_FALSE(held([](Event& e, event::Sign&) { e.at += std::chrono::milliseconds{1}; }));
  CHECK_FALSE(held([](Event& e, event::Sign&) { e.by = PersonId{"f1"}; }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.role = event::Role::foreman; }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.verdict = "rejected"; }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.comment.clear(); }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.book = "3f2c"; }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.number = 413; }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.hash->digits[5] = '8'; }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.events = 399; }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.open.pop_back(); }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.open[0] += " "; }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.signature->digits[9] ^= 1; }));
  CHECK_FALSE(held([&](Event&, event::Sign& s) { s.key = other.key(); }));
  CHECK_FALSE(held([](Event&, event::Sign& s) { s.key.reset(); }));
  // A word moved from one field to the next reads otherwise.
  CHECK_FALSE(held([](Event&, event::Sign& s) {
    s.verdict = "accepted\ncomment 11:cores taken";
    s.comment.clear();
  }));
}

TEST_CASE("a witness vouches for person, role and key") {
  const sign::PersonKey witness = key("204816");
  event::Enrol enrol{.person = PersonId{"q1"},
                     .role = event::Role::inspector,
                     .made = *parse_moment("2026-03-02T04:30:00.000Z")};
  auto pin = sign::Pin::read("112358");
  const auto sealed = sign::make_key(*pin, {1, 64});
  REQUIRE(sealed);
  sign::put_key(*sealed, enrol);
  CHECK(sign::key_in(enrol) == *sealed);
  CHECK(sign::witness_holds(enrol));  // none: nothing to hold
  sign::witness_with(witness, PersonId{"f1"}, enrol);
  CHECK(sign::witness_holds(enrol));
  const auto held = [&](auto change) {
    event::Enrol changed = enrol;
    change(changed);
    return sign::witness_holds(changed);
  };
  CHECK_FALSE(held([](event::Enrol& e) { e.person = PersonId{"q2"}; }));
  CHECK_FALSE(held([](event::Enrol& e) { e.role.reset(); }));
  CHECK_FALSE(held([](event::Enrol& e) { e.key.digits[3] ^= 1; }));
  CHECK_FALSE(held([](event::Enrol& e) { e.sealed.digits[3] ^= 1; }));
  CHECK_FALSE(held([](event::Enrol& e) { e.witness = PersonId{"f2"}; }));
  CHECK_FALSE(held([](event::Enrol& e) { e.rounds = 9; }));
  CHECK(held([](event::Enrol& e) { e.from = PourId{"yesterday"}; }));  // carried to another pour
}
