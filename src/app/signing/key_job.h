// A PIN tried, or a key made, on a thread of its own: Argon2id takes the better part of a second,
// and the count of tries a disk that may hang.
#pragma once

#include <functional>
#include <memory>
#include <optional>

#include "base/path.h"
#include "base/secret.h"
#include "pour/log/kinds_review.h"
#include "sign/person_key.h"
#include "store/file/side_thread.h"

namespace rb {

struct KeyWish {
  std::optional<event::Enrol> own;  ///< the key that `pin` opens; none: a new key is made with it
  Secret pin;
  std::optional<event::Enrol> witness{};  ///< the key that `witness_pin` opens, before one is made
  Secret witness_pin{};
  Path tries{};  ///< where PINs tried are counted
  Moment now{};
};

struct KeysReady {
  std::optional<sign::PersonKey> own{}, witness{};
  std::optional<sign::SealedKey> made{};
};

class KeyJob {
 public:
  /// `changed` is called when it has ended, on another thread.
  KeyJob(KeyWish wish, std::function<void()> changed);
  /// What came of it, once; none while it is under way.
  std::optional<Result<KeysReady>> take();

 private:
  struct Shared;
  std::shared_ptr<Shared> shared_;
  std::unique_ptr<store::SideThread> thread_;
};

}  // namespace rb
