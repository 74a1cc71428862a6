#include "store/salvage/lost_in_log.h"

#include <map>
#include <set>

#include "store/salvage/row_scan.h"

namespace rb::store {

std::size_t lost_in_log(Bytes log, const Head& head) {
  const auto layout = page_layout({}, log);
  if (log.size() <= layout.page_size) return 0;
  const auto scan = scan_rows(PageImages({}, log, layout.page_size, layout.reserved));
  std::map<std::int64_t, const FoundRow*> behind;
  for (const auto& found : scan.rows) {
    if (found.holds && found.row.seq > head.seq) behind.try_emplace(found.row.seq, &found);
  }
  std::set<std::int64_t> kept;  // what is kept in one go carries one time of keeping
  std::size_t count = 0;
  Head at = head;
  for (const auto& [seq, found] : behind) {
    // What lies behind a row that was spoilt was kept all the same.
    if (seq == at.seq + 1 && found->row.previous != at.hash) break;
    at = {seq, found->hash};
    kept.insert(found->row.kept);
    ++count;
  }
  return kept.size() >= 2 ? count : 0;
}

}  // namespace rb::store
