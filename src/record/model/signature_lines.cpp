#include "record/model/signature_lines.h"

#include <fmt/format.h>

#include <set>

#include "base/short_code.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/signatures.h"
#include "pour/plan/amend.h"

namespace rb {

namespace {

constexpr const char* kNobody = "nobody";

std::string listed(const std::vector<std::string>& keys) {
  std::string text;
  for (const std::string& key : keys) text += (text.empty() ? "" : " ") + key;
  return text;
}

void put_key(SignatureLine& line, const PourState& state, const SignatureState& made,
             const event::Sign& sign) {
  if (!sign.key) return;
  line.key = short_code(sign.key->digits);
  line.public_key = sign.key->digits;
  line.signed_book = sign.book;
  line.signed_event = sign.number;
  line.signed_hash = sign.hash ? sign.hash->digits : std::string{};
  line.signed_events = sign.events;
  line.signature = sign.signature ? sign.signature->digits : std::string{};
  line.open = static_cast<int>(sign.open.size());
  line.open_findings = listed(sign.open);
  if (made.enrolment) {
    const PersonId& witness = state.enrolments[*made.enrolment].what.witness;
    line.witness = witness.empty() ? kNobody : witness.text;
  }
}

void tell(SignatureLine& line, const Voice& voice) {
  const auto say = [&](Said english, Facts facts) {
    line.told.push_back(words_of(Saying{english, std::move(facts)}, voice));
  };
  if (!line.key.empty()) {
    const Facts facts{{"name", line.by},
                      {"event", std::to_string(line.signed_event.value_or(0))},
                      {"key", line.key},
                      {"witness", line.witness}};
    if (line.witness == kNobody) {
      say(said("Signed by whoever knew the PIN of {name} on a tablet with this book, over the book "
               "as far as its event {event}. Key {key}, enrolled without a witness."),
          facts);
    } else {
      say(said("Signed by whoever knew the PIN of {name} on a tablet with this book, over the book "
               "as far as its event {event}. Key {key}, witnessed by {witness}."),
          facts);
    }
  }
  if (line.open.value_or(0) > 0) {
    say(said("Causes of findings named as open: {count}."),
        {{"count", std::to_string(*line.open)}});
  }
  const int after = line.after.value_or(0);
  const Facts facts{{"count", std::to_string(after)},
                    {"role", rb::told(voice.language, line.role.c_str())},
                    {"changing", std::to_string(line.after_changing.value_or(0))}};
  if (after == 1) {
    say(said("1 event after the {role} signed; {changing} of them may change what was signed."),
        facts);
  } else if (after > 1) {
    say(said("{count} events after the {role} signed; {changing} of them may change what was "
             "signed."),
        facts);
  }
}

}  // namespace

void put_signatures(PourRecord& record, const PourState& state, const Names& names,
                    const Voice& voice) {
  std::set<std::string> signed_roles;
  for (const SignatureState& made : signatures_of(state)) {
    const Event& e = names.event(made.ref);
    const auto* sign = std::get_if<event::Sign>(&e.what);
    if (sign == nullptr) continue;
    signed_roles.insert(to_text(sign->role));
    SignatureLine line{to_text(sign->role), names.person(e.by), sign->verdict, sign->comment,
                       names.when(made.ref)};
    line.after = static_cast<int>(made.after);
    line.after_changing = static_cast<int>(made.unsettled);
    put_key(line, state, made, *sign);
    tell(line, voice);
    record.signatures.push_back(std::move(line));
  }
  for (const char* role : words_of(event::Role{})) {
    if (!signed_roles.contains(role)) record.signatures.push_back({role, {}, {}, {}, {}});
  }
}

void put_amendments(PourRecord& record, const PourState& state, const Names& names,
                    const Voice& voice) {
  record.amendments.reserve(state.amends.size());
  for (const AmendState& amend : state.amends) {
    const event::Amend& what = amend.what;
    const std::string why =
        what.chosen ? std::string{rb::told(voice.language, event::says(*what.chosen))} : what.why;
    record.amendments.push_back({names.when(amend.ref), words_of(amended_what(what.path), voice),
                                 words_of(amended_value(what.path, amend.was), voice),
                                 words_of(amended_value(what.path, what.value), voice), why,
                                 names.by(amend.ref)});
  }
}

}  // namespace rb
