#include "store/file/targets.h"

#include <string>

namespace rb::store {

namespace {

Failed unknown(const Happening& what, const EventId& target) {
  return fail(Error::Kind::input, kind_text(what),
              "no earlier event of this pour has the id \"" + target.text + "\" its target names",
              "Name an earlier event");
}

/// A fix may set the target of a repair anew.
Result<void> point_fields(event::Fix& fix, const Resolve& resolve, const SQLite::Database& json) {
  SQLite::Statement named(json, "SELECT json_extract(?, '$.target') WHERE json_valid(?1)");
  named.bind(1, fix.set);
  if (!named.executeStep() || named.getColumn(0).isNull()) return {};
  const EventId target{named.getColumn(0).getString()};
  const auto found = resolve(target);
  if (!found) return unknown(fix, target);
  if (*found == target) return {};
  SQLite::Statement edit(json, "SELECT json_set(?, '$.target', ?)");
  edit.bind(1, fix.set);
  edit.bind(2, found->text);
  if (edit.executeStep()) fix.set = edit.getColumn(0).getString();
  return {};
}

}  // namespace

Result<void> point_targets(Happening& what, const Resolve& resolve, const SQLite::Database& json) {
  auto* const target = target_of(what);
  if (!target) return {};
  const auto found = resolve(*target);
  if (!found) return unknown(what, *target);
  *target = *found;
  auto* const fix = std::get_if<event::Fix>(&what);
  return fix ? point_fields(*fix, resolve, json) : Result<void>{};
}

}  // namespace rb::store
