// Signing from the screens: what was asked for by touch becomes, once the PIN was found right and
// the book stands still, an event to be kept as any other.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "app/signing/key_job.h"
#include "app/signing/signing.h"
#include "screens/seen/signing_seen.h"
#include "screens/view/intents.h"

namespace rb {

/// The book as a signature needs it.
struct BookNow {
  SignedBook book;
  std::size_t waiting = 0;  ///< taps that are not on the disk
};

class SignDesk {
 public:
  /// `tries`: where PINs tried are counted; `changed` is called on another thread.
  SignDesk(Path tries, std::function<void()> changed);

  /// A key of each of the people, made in other pours, as they came into the book.
  void found(std::vector<event::Enrol> keys);
  /// A wish made while another is under way is passed over: a second tap signs nothing twice.
  void begin(const screens::SignPour& wish, const PourState& state, Moment now);
  void begin(const screens::EnrolPerson& wish, const PourState& state, Moment now);
  /// The answer was read, or is not waited for any more.
  void put_away();
  /// Of another pour nothing is under way and nothing was looked for.
  void forget();

  /// What is to be kept now, if anything: the caller says by kept() what became of it.
  std::optional<Event> step(const PourState& state, const CheckReport& report, const BookNow& book,
                            Moment now);
  void kept(const Result<void>& done, const Happening& what);

  [[nodiscard]] const screens::SigningSeen& seen() const { return seen_; }
  /// Something is being worked out, or waits for the disk.
  [[nodiscard]] bool busy() const;

 private:
  void start(KeyWish wish);
  void refuse(const Error& why);
  [[nodiscard]] const event::Enrol* elsewhere(const PersonId& person) const;
  Result<Event> event_of(KeysReady keys, const PourState& state, Moment now);

  Path tries_;
  std::function<void()> changed_;
  screens::SigningSeen seen_;
  std::vector<event::Enrol> carried_;
  std::optional<screens::SignPour> sign_;      ///< under way, its PIN wiped
  std::optional<screens::EnrolPerson> enrol_;  ///< the same
  std::optional<sign::PersonKey> key_;         ///< opened; waits for the book
  std::unique_ptr<KeyJob> job_;
};

}  // namespace rb
