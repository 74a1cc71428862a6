// The rows of a book by number, on a read connection of its own: for what follows the book from
// another thread (the mirror, the note of the head). Never waits for the writer, nor makes it wait.
#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <vector>

#include "base/result.h"
#include "store/file/row_text.h"

namespace rb::store {

class RowReader {
 public:
  static Result<RowReader> open(const std::filesystem::path& book);
  RowReader(RowReader&&) noexcept;
  RowReader& operator=(RowReader&&) noexcept;
  ~RowReader();

  [[nodiscard]] const BookName& name() const;
  /// The number of the last event, 0 for an empty book.
  Result<std::int64_t> last();
  /// Rows after a number, in order, as they stand, whole or not.
  Result<std::vector<KeptRow>> after(std::int64_t seq, std::size_t limit);
  /// The signed heads of numbers from `first` to `last`, as they stand.
  Result<std::vector<Signed>> heads(std::int64_t first, std::int64_t last);
  /// The stored hash at a number; at 0 the hash the book begins with. None where no row is.
  Result<std::optional<Hash>> hash_at(std::int64_t seq);

 private:
  struct Inside;
  explicit RowReader(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace rb::store
