// A book of 10,000 pours against a book of one: what the program takes of the processor and of
// memory to check a pour, to write a day's record and to draw the list.
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fcntl.h>
#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <limits>
#include <memory>

#include "bench/bench.h"
#include "pour/log/event_json.h"
#include "store/book/logbook.h"

using namespace rb;

namespace {

namespace fs = std::filesystem;

constexpr int kPours = 10'000;
constexpr int kTaps = 30;
constexpr int kRuns = 5;
constexpr double kMoreMemory = 30 << 10;  // KiB

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
  [[nodiscard]] const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

std::string name_of(int pour) {
  return fmt::format("P{:05}", pour);
}

/// A pour of some thirty taps: one wall, two lifts, two rows, a truck.
std::vector<Tapped> pour_on(int number, Moment start) {
  const auto open = parse_event(
      fmt::format(
          R"({{"at":"{}","by":"f","do":"pour-open","pour":"{}","plan":{{"name":"Wall {}","site":"Yard {}","mixes":[{{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":5}}],"elements":[{{"id":"W1","length":6,"height":1.2,"thickness":0.3,"lifts":[0.6,1.2],"form_rating_kpa":60,"rows":[{{"id":"R1","z":0.3,"motors":[{{"id":"M1","x":1.5,"reach_x":1.6,"reach_z":0.4}},{{"id":"M2","x":4.5,"reach_x":1.6,"reach_z":0.4}}]}},{{"id":"R2","z":0.9,"motors":[{{"id":"M3","x":1.5,"reach_x":1.6,"reach_z":0.4}},{{"id":"M4","x":4.5,"reach_x":1.6,"reach_z":0.4}}]}}]}}]}}}})",
          to_text(start), name_of(number), number, number % 40),
      "bench");
  if (!open) throw bench::Trouble(to_text(open.error()));
  std::vector<Tapped> taps;
  Moment at = start;
  const auto add = [&](Happening what, int pause) {
    at += std::chrono::seconds{pause};
    Event event;
    event.at = at;
    event.by = PersonId{"f"};
    event.what = std::move(what);
    const Entry entry{at, Seconds{at.time_since_epoch()}, "one-start"};
    taps.push_back({PourId{name_of(number)}, std::move(event), entry, at});
  };
  add(open->what, 0);
  const ElementId wall{"W1"};
  add(event::Truck{TicketId{"T1"}, MixId{"C"}, cubic_metres(2.2), start, start}, 30);
  add(event::Discharge{TicketId{"T1"}, wall, std::nullopt}, 30);
  for (int lift = 1; lift <= 2; ++lift) {
    const RowPlace row{wall, Side::near_side, RowId{fmt::format("R{}", lift)}};
    add(event::Hang{row, {}, true}, 60);
    add(event::LiftStart{wall, lift}, 60);
    for (int part = 1; part <= 3; ++part)
      add(event::Top{wall, metres(0.6 * (lift - 1) + 0.2 * part - 0.05), {}}, 600);
    add(event::LiftEnd{wall, lift, metres(0.6 * lift), {}}, 300);
    for (int pass = 0; pass < 2; ++pass) {
      add(event::Run{row, vibrations_per_minute(6000)}, 20);
      add(event::Rest{row}, 50);
    }
  }
  while (taps.size() + 1 < kTaps) add(event::Note{"the form was looked at", wall, {}}, 20);
  add(event::PourClose{}, 30);
  return taps;
}

fs::path make_book(const fs::path& path, int first, int count) {
  auto book = Logbook::create(path);
  if (!book) throw bench::Trouble(to_text(book.error()));
  const Moment from = *parse_moment("2000-01-03T06:00:00.000Z");
  std::vector<Tapped> taps;
  for (int pour = first; pour < first + count; ++pour) {
    for (auto& tap : pour_on(pour, from + std::chrono::hours{24 * pour}))
      taps.push_back(std::move(tap));
    if (taps.size() < 200 * kTaps && pour + 1 < first + count) continue;
    if (const auto kept = book->append_all(taps); !kept)
      throw bench::Trouble(to_text(kept.error()));
    taps.clear();
  }
  return path;
}

