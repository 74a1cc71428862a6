#include "screens/entry/told_later.h"

#include "pour/log/event_json.h"

namespace rb::screens {

Event event_of(const ToldTap& tap) {
  Event event;
  event.id = tap.id;
  event.at = tap.at;
  event.what = tap.what;
  return event;
}

void keep_told_later(Stage& stage, const ToldTap& tap, const Happening& what, Moment at) {
  if (tap.what == what) return;
  const Event told = event_of(tap);
  const Event mended = event_of({tap.id, tap.at, what});
  constexpr event::Chosen kWhy = event::Chosen::told_later;
  stage.keep(make_fix(told, mended, event::says(kWhy), kWhy), at);
}

}  // namespace rb::screens
