// How values print in a test that fails. Every test sees it, by the build.
#pragma once

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <boost/units/io.hpp>
#include <chrono>
#include <concepts>
#include <optional>
#include <string>
#include <type_traits>

#include "base/ids.h"
#include "base/moment.h"
#include "base/quantity.h"

namespace doctest {

/// "3.001 m", in the SI unit a quantity is kept in, with all its figures.
template <class Unit, class Number>
struct StringMaker<boost::units::quantity<Unit, Number>> {
  static String convert(const boost::units::quantity<Unit, Number>& value) {
    return fmt::format("{} {}", value.value(), boost::units::symbol_string(Unit{})).c_str();
  }
};
template <class Number, class Period>
struct StringMaker<std::chrono::duration<Number, Period>> {
  static String convert(const std::chrono::duration<Number, Period>& span) {
    return fmt::format("{} s", std::chrono::duration<double>{span}.count()).c_str();
  }
};
template <>
struct StringMaker<rb::Moment> {
  static String convert(const rb::Moment& moment) { return rb::to_text(moment).c_str(); }
};
template <>
struct StringMaker<rb::Celsius> {
  static String convert(const rb::Celsius& value) {
    return fmt::format("{} \u00B0C", value.degrees).c_str();
  }
};
template <class Tag>
struct StringMaker<rb::Id<Tag>> {
  static String convert(const rb::Id<Tag>& id) { return ('"' + id.text + '"').c_str(); }
};
template <class Value>
struct StringMaker<std::optional<Value>> {
  static String convert(const std::optional<Value>& value) {
    return value ? toString(*value) : String{"none"};
  }
};
/// An enum by its number.
template <class Enum>
requires std::is_enum_v<Enum>
struct StringMaker<Enum> {
  static String convert(const Enum& value) {
    return fmt::format("{}", static_cast<long>(value)).c_str();
  }
};

}  // namespace doctest
