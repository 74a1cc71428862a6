// A tap, from the call to the disk's answer, against one insert of the same bytes into one table
// with one index and the same pragmas: by turns, on the real disk and on one that takes 5 ms more a
// sync. By the clock, not the processor: it is the disk that is waited for.
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <map>

#include "bench/bench.h"
#include "pour/log/event_json.h"
#include "pour/log/script.h"
#include "store/book/logbook.h"

using namespace rb;

namespace {

namespace fs = std::filesystem;

/// SQLite's own file layer, but for syncs that take longer. While one stands, files are opened
/// through it.
class SlowDisk {
 public:
  explicit SlowDisk(useconds_t sync) {
    wait = sync;
    real = sqlite3_vfs_find(nullptr);
    layer = *real;
    layer.zName = "slow";
    layer.xOpen = open;
    sqlite3_vfs_register(&layer, 1);
  }
  SlowDisk(const SlowDisk&) = delete;
  SlowDisk& operator=(const SlowDisk&) = delete;
  ~SlowDisk() {
    sqlite3_vfs_unregister(&layer);
    sqlite3_vfs_register(real, 1);
  }

 private:
  struct Methods {
    const sqlite3_io_methods* own = nullptr;
    sqlite3_io_methods slow{};
  };
  static int open(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* out) {
    const int code = real->xOpen(real, name, file, flags, out);
    if (code != SQLITE_OK || !file->pMethods) return code;
    auto& known = methods[file->pMethods];
    if (!known.own) {
      known = {file->pMethods, *file->pMethods};
      known.slow.xSync = sync;
      syncs[&known.slow] = known.own->xSync;
    }
    file->pMethods = &known.slow;
    return code;
  }
  static int sync(sqlite3_file* file, int how) {
    usleep(wait);
    return syncs.at(file->pMethods)(file, how);
  }

  static inline useconds_t wait = 0;
  static inline sqlite3_vfs* real = nullptr;
  static inline sqlite3_vfs layer{};
  static inline std::map<const sqlite3_io_methods*, Methods> methods;
  static inline std::map<const sqlite3_io_methods*, int (*)(sqlite3_file*, int)> syncs;
};

class Folder {
 public:
  Folder() {
    auto name = (fs::temp_directory_path() / "risebook-bench-XXXXXX").string();
    if (!mkdtemp(name.data())) throw bench::Trouble("no folder can be made");
    path_ = name;
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  [[nodiscard]] fs::path operator/(const char* name) const { return path_ / name; }

 private:
  fs::path path_;
};

constexpr const char* kOpen =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f","do":"pour-open","pour":"B","plan":{"mixes":[{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":5}],"elements":[{"id":"W1","length":6,"height":3,"thickness":0.3,"rows":[{"id":"R1","z":0.45,"motors":[{"id":"M1","x":1.5,"reach_x":0.9,"reach_z":0.75}]}]}]}})";

template <class T>
T got(Result<T> result) {
  if (!result) throw bench::Trouble(to_text(result.error()));
  return std::move(*result);
}

/// The bytes of a row of the book, no more.
class OneTable {
 public:
  explicit OneTable(const fs::path& path)
      : database_(path.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE) {
    database_.exec(
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;"
        "PRAGMA recursive_triggers = ON; PRAGMA cell_size_check = ON; PRAGMA wal_autocheckpoint = "
        "0;"
        "CREATE TABLE t (seq INTEGER PRIMARY KEY, pour TEXT, id TEXT, line TEXT, entered INTEGER, "
        "steady REAL, boot TEXT, kept INTEGER, prev_hash BLOB, hash BLOB);"
        "CREATE INDEX of_pour ON t (pour, seq)");
    insert_.emplace(database_, "INSERT INTO t VALUES (?, 'B', ?, ?, ?, ?, ?, ?, ?, ?)");
  }
  void insert(int seq, const std::string& line, const Entry& entry) {
    constexpr std::array<char, 32> kHash{1, 2, 3};
    const auto wall = std::int64_t{entry.wall.time_since_epoch().count()};
    insert_->bind(1, seq);
    insert_->bind(2, fmt::format("ABCDE-{}", seq));
    insert_->bind(3, line);
    insert_->bind(4, wall);
    insert_->bind(5, entry.steady.count());
    insert_->bind(6, entry.boot);
    insert_->bind(7, wall);
    insert_->bind(8, kHash.data(), 32);
    insert_->bind(9, kHash.data(), 32);
    insert_->exec();
    insert_->reset();
  }

 private:
  SQLite::Database database_;
  std::optional<SQLite::Statement> insert_;
};

double middle(std::vector<double>& times) {
  std::nth_element(times.begin(), times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2),
                   times.end());
  return times[times.size() / 2];
}

double tap_against_insert(int taps) {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  OneTable table(folder / "table.db");
  const PourId pour{"B"};
  Entry entry{*parse_moment("2026-03-02T05:00:00.000Z"), seconds(1000),
              "8c1d2f64-0b7e-4a4f-9a57-3f1f0a5d9e21"};
  got(book.append(pour, got(parse_event(kOpen, "bench")), entry));
  const RowPlace row{ElementId{"W1"}, Side::near_side, RowId{"R1"}};
  std::vector<double> kept, inserted;
  for (int i = 0; i < taps; ++i) {
    entry.wall += std::chrono::seconds{7};
    entry.steady += seconds(7);
    Event event;
    event.at = entry.wall;
    event.by = PersonId{"f"};
    if (i % 2 == 0) {
      event.what = event::Run{row, vibrations_per_minute(6000)};
    } else {
      event.what = event::Rest{row};
    }
    const auto line = to_line(event);
    const auto one = [&] {
      const double from = bench::wall_seconds();
      table.insert(i + 1, line, entry);
      inserted.push_back(bench::wall_seconds() - from);
    };
    const auto other = [&] {
      const double from = bench::wall_seconds();
      got(book.append(pour, event, entry));
      kept.push_back(bench::wall_seconds() - from);
    };
    i % 4 < 2 ? (one(), other()) : (other(), one());
  }
  const double work = middle(kept);
  const double baseline = middle(inserted);
  fmt::print("a tap {:.3f} ms, one insert {:.3f} ms, middle of {}\n", work * 1e3, baseline * 1e3,
             taps);
  return work / baseline;
}

const bench::Bench no_delay{"tap_to_durable", 1.5, [] { return tap_against_insert(1500); }};
const bench::Bench slow{"tap_to_durable_at_5_ms_a_sync", 1.15, [] {
                          const SlowDisk disk(5000);
                          return tap_against_insert(200);
                        }};

}  // namespace
