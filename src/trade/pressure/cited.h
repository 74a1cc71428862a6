// A pressure method by the name a practitioner cites it by. Names of standards are the same in
// every language.
#pragma once

#include "trade/pressure/pressure_case.h"

namespace rb::trade {

/// "ACI 347"; to_text() is what scripts write.
constexpr const char* cited(PressureMethod method) {
  switch (method) {
    case PressureMethod::aci347:
      return "ACI 347";
    case PressureMethod::ciria108:
      return "CIRIA 108";
    case PressureMethod::din18218:
      return "DIN 18218";
  }
  return "";
}

/// The same as paper has it, with its edition where there are several, and how it was read.
constexpr const char* cited_in_full(PressureMethod method) {
  switch (method) {
    case PressureMethod::ciria108:
      return "CIRIA Report 108";
    case PressureMethod::din18218:
      return "DIN 18218:2010 (formulas from memory)";
    case PressureMethod::aci347:
      break;
  }
  return cited(method);
}

}  // namespace rb::trade
