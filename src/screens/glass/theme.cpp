#include "screens/glass/theme.h"

namespace rb::screens {

namespace {

// Paper and ink with petrol blue for what to do next: the most light a screen can give back.
constexpr Theme kSun{
    .page = rgb(0xE6E2D8),
    .panel = rgb(0xFAF8F2),
    .ink = rgb(0x12181B),
    .ink_soft = rgb(0x38424A),
    .line = rgb(0x6F767A),
    .quiet = {rgb(0xFFFFFF), rgb(0x12181B)},
    .act = {rgb(0x06283A), rgb(0xFFFFFF)},
    .run = {rgb(0x8BE3AB), rgb(0x05170D)},
    .live = {rgb(0xFFB61E), rgb(0x12181B)},
    .stop = {rgb(0x8F1016), rgb(0xFFFFFF)},
    .mend = {rgb(0xC3A0F0), rgb(0x1D0B30)},
    .well = {rgb(0xDCEBDD), rgb(0x0C3D26)},
    .off = {rgb(0xDAD7CF), rgb(0x3B4348)},
    .form = rgb(0x8A6B3F),
    .hard = rgb(0xB9BBB8),
    .fresh = rgb(0x8FA3AC),
    .fresh_line = rgb(0x2F3A42),
    .grain = rgb(0x5D676B),
    .void_fill = rgb(0xFFFFFF),
    .mark = rgb(0x0B4560),
};

// Warm light letters on slate; grounds kept dark so that the eye keeps its night sight.
constexpr Theme kNight{
    .page = rgb(0x0D1214),
    .panel = rgb(0x161D21),
    .ink = rgb(0xF2ECDD),
    .ink_soft = rgb(0xC3BFB2),
    .line = rgb(0x6A757B),
    .quiet = {rgb(0x222B30), rgb(0xF2ECDD)},
    .act = {rgb(0xC4E8F8), rgb(0x0A1A21)},
    .run = {rgb(0x7FD3A4), rgb(0x07190F)},
    .live = {rgb(0xF2A91B), rgb(0x14100A)},
    .stop = {rgb(0x941017), rgb(0xFFFFFF)},
    .mend = {rgb(0xAF93DE), rgb(0x12061F)},
    .well = {rgb(0x17352A), rgb(0xBFEBD2)},
    .off = {rgb(0x2A3135), rgb(0xC9C6BC)},
    .form = rgb(0x8A6B3F),
    .hard = rgb(0x4C5559),
    .fresh = rgb(0x5F7B88),
    .fresh_line = rgb(0xF2ECDD),
    .grain = rgb(0x8E999E),
    .void_fill = rgb(0x0D1214),
    .mark = rgb(0x9BD3EA),
};

}  // namespace

const Theme& theme(ThemeName name) {
  return name == ThemeName::night ? kNight : kSun;
}

}  // namespace rb::screens
