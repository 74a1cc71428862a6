#include "trade/motors/conductor.h"

#include <array>

#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

struct Row {
  double mm2, class2, class5;  // ohm/km at 20 degC
};

constexpr std::array<Row, 22> kPlainCopper{{
    {0.5, 36.0, 39.0},       {0.75, 24.5, 26.0},      {1.0, 18.1, 19.5},
    {1.5, 12.1, 13.3},       {2.5, 7.41, 7.98},       {4.0, 4.61, 4.95},
    {6.0, 3.08, 3.30},       {10.0, 1.83, 1.91},      {16.0, 1.15, 1.21},
    {25.0, 0.727, 0.780},    {35.0, 0.524, 0.554},    {50.0, 0.387, 0.386},
    {70.0, 0.268, 0.272},    {95.0, 0.193, 0.206},    {120.0, 0.153, 0.161},
    {150.0, 0.124, 0.129},   {185.0, 0.0991, 0.106},  {240.0, 0.0754, 0.0801},
    {300.0, 0.0601, 0.0641}, {400.0, 0.0470, 0.0486}, {500.0, 0.0366, 0.0384},
    {630.0, 0.0283, 0.0287},
}};

}  // namespace

double copper_temperature_factor(Celsius temperature) {
  return 1.0 + 0.004 * (temperature.degrees - 20.0);
}

Result<ResistancePerLength> conductor_resistance(ConductorClass conductor, Area section,
                                                 Celsius temperature) {
  if (auto fault =
          outside(said("cord"),
                  {{said("section"), in_square_millimetres(section), 0.5, 1000.0, "mm2"},
                   {said("conductor temperature"), temperature.degrees, -50.0, 200.0, "degC"}})) {
    return Failed(*std::move(fault));
  }
  // A hair of slack: a section read as 2.5 mm2 must not miss its own row by rounding.
  const double mm2 = in_square_millimetres(section) * (1.0 + 1e-9);
  double at20 = 0.0;
  for (const Row& row : kPlainCopper) {
    if (row.mm2 <= mm2) at20 = conductor == ConductorClass::class2 ? row.class2 : row.class5;
  }
  return ohms_per_kilometre(at20) * copper_temperature_factor(temperature);
}

}  // namespace rb::trade
