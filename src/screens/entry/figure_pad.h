// The pad for any figure but a height: volumes, temperatures, slumps. The unit is always shown, and
// what cannot be is refused before it is kept.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "screens/entry/stage.h"

namespace rb::screens {

/// A figure's name and unit in a system of units, and what it may be.
struct FigureRange {
  Word title;
  const char* unit;
  int decimals;
  double least, most;  ///< wider than any site sees, narrow enough to catch a wrong unit
  double step;
  bool may_be_negative;
};
FigureRange figure_range(Figure what, Units units);

/// A figure with its unit: "6.50 m\u00B3".
std::string figure_text(Figure what, double shown, Units units);

/// Adds a key ('0'-'9', '.', '-' turns the sign, '<' erases); keys that make no number are passed
/// over.
void press_figure_key(std::string& typed, char key);
/// What stands in the pad: the typed figure, or the guess when nothing is typed. None when it is no
/// number, or out of range.
std::optional<double> entered(const FigureEntry& entry, Units units);

/// What a pad may have besides its keys.
struct PadBeside {
  std::vector<double> choices{};  ///< as shown, three at most: in place of the steps
  std::string doubt{};            ///< told of the figure that stands there, which may be kept
};
/// Draws the pad over a panel's whole box. `kept`: the figure is entered(entry).
PanelEnd draw_figure_pad(Stage& stage, const Box& box, FigureEntry& entry, const std::string& title,
                         const PadBeside& beside = {});

/// What came of a pad; `value`, as shown, where it was kept.
struct FigureTyped {
  PanelEnd end = PanelEnd::open;
  Figure what{};
  std::optional<double> value{};
};
/// The pad over a panel's whole box while one of its figures is typed, which ends with it; none: no
/// figure is, and the panel draws itself. Its title is the figure's, behind what it is of.
std::optional<FigureTyped> draw_typed(Stage& stage, const Box& box,
                                      std::optional<FigureEntry>& figure,
                                      const std::string& of = {});

// Between the figures shown and the quantities kept, by the table of measures; lengths are small
// ones (mm, in), velocities wind, pressures strengths of concrete.
double shown(Volume volume, Units units);
double shown(Length small, Units units);
double shown(Celsius temperature, Units units);
double shown(MassPerVolume density, Units units);
double shown(Velocity wind, Units units);
double shown(Pressure strength, Units units);
Volume volume_of(double shown, Units units);
Length small_length_of(double shown, Units units);
Celsius temperature_of(double shown, Units units);
MassPerVolume density_of(double shown, Units units);
Velocity wind_of(double shown, Units units);
Pressure strength_of(double shown, Units units);

}  // namespace rb::screens
