// What is done to a pour by who reviews and signs it: findings accepted or sent back, people's
// keys, the plan amended; and what belongs to it of motors, repairs and photos.
#pragma once

#include <optional>
#include <string>
#include <tuple>

#include "base/hex.h"
#include "pour/log/kinds_paper.h"

namespace rb {

namespace event {

// Sizes of what is kept of keys and signatures; sign/ makes and reads them.
inline constexpr Span kFigures{8, 8, "bytes"};     ///< a digest of a finding's figures
inline constexpr Span kSalt{16, 16, "bytes"};      ///< of a PIN
inline constexpr Span kSealed{72, 72, "bytes"};    ///< nonce, tag and seed of a key
inline constexpr Span kPinRounds{1, 100};          ///< passes of Argon2id
inline constexpr Span kPinMemory{8, 4194304, ""};  ///< KiB of it

/// What was found is taken as it is, with whoever logs it for a name. It holds for these figures
/// only: `finding` is the group's key, `figures` the digest of what it measured (check/review.h).
struct Accept {
  std::string finding{};
  Hex figures{};
  std::string note{};
  static constexpr const char* kWord = "accept";
  static constexpr auto fields() {
    return std::tuple{Field{"finding", &Accept::finding},
                      Field{"figures", &Accept::figures, kFigures},
                      Field{"note", &Accept::note, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const {
    return note.empty() ? said("Accepted: {finding}") : said("Accepted: {finding} ({note})");
  }
  bool operator==(const Accept&) const = default;
};
/// What was found is not taken: somebody has to put it right or explain it.
struct SendBack {
  std::string finding{};
  Hex figures{};
  std::string reason{};
  static constexpr const char* kWord = "send-back";
  static constexpr auto fields() {
    return std::tuple{Field{"finding", &SendBack::finding},
                      Field{"figures", &SendBack::figures, kFigures},
                      Field{"reason", &SendBack::reason}};
  }
  [[nodiscard]] const char* says() const { return said("Sent back: {finding} ({reason})"); }
  bool operator==(const SendBack&) const = default;
};
/// A motor no longer works: where it hangs nothing shakes until something is hung there anew.
struct MotorOut {
  MotorId motor{};
  std::optional<ElementId> element{};  ///< none: wherever it hangs
  std::string why{};
  std::optional<Chosen> chosen{};
  static constexpr const char* kWord = "motor-out";
  static constexpr auto fields() {
    return std::tuple{Field{"motor", &MotorOut::motor}, Field{"element", &MotorOut::element},
                      Field{"why", &MotorOut::why, {}, Need::may},
                      Field{"chosen", &MotorOut::chosen}};
  }
  [[nodiscard]] const char* says() const {
    return why.empty() ? said("Motor {motor} out of work")
                       : said("Motor {motor} out of work: {why}");
  }
  bool operator==(const MotorOut&) const = default;
};
/// A repair, or a blemish left as it was, looked at again.
struct Reinspect {
  EventId target{};
  bool ok = false;
  std::string note{};
  static constexpr const char* kWord = "reinspect";
  static constexpr auto fields() {
    return std::tuple{Field{"target", &Reinspect::target}, Field{"ok", &Reinspect::ok},
                      Field{"note", &Reinspect::note, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const {
    return ok ? said("Looked at again: accepted") : said("Looked at again: not accepted");
  }
  bool operator==(const Reinspect&) const = default;
};
/// A stripped face was inspected, all of it: what is told of no blemish was not found. Without it a
/// face without blemishes is one that nobody looked at.
struct Inspect {
  ElementId element{};
  Side side = Side::near_side;
  std::string note{};
  static constexpr const char* kWord = "inspect";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &Inspect::element}, Field{"side", &Inspect::side},
                      Field{"note", &Inspect::note, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const { return said("Face of {element} inspected, {side}"); }
  bool operator==(const Inspect&) const = default;
};
/// A photo kept beside the book by the hash of its file, which is never altered: of a blemish, a
/// repair, or an element.
struct Photo {
  EventId target{};  ///< a blemish or a repair; empty: of the element
  std::optional<ElementId> element{};
  Hex sha256{};
  std::string name{};  ///< the file's own, without a folder
  int bytes = 0;
  static constexpr const char* kWord = "photo";
  static constexpr auto fields() {
    return std::tuple{Field{"target", &Photo::target, {}, Need::may},
                      Field{"element", &Photo::element},
                      Field{"sha256", &Photo::sha256, kHashBytes}, Field{"name", &Photo::name},
                      Field{"bytes", &Photo::bytes, {1, 52428800, ""}}};
  }
  [[nodiscard]] const char* says() const { return said("Photo {name}"); }
  bool operator==(const Photo&) const = default;
};
/// The plan put right or added to while the pour goes on: one path of those amend.h lists.
struct Amend {
  std::string path{};
  std::string value{};  ///< JSON text
  std::string why{};
  std::optional<Chosen> chosen{};
  static constexpr const char* kWord = "amend";
  static constexpr auto fields() {
    return std::tuple{Field{"path", &Amend::path}, ValueField{"value", &Amend::value},
                      Field{"why", &Amend::why}, Field{"chosen", &Amend::chosen}};
  }
  [[nodiscard]] const char* says() const { return said("Plan amended, {path}: {why}"); }
  bool operator==(const Amend&) const = default;
};
/// A person's own key for signing, its secret half sealed with what a PIN gives. Entered by the
/// person; by a second one the key is made anew, and what was signed keeps the old one.
struct Enrol {
  PersonId person{};
  std::optional<Role> role{};
  Hex key{};       ///< Ed25519, public half
  Hex salt{};      ///< of the PIN
  int rounds = 0;  ///< of Argon2id
  int memory = 0;  ///< KiB of it
  Hex sealed{};    ///< the secret half
  Moment made{};   ///< when the key was; what a witness vouches for
  PersonId witness{};
  std::optional<Hex> witness_key{};
  std::optional<Hex> witness_signature{};
  PourId from{};  ///< the pour it was made in, where it was carried from one to the next
  static constexpr const char* kWord = "enrol";
  static constexpr auto fields() {
    return std::tuple{Field{"person", &Enrol::person},
                      Field{"role", &Enrol::role},
                      Field{"key", &Enrol::key, kKeyBytes},
                      Field{"salt", &Enrol::salt, kSalt},
                      Field{"rounds", &Enrol::rounds, kPinRounds},
                      Field{"memory_kib", &Enrol::memory, kPinMemory},
                      Field{"sealed", &Enrol::sealed, kSealed},
                      Field{"made", &Enrol::made, {}, Need::must, false},
                      Field{"witness", &Enrol::witness, {}, Need::may},
                      Field{"witness_key", &Enrol::witness_key, kKeyBytes},
                      Field{"witness_signature", &Enrol::witness_signature, kSignatureBytes},
                      Field{"from", &Enrol::from, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const {
    return witness.empty() ? said("Key of {person} enrolled, not witnessed")
                           : said("Key of {person} enrolled, witnessed by {witness}");
  }
  bool operator==(const Enrol&) const = default;
};

using ReviewKinds = std::tuple<Accept, SendBack, MotorOut, Reinspect, Photo, Amend, Enrol, Inspect>;

}  // namespace event

}  // namespace rb
