#include "tablet/touch_queue.h"

#include <utility>

namespace rb::app {

void TouchQueue::add(const screens::Touch& touch) {
  const auto moves = screens::Touch::Kind::move;
  const bool waits = !touches_.empty() && touches_.back().kind == moves;
  if (touch.kind == moves && waits) touches_.pop_back();
  touches_.push_back(touch);
}

void TouchQueue::moved(screens::Point at, Moment wall, Seconds steady) {
  at_ = at;
  if (!down_) return;
  add({.kind = screens::Touch::Kind::move, .at = at, .wall = wall, .steady = steady});
}

void TouchQueue::pressed(bool down, Moment wall, Seconds steady) {
  down_ = down;
  touches_.push_back({.kind = down ? screens::Touch::Kind::down : screens::Touch::Kind::up,
                      .at = at_,
                      .wall = wall,
                      .steady = steady});
}

void TouchQueue::doubt_since(std::size_t count, Seconds by) {
  for (std::size_t i = count; i < touches_.size(); ++i) touches_[i].uncertain = by;
}

void TouchQueue::letter(char32_t code) {
  typed_.push_back(utf8(code));
}

std::optional<screens::Touch> TouchQueue::next_touch() {
  if (touches_.empty()) return {};
  const screens::Touch touch = touches_.front();
  touches_.pop_front();
  return touch;
}

std::vector<std::string> TouchQueue::take_typed() {
  return std::exchange(typed_, {});
}

bool TouchQueue::take_escape() {
  return std::exchange(escape_, false);
}

std::string utf8(char32_t code) {
  const auto byte = [](char32_t bits) {
    return static_cast<char>(static_cast<unsigned char>(bits));
  };
  if (code < 0x80) return {byte(code)};
  if (code < 0x800) return {byte(0xC0 | code >> 6), byte(0x80 | (code & 0x3F))};
  if (code < 0x10000) {
    return {byte(0xE0 | code >> 12), byte(0x80 | (code >> 6 & 0x3F)), byte(0x80 | (code & 0x3F))};
  }
  return {byte(0xF0 | code >> 18), byte(0x80 | (code >> 12 & 0x3F)),
          byte(0x80 | (code >> 6 & 0x3F)), byte(0x80 | (code & 0x3F))};
}

}  // namespace rb::app
