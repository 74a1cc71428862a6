// What a signature is made over: the same text from the same event, on any tablet and in ten years.
// A name and a value a line, each value with its length before it, so that no two claims read
// alike.
#pragma once

#include <string>

#include "pour/log/event.h"
#include "sign/person_key.h"

namespace rb::sign {

/// Of a signature of a pour: book, event number, hash, pour, events of it, role, verdict, comment,
/// person, moment, what is left open. The signature itself is not in it.
std::string claim_of(const PourId& pour, const Event& event, const event::Sign& sign);

/// Of what a witness vouches for: the person, the role and the key as it was made.
std::string claim_of(const event::Enrol& enrol);

/// Signs an event whose `what` is a Sign with all its other fields.
void sign_with(const PersonKey& key, const PourId& pour, Event& event);
/// Whether the signature in it is one of its own key over it; false where it has none.
bool holds(const PourId& pour, const Event& event);

void witness_with(const PersonKey& key, const PersonId& witness, event::Enrol& enrol);
/// The same of the witness's; true where there is no witness.
bool witness_holds(const event::Enrol& enrol);

/// What an enrolment keeps of a key, and the key it keeps.
void put_key(const SealedKey& key, event::Enrol& enrol);
SealedKey key_in(const event::Enrol& enrol);

}  // namespace rb::sign
