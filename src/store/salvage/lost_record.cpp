#include "store/salvage/lost_record.h"

#include "store/file/identity.h"

namespace rb::store {

Lost lost_in(const SQLite::Database& database) {
  Lost lost;
  if (!database.tableExists("lost")) return lost;  // an older book's
  SQLite::Statement rows(database, "SELECT seq, hash FROM lost ORDER BY seq");
  while (rows.executeStep()) {
    lost[rows.getColumn(0).getInt64()] =
        rows.getColumn(1).isNull() ? std::nullopt : std::optional(hash_column(rows, 1));
  }
  return lost;
}

std::vector<DamagedEvent> lost_events(const SQLite::Database& database, const std::string& tag) {
  std::vector<DamagedEvent> events;
  if (!database.tableExists("lost")) return events;
  SQLite::Statement rows(database,
                         "SELECT seq, pour, missing FROM lost WHERE seq > 0 ORDER BY seq");
  while (rows.executeStep()) {
    const auto seq = rows.getColumn(0).getInt64();
    DamagedEvent event{seq, event_id(tag, seq), {}, rows.getColumn(2).getInt() != 0};
    if (!rows.getColumn(1).isNull()) event.pour = PourId{rows.getColumn(1).getString()};
    events.push_back(std::move(event));
  }
  return events;
}

Head over_lost(const Lost& lost, Head at) {
  for (auto next = lost.find(at.seq + 1); next != lost.end() && next->first == at.seq + 1; ++next) {
    at = {next->first, next->second.value_or(at.hash)};
  }
  return at;
}

Head start_of(const Lost& lost, const BookName& name) {
  const auto own = lost.find(0);
  const bool told = own != lost.end() && own->second;
  return over_lost(lost, {0, told ? *own->second : hash_of(name)});
}

}  // namespace rb::store
