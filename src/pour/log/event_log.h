// The events of a pour as they stand, in order of entry. Who reads an entry includes log_entry.h:
// the state is known nearly everywhere, an event is not, and a change of what an event is rebuilds
// who reads it.
#pragma once

#include <cstddef>
#include <vector>

namespace rb {

using EventRef = std::size_t;  ///< index into an EventLog
struct LogEntry;

class EventLog {
 public:
  EventLog();
  EventLog(const EventLog&);
  EventLog(EventLog&&) noexcept;
  EventLog& operator=(const EventLog&);
  EventLog& operator=(EventLog&&) noexcept;
  ~EventLog();

  [[nodiscard]] std::size_t size() const;
  [[nodiscard]] bool empty() const;
  LogEntry& operator[](EventRef ref);
  const LogEntry& operator[](EventRef ref) const;
  [[nodiscard]] const LogEntry& front() const;
  [[nodiscard]] LogEntry& back();
  [[nodiscard]] const LogEntry& back() const;
  LogEntry* begin();
  LogEntry* end();
  [[nodiscard]] const LogEntry* begin() const;
  [[nodiscard]] const LogEntry* end() const;
  void reserve(std::size_t entries);
  void push_back(LogEntry entry);
  void pop_back();
  bool operator==(const EventLog& other) const;  ///< as LogEntry's, one by one

 private:
  std::vector<LogEntry> entries_;
};

}  // namespace rb
