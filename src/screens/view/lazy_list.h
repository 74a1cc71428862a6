// What the screens show of a pour in a list most frames do not show: made when first looked at.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

namespace rb::screens {

/// Good as long as the state it is made of.
template <class Item>
class LazyList {
 public:
  LazyList() = default;
  explicit LazyList(std::function<std::vector<Item>()> make) : make_(std::move(make)) {}
  [[nodiscard]] auto begin() const { return all().begin(); }
  [[nodiscard]] auto end() const { return all().end(); }
  [[nodiscard]] std::size_t size() const { return all().size(); }
  [[nodiscard]] bool empty() const { return all().empty(); }
  const Item& operator[](std::size_t i) const { return all()[i]; }

 private:
  [[nodiscard]] const std::vector<Item>& all() const {
    if (!made_) made_ = make_ ? make_() : std::vector<Item>{};
    return *made_;
  }
  std::function<std::vector<Item>()> make_;
  mutable std::optional<std::vector<Item>> made_;
};

}  // namespace rb::screens
