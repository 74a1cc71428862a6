// Names that must not be mixed up: each is a text of its own type.
#pragma once

#include <compare>
#include <functional>
#include <string>
#include <utility>

namespace rb {

template <class Tag>
struct Id {
  std::string text;
  Id() = default;
  explicit Id(std::string t) : text(std::move(t)) {}
  explicit Id(const char* t) : text(t) {}
  auto operator<=>(const Id&) const = default;  // NOLINT(modernize-use-nullptr): none there
  bool operator==(const Id&) const = default;
  [[nodiscard]] bool empty() const { return text.empty(); }
};

using PourId = Id<struct PourTag>;
using ElementId = Id<struct ElementTag>;
using RowId = Id<struct RowTag>;
using MotorId = Id<struct MotorTag>;
using InverterId = Id<struct InverterTag>;
using MixId = Id<struct MixTag>;
using TicketId = Id<struct TicketTag>;
using PersonId = Id<struct PersonTag>;
using EventId = Id<struct EventTag>;
using SpecimenId = Id<struct SpecimenTag>;

}  // namespace rb

template <class Tag>
struct std::hash<rb::Id<Tag>> {
  std::size_t operator()(const rb::Id<Tag>& id) const noexcept {
    return std::hash<std::string>{}(id.text);
  }
};
