// The book of pours: one SQLite file to which events are only ever added.
//
// An event is on the disk when append() returns it, or the error says it was not kept and the book
// stands as before. One process writes at a time (the lock goes with the process, however it ends);
// any number may read meanwhile. A Logbook belongs to one thread at a time. Failures are Errors of
// kind book (of kind input where the event or script given is at fault); nothing is thrown.
#pragma once

#include <atomic>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "pour/log/event.h"
#include "pour/log/script.h"
#include "store/book/pour_marks.h"
#include "store/file/damage.h"

namespace rb {

namespace store {
class DeviceKey;
}

enum class Access { read, write };

/// An event whole in the book, of a kind this program does not know: a newer one wrote it.
struct SetAside {
  EventId id;
  std::string kind, line;
  bool operator==(const SetAside&) const = default;
};

/// What a book gives of a pour.
struct PourRead {
  std::vector<Event> events;  ///< whole, in order of entry
  std::vector<SetAside> set_aside;
  std::vector<DamagedEvent> damaged;
};

/// A pour at a glance, as its lines tell it; fold() has the last word.
struct PourSummary {
  PourId pour;
  Moment first{}, last{};  ///< the earliest and the latest `at`
  std::size_t count = 0;   ///< events, corrections counted
  bool closed = false;     ///< closed by an event that was not struck
  bool operator==(const PourSummary&) const = default;
};

/// A head of the book that a device signed, its signature found to hold.
struct SignedHead {
  std::int64_t seq = 0;
  std::string hash;  ///< 64 hex digits
  std::string key;   ///< the device's public key, 64 hex digits
  Moment made{};
  bool operator==(const SignedHead&) const = default;
};

/// A person's signature, found to hold: made with this key over this book as it stood at an event.
struct PersonSignature {
  EventId event;
  PourId pour;
  PersonId by;
  event::Role role = event::Role::foreman;
  Hex key;
  std::int64_t number = 0;  ///< of the event it is over
  bool elsewhere = false;   ///< over another book, which the pour was brought in from: not compared
  bool operator==(const PersonSignature&) const = default;
};

/// A photo that an event names; whether its file stands beside the book is asked of
/// store/photos/photo.h.
struct PhotoNamed {
  EventId event;
  PourId pour;
  Hex sha256;
  std::string name;
  bool operator==(const PhotoNamed&) const = default;
};

/// What a look through the whole book found.
struct VerifyReport {
  std::string tag;
  std::size_t events = 0;
  std::int64_t last = 0;                 ///< number of the last event
  std::vector<SignedHead> signed_heads;  ///< in order of number
  std::vector<PersonSignature> people;   ///< in order of their events
  std::vector<PhotoNamed> photos{};      ///< the same
  /// By the note of the head beside it: the book has all that was acknowledged up to this number.
  std::optional<std::int64_t> vouched;
  bool note_damaged = false;         ///< such a note is there and tells nothing
  std::string head_hash;             ///< to be held against the one printed on a record
  std::vector<std::string> faults;   ///< plain sentences, in order of the book; at most 50
  std::optional<EventId> first_bad;  ///< the first event that is changed, missing or unreadable
  std::size_t unknown = 0;           ///< events of kinds this program does not know: no fault
  Saying looked;                     ///< at what, where not at everything
  std::vector<DamagedEvent> lost;    ///< what a rescue recorded as lost: told, and no fault
  [[nodiscard]] bool sound() const { return faults.empty(); }
};

/// An event and the hash it is kept with (64 hex digits).
struct KeptHash {
  EventId id;
  std::string hash;
  bool operator==(const KeptHash&) const = default;
};

/// The last event of a book, or its start: number and hash (64 hex digits).
struct BookHead {
  std::int64_t seq = 0;
  std::string hash;
  bool operator==(const BookHead&) const = default;
};

/// An event to be kept: its pour, when it was entered, and when the book takes it in.
struct Tapped {
  PourId pour;
  Event event;
  Entry entry;
  Moment kept{};
};

class Logbook {
 public:
  /// Makes a new book, its folder too, and opens it for writing. Fails where a file already stands.
  /// A book appears whole or not at all, whatever interrupts this.
  static Result<Logbook> create(const std::filesystem::path& path);

  /// Opens a book. A file that is no book, or a book of a later version, is refused and left as it
  /// is; for writing, the book must not be open for writing elsewhere. A book that should not be
  /// written (damaged, altered, or old and not to be copied beforehand) is opened for reading all
  /// the same: see read_only_reason(). An older book opened for reading is not written to.
  static Result<Logbook> open(const std::filesystem::path& path, Access access);

  /// Opens for writing the book that stands there, or makes it.
  static Result<Logbook> open_or_create(const std::filesystem::path& path);

  Logbook(Logbook&&) noexcept;
  Logbook& operator=(Logbook&&) noexcept;
  ~Logbook();

