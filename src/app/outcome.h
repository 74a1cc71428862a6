// How the program ends, and how it says why not.
#pragma once

#include "base/result.h"

namespace rb {

/// Exit codes, as the README documents them.
enum class Exit { fine = 0, findings = 1, usage = 2, book = 3 };

/// Says the error on standard error and gives the exit code it stands for.
Exit report(const Error& error);

}  // namespace rb
