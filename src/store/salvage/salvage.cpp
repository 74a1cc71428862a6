#include "store/salvage/salvage.h"

#include <algorithm>
#include <charconv>
#include <map>
#include <set>

#include "store/file/file_bytes.h"
#include "store/file/identity.h"
#include "store/file/trouble.h"
#include "store/salvage/row_scan.h"

namespace rb::store {

namespace {

/// A number told by a head alone is believed this far beyond the last row.
constexpr std::int64_t kBelievable = 100'000;

using Candidates = std::map<std::int64_t, std::vector<const FoundRow*>>;

std::string tag_of(const Row& row) {
  return row.id.substr(0, row.id.rfind('-'));
}

/// The scan that finds most: by the size of page the headers tell, else by each there may be.
Scan best_scan(Bytes file, Bytes log, std::optional<PageImages>& images) {
  const auto layout = page_layout(file, log);
  images.emplace(file, log, layout.page_size, layout.reserved);
  auto best = scan_rows(*images);
  const auto whole = [](const Scan& scan) {
    return std::count_if(scan.rows.begin(), scan.rows.end(),
                         [](const FoundRow& row) { return row.holds; });
  };
  if (layout.reserved != 0) {  // a book keeps nothing at the end of its pages
    PageImages other(file, log, layout.page_size, 0);
    if (auto scan = scan_rows(other); whole(scan) > whole(best)) {
      best = std::move(scan);
      images.emplace(file, log, layout.page_size, 0);
    }
  }
  if (layout.told && best.split_lost <= best.split_whole) return best;
  for (std::size_t size = 512; size <= 65536; size *= 2) {
    if (size == layout.page_size) continue;
    PageImages other(file, log, size, 0);
    if (auto scan = scan_rows(other); whole(scan) > whole(best)) {
      best = std::move(scan);
      images.emplace(file, log, size, 0);
    }
  }
  return best;
}

std::string most_common_tag(const Scan& scan) {
  std::map<std::string, std::size_t> counts;
  for (const auto& found : scan.rows) {
    if (found.holds) ++counts[tag_of(found.row)];
  }
  const auto most =
      std::max_element(counts.begin(), counts.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  return most == counts.end() ? std::string() : most->first;
}

/// The book's own row: proven by the first event, or else one that fits the ids.
std::optional<BookName> name_in(const Scan& scan, const std::string& tag) {
  std::optional<BookName> likely;
  for (const auto& name : scan.names) {
    const auto hash = hash_of(name);
    const bool proven =
        std::any_of(scan.rows.begin(), scan.rows.end(),
                    [&](const FoundRow& found) {
                      return found.holds && found.row.seq == 1 && found.row.previous == hash;
                    }) ||
        std::any_of(scan.heads.begin(), scan.heads.end(), [&](const FoundHead& found) {
          return found.head.seq == 0 && found.head.hash == hash;
        });
    if (proven) return name;
    const bool first_known =
        std::any_of(scan.rows.begin(), scan.rows.end(),
                    [](const FoundRow& found) { return found.holds && found.row.seq == 1; });
    if (!first_known && !likely && (tag.empty() || name.tag == tag)) likely = name;
  }
  return likely;
}

/// Of different whole rows with one number the one that fits its neighbours, then the one SQLite
/// would read, then the later.
const FoundRow* choose(const Candidates& candidates, std::int64_t seq, const FoundRow* before) {
  const auto& those = candidates.at(seq);
  const auto next = candidates.find(seq + 1);
  const FoundRow* best = nullptr;
  int most = -1;
  for (const auto* found : those) {
    int fits = found->current ? 1 : 0;
    if (before && before->row.seq + 1 == seq && found->row.previous == before->hash) fits += 2;
    if (next != candidates.end() &&
        std::any_of(next->second.begin(), next->second.end(),
                    [&](const FoundRow* after) { return after->row.previous == found->hash; })) {
      fits += 4;
    }
    if (fits >= most) {
      most = fits;
      best = found;
    }
  }
  return best;
}

void take_rows(const Scan& scan, Salvage& salvage) {
  Candidates candidates;
  std::int64_t current = 0;
  for (const auto& found : scan.rows) {
    if (!found.holds || tag_of(found.row) != salvage.tag) continue;
    candidates[found.row.seq].push_back(&found);
    if (found.current) current = std::max(current, found.row.seq);
  }
  const FoundRow* before = nullptr;
  std::set<std::int64_t> kept;
  bool follows = true;
  for (const auto& [seq, those] : candidates) {
    const auto* const found = choose(candidates, seq, before);
    if (seq > current) {
      ++salvage.behind;
      const bool gap = !before || before->row.seq + 1 != seq;
      follows = follows && (gap || found->row.previous == before->hash);
      if (follows) kept.insert(found->row.kept);
    }
    salvage.rows.push_back({found->row, found->hash});
    before = found;
  }
  // What is kept in one go carries one time of keeping, and is synced before the next is written.
  salvage.behind_acknowledged = kept.size() >= 2;
}

void take_head(const Scan& scan, Salvage& salvage) {
  std::map<Hash, std::int64_t> numbers;
  for (const auto& row : salvage.rows) numbers.emplace(row.hash, row.row.seq);
  const auto last_row = salvage.rows.empty() ? 0 : salvage.rows.back().row.seq;
  for (const auto& found : scan.heads) {
    const auto known = numbers.find(found.head.hash);
    if (known != numbers.end() && known->second != found.head.seq) continue;
    if (known == numbers.end() &&
        (found.head.seq <= last_row || found.head.seq > last_row + kBelievable)) {
      continue;
    }
    if (!salvage.head || found.head.seq >= salvage.head->seq) salvage.head = found.head;
  }
  salvage.last = std::max(last_row, salvage.head ? salvage.head->seq : 0);
}

/// What reads of rows that do not hold, by their number; those that could be rows of this book.
std::map<std::int64_t, const FoundRow*> unsound_rows(const Scan& scan, const Salvage& salvage) {
  std::map<std::int64_t, const FoundRow*> unsound;
  for (const auto& found : scan.rows) {
    if (found.holds || found.row.seq <= 0) continue;
    const bool told_twice = event_id(tag_of(found.row), found.row.seq).text == found.row.id;
    const bool near = found.row.seq <= salvage.last ||
                      (told_twice && tag_of(found.row) == salvage.tag && found.current &&
                       found.row.seq <= salvage.last + kBelievable);
    if (near) unsound.try_emplace(found.row.seq, &found);
  }
  return unsound;
}

void name_damage(const Scan& scan, const PageImages& images, Salvage& salvage) {
  const auto unsound = unsound_rows(scan, salvage);
  std::set<std::int64_t> whole;
  std::set<std::string> pours;
  for (const auto& row : salvage.rows) {
    whole.insert(row.row.seq);
    pours.insert(row.row.pour);
  }
  for (const auto& [seq, found] : unsound) {
    if (!whole.contains(seq)) salvage.last = std::max(salvage.last, seq);
  }
  std::set<std::int64_t> lost;
  for (std::int64_t seq = 1; seq <= salvage.last; ++seq) {
    if (!whole.contains(seq)) lost.insert(seq);
  }
  if (lost.empty()) return;
  std::map<std::int64_t, std::string> places;
  for (auto& place : scan_places(images, lost)) places[place.seq] = std::move(place.pour);
  for (const auto seq : lost) {
    DamagedEvent event{
        .number = seq, .id = event_id(salvage.tag, seq), .pour = {}, .missing = true};
    const auto found = unsound.find(seq);
    if (found != unsound.end()) {
      event.missing = false;
      if (pours.contains(found->second->row.pour)) event.pour = PourId{found->second->row.pour};
    }
    if (const auto place = places.find(seq); !event.pour && place != places.end()) {
      event.pour = PourId{place->second};
    }
    salvage.damaged.push_back(std::move(event));
  }
}

}  // namespace

Salvage salvage(Bytes file, Bytes log) {
  std::optional<PageImages> images;
  const auto scan = best_scan(file, log, images);
  Salvage found;
  found.tag = most_common_tag(scan);
  found.name = name_in(scan, found.tag);
  if (found.name && found.tag.empty()) found.tag = found.name->tag;
  take_rows(scan, found);
  take_head(scan, found);
  name_damage(scan, *images, found);
  return found;
}

Result<Salvage> salvage(const std::filesystem::path& path) {
  return guarded(path.string(), "the book cannot be read", [&]() -> Result<Salvage> {
    const auto file = file_bytes(path);
    const auto log = file_bytes(log_of(path));
    return salvage(Bytes{file}, Bytes{log});
  });
}

Head last_good(const Salvage& salvage) {
  Head good;
  if (salvage.name) good.hash = hash_of(*salvage.name);
  for (const auto& row : salvage.rows) {
    const bool first = row.row.seq == 1 && !salvage.name;
    if (row.row.seq != good.seq + 1 || (!first && row.row.previous != good.hash)) break;
    good = {row.row.seq, row.hash};
  }
  return good;
}

}  // namespace rb::store
