#include "tablet/sound.h"

#include <doctest/doctest.h>

#include <cstring>
#include <fstream>

#include "temp_folder.h"

using namespace rb;
using namespace rb::app;

namespace {
// How often the wave rises through zero.
int rises(const std::vector<std::int16_t>& samples) {
  int count = 0;
  for (std::size_t i = 1; i < samples.size(); ++i) {
    if (samples[i - 1] < 0 && samples[i] >= 0) ++count;
  }
  return count;
}
}  // namespace

TEST_CASE("stop and mend sound apart, in pitch and in length, and a note not at all") {
  const auto stop = tone_samples(Severity::stop);
  const auto mend = tone_samples(Severity::mend);
  CHECK(tone_samples(Severity::note).empty());
  // Three of 0.16 s at 1046.5 Hz; 0.28 s at 659.3 Hz and 0.34 s at 440 Hz.
  CHECK(rises(stop) == doctest::Approx(3 * 0.16 * 1046.5).epsilon(0.02));
  CHECK(rises(mend) == doctest::Approx(0.28 * 659.3 + 0.34 * 440).epsilon(0.02));
  CHECK(static_cast<double>(stop.size()) / kSampleRate < 1);
  CHECK(static_cast<double>(mend.size()) / kSampleRate < 1);
}

TEST_CASE("without a device the sound says so and stays silent") {
  Sound sound("no such device");
  sound.drain();
  CHECK_FALSE(sound.works());
  sound.sound(Severity::stop);  // must neither hang nor throw
  sound.drain();
  CHECK_FALSE(sound.works());
}

TEST_CASE("a tone goes to the device as it was made") {
  const test::TempFolder folder;
  const auto file = folder.path / "heard.raw";
  {
    // The library's own writer: what would be heard goes into a file.
    Sound sound("file:FILE=" + file.string() + ",FORMAT=raw");
    sound.drain();
    REQUIRE(sound.works());
    sound.sound(Severity::mend);
    sound.drain();
    CHECK(sound.works());
  }
  std::ifstream in(file, std::ios::binary);
  const std::string bytes{std::istreambuf_iterator<char>(in), {}};
  std::vector<std::int16_t> heard(bytes.size() / 2);
  std::memcpy(heard.data(), bytes.data(), heard.size() * 2);
  const auto made = tone_samples(Severity::mend);
  REQUIRE(heard.size() >= made.size());
  CHECK(std::equal(made.begin(), made.end(), heard.begin()));
}