  /// Keeps one event and gives it back as events() will: its id is the book's and its entry is
  /// `entry`; what it held of both before is left out. The first event of a pour opens it, and only
  /// the first does. The target of a fix, strike or repair must be an event of the same pour.
  Result<Event> append(const PourId& pour, Event event, const Entry& entry);

  /// Keeps several in this order, or none of them: one wait for the disk for all.
  Result<std::vector<Event>> append_all(const std::vector<Tapped>& taps);

  /// Keeps a whole script or nothing of it; refused when the pour is already in the book. Line ids
  /// become the book's and targets follow. A line's own entry stays, the others get `entry`.
  Result<std::vector<Event>> append_script(const Script& script, const Entry& entry);

  /// The events of a pour in order of entry, each with id and entry; none for an unknown pour.
  /// Those of unknown kinds are left out; a damaged one is an error. See read().
  [[nodiscard]] Result<std::vector<Event>> events(const PourId& pour) const;

  /// All the book gives of a pour. Costs what the pour's own rows cost.
  [[nodiscard]] Result<PourRead> read(const PourId& pour) const;

  /// The pours in the order they came into the book. Reads the whole book.
  [[nodiscard]] Result<std::vector<PourSummary>> pours() const;

  /// A part of the list of pours, told by their marks: no event is read.
  [[nodiscard]] Result<PourPage> pours(const PourQuery& query) const;
  /// A pour's mark; none for an unknown pour.
  [[nodiscard]] Result<std::optional<PourMark>> mark(const PourId& pour) const;
  /// All pours in the order they came into the book.
  [[nodiscard]] Result<std::vector<PourId>> pour_ids() const;
  /// Those with an event of this kind (its word), the one it came into last first. Reads the whole
  /// book.
  [[nodiscard]] Result<std::vector<PourId>> pours_with(const std::string& kind) const;
  /// Those with an event in the span, in that order; a few more where the days next to it have some
  /// or a correction took one out: fold() has the last word.
  [[nodiscard]] Result<std::vector<PourId>> pours_in(const MomentSpan& span) const;

  /// The hash of the last event (64 hex digits): stands for everything up to it.
  [[nodiscard]] Result<std::string> head_hash() const;

  /// From now on the head is signed with this device's key at each close and signature.
  Result<void> sign_with(const store::DeviceKey& key);

  /// Number and hash of the last event.
  [[nodiscard]] Result<BookHead> head() const;

  /// The event of this number with id and entry; an error of kind book when there is none.
  [[nodiscard]] Result<Event> event(std::int64_t seq) const;

  /// The hashes of a pour's events in order of entry.
  [[nodiscard]] Result<std::vector<KeptHash>> hashes(const PourId& pour) const;
  /// The hash of an event; none where there is no such event, or it cannot be read.
  [[nodiscard]] std::optional<std::string> hash_of_event(const EventId& id) const;

  /// Brings the log into the file and empties it: the file alone then holds everything, on the
  /// disk. The log grows until then, so that no append waits for its being brought in. False when
  /// that cannot be done now (someone reads, the disk refuses).
  bool empty_log();

  /// Looks for changed, missing and unreadable events, altered schema and a damaged file.
  [[nodiscard]] Result<VerifyReport> verify() const;

  /// The same of what rests on some pours: the schema, every event of theirs with its hash and its
  /// place in the chain, and the end of the book. Costs what those pours cost, not what the book
  /// does; `events` is the number of the last event.
  [[nodiscard]] Result<VerifyReport> verify(const std::vector<PourId>& pours) const;

  /// Looks at everything a verify() does but the note beside it, until `give_way`: what it found
  /// then means nothing. In plain sentences, what is wrong.
  [[nodiscard]] Result<std::vector<std::string>> look_closely(
      const std::atomic<bool>& give_way) const;

  /// Looks through the whole file for damage (SQLite's quick check): done on opening for writing
  /// where the file is small, to be done at rest where it is not. In a plain sentence, what is
  /// wrong; none: nothing.
  [[nodiscard]] Result<std::optional<std::string>> look_through() const;
  /// Whether opening has done that already.
  [[nodiscard]] bool looked_through() const;

  /// Why a book asked for writing was opened for reading: Error::trouble says it in a word.
  [[nodiscard]] const std::optional<Error>& read_only_reason() const;

  /// Of a damaged book read from what is still whole in it; none else.
  [[nodiscard]] const std::optional<Damage>& damage() const;

  [[nodiscard]] const std::string& tag() const;   ///< what its event ids begin with
  [[nodiscard]] const std::string& uuid() const;  ///< its name among all books
  [[nodiscard]] Moment created() const;
  [[nodiscard]] const std::filesystem::path& file() const;
  [[nodiscard]] bool writable() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
  explicit Logbook(std::unique_ptr<Inside> inside);
  /// What `ask` finds in the book or, where that cannot be read, among its whole rows.
  template <class Ask>
  auto or_of_whole_rows(Ask&& ask) const -> decltype(ask(*inside_));
};

}  // namespace rb