/// Both books, the short one holding the pour in the middle of the long one.
struct Books {
  Folder folder;
  fs::path longest, shortest;
  std::string pour = name_of(kPours / 2);
  std::string day =
      day_text(*parse_moment("2000-01-03T06:00:00.000Z") + std::chrono::hours{24 * (kPours / 2)});
  Books()
      : longest(make_book(folder.path() / "long.risebook", 0, kPours)),
        shortest(make_book(folder.path() / "short.risebook", kPours / 2, 1)) {}
};

const Books& books() {
  static const Books both;
  return both;
}

struct Cost {
  double cpu = std::numeric_limits<double>::max();  ///< s
  double memory = 0;                                ///< KiB, at its highest
};

/// The program with these words, its output thrown away.
Cost run(std::vector<std::string> words) {
  words.insert(words.begin(), RISEBOOK_PROGRAM);
  std::vector<char*> argv;
  for (auto& word : words) argv.push_back(word.data());
  argv.push_back(nullptr);
  const auto child = fork();
  if (child < 0) throw bench::Trouble("no process can be started");
  if (child == 0) {
    const int nowhere = open("/dev/null", O_WRONLY);
    dup2(nowhere, STDOUT_FILENO);
    execv(RISEBOOK_PROGRAM, argv.data());
    _exit(127);
  }
  int status = 0;
  rusage used{};
  wait4(child, &status, 0, &used);
  if (!WIFEXITED(status) || WEXITSTATUS(status) > 1) {
    throw bench::Trouble(fmt::format("{} {} failed ({})", words[0], words[1], status));
  }
  const auto seconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) * 1e-6;
  };
  return {seconds(used.ru_utime) + seconds(used.ru_stime), static_cast<double>(used.ru_maxrss)};
}

using Words = std::vector<std::string> (*)(const fs::path& book);

struct Costs {
  Cost work, baseline;
};

Costs costs(Words words) {
  Costs best;
  const auto better = [](Cost& known, const Cost& now) {
    known.cpu = std::min(known.cpu, now.cpu);
    known.memory = std::max(known.memory, now.memory);
  };
  for (int i = 0; i < kRuns; ++i) {
    better(best.work, run(words(books().longest)));
    better(best.baseline, run(words(books().shortest)));
  }
  fmt::print("{:.1f} ms against {:.1f} ms of the processor, {:.1f} MiB against {:.1f} MiB\n",
             best.work.cpu * 1e3, best.baseline.cpu * 1e3, best.work.memory / 1024,
             best.baseline.memory / 1024);
  return best;
}

std::vector<std::string> check_words(const fs::path& book) {
  return {"check", "--book", book.string(), "--pour", books().pour};
}
std::vector<std::string> record_words(const fs::path& book) {
  static int times = 0;
  const auto to = books().folder.path() / fmt::format("record-{}", ++times);
  fs::create_directories(to);
  return {"record", "--book",    book.string(),  "--day", books().day,
          "--to",   to.string(), "--utc-offset", "+00:00"};
}
std::vector<std::string> list_words(const fs::path& book) {
  return {"picture",     "pours", "--book",
          book.string(), "--to",  (books().folder.path() / "list.png").string()};
}

double cpu(Words words) {
  const auto both = costs(words);
  return both.work.cpu / both.baseline.cpu;
}
/// What is more than with the short book, in parts of what is allowed.
double memory(Words words) {
  const auto both = costs(words);
  return std::max(0.0, both.work.memory - both.baseline.memory) / kMoreMemory;
}

const bench::Bench check_cpu{"long_book_check_of_a_pour", 1.2, [] { return cpu(check_words); }};
const bench::Bench record_cpu{"long_book_record_of_a_day", 1.2, [] { return cpu(record_words); }};
const bench::Bench list_cpu{"long_book_list", 1.2, [] { return cpu(list_words); }};
const bench::Bench check_memory{"long_book_memory_of_check_in_30_MB", 1,
                                [] { return memory(check_words); }};
const bench::Bench record_memory{"long_book_memory_of_record_in_30_MB", 1,
                                 [] { return memory(record_words); }};
const bench::Bench list_memory{"long_book_memory_of_list_in_30_MB", 1,
                               [] { return memory(list_words); }};

}  // namespace
