// What the user wants, told to the program. A screen changes nothing itself.
#pragma once

#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "base/made_once.h"
#include "base/moment.h"
#include "base/secret.h"
#include "pour/log/happening.h"
#include "pour/plan/plan.h"
#include "pour/planner/planner.h"
#include "screens/view/settings.h"
#include "words/sentence.h"

namespace rb::screens {

/// Keep an event: it happened at `at`, when the finger that began it touched the glass.
struct KeepEvent {
  Happening what;
  Moment at{};
  Seconds
      uncertain{};  ///< by how much `at` may be off: the loop stood still, and nothing told when
};
struct GoToPour {
  PourId pour;
};
/// Open a new pour with this plan.
struct OpenPour {
  std::shared_ptr<const Plan> plan;  ///< never null
  Moment at{};
};
/// Show part of the list of pours: `count` from `first` on, of those that `find` (a name, a site or
/// a day; empty = all) finds.
struct ShowPours {
  std::string find;
  std::size_t first = 0, count = 0;
};
struct LeavePour {};
struct ChangeSettings {
  Settings settings;
};
/// From now on the mirror is kept in this folder; empty: none.
struct UseMirror {
  std::string folder;
};
/// Copy the book to where its mirror is.
struct CopyNow {};
/// Write a planned pour's run sheet as PDF to where the mirror is, else beside the book.
struct WriteSheet {
  std::shared_ptr<const PlannedPour> planned;  ///< never null
  std::shared_ptr<const PlanWish> wish;        ///< what it was planned for; never null
  Voice voice;
  Moment at{};
};
/// Write the record of a day to a folder: to `folder`, made where it is missing; empty: into
/// "records" where the mirror is, else beside the book.
struct MakeRecord {
  Moment day{};            ///< when it began, where the tablet is
  bool all_forms = false;  ///< else on paper only: PDF
  std::string folder;
  Voice voice;
};
/// Look for the newest photos in the camera's folder.
struct FindPhotos {};
/// Keep this file beside the book by its hash, and then that it shows a blemish or a repair.
struct TakePhoto {
  std::string path;
  EventId target;
  Moment at{};
  Voice voice;
};
/// Look for folders that a mirror could be kept in.
struct FindPlaces {};
/// The trouble told of was read.
struct PutTroubleAway {};
struct Quit {};
/// After a book could not be opened: once more, or without writing to it.
struct TryAgain {};
struct OpenForReading {};
/// The clock was asked about and is right.
struct ClockIsRight {};

/// Look which people of the open pour have a key from an earlier one.
struct LookForKeys {};
/// A key of one's own, opened by a PIN, witnessed by somebody of another role where `witness` names
/// one.
struct EnrolPerson {
  PersonId person;
  event::Role role = event::Role::foreman;
  PersonId witness;
  Secret pin, witness_pin;
};
/// Sign the open pour; `open`: keys of the causes that are named as open.
struct SignPour {
  PersonId person;
  event::Role role = event::Role::foreman;
  std::string verdict;
  std::vector<std::string> open;
  Secret pin;
  std::string comment{};  ///< signed with the verdict; may be empty
};
/// What came of it was read, or is not waited for any more.
struct PutSigningAway {};

using AnyIntent =
    std::variant<KeepEvent, GoToPour, OpenPour, LeavePour, ChangeSettings, PutTroubleAway, Quit,
                 ShowPours, UseMirror, CopyNow, WriteSheet, FindPlaces, TryAgain, OpenForReading,
                 ClockIsRight, LookForKeys, EnrolPerson, SignPour, PutSigningAway, MakeRecord,
                 FindPhotos, TakePhoto>;
using Intent = MadeOnce<AnyIntent>;
using Intents = std::vector<Intent>;

/// Of the mirror, copies, papers and photos: nothing of the book itself.
inline bool wants_beside(const Intent& intent) {
  return std::visit(
      []<class Wish>(const Wish& /*wish*/) {
        return std::is_same_v<Wish, UseMirror> || std::is_same_v<Wish, CopyNow> ||
               std::is_same_v<Wish, WriteSheet> || std::is_same_v<Wish, MakeRecord> ||
               std::is_same_v<Wish, FindPlaces> || std::is_same_v<Wish, FindPhotos> ||
               std::is_same_v<Wish, TakePhoto>;
      },
      intent);
}

}  // namespace rb::screens

extern template struct rb::MadeOnce<rb::screens::AnyIntent>;
