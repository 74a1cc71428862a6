// How a method of form pressure is cited on paper.
#pragma once

#include "trade/pressure/pressure_case.h"

namespace rb::trade {

/// The same in every language.
constexpr const char* cited(PressureMethod method) {
  switch (method) {
    case PressureMethod::aci347:
      return "ACI 347";
    case PressureMethod::ciria108:
      return "CIRIA Report 108";
    case PressureMethod::din18218:
      return "DIN 18218:2010 (formulas from memory)";
  }
  return "";
}

}  // namespace rb::trade
