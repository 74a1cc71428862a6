// What every panel of a screen is handed: where to draw, how to speak, and where to put what the
// user wants.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "screens/entry/drafts.h"
#include "screens/glass/canvas.h"
#include "screens/glass/widgets.h"
#include "screens/seen/damage_seen.h"
#include "screens/seen/keeping.h"
#include "screens/seen/photos_seen.h"
#include "screens/seen/second_copy.h"
#include "screens/seen/signing_seen.h"
#include "screens/view/intents.h"
#include "screens/view/pour_view.h"
#include "screens/view/settings.h"
#include "screens/words/say.h"

namespace rb::screens {

/// How full the tablet's battery is, per cent.
struct Battery {
  int percent = 100;
  bool charging = false;
  bool operator==(const Battery&) const = default;
};
inline constexpr int kBatteryLow = 20;
inline constexpr int kBatteryVeryLow = 10;

/// How a panel that asks for something stands after a frame.
enum class PanelEnd { open, cancelled, kept };

class ReviewMemory;

/// The banner in a word or two, where a panel lies over it.
struct Covered {
  Symbol symbol = Symbol::none;
  Look look = Look::quiet;
  std::string words{};  ///< may be empty: the sign says it
};

struct Stage {
  Canvas& canvas;
  const Say& say;
  const Settings& settings;
  Drafts& drafts;
  Intents& intents;
  Moment now{};
  std::optional<Dialog>& next;  ///< what is open after this frame, when that changes

  const std::vector<std::string>& typed;  ///< letters of a real keyboard, "\b" erases
  bool sound_works = true;                ///< the tablet has something to sound a tone with
  std::optional<Battery> battery{};       ///< where the system tells
  Keeping keeping{};                      ///< how the taps stand with the disk
  const MirrorSeen* mirror = nullptr;     ///< null: the book is only read
  std::optional<HeadSeen> head{};         ///< none: an empty book
  DamageSeen damage{};                    ///< of the pour on the screen
  const SigningSeen* signing = nullptr;   ///< null: nothing can be signed in this book
  const PhotosSeen* photos = nullptr;     ///< null: the book is only read
  ReviewMemory* review = nullptr;         ///< of the same; null: no pour is on the screen
  std::optional<Covered> covered{};       ///< the banner, where a panel lies over it
  std::vector<Finding> looked_at{};       ///< findings shown in full in this frame

  void open(Dialog dialog) const { next = std::move(dialog); }
  void close() const { next = std::monostate{}; }
  /// When the tap answered in this frame happened.
  [[nodiscard]] Moment tapped() const { return canvas.tap() ? canvas.tap()->wall : now; }
  void keep(Happening what, Moment at) const {
    intents.emplace_back(KeepEvent{std::move(what), at});
  }
  void keep(Happening what) const { keep(std::move(what), tapped()); }
};

}  // namespace rb::screens
