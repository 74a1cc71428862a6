#include "pour/event.h"

#include <array>

namespace rb {

namespace {

// In the order of Happening.
constexpr std::array<const char*, std::variant_size_v<Happening>> kKinds{
    "pour-open", "ready",   "hang",   "take-down",  "lift-start", "top",        "lift-end",
    "run",       "rest",    "insert", "truck",      "discharge",  "test",       "air-temp",
    "hold",      "resume",  "note",   "fix",        "strike",     "pour-close", "sign",
    "strip",     "blemish", "repair", "penetration"};

}  // namespace

const char* kind_text(const Happening& what) {
  return kKinds.at(what.index());
}

}  // namespace rb
