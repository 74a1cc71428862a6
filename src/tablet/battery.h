// How full the tablet's battery is, as the system tells it in a folder of small files.
#pragma once

#include <filesystem>
#include <optional>

#include "screens/entry/stage.h"

namespace rb {

/// Reads the kernel's folder of power supplies. Two batteries count together, by what they hold.
/// Those of things beside the tablet (a mouse, a pen) are passed over. None: no battery, or the
/// system tells nothing that can be read.
std::optional<screens::Battery> read_battery(
    const std::filesystem::path& folder = "/sys/class/power_supply");

}  // namespace rb
