// The screens as one thing for the program to drive: input and the world in, intents out. Knows no
// window: a window, a test or a picture gives it touches and draws what it leaves in ImGui's draw
// data. One Ui at a time (the drawing library has one current context).
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "check/check.h"
#include "screens/entry/drafts.h"
#include "screens/entry/notices.h"
#include "screens/entry/stage.h"
#include "screens/glass/probe.h"
#include "screens/glass/tap.h"
#include "screens/seen/damage_seen.h"
#include "screens/seen/keeping.h"
#include "screens/seen/photos_seen.h"
#include "screens/seen/second_copy.h"
#include "screens/seen/signing_seen.h"
#include "screens/view/intents.h"
#include "screens/view/pours_view.h"
#include "screens/view/settings.h"

namespace rb::screens {

/// Something to tell the user that no finding tells: a tap that could not be kept, a busy book.
struct Trouble {
  std::string text;
  bool not_kept = false;  ///< the last tap is lost: said loudly
  /// Said in the user's language instead of `text`, `number` put in; count_ = `text` stands.
  Word word = Word::count_;
  std::size_t number = 0;
  std::optional<Error> error{};  ///< told in the user's language and units instead of `text`
};

/// What stands in the book now. The pointers are only looked at during the frame.
struct World {
  Moment now{};
  std::chrono::minutes utc_offset{0};
  const std::vector<PourCard>* pours = nullptr;  ///< in the order to show
  const PourState* state = nullptr;              ///< the pour that is open on the screen, or none
  const CheckReport* report = nullptr;           ///< of that pour; with `state` never null
  std::optional<PoursPart> part{};               ///< of the list; none: `pours` is all of it
  bool opening = false;                          ///< the pour or the list is being read
  Keeping keeping{};
  std::optional<MirrorSeen> mirror{};    ///< none: the book is only read, nothing follows it
  std::optional<HeadSeen> head{};        ///< of the book; none: it is empty
  std::optional<SigningSeen> signing{};  ///< none: nothing can be signed in this book
  std::optional<PhotosSeen> photos{};    ///< none: the book is only read
  std::optional<Trouble> trouble{};
  bool leaving = false;              ///< the program was asked to end, and waits for the disk
  DamageSeen damage{};               ///< of the open pour: it is judged with what reads
  bool sound_works = true;           ///< false: settings say that there is no sound
  std::optional<Battery> battery{};  ///< none: the system does not tell
};

struct UiInput {
  int width_px = 0, height_px = 0;
  std::optional<Touch> touch{};      ///< at most one a frame: a tap is never lost
  std::vector<std::string> typed{};  ///< letters of a real keyboard, "\b" erases
  bool escape = false;               ///< the Escape key: the way back
  Seconds passed{};                  ///< since the frame before
  Seconds steady{};                  ///< now, on the clock of touches; 0: as the world's now
  std::optional<Stall> stall{};      ///< the loop stood still just before
};

struct UiOutput {
  Intents intents;
  Seconds next_change{60};  ///< the picture stays right for this long without a touch
  std::optional<Severity>
      tone{};  ///< to be sounded now: something of this severity newly needs a hand
  std::optional<Press> press{};  ///< the press that this frame's touch ended
};

class Ui {
 public:
  explicit Ui(Settings settings = {});
  ~Ui();
  Ui(const Ui&) = delete;
  Ui& operator=(const Ui&) = delete;

  /// Draws one frame and says what the user wants. Draw ImGui::GetDrawData() afterwards. An
  /// exception inside is shown as a trouble and counted; the third in a row is thrown on.
  UiOutput frame(const UiInput& input, const World& world);

  /// The picture of the last frame came up on the glass. Where it is never said, every picture
  /// counts as seen when it was drawn.
  void shown(Seconds steady);

  /// Counts up whenever the font picture was made anew: load it again before drawing.
  [[nodiscard]] int fonts_version() const;
  [[nodiscard]] const Settings& settings() const;
  void set(const Settings& settings);
  [[nodiscard]] Drafts& drafts();
  /// What the last frame drew.
  [[nodiscard]] const Probe& probe() const;
  [[nodiscard]] int refused_taps() const;
  /// The glass is locked for cleaning.
  [[nodiscard]] bool wiping() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> in_;
};

}  // namespace rb::screens
