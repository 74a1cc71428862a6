// The commands of the command line: each does its work, prints and says how it ended.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/outcome.h"
#include "base/path.h"

namespace rb {

/// Makes a fresh book in a folder, replays the demo pour into it, prints the findings and writes
/// the record of its day.
Exit run_demo(const Path& folder);

/// Appends a pour script to a book (made if missing), all of it or nothing.
Exit run_replay(const Path& script, const Path& book);

struct CheckWish {
  Path book;
  std::optional<std::string> pour;  ///< none: every pour of the book
  bool json = false;
};
Exit run_check(const CheckWish& wish);

struct DoseWish {
  Path book;
  std::string pour;
  std::string element;
  std::string at;  ///< "x,z" in metres
  std::string side = "near";
};
Exit run_dose(const DoseWish& wish);

struct RecordWish {
  Path book;
  std::string day;
  Path folder;
  std::vector<std::string> formats;
  std::string utc_offset;  ///< "+02:00"; empty: the system's on that day
  std::string language = "en";
};
Exit run_record(const RecordWish& wish);

struct TempsWish {
  Path file;  ///< CSV
  Path book;
  std::string pour, element;
  std::string by = "logger";
};
/// Brings temperatures of hardening concrete into a pour, all lines or none; what is there already
/// is passed over.
Exit run_temps(const TempsWish& wish);

Exit run_script(const Path& book, const std::string& pour);
struct VerifyWish {
  Path book;
  std::vector<std::string> against;  ///< hashes, short codes, files
  Path record{};                     ///< a day's record as JSON; with it the book may be left out
};
Exit run_verify(const VerifyWish& wish);

struct EnrolCommand {
  Path book;
  std::string pour, person, role, witness;
  Path pin, witness_pin;  ///< files; empty: asked for at the terminal
};
/// Makes a key for a person of a pour, sealed with a PIN.
Exit run_enrol(const EnrolCommand& wish);
struct SignCommand {
  Path book;
  std::string pour, person, role, verdict, comment;
  bool name_open = false;  ///< sign in spite of all that is open, naming it
  Path pin;                ///< file; empty: asked for at the terminal
};
Exit run_sign(const SignCommand& wish);

struct PhotoCommand {
  Path book, file;
  std::string event;  ///< of a blemish or a repair
  std::string by;
};
/// Keeps a photo beside the book by its hash, and that it shows a blemish or a repair.
Exit run_photo(const PhotoCommand& wish);

/// A copy of the book into a folder, and a book made again from a copy or a mirror.
Exit run_copy(const Path& book, const Path& folder);
Exit run_restore(const Path& from, const Path& to);
Exit run_rules();

struct RescueWish {
  Path from, to;
  Path mirror;  ///< empty: none
};
/// Makes a new book of all that is whole in a damaged one.
Exit run_rescue(const RescueWish& wish);

struct PlanCommand {
  std::map<std::string, std::string> given;  ///< by the names of plan_inputs()
  Path to;                                   ///< pour script to write; empty: none
  bool json = false;
  Path sheet;            ///< run sheet to write as PDF; empty: none
  std::string paper;     ///< "a4", "letter"; empty: letter for US units, else A4
  std::string start;     ///< "HH:MM" the first lift begins at; empty: told from its start
  std::string language;  ///< of the sheet; empty: English
};
Exit run_plan(const PlanCommand& command);

struct PictureWish {
  std::string screen;
  Path book;
  Path to;
  std::string pour;  ///< empty: the last
  std::string at;    ///< empty: after the pour's last event
  std::string theme = "sun";
  std::string language = "en";
  std::string utc_offset;
  int width = 1280, height = 800;
};
Exit run_picture(const PictureWish& wish);

struct ScreensWish {
  Path book;  ///< empty: the user's own
  int width = 1280, height = 800;
  bool full_screen = false;
  double diagonal_inches = 0;  ///< of the display; 0: as set before
  Path tell_kept;    ///< for tests: the number of each event called kept goes there, one a line
  Path log_presses;  ///< empty: presses are not logged
};
Exit run_screens(const ScreensWish& wish);

}  // namespace rb
