// Signatures of people, looked at as a book is looked through, and the photos it names. Inside this
// room.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <set>

#include "store/book/logbook.h"
#include "store/file/row_text.h"

namespace rb::store {

/// Is shown the readable events of a book, or of some of its pours, in order, and notes each
/// signature that does not hold: whose, in which event, and over which.
class PeopleLook {
 public:
  /// `some_lost`: events were lost before a rescue, and a signature may be over one of them.
  PeopleLook(const SQLite::Database& database, const BookName& book, bool some_lost);
  void look(const Row& row, const Event& event, VerifyReport& report);

 private:
  void look_at_sign(const Row& row, const Event& event, const event::Sign& sign,
                    VerifyReport& report);
  static void look_at_photo(const Row& row, const event::Photo& photo, VerifyReport& report);
  void look_at_enrol(const Row& row, const event::Enrol& enrol, VerifyReport& report);
  [[nodiscard]] bool over_another(const Row& row, const event::Sign& sign);

  using Keys = std::map<PersonId, std::set<std::string>>;
  SQLite::Statement at_;
  BookName book_;
  bool some_lost_;
  std::map<std::string, Keys> keys_;  ///< enrolled so far, by pour
};

}  // namespace rb::store
