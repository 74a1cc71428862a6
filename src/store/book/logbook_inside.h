// The inside of a Logbook, shared by the files that carry it out.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "store/book/connection.h"
#include "store/book/head_signer.h"
#include "store/book/logbook.h"
#include "store/file/keeping.h"
#include "store/file/targets.h"
#include "store/file/writer_lock.h"

namespace rb {

/// Members go in the reverse order: statements before the connection, the lock last.
struct Logbook::Inside {
  std::filesystem::path path;
  Access access;
  store::WriterLock lock;
  std::unique_ptr<SQLite::Database> database;
  store::BookName name;
  std::optional<store::Keeping> keeping;  ///< for writing only
  SQLite::Statement events, one_event;
  std::optional<store::HeadSigner> signer{};  ///< signs heads, where the device has a key
  std::optional<Error> read_only;             ///< why, where writing was asked for
  std::optional<Damage> damage;  ///< then the database is what could be salvaged, in memory
  bool looked_through = false;
  std::vector<std::string> older_faults;  ///< of its schema before it was brought up to date

  Inside(std::filesystem::path at, store::Opened opened, store::WriterLock held);
  Inside(const Inside&) = delete;
  Inside& operator=(const Inside&) = delete;
  ~Inside();

  static Result<std::unique_ptr<Inside>> open(const std::filesystem::path& path, Access access,
                                              store::WriterLock lock);
  /// What is still whole in a damaged book; `why` it is not read as it stands.
  static Result<std::unique_ptr<Inside>> open_damaged(const std::filesystem::path& path,
                                                      Access access, const Error& why);

  /// What is wrong with the indexes and marks by which pours are found; none where nothing is, or
  /// the book is too long to be looked at whole before it is read. Looks once.
  const std::optional<std::string>& order_fault();
  std::optional<std::string> order_fault_found{};
  bool looked_at_order = false;
  /// The same of one pour's events, at any length of the book.
  [[nodiscard]] std::optional<std::string> index_fault(const PourId& pour);

  Result<PourRead> read(const PourId& pour);

  /// Runs `work` as one transaction: all of what it keeps is on the disk when its Result comes
  /// back, or nothing of it.
  template <class Work>
  auto whole(const std::string& doing, Work&& work) -> decltype(work());

  Result<Event> keep(const PourId& pour, Event event, const Entry& entry, Moment kept,
                     const store::Resolve& resolve, store::Head& head);
  Result<Event> keep_tap(const Tapped& tap, store::Head& at);
};

}  // namespace rb
