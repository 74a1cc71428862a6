#include "screens/glass/pictures.h"

#include <utility>

namespace rb::screens {

void Pictures::drawn(std::vector<Target> targets) {
  if (!all_.empty() && all_.back().targets == targets) return;
  // One that never came up was never seen.
  if (ever_shown_ && !all_.empty() && !all_.back().shown) all_.pop_back();
  all_.push_back({{}, std::move(targets)});
  if (!ever_shown_ && all_.size() > 1) all_.pop_front();
}

void Pictures::shown(Seconds steady) {
  ever_shown_ = true;
  if (all_.empty() || all_.back().shown) return;
  all_.back().shown = steady;
  // The second oldest tells until when the oldest stood.
  while (all_.size() > 2 && all_[1].shown && *all_[1].shown < steady - kKept) all_.pop_front();
}

const std::vector<Target>& Pictures::at(Seconds steady) const {
  if (!ever_shown_) return latest();
  const std::vector<Target>* oldest = nullptr;
  for (auto it = all_.rbegin(); it != all_.rend(); ++it) {
    if (!it->shown) continue;
    oldest = &it->targets;
    if (*it->shown <= steady) break;
  }
  return oldest != nullptr ? *oldest : latest();
}

const std::vector<Target>& Pictures::latest() const {
  static const std::vector<Target> none;
  return all_.empty() ? none : all_.back().targets;
}

}  // namespace rb::screens
