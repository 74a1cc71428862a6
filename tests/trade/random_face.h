// Random faces to be dosed, by seed, and a plain second-by-second simulation to hold the exact
// field against. The simulation shares nothing with the field but the inputs.
#pragma once

#include <algorithm>
#include <cstdint>
#include <random>

#include "trade/dose/dose.h"

namespace rb::trade::test {

class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}
  double between(double a, double b) {
    return std::uniform_real_distribution<double>(a, b)(engine_);
  }
  int whole(int a, int b) { return std::uniform_int_distribution<int>(a, b)(engine_); }

 private:
  std::mt19937_64 engine_;
};

inline Face random_face(Random& random) {
  Face face;
  const int bays = random.whole(1, 3);
  for (int b = 0; b < bays; ++b) face.bays.push_back(metres(0.05 * random.whole(10, 50)));
  for (int b = 0; b < bays; ++b) {
    TopCurve& top = face.tops.emplace_back();
    double at = random.between(0, 200);
    double z = 0;
    for (int reading = random.whole(1, 6); reading > 0; --reading) {
      top.stand(seconds(at));
      if (random.whole(0, 5) > 0) at += random.between(30, 900);
      z += random.between(0, 0.8);
      top.read(seconds(at), metres(z));
      at += random.between(0, 300);
    }
  }
  const Length length = face.length();
  for (int n = random.whole(0, 2); n > 0; --n) {
    face.openings.push_back({length * random.between(0, 0.8), metres(random.between(0, 2)),
                             length * random.between(0.05, 0.4), metres(random.between(0.1, 1))});
  }
  for (int side = random.whole(1, 2); side > 0; --side) {
    std::vector<Shaker>& shakers = face.sides.emplace_back();
    for (int row = random.whole(1, 3); row > 0; --row) {
      const Length z = metres(random.between(0, 3));
      std::vector<Interval> running;
      double from = 0;
      for (int run = random.whole(0, 5); run > 0; --run) {
        from += random.between(0, 900);
        const double to = from + random.between(1, 400);
        running.push_back({seconds(from), seconds(to)});
        from = random.whole(0, 3) == 0 ? to - random.between(0, 1) : to;
      }
      for (int motor = random.whole(1, 3); motor > 0; --motor) {
        shakers.push_back({length * random.between(0, 1), z, metres(random.between(0.2, 1.5)),
                           metres(random.between(0.2, 1.2)), running});
      }
    }
  }
  face.worst_side_counts = random.whole(0, 1) == 1;
  double from = -1e9;
  for (int step = random.whole(1, 3); step > 0; --step) {
    const double to_set = random.between(600, 6000);
    face.sets.push_back({seconds(from), seconds(to_set)});
    // A load's: all of it at one moment.
    if (random.between(0, 1) < 0.4) face.sets.back().at = seconds(std::max(from, 0.0) + to_set);
    from = random.between(from < 0 ? 0 : from, 3000);
  }
  return face;
}

/// The dose of one spot by stepping through time; none where there is no concrete.
inline std::optional<double> simulated_dose(const Face& face, double x, double z, double step) {
  for (const Patch& p : face.openings) {
    if (x > p.x.value() && x < (p.x + p.w).value() && z > p.z.value() && z < (p.z + p.h).value()) {
      return std::nullopt;
    }
  }
  double end = 0;
  std::size_t bay = 0;
  for (; bay + 1 < face.bays.size(); ++bay) {
    end += face.bays[bay].value();
    if (x < end) break;
  }
  const auto height_at = [&](double t) {
    const auto& points = face.tops[bay].points();
    double h = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
      if (points[i].at.count() <= t) {
        h = points[i].height.value();
      } else if (i > 0) {
        const double t0 = points[i - 1].at.count();
        const double h0 = points[i - 1].height.value();
        h = std::max(h,
                     h0 + (points[i].height.value() - h0) * (t - t0) / (points[i].at.count() - t0));
        break;
      } else {
        break;
      }
    }
    return h;
  };
  std::optional<double> came;
  std::vector<double> dose(face.sides.size(), 0.0);
  double sets = 0;
  for (double t = 0; t < 20000; t += step) {
    const double middle = t + step / 2;
    if (!came) {
      if (height_at(middle) < z) continue;
      came = middle;
      SetStep held = face.sets.front();
      for (const SetStep& s : face.sets) {
        if (s.from.count() <= middle) held = s;
      }
      sets = held.at ? held.at->count() : middle + held.to_set.count();
    }
    if (middle > sets) break;
    for (std::size_t s = 0; s < face.sides.size(); ++s) {
      const bool shaken =
          std::any_of(face.sides[s].begin(), face.sides[s].end(), [&](const Shaker& shaker) {
            return std::abs(x - shaker.x.value()) <= shaker.reach_x.value() &&
                   std::abs(z - shaker.z.value()) <= shaker.reach_z.value() &&
                   std::any_of(shaker.running.begin(), shaker.running.end(),
                               [&](const Interval& run) {
                                 return run.from.count() <= middle && middle < run.to.count();
                               });
          });
      if (shaken) dose[s] += step;
    }
  }
  if (!came) return std::nullopt;
  return face.worst_side_counts ? *std::min_element(dose.begin(), dose.end())
                                : *std::max_element(dose.begin(), dose.end());
}

/// The field's dose at a spot, between the edges of its pieces.
inline std::optional<double> field_dose(const DoseField& field, double x, double z) {
  for (const DoseStrip& strip : field.strips) {
    if (x < strip.x0.value() || x >= strip.x1.value()) continue;
    for (const DosePiece& p : strip.pieces) {
      if (z <= p.z0.value() || z >= p.z1.value()) continue;
      const double share = (z - p.z0.value()) / (p.z1 - p.z0).value();
      return p.d0.count() + (p.d1 - p.d0).count() * share;
    }
  }
  return std::nullopt;
}

}  // namespace rb::trade::test
