// Millimetres on the glass to pixels. Everything a glove must hit and an eye must read is given in
// millimetres, so that it stays the same size on every tablet.
#pragma once

namespace rb::screens {

inline constexpr double kDefaultDiagonalInches = 10.1;  ///< of a common rugged tablet; a setting
inline constexpr double kTargetMm = 15.0;  ///< least width and height of what a finger taps
inline constexpr double kGapMm = 3.0;      ///< least distance between two of them

class Scale {
 public:
  Scale(int width_px, int height_px, double diagonal_inches = kDefaultDiagonalInches);

  [[nodiscard]] double px_per_mm() const { return px_per_mm_; }
  /// Whole pixels, rounded up so that a least size is kept.
  [[nodiscard]] float mm(double millimetres) const;
  [[nodiscard]] float target() const { return mm(kTargetMm); }
  [[nodiscard]] float gap() const { return mm(kGapMm); }
  [[nodiscard]] bool portrait() const { return height_ > width_; }
  [[nodiscard]] int width_px() const { return width_; }
  [[nodiscard]] int height_px() const { return height_; }

  bool operator==(const Scale&) const = default;

 private:
  int width_, height_;
  double px_per_mm_;
};

}  // namespace rb::screens
