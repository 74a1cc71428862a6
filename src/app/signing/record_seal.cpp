#include "app/signing/record_seal.h"

#include <fmt/format.h>

#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "pour/log/event_json.h"
#include "pour/log/log_entry.h"
#include "sign/claim.h"

namespace rb {

namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kProof = "proof";
constexpr const char* kSeal = "seal";
constexpr const char* kTail = "seal";  // what a fault of the seal itself is said of

std::string written(const Json& record) {
  return record.dump(1) + "\n";
}

std::string digest(const Json& part) {
  return store::to_hex(store::hash_of_text(part.dump()));
}

// What the device signs: each part's name and digest, a line each.
std::string claim_of(const Json& parts) {
  std::string claim = "risebook record of a day, version 1\n";
  for (const auto& [name, value] : parts.items()) {
    claim += fmt::format("{} {}:{}\n", name.size(), name, value.get<std::string>());
  }
  return claim;
}

template <class Bytes>
std::string hex_text(const Bytes& bytes) {
  return hex_of(bytes).digits;
}

// Bytes of a known number out of their text; none where they are not that.
template <class Bytes>
std::optional<Bytes> bytes_in(const Json& object, const char* name) {
  const auto at = object.find(name);
  if (at == object.end() || !at->is_string()) return std::nullopt;
  const auto bytes = bytes_of(Hex{at->get<std::string>()});
  Bytes out{};
  if (!bytes || bytes->size() != out.size()) return std::nullopt;
  std::copy(bytes->begin(), bytes->end(), out.begin());
  return out;
}

void look_at_parts(const Json& record, const Json& seal, SealLook& look) {
  const auto parts = seal.find("parts");
  if (parts == seal.end() || !parts->is_object()) {
    look.faults.push_back("The seal holds no digests.");
    return;
  }
  for (const auto& [name, value] : record.items()) {
    if (name == kSeal) continue;
    const auto known = parts->find(name);
    if (known == parts->end()) {
      look.faults.push_back(fmt::format("Part \"{}\" is not among those that were sealed.", name));
    } else if (*known != digest(value)) {
      look.faults.push_back(fmt::format("Part \"{}\" is not as it was sealed.", name));
    }
    ++look.parts;
  }
  for (const auto& [name, value] : parts->items()) {
    if (!record.contains(name)) {
      look.faults.push_back(fmt::format("Part \"{}\" was sealed and is missing.", name));
    }
    if (!value.is_string()) {
      look.faults.push_back(fmt::format("The digest of part \"{}\" is none.", name));
      return;
    }
  }
  if (seal.size() != 3 || !seal.contains("device") || !seal.contains("signature")) {
    look.faults.push_back("The seal is not as it was made.");
    return;
  }
  if (seal["device"].is_null() && seal["signature"].is_null()) return;  // told: signed by no device
  const auto key = bytes_in<store::PublicKey>(seal, "device");
  const auto signature = bytes_in<store::Signature>(seal, "signature");
  if (!key || !signature || !store::holds(claim_of(*parts), *key, *signature)) {
    look.faults.push_back("The device's signature over the record does not hold.");
    return;
  }
  look.device = store::to_hex(*key);
}

// Enrolments and signatures as the book has them; what is no event is a fault.
void look_at_people(const Json& people, SealLook& look) {
  std::map<std::string, std::map<PersonId, std::set<std::string>>> keys;
  std::size_t line = 0;
  for (const Json& one : people) {
    ++line;
    const std::string where = fmt::format("proof, people {}", line);
    const bool whole = one.is_object() && one.contains("pour") && one["pour"].is_string() &&
                       one.contains("line") && one["line"].is_string();
    const auto event =
        whole ? parse_event(one["line"].get<std::string>(), Saying{where}, Bounds::as_it_is)
              : Result<Event>(Failed{Error{}});
    if (!event) {
      look.faults.push_back(fmt::format("{}: is no event.", where));
      continue;
    }
    const PourId pour{one["pour"].get<std::string>()};
    auto& of_pour = keys[pour.text];
    if (const auto* enrol = std::get_if<event::Enrol>(&event->what)) {
      of_pour[enrol->person].insert(enrol->key.digits);
      if (!sign::witness_holds(*enrol)) {
        look.faults.push_back(fmt::format("{}: the witness's signature does not hold.", where));
      }
      continue;
    }
    const auto* sign = std::get_if<event::Sign>(&event->what);
    if (sign == nullptr || !sign->key) continue;  // by name alone: nothing to look at
    if (!sign::holds(pour, *event) || !of_pour[event->by].contains(sign->key->digits)) {
      look.faults.push_back(
          fmt::format("{}: the signature of {} does not hold.", where, event->by.text));
      continue;
    }
    look.people.push_back(
        fmt::format("Pour {}: signed as {} by whoever knew the PIN of {} (key {})", pour.text,
                    to_text(sign->role), event->by.text, sign::fingerprint(*sign->key)));
  }
}

}  // namespace

