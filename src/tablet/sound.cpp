#include "tablet/sound.h"

#include <alsa/asoundlib.h>

#include <atomic>
#include <cmath>
#include <condition_variable>
#include <mutex>
#include <optional>
#include <thread>

namespace rb::app {

namespace {

struct Note {
  double hertz;  ///< 0 = silence
  double seconds;
};

void add(std::vector<std::int16_t>& samples, const Note& note) {
  constexpr double kLoud = 0.6 * 32767;
  constexpr double kRamp = 0.008;  // seconds: no click at either end
  const auto count = static_cast<std::size_t>(note.seconds * kSampleRate);
  for (std::size_t i = 0; i < count; ++i) {
    const double t = static_cast<double>(i) / kSampleRate;
    const double edge = std::min({1.0, t / kRamp, (note.seconds - t) / kRamp});
    const double wave = note.hertz > 0 ? std::sin(2 * 3.14159265358979 * note.hertz * t) : 0.0;
    samples.push_back(static_cast<std::int16_t>(std::lround(kLoud * std::max(edge, 0.0) * wave)));
  }
}

// The library writes to the terminal when it finds no device; the screen says it instead.
void keep_quiet(const char*, int, const char*, int, const char*, ...) {}  // NOLINT(cert-dcl50-cpp)

class Device {
 public:
  explicit Device(const std::string& name) {
    if (snd_pcm_open(&pcm_, name.c_str(), SND_PCM_STREAM_PLAYBACK, 0) < 0) pcm_ = nullptr;
    constexpr unsigned kLatencyUs = 200000;
    if (pcm_ != nullptr &&
        snd_pcm_set_params(pcm_, SND_PCM_FORMAT_S16, SND_PCM_ACCESS_RW_INTERLEAVED, 1, kSampleRate,
                           1, kLatencyUs) < 0) {
      close();
    }
  }
  ~Device() { close(); }
  Device(const Device&) = delete;
  Device& operator=(const Device&) = delete;

  [[nodiscard]] bool open() const { return pcm_ != nullptr; }
  bool play(const std::vector<std::int16_t>& samples) {
    std::size_t at = 0;
    while (at < samples.size()) {
      const snd_pcm_sframes_t wrote =
          snd_pcm_writei(pcm_, samples.data() + at, samples.size() - at);
      if (wrote < 0) {
        if (snd_pcm_recover(pcm_, static_cast<int>(wrote), 1) < 0) return false;
      } else {
        at += static_cast<std::size_t>(wrote);
      }
    }
    return snd_pcm_drain(pcm_) >= 0;
  }

 private:
  void close() {
    if (pcm_ != nullptr) snd_pcm_close(pcm_);
    pcm_ = nullptr;
  }
  snd_pcm_t* pcm_ = nullptr;
};

}  // namespace

std::vector<std::int16_t> tone_samples(Severity severity) {
  std::vector<std::int16_t> samples;
  if (severity == Severity::stop) {
    for (int i = 0; i < 3; ++i) {
      add(samples, {1046.5, 0.16});
      add(samples, {0, 0.09});
    }
  } else if (severity == Severity::mend) {
    add(samples, {659.3, 0.28});
    add(samples, {0, 0.05});
    add(samples, {440.0, 0.34});
  }
  return samples;
}

struct Sound::Inside {
  std::string device;
  std::atomic<bool> works{true};
  std::mutex lock;
  std::condition_variable woken, idle;
  std::optional<Severity> wanted;
  bool busy = true;
  bool leave = false;
  std::thread worker;

  void run() {
    {
      const Device tried(device);
      works = tried.open();
    }
    std::unique_lock<std::mutex> hold(lock);
    for (;;) {
      busy = false;
      idle.notify_all();
      woken.wait(hold, [&] { return leave || wanted; });
      if (leave) return;
      const Severity severity = *wanted;
      wanted.reset();
      busy = true;
      hold.unlock();
      {
        // Opened for each tone: a device unplugged, or plugged in, is noticed.
        Device now(device);
        works = now.open() && now.play(tone_samples(severity));
      }
      hold.lock();
    }
  }
};

Sound::Sound(std::string device) : in_(std::make_unique<Inside>()) {
  snd_lib_error_set_handler(keep_quiet);
  in_->device = std::move(device);
  in_->worker = std::thread([this] { in_->run(); });
}

Sound::~Sound() {
  {
    const std::lock_guard<std::mutex> hold(in_->lock);
    in_->leave = true;
  }
  in_->woken.notify_all();
  in_->worker.join();
}

bool Sound::works() const {
  return in_->works;
}

void Sound::sound(Severity severity) {
  if (severity == Severity::note) return;
  {
    const std::lock_guard<std::mutex> hold(in_->lock);
    if (!in_->wanted || severity == Severity::stop) in_->wanted = severity;
  }
  in_->woken.notify_all();
}

void Sound::drain() {
  std::unique_lock<std::mutex> hold(in_->lock);
  in_->idle.wait(hold, [&] { return !in_->busy && !in_->wanted; });
}

}  // namespace rb::app
