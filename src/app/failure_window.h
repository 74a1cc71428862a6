// The window that stands where the screens would, when the book could not be opened.
#pragma once

#include <atomic>

#include "app/window.h"
#include "base/result.h"
#include "screens/settings.h"

namespace rb {

enum class AfterFailure { leave, try_again };

/// Shows what ails the book in the user's language until the user says how to go on. (A book that
/// can be read though not written is opened for reading by Session itself and says so.) An error
/// where there is no display to show it on.
Result<AfterFailure> show_failure(const Error& error, const app::WindowSpec& spec,
                                  const screens::Settings& settings, const std::atomic<bool>* stop);

}  // namespace rb
