// Any words on the command line, one a line of the input. All are read to the end: options, numbers
// with their units, what goes with what. What they ask for is done for one input in 64, told by its
// bytes, in a folder in memory where a small book and a script stand; the others are told but not
// done (the linker puts the stand-ins below before the commands). Never done is what needs a
// display, and the demo, which is long and takes one word. RISEBOOK_DO_ALL does what every input
// asks for.
#include <cstdint>
#include <cstdlib>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "cli/cli.h"
#include "cli/commands.h"
#include "must.h"
#include "mutate_lines.h"
#include "scratch.h"

namespace rb {

/// Whether what this input asks for is done; made ready when it first is.
struct Doing {
  bool done = true;
  std::function<void()> before{};
};
Doing& doing() {
  static Doing now;
  return now;
}

template <class Do>
Exit done_or_told(const Do& command) {
  if (!doing().done) return Exit::fine;
  if (doing().before) doing().before();
  return command();
}

// One command: its stand-in, and the command itself under the name the linker gives it.
#define RISEBOOK_STANDS_IN(name, mangled, parameters, arguments) \
  Exit real_##name parameters asm("__real_" mangled);            \
  Exit wrap_##name parameters asm("__wrap_" mangled);            \
  Exit wrap_##name parameters {                                  \
    return done_or_told([&] { return real_##name arguments; });  \
  }

RISEBOOK_STANDS_IN(replay, "_ZN2rb10run_replayERKNSt10filesystem7__cxx114pathES4_",
                   (const Path& script, const Path& book), (script, book))
RISEBOOK_STANDS_IN(check, "_ZN2rb9run_checkERKNS_9CheckWishE", (const CheckWish& wish), (wish))
RISEBOOK_STANDS_IN(dose, "_ZN2rb8run_doseERKNS_8DoseWishE", (const DoseWish& wish), (wish))
RISEBOOK_STANDS_IN(record, "_ZN2rb10run_recordERKNS_10RecordWishE", (const RecordWish& wish),
                   (wish))
RISEBOOK_STANDS_IN(
    script,
    "_ZN2rb10run_scriptERKNSt10filesystem7__cxx114pathERKNSt7__cxx1112basic_stringIcSt11char_"
    "traitsIcESaIcEEE",
    (const Path& book, const std::string& pour), (book, pour))
RISEBOOK_STANDS_IN(verify, "_ZN2rb10run_verifyERKNS_10VerifyWishE", (const VerifyWish& wish),
                   (wish))
RISEBOOK_STANDS_IN(copy, "_ZN2rb8run_copyERKNSt10filesystem7__cxx114pathES4_",
                   (const Path& book, const Path& folder), (book, folder))
RISEBOOK_STANDS_IN(restore, "_ZN2rb11run_restoreERKNSt10filesystem7__cxx114pathES4_",
                   (const Path& from, const Path& to), (from, to))
RISEBOOK_STANDS_IN(rules, "_ZN2rb9run_rulesEv", (), ())
RISEBOOK_STANDS_IN(rescue, "_ZN2rb10run_rescueERKNS_10RescueWishE", (const RescueWish& wish),
                   (wish))
RISEBOOK_STANDS_IN(plan, "_ZN2rb8run_planERKNS_11PlanCommandE", (const PlanCommand& wish), (wish))
#undef RISEBOOK_STANDS_IN

Exit stand_in_demo(const Path&) asm("__wrap__ZN2rb8run_demoERKNSt10filesystem7__cxx114pathE");
Exit stand_in_demo(const Path& /*unused*/) {
  return Exit::fine;
}
Exit stand_in_picture(const PictureWish&) asm("__wrap__ZN2rb11run_pictureERKNS_11PictureWishE");
Exit stand_in_picture(const PictureWish& /*unused*/) {
  return Exit::fine;
}
Exit stand_in_screens(const ScreensWish&) asm("__wrap__ZN2rb11run_screensERKNS_11ScreensWishE");
Exit stand_in_screens(const ScreensWish& /*unused*/) {
  return Exit::fine;
}
}  // namespace rb

using namespace rb;
using fuzz::must;

namespace {

constexpr const char* kScript =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"fm","do":"pour-open","pour":"N1","plan":{"site":"Yard",)"
    R"("mixes":[{"id":"A","unit_weight":24,"slump":0.15,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","kind":"wall","length":6,"height":3,"thickness":0.3,"lifts":[0.6,1.2],)"
    R"("rows":[{"id":"R1","z":0.45,"motors":[{"id":"M1","x":1.5,"reach_x":0.9,"reach_z":0.75}]}]}]}})"
    "\n"
    R"({"at":"2026-03-02T05:10:00.000Z","by":"fm","do":"lift-start","element":"W1","lift":1})"
    "\n"
    R"({"at":"2026-03-02T05:20:00.000Z","by":"fm","do":"lift-end","element":"W1","lift":1,"height":0.6})"
    "\n"
    R"({"at":"2026-03-02T05:21:00.000Z","by":"fm","do":"run","element":"W1","row":"R1","vpm":6000})"
    "\n"
    R"({"at":"2026-03-02T05:23:00.000Z","by":"fm","do":"rest","element":"W1","row":"R1"})"
    "\n";

int run(std::vector<std::string> words) {
  words.insert(words.begin(), "risebook");
  std::vector<char*> argv;
  for (std::string& word : words) argv.push_back(word.data());
  argv.push_back(nullptr);
  return run_cli(static_cast<int>(words.size()), argv.data());
}

/// A word that could name a place outside the folder does not: no way up, no root.
std::string kept_inside(std::string word) {
  for (std::size_t at = 0; (at = word.find("..", at)) != std::string::npos;) word[at + 1] = '_';
  for (std::size_t at = 0; at < word.size(); ++at) {
    const bool begins = at == 0 || word[at - 1] == '=' || word[at - 1] == ',' ||
                        (at == 2 && word[0] == '-') || word[at - 1] == ':';
    if (word[at] == '/' && begins) word[at] = '_';
  }
  return word;
}

struct Place {
  fuzz::Scratch scratch;
  std::string book;

  Place() {
    must(chdir((scratch / "").c_str()) == 0, "the folder can be entered");
    put_script();
    must(run({"replay", "s", "--book", "b"}) == 0, "the small pour is kept");
    std::ifstream in("b", std::ios::binary);
    book.assign(std::istreambuf_iterator<char>(in), {});
  }
  void put_script() const { scratch.put("s", kScript); }
  void restore() const {
    scratch.empty();
    put_script();
    scratch.put("b", book);
  }
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Place place;
  static const bool all = std::getenv("RISEBOOK_DO_ALL") != nullptr;
  constexpr std::size_t kOneIn = 64;
  const std::string_view input{reinterpret_cast<const char*>(data), size};
  doing() = {all || std::hash<std::string_view>{}(input) % kOneIn == 0, [] { place.restore(); }};
  std::vector<std::string> words;
  for (auto& word : fuzz::lines_of({reinterpret_cast<const char*>(data), size})) {
    word = word.substr(0, word.find('\0'));  // no word of a command line holds one
    words.push_back(kept_inside(std::move(word)));
  }
  const int code = run(std::move(words));
  must(code >= 0 && code <= 3, "the exit code is one of the four");
  return 0;
}
