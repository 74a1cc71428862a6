#include "random_wish.h"

#include <cmath>

#include "follow_sheet.h"

namespace rb {

namespace {

class Drawing {
 public:
  Drawing(std::mt19937& draw, Units units) : draw_(draw), units_(units) {}

  PlanWish wish() {
    w_ = wish_for(ElementId{"E1"});
    const int shape = pick(0, 7);
    if (shape > 5) {
      deck();
    } else if (shape <= 2) {
      wall();
    } else {
      column(shape == 5);
    }
    w_.form_rating = kilopascals(between(45, 130));
    w_.concrete = celsius(between(9, 36));
    w_.mix.initial_set = hours(between(3, 8));
    w_.mix.slump = millimetres(between(60, 160));
    w_.mix.unit_weight = kilonewtons_per_m3(between(23, 25));
    w_.haul = std::chrono::minutes(pick(10, 40));
    w_.hang_time = std::chrono::minutes(pick(2, 9));
    w_.crew = pick(1, 6);
    w_.reach_z = length(0.4, 0.9);
    w_.reach_x = length(0.4, 0.9);
    w_.motor.force = kilonewtons(between(2, 9));
    w_.both_sides = w_.thickest() > metres(0.3) && pick(0, 1) == 1;
    if (pick(0, 3) == 0) w_.motors_at_hand = static_cast<std::size_t>(pick(1, 24));
    if (pick(0, 3) == 0) w_.trucks_per_hour = pick(1, 8);
    if (pick(0, 3) == 0) w_.rise_limit = metres_per_hour(between(0.8, 4));
    if (pick(0, 2) == 0) w_.inverter_amps.reset();
    if (pick(0, 3) > 0) w_.cable = Cable{square_metres(6e-6), metres(pick(5, 20))};
    if (pick(0, 3) == 0) w_.reach_pressure = w_.reach_z * between(1, 2);
    w_.method = static_cast<trade::PressureMethod>(pick(0, 2));
    return std::move(w_);
  }

 private:
  int pick(int least, int most) { return std::uniform_int_distribution<int>{least, most}(draw_); }
  double between(double least, double most) {
    return std::uniform_real_distribution<double>{least, most}(draw_);
  }
  // In whole centimetres or inches, of metres.
  Length length(double least, double most) {
    const double part = units_ == Units::us ? 0.0254 : 0.01;
    return metres(std::round(between(least, most) / part) * part);
  }

  void wall() {
    w_.kind = ElementKind::wall;
    w_.length = length(1.5, 24);
    w_.height = length(0.9, 7);
    w_.thickness = length(0.2, 0.6);
    if (pick(0, 3) == 0) w_.thickness_top = w_.thickness * 0.8;
    if (pick(0, 5) == 0) w_.batter_deg = between(1, 8);
    if (pick(0, 2) == 0) {
      Patch o{w_.length * between(0.1, 0.5), w_.height * between(0.1, 0.5),
              w_.length * between(0.1, 0.3), w_.height * between(0.1, 0.4)};
      w_.openings.push_back(o);
    }
    if (pick(0, 2) == 0) {
      const Length one = w_.length * between(0.2, 0.7);
      w_.bays = {one, w_.length - one};
    }
  }

  void deck() {
    w_.kind = ElementKind::deck;
    w_.length = length(3, 30);
    w_.height = length(2, 16);
    w_.thickness = length(0.15, 0.9);
    if (pick(0, 2) == 0) {
      w_.beams.push_back({w_.length * between(0, 0.8), metres(0.3), length(0.2, 0.7)});
      w_.beams.push_back({std::nullopt, metres(0.4), metres(0.4)});
    }
    if (pick(0, 2) == 0) {
      const Length one = w_.length * between(0.2, 0.7);
      w_.bays = {one, w_.length - one};
    }
  }

  void column(bool round) {
    w_.kind = ElementKind::column;
    w_.length = length(0.3, 1.6);
    w_.height = length(1.8, 7);
    w_.thickness = round || pick(0, 1) == 0 ? w_.length : length(0.3, 1.6);
    if (round) w_.section = trade::Section::round;
    if (!round && pick(0, 3) == 0) w_.thickness_top = w_.thickness * 0.7;
  }

  std::mt19937& draw_;
  Units units_;
  PlanWish w_;
};

}  // namespace

PlanWish random_wish(std::mt19937& draw, Units units) {
  return Drawing{draw, units}.wish();
}

}  // namespace rb
