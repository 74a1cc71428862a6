#include "app/signing/key_job.h"

#include <mutex>
#include <utility>

#include "app/signing/pin_tries.h"

namespace rb {

namespace {

Result<KeysReady> ready(const KeyWish& wish) {
  KeysReady keys;
  const auto pin = sign::Pin::read(wish.pin.digits());
  if (!pin) return Failed{pin.error()};
  if (wish.witness) {
    const auto theirs = sign::Pin::read(wish.witness_pin.digits());
    if (!theirs) return Failed{theirs.error()};
    auto opened = unlock(*wish.witness, *theirs, wish.tries, wish.now);
    if (!opened) return Failed{opened.error()};
    keys.witness = *std::move(opened);
  }
  if (wish.own) {
    auto opened = unlock(*wish.own, *pin, wish.tries, wish.now);
    if (!opened) return Failed{opened.error()};
    keys.own = *std::move(opened);
  } else {
    auto made = sign::make_key(*pin);
    if (!made) return Failed{made.error()};
    keys.made = *std::move(made);
  }
  return keys;
}

}  // namespace

struct KeyJob::Shared {
  std::mutex mutex;
  std::optional<Result<KeysReady>> came;
  bool begun = false;
};

KeyJob::KeyJob(KeyWish wish, std::function<void()> changed) : shared_(std::make_shared<Shared>()) {
  auto turn = [shared = shared_, wish = std::move(wish),
               changed = std::move(changed)](bool /*stopping*/) mutable -> std::optional<Seconds> {
    {
      const std::lock_guard lock(shared->mutex);
      if (shared->begun) return std::nullopt;
      shared->begun = true;
    }
    auto came = ready(wish);
    wish.pin.wipe();
    wish.witness_pin.wipe();
    {
      const std::lock_guard lock(shared->mutex);
      shared->came = std::move(came);
    }
    if (changed) changed();
    return std::nullopt;
  };
  thread_ = std::make_unique<store::SideThread>(std::move(turn));
}

std::optional<Result<KeysReady>> KeyJob::take() {
  const std::lock_guard lock(shared_->mutex);
  return std::exchange(shared_->came, std::nullopt);
}

}  // namespace rb
