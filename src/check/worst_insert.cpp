#include "check/worst_insert.h"

namespace rb {

void WorstInsert::take(const InsertState& other, double by) {
  if (times++ == 0) {
    from = other.at;
    bay = other.bay;
  }
  to = other.at;
  one_bay = one_bay && bay == other.bay;
  if (insert != nullptr && by <= share) return;
  insert = &other;
  share = by;
}

Finding WorstInsert::told(const Rule& rule) const {
  Finding f = found(rule);
  f.element = insert->element;
  f.lift = insert->what.lift;
  if (one_bay) f.bay = bay;
  f.from = from;
  f.to = to;
  f.ref = insert->ref;
  return f;
}

}  // namespace rb
