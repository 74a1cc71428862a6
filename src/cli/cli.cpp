#include "cli/cli.h"

#include <fmt/format.h>

#include <functional>

#include "cli/command_words.h"
#include "cli/commands.h"
#include "cli/manual.h"
#include "cli/plan_inputs.h"

namespace rb {

namespace {

void add_pour_commands(CommandWords& words) {
  auto& demo_folder = words.wish<Path>("risebook-demo");
  words
      .add("demo", "Replay the demo pour into a fresh book, print findings, write the record",
           [&] { return run_demo(demo_folder); })
      .add_option("--to", demo_folder, "Folder to write into (default: risebook-demo)");

  auto& replay_script = words.wish<Path>();
  auto& replay_book = words.wish<Path>();
  auto& replay = words.add("replay", "Append a pour script to a book, all of it or nothing",
                           [&] { return run_replay(replay_script, replay_book); });
  replay.add_option("script", replay_script, "Pour script (JSON Lines)")->required();
  replay.add_option("--book", replay_book, "Book; made if missing")->required();

  auto& check = words.wish<CheckWish>();
  auto& check_words =
      words.add("check", "Check the pours of a book", [&] { return run_check(check); });
  check_words.add_option("--book", check.book, "Book")->required();
  check_words.add_option("--pour", check.pour, "One pour only");
  check_words.add_flag("--json", check.json, "As JSON: SI units, unrounded, UTC");

  auto& dose = words.wish<DoseWish>();
  auto& dose_words = words.add("dose", "One spot's story: when it filled, shook and set",
                               [&] { return run_dose(dose); });
  dose_words.add_option("--book", dose.book, "Book")->required();
  dose_words.add_option("--pour", dose.pour, "Pour")->required();
  dose_words.add_option("--element", dose.element, "Element")->required();
  dose_words.add_option("--at", dose.at, "x,z in metres from the element's lower left")->required();
  dose_words.add_option("--side", dose.side, "near or far (default: near)");

  auto& record = words.wish<RecordWish>();
  record.formats = {"pdf", "csv"};
  auto& record_words = words.add("record", "Write the daily consolidation record",
                                 [&] { return run_record(record); });
  record_words.add_option("--book", record.book, "Book")->required();
  record_words.add_option("--day", record.day, "Day, YYYY-MM-DD, where the site is")->required();
  record_words.add_option("--to", record.folder, "Folder to write into")->required();
  record_words
      .add_option("--format", record.formats, "pdf, html, xlsx, csv, json, png (default: pdf,csv)")
      ->delimiter(',');
  record_words.add_option("--utc-offset", record.utc_offset,
                          "The site's offset from UTC, +02:00 (default: the system's)");
  record_words.add_option("--language", record.language, "Of the record, en or es (default: en)")
      ->check(CLI::IsMember({"en", "es"}));

  auto& temps = words.wish<TempsWish>();
  auto& temps_words = words.add(
      "temps",
      "Bring temperatures read in hardening concrete into a pour, all lines of a CSV file or "
      "none.\n"
      "Its first line names the columns: time (RFC 3339, UTC or with an offset: "
      "2026-03-02T14:30:00-05:00);\ntemp_c or temp_f; optionally z_m (up from the base) and x_m "
      "(from the left), the probe's place.\nLines the pour has already are passed over.",
      [&] { return run_temps(temps); });
  temps_words.add_option("csv", temps.file, "CSV file of the temperature logger")->required();
  temps_words.add_option("--book", temps.book, "Book")->required();
  temps_words.add_option("--pour", temps.pour, "Pour")->required();
  temps_words.add_option("--element", temps.element, "Element the probes are in")->required();
  temps_words.add_option("--by", temps.by, "Who vouches for them (default: logger)");

  auto& script_book = words.wish<Path>();
  auto& script_pour = words.wish<std::string>();
  auto& script = words.add("script", "Print a pour as a pour script",
                           [&] { return run_script(script_book, script_pour); });
  script.add_option("--book", script_book, "Book")->required();
  script.add_option("--pour", script_pour, "Pour")->required();
}

void add_book_commands(CommandWords& words) {
  auto& verify = words.wish<VerifyWish>();
  auto& verify_words =
      words.add("verify", "Look the book over: hash chain, signatures, schema, damage",
                [&] { return run_verify(verify); });
  verify_words.add_option("book", verify.book, "Book; not needed with --record");
  verify_words.add_option(
      "--record", verify.record,
      "Look at a day's record (its JSON): its parts, the signatures in it, and, "
      "with a book, its events there");
  verify_words.add_option("--against", verify.against,
                          "Hashes, short codes, records (JSON), notes, mirrors or copies");

  auto& copied_book = words.wish<Path>();
  auto& copy_folder = words.wish<Path>();
  auto& copy = words.add("copy", "Copy a book, in use or not, into a folder",
                         [&] { return run_copy(copied_book, copy_folder); });
  copy.add_option("book", copied_book, "Book")->required();
  copy.add_option("--to", copy_folder, "Folder; made if missing")->required();

  auto& restore_from = words.wish<Path>();
  auto& restored_book = words.wish<Path>();
  auto& restore = words.add("restore", "Make a book again from a copy or a mirror",
                            [&] { return run_restore(restore_from, restored_book); });
  restore.add_option("from", restore_from, "Copy (.risebook) or mirror (.riseline)")->required();
  restore.add_option("--to", restored_book, "Book to make; nothing may stand there")->required();

  auto& rescue = words.wish<RescueWish>();
  auto& rescue_words =
      words.add("rescue", "Save all that is whole in a damaged book into a new one",
                [&] { return run_rescue(rescue); });
  rescue_words.add_option("old", rescue.from, "Damaged book; it is only read")->required();
  rescue_words.add_option("new", rescue.to, "Book to make; nothing may stand there")->required();
  rescue_words.add_option("--mirror", rescue.mirror,
                          "Mirror of the book, for events that are not whole in it");
}

void add_signing(CommandWords& words) {
  auto& enrol = words.wish<EnrolCommand>();
  auto& enrol_words = words.add("enrol", "Make a key for a person of a pour, sealed with a PIN",
                                [&] { return run_enrol(enrol); });
  enrol_words.add_option("book", enrol.book, "Book")->required();
  enrol_words.add_option("--pour", enrol.pour, "Pour")->required();
  enrol_words.add_option("--person", enrol.person, "Who enrols: an id of the plan's")->required();
  enrol_words.add_option("--role", enrol.role, "foreman, inspector or superintendent");
  enrol_words.add_option("--witness", enrol.witness, "Of another role, with a key in this pour");
  enrol_words.add_option("--pin-file", enrol.pin, "PIN on its first line (default: asked for)");
  enrol_words.add_option("--witness-pin-file", enrol.witness_pin, "The same of the witness");

  auto& sign = words.wish<SignCommand>();
  auto& sign_words =
      words.add("sign", "Sign a pour with a person's key", [&] { return run_sign(sign); });
  sign_words.add_option("book", sign.book, "Book")->required();
  sign_words.add_option("--pour", sign.pour, "Pour")->required();
  sign_words.add_option("--person", sign.person, "Who signs: an id of the plan's")->required();
  sign_words.add_option("--role", sign.role, "foreman, inspector or superintendent")->required();
  sign_words.add_option("--verdict", sign.verdict, "\"accepted\"")->required();
  sign_words.add_option("--comment", sign.comment, "What else is to be said");
  sign_words.add_flag("--name-open", sign.name_open,
                      "Sign in spite of findings that nobody accepted, naming each");
  sign_words.add_option("--pin-file", sign.pin, "PIN on its first line (default: asked for)");
}

void add_photo(CommandWords& words) {
  auto& photo = words.wish<PhotoCommand>();
  auto& photo_words = words.add("photo", "Keep a JPEG or PNG of a blemish or a repair",
                                [&] { return run_photo(photo); });
  photo_words.add_option("--book", photo.book, "Book")->required();
  photo_words.add_option("--event", photo.event, "Id of the blemish or the repair")->required();
  photo_words.add_option("--file", photo.file, "Photo; it is only read")->required();
  photo_words.add_option("--by", photo.by, "Who took it: an id of the plan's")->required();
}

void add_plan_and_picture(CommandWords& words) {
  auto& plan = words.wish<PlanCommand>();
  auto& plan_words = words.add("plan", "Plan a pour: rows, motors, pace and a run sheet",
                               [&] { return run_plan(plan); });
  for (const PlanInput& input : plan_inputs()) {
    std::string help = input.what;
    if (*input.fallback != '\0') help += fmt::format(" (default: {})", input.fallback);
    if (*input.fallback == '\0' && !input.optional) help += " (must be given)";
    plan_words.add_option(std::string{"--"} + input.name, plan.given[input.name], help);
  }
  plan_words.add_option("--to", plan.to, "Pour script to write, opening a pour with this plan");
  plan_words.add_flag("--json", plan.json, "As JSON: SI units, unrounded");
  plan_words.add_option("--sheet", plan.sheet, "PDF file to write: the run sheet, to be taped up");
  plan_words
      .add_option("--paper", plan.paper, "Of the sheet (default: letter for US units, else a4)")
      ->check(CLI::IsMember({"a4", "letter"}));
  plan_words.add_option("--start", plan.start, "Time of day the first lift begins: HH:MM");
  plan_words.add_option("--language", plan.language, "Of the sheet (default: en)");

  auto& picture = words.wish<PictureWish>();
  auto& picture_words = words.add("picture", "Draw a screen into a PNG file; needs no display",
                                  [&] { return run_picture(picture); });
  picture_words.add_option("screen", picture.screen, "Screen; a wrong name lists them")->required();
  picture_words.add_option("--book", picture.book, "Book")->required();
  picture_words.add_option("--to", picture.to, "PNG file to write")->required();
  picture_words.add_option("--pour", picture.pour, "Pour (default: the last)");
  picture_words.add_option("--at", picture.at, "As it stood at that time (RFC 3339)");
  picture_words.add_option("--theme", picture.theme, "sun or night")
      ->check(CLI::IsMember({"sun", "night"}));
  picture_words.add_option("--language", picture.language, "en or es")
      ->check(CLI::IsMember({"en", "es"}));
  picture_words.add_option("--utc-offset", picture.utc_offset, "The site's offset from UTC");
  picture_words.add_option("--width", picture.width, "Pixels")->check(CLI::Range(640, 8000));
  picture_words.add_option("--height", picture.height, "Pixels")->check(CLI::Range(480, 8000));
}

void add_screens(CommandWords& words) {
  auto& screens = words.wish<ScreensWish>();
  words.app().add_option("book", screens.book, "Book to open (default: the user's own)");
  words.app().add_flag("--full-screen", screens.full_screen, "Fill the display");
  words.app().add_option("--log-presses", screens.log_presses,
                         "Add every press and what became of it to this file");
  words.app()
      .add_option("--width", screens.width, "Window width, pixels")
      ->check(CLI::Range(640, 8000));
  words.app()
      .add_option("--height", screens.height, "Window height, pixels")
      ->check(CLI::Range(480, 8000));
  words.app()
      .add_option("--diagonal", screens.diagonal_inches, "Display diagonal, inches")
      ->check(CLI::Range(5.0, 40.0));
  words.app().add_option("--tell-kept", screens.tell_kept)->group("");  // for tests
  words.otherwise([&] { return run_screens(screens); });
}

// For the build, which makes the package's files with it: not among what --help shows.
void add_manual(CommandWords& words) {
  auto& form = words.wish<std::string>();
  const CLI::App& app = words.app();
  auto& manual = words.add("manual", "Print the manual page or the shell's completion", [&] {
    if (const std::string lacking = without_word(app); !lacking.empty()) {
      fmt::print(stderr, "risebook: \"{}\" says nothing of what it is for\n", lacking);
      return Exit::usage;
    }
    fmt::print("{}", form == "man" ? man_page(app, RISEBOOK_VERSION) : bash_completion(app));
    return Exit::fine;
  });
  manual.group("");
  manual.add_option("form", form, "man or bash")->required()->check(CLI::IsMember({"man", "bash"}));
}

}  // namespace

int run_cli(int argc, char** argv) {
  CommandWords words{"risebook " RISEBOOK_VERSION};
  add_pour_commands(words);
  add_book_commands(words);
  add_signing(words);
  add_photo(words);
  add_plan_and_picture(words);
  add_formulas(words);
  add_screens(words);
  add_manual(words);
  words.add("rules", "List the rules of the checker, their limits and sources", run_rules);
  return words.run(argc, argv);
}

}  // namespace rb