Result<void> add_proof(RecordProof& proof, const Logbook& book, const PourState& state) {
  auto hashes = book.hashes(state.pour);
  if (!hashes) return Failed{hashes.error()};
  proof.events.insert(proof.events.end(), hashes->begin(), hashes->end());
  for (EventRef ref = 0; ref < state.log.size(); ++ref) {
    const Event& event = state.log[ref].event;
    if (std::holds_alternative<event::Enrol>(event.what) ||
        std::holds_alternative<event::Sign>(event.what)) {
      proof.people.push_back({state.pour, to_line(event)});
    }
  }
  return {};
}

std::string sealed(const std::string& record, const RecordProof& proof,
                   const std::optional<store::DeviceKey>& key) {
  Json out = Json::parse(record);
  Json events = Json::array();
  for (const KeptHash& event : proof.events) {
    events.push_back({{"id", event.id.text}, {"hash", event.hash}});
  }
  Json people = Json::array();
  for (const RecordProof::Signed& one : proof.people) {
    people.push_back({{"pour", one.pour.text}, {"line", one.line}});
  }
  out[kProof] = Json{{"events", std::move(events)}, {"people", std::move(people)}};
  Json parts = Json::object();
  for (const auto& [name, value] : out.items()) parts[name] = digest(value);
  Json seal{{"parts", parts}, {"device", nullptr}, {"signature", nullptr}};
  if (key) {
    seal["device"] = store::to_hex(key->public_key());
    seal["signature"] = hex_text(key->sign(claim_of(parts)));
  }
  out[kSeal] = std::move(seal);
  return written(out);
}

Result<SealLook> look_at_record(const std::string& text) {
  const Json record = Json::parse(text, nullptr, false);
  if (record.is_discarded() || !record.is_object()) {
    return fail(Error::Kind::input, said("the record"), said("is no whole JSON object"),
                said("Give a record as JSON, as it was made"));
  }
  if (!record.contains(kSeal) || !record[kSeal].is_object()) {
    return fail(Error::Kind::input, said("the record"), said("bears no seal"),
                said("Give a record as JSON, as it was made"));
  }
  SealLook look;
  look_at_parts(record, record[kSeal], look);
  const Json proof = record.value(kProof, Json::object());
  if (proof.is_object() && proof.contains("people") && proof["people"].is_array()) {
    look_at_people(proof["people"], look);
  }
  if (proof.is_object() && proof.contains("events") && proof["events"].is_array()) {
    for (const Json& one : proof["events"]) {
      if (!one.is_object() || !one.value("id", Json{}).is_string() ||
          !one.value("hash", Json{}).is_string()) {
        continue;  // its part's digest has told
      }
      look.events.push_back(
          {EventId{one["id"].get<std::string>()}, one["hash"].get<std::string>()});
    }
  }
  // A byte that changes no part, such as a space: it is not the file that was made.
  if (look.sound() && written(record) != text) {
    look.faults.push_back(
        fmt::format("The {} holds, but the file is not byte for byte as it was "
                    "made.",
                    kTail));
  }
  return look;
}

std::vector<std::string> held_to_book(const SealLook& look, const Logbook& book) {
  std::vector<std::string> faults;
  std::size_t other = 0;
  for (const KeptHash& event : look.events) {
    const auto kept = book.hash_of_event(event.id);
    if (kept && *kept == event.hash) continue;
    if (++other > 5) continue;
    faults.push_back(fmt::format("Event {} of the record is {} in this book.", event.id.text,
                                 kept ? "another" : "not"));
  }
  if (other > 5) faults.push_back(fmt::format("And {} events more.", other - 5));
  return faults;
}

}  // namespace rb
