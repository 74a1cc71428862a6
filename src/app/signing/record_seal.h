// The seal of a day's record as JSON: a digest of each of its parts, with the hashes of the events
// it was drawn from and the people's signatures as they stand in the book, and the device's
// signature over all. It can be looked at without the book, and held against it.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "pour/log/state.h"
#include "store/book/logbook.h"
#include "store/file/device_key.h"

namespace rb {

/// What of the book goes into a record to prove the rest.
struct RecordProof {
  struct Signed {
    PourId pour;
    std::string line;  ///< of an enrolment or a signature, as a script has it
  };
  std::vector<KeptHash> events;  ///< of the record's pours, in order of entry
  std::vector<Signed> people;    ///< enrolments and signatures, in order of entry
};
/// Of a pour, added to what others gave. An error of kind book where it cannot be read.
Result<void> add_proof(RecordProof& proof, const Logbook& book, const PourState& state);

/// The record's JSON with its proof and its seal behind it. Without a key it bears digests alone,
/// and says so. The text given must be an object.
std::string sealed(const std::string& record, const RecordProof& proof,
                   const std::optional<store::DeviceKey>& key);

/// What a look at a sealed record found.
struct SealLook {
  std::string device;               ///< public key, hexadecimal; empty: no device signed it
  std::size_t parts = 0;            ///< whose digests were looked at
  std::vector<std::string> people;  ///< plain sentences: whose signatures hold
  std::vector<KeptHash> events;
  std::vector<std::string> faults;  ///< plain sentences, the part named
  [[nodiscard]] bool sound() const { return faults.empty(); }
};
/// An error of kind input where the text is no JSON object, or bears no seal.
Result<SealLook> look_at_record(const std::string& text);

/// The faults of a record held against the book it was drawn from: an event whose hash is another.
std::vector<std::string> held_to_book(const SealLook& look, const Logbook& book);

}  // namespace rb
