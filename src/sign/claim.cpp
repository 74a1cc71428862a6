#include "sign/claim.h"

#include <fmt/format.h>

namespace rb::sign {

namespace {

class Claim {
 public:
  explicit Claim(std::string_view what) : text_(fmt::format("risebook {}, version 1\n", what)) {}
  Claim& add(std::string_view name, std::string_view value) {
    text_ += fmt::format("{} {}:{}\n", name, value.size(), value);
    return *this;
  }
  Claim& add(std::string_view name, int value) { return add(name, std::to_string(value)); }
  [[nodiscard]] std::string done() { return std::move(text_); }

 private:
  std::string text_;
};

}  // namespace

std::string claim_of(const PourId& pour, const Event& event, const event::Sign& sign) {
  Claim claim("signature of a pour");
  claim.add("book", sign.book)
      .add("event", sign.number.value_or(0))
      .add("hash", sign.hash.value_or(Hex{}).digits)
      .add("pour", pour.text)
      .add("events", sign.events.value_or(0))
      .add("role", to_text(sign.role))
      .add("verdict", sign.verdict)
      .add("comment", sign.comment)
      .add("person", event.by.text)
      .add("at", to_text(event.at))
      .add("key", sign.key.value_or(Hex{}).digits)
      .add("open", static_cast<int>(sign.open.size()));
  for (const std::string& key : sign.open) claim.add("finding", key);
  return claim.done();
}

std::string claim_of(const event::Enrol& enrol) {
  return Claim("enrolment of a person")
      .add("person", enrol.person.text)
      .add("role", enrol.role ? to_text(*enrol.role) : "")
      .add("key", enrol.key.digits)
      .add("salt", enrol.salt.digits)
      .add("rounds", enrol.rounds)
      .add("memory_kib", enrol.memory)
      .add("sealed", enrol.sealed.digits)
      .add("made", to_text(enrol.made))
      .add("witness", enrol.witness.text)
      .done();
}

void sign_with(const PersonKey& key, const PourId& pour, Event& event) {
  auto& sign = std::get<event::Sign>(event.what);
  sign.key = key.key();
  sign.signature = key.sign(claim_of(pour, event, sign));
}

bool holds(const PourId& pour, const Event& event) {
  const auto* sign = std::get_if<event::Sign>(&event.what);
  return sign != nullptr && sign->key && sign->signature &&
         holds(*sign->key, claim_of(pour, event, *sign), *sign->signature);
}

void witness_with(const PersonKey& key, const PersonId& witness, event::Enrol& enrol) {
  enrol.witness = witness;
  enrol.witness_key = key.key();
  enrol.witness_signature = key.sign(claim_of(enrol));
}

bool witness_holds(const event::Enrol& enrol) {
  if (enrol.witness.empty()) return true;
  return enrol.witness_key && enrol.witness_signature &&
         holds(*enrol.witness_key, claim_of(enrol), *enrol.witness_signature);
}

void put_key(const SealedKey& key, event::Enrol& enrol) {
  enrol.key = key.key;
  enrol.salt = key.salt;
  enrol.rounds = key.cost.rounds;
  enrol.memory = key.cost.memory_kib;
  enrol.sealed = key.sealed;
}

SealedKey key_in(const event::Enrol& enrol) {
  return {enrol.key, enrol.salt, {enrol.rounds, enrol.memory}, enrol.sealed};
}

}  // namespace rb::sign
