// The tones for what newly needs a hand. Without a sound device it is silent and says so.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "check/finding.h"

namespace rb::app {

inline constexpr int kSampleRate = 44100;  ///< samples a second, one channel

/// Stop: three short high tones. Mend: two longer ones, falling. A note has none.
std::vector<std::int16_t> tone_samples(Severity severity);

class Sound {
 public:
  /// Looks for the device on a thread of its own; returns at once.
  explicit Sound(std::string device = "default");
  ~Sound();
  Sound(const Sound&) = delete;
  Sound& operator=(const Sound&) = delete;

  /// False once it is known that there is no device, or that it refuses.
  [[nodiscard]] bool works() const;
  /// Sounds a tone and returns at once. One that comes while another sounds waits; of several that
  /// wait only the gravest is sounded.
  void sound(Severity severity);
  /// Waits until nothing sounds or is to sound. For tests.
  void drain();

 private:
  struct Inside;
  std::unique_ptr<Inside> in_;
};

}  // namespace rb::app
