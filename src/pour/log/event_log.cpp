#include "pour/log/event_log.h"

#include <utility>

#include "pour/log/log_entry.h"

namespace rb {

bool LogEntry::late() const {
  return event.entry && event.entry->boot != kScriptBoot &&
         between(event.at, event.entry->wall) > kLateEntry;
}

namespace {

// Ids are the book's own; two books that tell the same pour differ in them alone.
bool same_but_for_ids(const Happening& a, const Happening& b) {
  if (a.index() != b.index()) return false;
  return std::visit(
      [&]<class Kind>(Kind mine) {
        const auto* other = std::get_if<Kind>(&b);
        if (other == nullptr) return false;
        if constexpr (requires { mine.target; }) mine.target = other->target;
        return mine == *other;
      },
      a);
}

}  // namespace

bool LogEntry::operator==(const LogEntry& other) const {
  return event.at == other.event.at && event.by == other.event.by &&
         same_but_for_ids(event.what, other.event.what) && event.extra == other.event.extra &&
         event.entry == other.event.entry && struck == other.struck &&
         as_entered.has_value() == other.as_entered.has_value() && sense == other.sense &&
         why_not == other.why_not && when == other.when;
}

EventLog::EventLog() = default;
EventLog::EventLog(const EventLog&) = default;
EventLog::EventLog(EventLog&&) noexcept = default;
EventLog& EventLog::operator=(const EventLog&) = default;
EventLog& EventLog::operator=(EventLog&&) noexcept = default;
EventLog::~EventLog() = default;

std::size_t EventLog::size() const {
  return entries_.size();
}
bool EventLog::empty() const {
  return entries_.empty();
}
LogEntry& EventLog::operator[](EventRef ref) {
  return entries_[ref];
}
const LogEntry& EventLog::operator[](EventRef ref) const {
  return entries_[ref];
}
const LogEntry& EventLog::front() const {
  return entries_.front();
}
LogEntry& EventLog::back() {
  return entries_.back();
}
const LogEntry& EventLog::back() const {
  return entries_.back();
}
LogEntry* EventLog::begin() {
  return entries_.data();
}
LogEntry* EventLog::end() {
  return entries_.data() + entries_.size();
}
const LogEntry* EventLog::begin() const {
  return entries_.data();
}
const LogEntry* EventLog::end() const {
  return entries_.data() + entries_.size();
}
void EventLog::reserve(std::size_t entries) {
  entries_.reserve(entries);
}
void EventLog::push_back(LogEntry entry) {
  entries_.push_back(std::move(entry));
}
void EventLog::pop_back() {
  entries_.pop_back();
}
bool EventLog::operator==(const EventLog& other) const {
  return entries_ == other.entries_;
}

}  // namespace rb
