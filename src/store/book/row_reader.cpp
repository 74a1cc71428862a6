#include "store/book/row_reader.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <utility>

#include "store/book/connection.h"
#include "store/file/keeping.h"
#include "store/file/trouble.h"

namespace rb::store {

namespace {
constexpr const char* kReading = "the book cannot be read";
}

struct RowReader::Inside {
  std::filesystem::path path;
  std::unique_ptr<SQLite::Database> database;
  BookName name;
  SQLite::Statement rows, last, hash, heads;

  Inside(std::filesystem::path at, std::unique_ptr<SQLite::Database> opened)
      : path(std::move(at)),
        database(std::move(opened)),
        name(name_of(*database)),
        rows(*database,
             fmt::format("SELECT {} FROM events WHERE seq > ? ORDER BY seq LIMIT ?", kRowColumns)),
        last(*database, "SELECT coalesce(max(seq), 0) FROM events"),
        hash(*database, "SELECT hash FROM events WHERE seq = ?"),
        heads(*database,
              "SELECT seq, hash, key, signature, made FROM heads WHERE seq BETWEEN ? AND ? "
              "ORDER BY seq, key") {}
};

RowReader::RowReader(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
RowReader::RowReader(RowReader&&) noexcept = default;
RowReader& RowReader::operator=(RowReader&&) noexcept = default;
RowReader::~RowReader() = default;

Result<RowReader> RowReader::open(const std::filesystem::path& book) {
  const auto at = settled(book);
  if (auto there = probe(at); !there) return Failed{there.error()};
  auto database = connect(at, Access::read);
  if (!database) return Failed{database.error()};
  return guarded(at.string(), kReading, [&]() -> Result<RowReader> {
    return RowReader(std::make_unique<Inside>(at, std::move(*database)));
  });
}

const BookName& RowReader::name() const {
  return inside_->name;
}

Result<std::int64_t> RowReader::last() {
  return guarded(inside_->path.string(), kReading, [&]() -> Result<std::int64_t> {
    Use use(inside_->last);
    return use->executeStep() ? use->getColumn(0).getInt64() : 0;
  });
}

Result<std::vector<KeptRow>> RowReader::after(std::int64_t seq, std::size_t limit) {
  return guarded(inside_->path.string(), kReading, [&]() -> Result<std::vector<KeptRow>> {
    Use use(inside_->rows);
    use->bind(1, seq);
    use->bind(2, static_cast<std::int64_t>(limit));
    std::vector<KeptRow> rows;
    while (use->executeStep()) {
      rows.push_back({row_of(inside_->rows), hash_column(inside_->rows, 9)});
      // A damaged file may give its rows in any order: whoever asks on from the last one given
      // would never come to an end.
      if (rows.back().row.seq <= seq) {
        throw SQLite::Exception("the rows are out of order", SQLITE_CORRUPT);
      }
      seq = rows.back().row.seq;
    }
    return rows;
  });
}

Result<std::vector<Signed>> RowReader::heads(std::int64_t first, std::int64_t last) {
  return guarded(inside_->path.string(), kReading, [&]() -> Result<std::vector<Signed>> {
    Use use(inside_->heads);
    use->bind(1, first);
    use->bind(2, last);
    std::vector<Signed> heads;
    while (use->executeStep()) {
      Signed head{.seq = use->getColumn(0).getInt64(),
                  .hash = hash_column(inside_->heads, 1),
                  .key = hash_column(inside_->heads, 2),
                  .signature = {},
                  .made = use->getColumn(4).getInt64()};
      const auto signature = use->getColumn(3);
      if (signature.getBytes() == static_cast<int>(head.signature.size())) {
        std::copy_n(static_cast<const unsigned char*>(signature.getBlob()), head.signature.size(),
                    head.signature.begin());
      }
      heads.push_back(head);
    }
    return heads;
  });
}

Result<std::optional<Hash>> RowReader::hash_at(std::int64_t seq) {
  if (seq == 0) return std::optional(hash_of(inside_->name));
  return guarded(inside_->path.string(), kReading, [&]() -> Result<std::optional<Hash>> {
    Use use(inside_->hash);
    use->bind(1, seq);
    return use->executeStep() ? std::optional(hash_column(inside_->hash, 0)) : std::nullopt;
  });
}

}  // namespace rb::store
