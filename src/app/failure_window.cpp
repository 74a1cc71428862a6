#include "app/failure_window.h"

#include "app/local_time.h"
#include "screens/failure_screen.h"
#include "store/entry_now.h"

namespace rb {

Result<AfterFailure> show_failure(const Error& error, const app::WindowSpec& spec,
                                  const screens::Settings& settings,
                                  const std::atomic<bool>* stop) {
  const screens::FailureDraft failure{error.trouble, error.where, to_text(error), false};
  screens::Ui ui{settings};
  AfterFailure after = AfterFailure::leave;
  app::Program program;
  program.look = [&](Moment now) {
    ui.drafts().failure = failure;
    screens::World world;
    world.now = now;
    world.utc_offset = system_utc_offset(now);
    return world;
  };
  program.act = [&](const screens::Intents& intents) {
    for (const screens::Intent& intent : intents) {
      if (std::holds_alternative<screens::TryAgain>(intent)) after = AfterFailure::try_again;
    }
    return intents.empty();  // every answer closes this window
  };
  program.stop = stop;
  const auto shown = app::show(spec, ui, program);
  if (!shown) return Failed{shown.error()};
  return after;
}

}  // namespace rb
