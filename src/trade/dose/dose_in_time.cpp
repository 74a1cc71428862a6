#include "trade/dose/dose_in_time.h"

#include <algorithm>
#include <cmath>

namespace rb::trade {

namespace {

constexpr Seconds kBefore{-1e18};
constexpr Seconds kEnd{1e18};
/// Few enough to look at one by one, thin enough that what happens in one touches few others.
constexpr Length kLayer = metres(0.5);
constexpr double kMostLayers = 40;

Length highest(const Face& face) {
  Length top;
  for (const TopCurve& bay : face.tops) top = std::max(top, bay.standing());
  return top;
}

// What runs together is cut once.
class CutOff {
 public:
  explicit CutOff(Seconds moment) : moment_(moment) {}
  const Running& operator()(const Running& whole) {
    if (!known_ || !last_.shares(whole)) {
      known_ = true;
      last_ = whole;
      cut_ = whole.empty() || whole.spans().back().to <= moment_ ? whole
                                                                 : whole.clipped(kBefore, moment_);
    }
    return cut_;
  }

 private:
  Seconds moment_;
  bool known_ = false;
  Running last_, cut_;
};

// Whether anything ran between two moments.
bool ran_between(const Running& running, Seconds a, Seconds b) {
  const auto& spans = running.spans();
  const auto next = std::upper_bound(spans.begin(), spans.end(), a,
                                     [](Seconds m, const Interval& s) { return m < s.to; });
  return next != spans.end() && next->from < b;
}

}  // namespace

Face as_of(const Face& face, Seconds moment) {
  Face then = face;
  for (TopCurve& top : then.tops) top = top.until(moment);
  for (auto& side : then.sides) {
    CutOff cut{moment};
    for (Shaker& shaker : side) shaker.running = cut(shaker.running);
  }
  return then;
}

DoseInTime::DoseInTime(const Face& face) {
  const Length top = highest(face);
  if (top <= Length{}) return;
  const double layers = std::clamp(std::ceil(top / kLayer), 1.0, kMostLayers);
  for (double i = 0; i < layers; ++i) {
    const Band band{top * (i / layers), i + 1 < layers ? top * ((i + 1) / layers) : top};
    Part part;
    for (const TopCurve& bay : face.tops) {
      part.bands.push_back({band.from, std::max(band.from, std::min(band.to, bay.standing()))});
    }
    part.face = part_for(face, part.bands);
    for (const auto& side : part.face.sides) {
      for (const Shaker& shaker : side) {
        const bool known = std::any_of(part.running.begin(), part.running.end(),
                                       [&](const Running& r) { return r.shares(shaker.running); });
        if (!known) part.running.push_back(shaker.running);
      }
    }
    part.seen = kBefore;  // when there was nothing
    layers_.push_back({band.from, band.to, ++turns_, {}});
    parts_.push_back(std::move(part));
  }
}

bool DoseInTime::differs(const Part& part, Seconds a, Seconds b) {
  if (b < a) std::swap(a, b);
  for (std::size_t bay = 0; bay < part.bands.size(); ++bay) {
    const Band& band = part.bands[bay];
    if (band.to <= band.from) continue;
    const TopCurve& top = part.face.tops[bay];
    if (std::clamp(top.at(a), band.from, band.to) != std::clamp(top.at(b), band.from, band.to)) {
      return true;
    }
  }
  return std::any_of(part.running.begin(), part.running.end(),
                     [&](const Running& r) { return ran_between(r, a, b); });
}

const std::vector<DoseInTime::Layer>& DoseInTime::at(Seconds moment) {
  for (std::size_t i = 0; i < parts_.size(); ++i) {
    Part& part = parts_[i];
    Layer& layer = layers_[i];
    if (!differs(part, part.seen, moment)) continue;
    part.seen = moment;
    if (!differs(part, kBefore, moment)) {
      layer.field = {};
      layer.turn = ++turns_;
    } else if (!differs(part, moment, kEnd)) {
      if (!part.whole) {
        part.whole = std::make_shared<const Layer>(
            Layer{layer.from, layer.to, ++turns_, dose_field(part.face, part.bands)});
      }
      layer = *part.whole;
    } else {
      layer.field = dose_field(as_of(part.face, moment), part.bands);
      layer.turn = ++turns_;
    }
  }
  return layers_;
}

}  // namespace rb::trade
