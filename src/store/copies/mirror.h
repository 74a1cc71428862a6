// The mirror of a book: a text file in another place (a stick, a card, a shared folder) to which
// every row goes as it is kept. Only ever added to; no database, so that any program reads it. A
// line that the power cut short is ended and its row written again. A mirror of another book, or of
// another history of this one, or of an earlier version of this format, is left as it is and a new
// numbered file begun.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/result.h"
#include "store/file/plain_disk.h"
#include "store/file/row_text.h"

namespace rb::store {

/// Why a mirror does not follow.
struct MirrorTrouble {
  enum class Kind {
    folder_gone,  ///< the stick is not there
    full,         ///< no room is left on it
    forbidden,    ///< it may not be written to
    disk,         ///< it does not answer as it ought to
    book,         ///< the book could not be read
  };
  Kind kind = Kind::disk;
  Error error;
  bool operator==(const MirrorTrouble&) const = default;
};

template <class T>
using Mirrored = tl::expected<T, MirrorTrouble>;

class Mirror {
 public:
  /// The stored hash at a number of the book, none where it has no such row; kind book on failure.
  using HashAt = std::function<Result<std::optional<Hash>>(std::int64_t)>;

  /// Goes on with the mirror of this book in `folder` (which must be there), or begins one:
  /// "<stem>-<tag>.riseline", "<stem>-<tag>-2.riseline" and so on.
  static Mirrored<Mirror> open(PlainDisk& disk, const std::filesystem::path& folder,
                               const std::string& stem, const BookName& book, const HashAt& at);

  /// The number of the last row that is on its disk; 0 for none.
  [[nodiscard]] std::int64_t last() const { return last_; }
  /// That row is followed by the heads signed at it, as far as it is known from its end.
  [[nodiscard]] bool last_signed() const { return last_signed_; }
  [[nodiscard]] const std::filesystem::path& file() const { return path_; }
  /// Mirrors by this book's name that were left as they are, each with the reason.
  [[nodiscard]] const std::vector<std::string>& passed_over() const { return passed_over_; }

  /// The stick is still there.
  [[nodiscard]] bool in_place() const { return file_->in_place(); }
  [[nodiscard]] MirrorTrouble gone() const;

  /// On the disk when this returns. After a failure this mirror is of no more use: open it anew.
  Mirrored<void> add(const std::vector<KeptRow>& rows, const std::vector<Signed>& heads = {});

 private:
  Mirror() = default;
  std::filesystem::path path_;
  std::unique_ptr<PlainFile> file_;
  std::uint64_t end_ = 0;
  std::int64_t last_ = 0;
  bool last_signed_ = false;
  std::vector<std::string> passed_over_;
};

/// What a mirror file holds.
struct MirrorContent {
  std::optional<BookName> name;      ///< none when every line that says it is damaged
  std::vector<KeptRow> rows;         ///< that hold, in order of number, each once
  std::vector<Signed> heads;         ///< that hold, in order of number and key, each once
  std::vector<std::string> damaged;  ///< lines that do not hold, in plain sentences
  /// Numbers from 1 to the last that have no row: from, to.
  [[nodiscard]] std::vector<std::pair<std::int64_t, std::int64_t>> missing() const;
};

Result<MirrorContent> read_mirror(PlainDisk& disk, const std::filesystem::path& path);

/// Whether a file begins as a mirror does.
bool looks_like_mirror(PlainDisk& disk, const std::filesystem::path& path);

}  // namespace rb::store
