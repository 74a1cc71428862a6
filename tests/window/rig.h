// A display of our own, the program in it, and a finger: for tests of the real window. Everything
// ends with the rig.
#pragma once

#include <X11/Xlib.h>
#include <sys/types.h>

#include <chrono>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace rb::rig {

using Clock = std::chrono::system_clock;
using Millis = std::chrono::milliseconds;

struct Place {
  int x = 0, y = 0;
};

/// Where things stand on the Pour screen at 1280 x 800, with the four rows of the demo pour.
inline constexpr Place kRows[] = {{1181, 704}, {1181, 536}, {1181, 368}, {1181, 200}};  // R1 to R4
inline constexpr Place kHold{89, 728}, kMore{1188, 62}, kStartLift{130, 613};

/// One press as the finger made it.
struct Made {
  Place at;
  Clock::time_point when;  ///< the middle of the call that made it
  double give_ms = 0;      ///< half as long as that call took: it happened somewhere in it
};

/// One press as the program took it (--log-presses).
struct Taken {
  Clock::time_point when;
  double x = 0, y = 0;
  std::string on, end;
};

/// One event of the book.
struct Kept {
  std::string kind, row;
  Clock::time_point at;
};

class Rig {
 public:
  /// Starts an X server and a book with the demo pour up to the hanging of its first rows.
  Rig(std::filesystem::path program, const std::filesystem::path& source);
  ~Rig();
  Rig(const Rig&) = delete;
  Rig& operator=(const Rig&) = delete;

  /// Starts the program and waits for its window; `environment` is added to ours for it alone. Its
  /// errors go to the file RISEBOOK_RIG_ERRORS names there.
  void start(const std::map<std::string, std::string>& environment = {});
  /// Asks it to leave and waits; false when it had to be killed.
  bool stop();
  /// Sends a signal and gives the exit code; -1 when it did not end in time.
  int ask_to_end(int signal, Millis at_most);
  int wait_end(Millis at_most);
  /// As a window's own cross does.
  void close_window();
  [[nodiscard]] pid_t pid() const { return program_pid_; }
  [[nodiscard]] Display* display() const { return display_; }
  [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }

  /// Presses, holds and lets go; the moment is that of the press.
  Made press(Place at, Millis held);
  void key(KeySym symbol);

  [[nodiscard]] std::vector<Taken> taken() const;
  /// Waits until so many presses were logged.
  bool wait_taken(std::size_t count, Millis at_most) const;
  /// The events of the book after those it began with.
  [[nodiscard]] std::vector<Kept> kept() const;

 private:
  void start_server();
  std::filesystem::path program_, folder_;
  pid_t server_pid_ = 0, program_pid_ = 0;
  std::string display_name_;
  Display* display_ = nullptr;
  Window window_ = 0;
  std::size_t began_with_ = 0;
};

/// Says what was wanted and ends the program with 1 when it is not so.
void require(bool so, const std::string& what);

}  // namespace rb::rig
