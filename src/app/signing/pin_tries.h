// PINs tried on this device, counted in a file of the user's alone, and the key a PIN opens.
#pragma once

#include "base/path.h"
#include "pour/log/state.h"
#include "sign/person_key.h"
#include "sign/tries.h"

namespace rb {

/// In the folder of the device's key; empty where the user has none.
Path pin_tries_path();

/// How long the next try of a key's PIN must wait; none or less: not at all.
Seconds pin_wait(const Path& tries, const Hex& key, Moment now);

/// The key of an enrolment. The try is counted on the disk before it is
/// made, and taken off again when it was right; where it cannot be counted none is made (kind
/// book). Of kind refused: the PIN is wrong, or it must wait. Takes as long as Argon2id does.
Result<sign::PersonKey> unlock(const event::Enrol& own, const sign::Pin& pin, const Path& tries,
                               Moment now);
/// The same of the key a person has in a pour; of kind refused where there is none.
Result<sign::PersonKey> unlock(const PourState& state, const PersonId& person, const sign::Pin& pin,
                               const Path& tries, Moment now);

}  // namespace rb
