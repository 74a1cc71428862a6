#include "cli/cli.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <functional>
#include <memory>
#include <utility>
#include <vector>

#include "cli/calc.h"
#include "cli/commands.h"
#include "cli/plan_inputs.h"

namespace rb {

namespace {

// What was not given and has a default, with it.
void tell_defaults(const CLI::App& formula) {
  std::string taken;
  for (const CLI::Option* option : formula.get_options()) {
    if (option->count() > 0 || option->get_default_str().empty()) continue;
    taken += fmt::format("{}{} {}", taken.empty() ? "" : ", ", option->get_name(),
                         option->get_default_str());
  }
  if (!taken.empty()) fmt::print("Not given, so taken by default: {}.\n", taken);
}

// One subcommand: its options are bound to a wish that lives as long as the parse.
class Words {
 public:
  Words() {
    app_.description("Risebook, a field pour logbook. Without a command: the touch screens.");
    app_.footer(
        "Exit codes: 0 fine, 1 findings of weight stop or mend, 2 bad usage or input, 3 trouble "
        "with the book.\nThe tool advises. Local codes, the form designer and licensed practice "
        "decide.");
    app_.set_version_flag("--version", "risebook " RISEBOOK_VERSION);
    app_.require_subcommand(0, 1);
  }

  CLI::App& add(const char* name, const char* what, std::function<Exit()> run) {
    CLI::App* sub = app_.add_subcommand(name, what);
    sub->callback([this, run = std::move(run)] { chosen_ = run; });
    return *sub;
  }

  /// A formula: behind its answer stands every default it took.
  CLI::App& add_formula(CLI::App& parent, const char* name, const char* what,
                        std::function<Exit()> run) {
    CLI::App* sub = parent.add_subcommand(name, what);
    sub->option_defaults()->always_capture_default();
    sub->callback([this, sub, run = std::move(run)] {
      chosen_ = [sub, run] {
        const Exit exit = run();
        if (exit != Exit::usage) tell_defaults(*sub);
        return exit;
      };
    });
    return *sub;
  }

  int run(int argc, char** argv) {
    try {
      app_.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
      return app_.exit(error) == 0 ? 0 : static_cast<int>(Exit::usage);
    }
    if (!app_.get_subcommands().empty() && app_.count("book") > 0) {
      return static_cast<int>(report({Error::Kind::input, "a book before a command",
                                      "is not asked for there", "Give it by --book"}));
    }
    return static_cast<int>(chosen_ ? chosen_() : Exit::usage);
  }

  /// What a command's options are bound to.
  template <class Wish, class... Start>
  Wish& wish(Start&&... start) {
    const auto made = std::make_shared<Wish>(std::forward<Start>(start)...);
    wishes_.push_back(made);
    return *made;
  }

  CLI::App& app() { return app_; }
  void otherwise(std::function<Exit()> run) { chosen_ = std::move(run); }

 private:
  CLI::App app_;
  std::vector<std::shared_ptr<void>> wishes_;
  std::function<Exit()> chosen_;
};

void add_pour_commands(Words& words) {
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
      .add_option("--format", record.formats, "pdf, xlsx, csv, json, png (default: pdf,csv)")
      ->delimiter(',');
  record_words.add_option("--utc-offset", record.utc_offset,
                          "The site's offset from UTC, +02:00 (default: the system's)");

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

void add_book_commands(Words& words) {
  auto& verify = words.wish<VerifyWish>();
  auto& verify_words =
      words.add("verify", "Look the book over: hash chain, signatures, schema, damage",
                [&] { return run_verify(verify); });
  verify_words.add_option("book", verify.book, "Book")->required();
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

void add_plan_and_picture(Words& words) {
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

void add_form_formulas(Words& words, CLI::App& calc) {
  auto& pressure = words.wish<PressureWish>();
  auto& pressure_words = words.add_formula(calc, "pressure", "Lateral pressure on a form",
                                           [&] { return calc_pressure(pressure); });
  pressure_words.add_option("--method", pressure.method, "aci347, ciria108 or din18218");
  pressure_words.add_option("--shape", pressure.shape, "wall or column");
  pressure_words.add_option("--cement", pressure.cement,
                            "plain, retarded, blended, blended-retarded or high-blend");
  pressure_words.add_option("--unit-weight", pressure.unit_weight, "\"24 kN/m3\" or \"150 pcf\"");
  pressure_words.add_option("--height", pressure.height, "of the form: \"3.6 m\"")->required();
  pressure_words.add_option("--rise", pressure.rise, "\"1.5 m/h\" or \"5 ft/h\"")->required();
  pressure_words.add_option("--temp", pressure.temperature, "of the concrete: \"15 C\"");
  pressure_words.add_option("--slump", pressure.slump, "\"120 mm\"");
  pressure_words.add_option("--set-time", pressure.set_time, "initial set, for DIN 18218: \"5 h\"");
  pressure_words.add_option("--rating", pressure.rating, "of the form, \"60 kPa\": the rise at it");

  auto& rise = words.wish<RiseWish>();
  auto& rise_words = words.add_formula(calc, "rise", "The rate of rise a form's rating allows",
                                       [&] { return calc_rise(rise); });
  rise_words.add_option("--rating", rise.form.rating, "of the form: \"60 kPa\"")->required();
  rise_words.add_option("--height", rise.form.height, "of the form: \"3.6 m\"")->required();
  rise_words.add_option("--method", rise.form.method, "aci347, ciria108 or din18218");
  rise_words.add_option("--shape", rise.form.shape, "wall or column");
  rise_words.add_option("--cement", rise.form.cement,
                        "plain, retarded, blended, blended-retarded or high-blend");
  rise_words.add_option("--unit-weight", rise.form.unit_weight, "\"24 kN/m3\" or \"150 pcf\"");
  rise_words.add_option("--temp", rise.form.temperature, "of the concrete: \"15 C\"");
  rise_words.add_option("--slump", rise.form.slump, "\"120 mm\"");
  rise_words.add_option("--set-time", rise.form.set_time, "initial set, for DIN 18218: \"5 h\"");
  rise_words.add_option("--length", rise.length, "of the element, for the rate of placing");
  rise_words.add_option("--thickness", rise.thickness, "of the element");

  auto& wait = words.wish<WaitWish>();
  auto& wait_words =
      words.add_formula(calc, "wait", "How long a row must rest under a head over the rating",
                        [&] { return calc_wait(wait); });
  wait_words.add_option("--placed", wait.placed, "height of the concrete: \"3 m\"")->required();
  wait_words.add_option("--rise", wait.rise, "it rose evenly at: \"1.5 m/h\"")->required();
  wait_words.add_option("--low", wait.low, "lower reach of the row: \"0.4 m\"")->required();
  wait_words.add_option("--high", wait.high, "upper reach of the row: \"1.6 m\"")->required();
  wait_words.add_option("--rating", wait.rating, "of the form: \"50 kPa\"")->required();
  wait_words.add_option("--initial-set", wait.initial_set, "at the reference: \"5 h\"")->required();
  wait_words.add_option("--unit-weight", wait.unit_weight, "\"25 kN/m3\"");
  wait_words.add_option("--reference", wait.reference, "\"20 C\"");
  wait_words.add_option("--temp", wait.temperature, "of the concrete: \"12 C\"");
  wait_words.add_option("--since", wait.since, "since the last of it came: \"30 min\"");
}

void add_set_formulas(Words& words, CLI::App& calc) {
  auto& set = words.wish<SetWish>();
  auto& set_words = words.add_formula(calc, "set", "Time to initial set by equivalent age",
                                      [&] { return calc_set(set); });
  set_words.add_option("--initial-set", set.initial_set, "at the reference: \"5 h\"")->required();
  set_words.add_option("--reference", set.reference, "\"20 C\"");
  set_words.add_option("--temp", set.temperature, "of the concrete: \"12 C\"");
  set_words.add_option("--history", set.history, "instead: \"0 h 18 C, 3 h 24 C\"");
  set_words.add_option("--q", set.q, "Ea/R of the mix, in kelvin: 5000");

  auto& knit = words.wish<KnitWish>();
  auto& knit_words = words.add_formula(calc, "knit", "How long two lifts may lie apart",
                                       [&] { return calc_knit(knit); });
  knit_words.add_option("--initial-set", knit.set.initial_set, "at the reference: \"5 h\"")
      ->required();
  knit_words.add_option("--reference", knit.set.reference, "\"20 C\"");
  knit_words.add_option("--temp", knit.set.temperature, "of the concrete: \"12 C\"");
  knit_words.add_option("--history", knit.set.history, "instead: \"0 h 18 C, 3 h 24 C\"");
  knit_words.add_option("--q", knit.set.q, "Ea/R of the mix, in kelvin: 5000");
  knit_words.add_option("--lift", knit.lift, "depth of a lift: \"500 mm\"")->required();
  knit_words.add_option("--rise", knit.rise, "while it is placed: \"1.5 m/h\"")->required();
  knit_words.add_option("--run", knit.run, "of a row for a lift: \"105 s\"");
  knit_words.add_option("--rows", knit.rows, "run for a lift, one at a time");
}

void add_motor_formulas(Words& words, CLI::App& calc) {
  auto& size = words.wish<SizeWish>();
  auto& size_words = words.add_formula(calc, "size", "Rows and motors for a face",
                                       [&] { return calc_size(size); });
  size_words.add_option("--length", size.length, "\"12 m\"")->required();
  size_words.add_option("--height", size.height, "\"3.6 m\"")->required();
  size_words.add_option("--thickness", size.thickness, "\"300 mm\"")->required();
  size_words.add_option("--force", size.force, "of a motor: \"4 kN\"")->required();
  size_words.add_option("--rating", size.rating, "of the form: \"60 kPa\"");
  size_words.add_option("--unit-weight", size.unit_weight, "\"25 kN/m3\"");
  size_words.add_option("--form-mass", size.form_mass, "\"60 kg/m2\"");
  size_words.add_option("--reach-x", size.reach_x, "half-width a motor works over");
  size_words.add_option("--reach-z", size.reach_z, "half-height a motor works over");
  size_words.add_option("--reach-pressure", size.reach_pressure,
                        "below a running row concrete presses as liquid; else twice --reach-z");
  size_words.add_option("--lift", size.lift, "deepest: \"500 mm\"");

  auto& force = words.wish<ForceWish>();
  auto& force_words = words.add_formula(calc, "force", "Centrifugal force, and the force needed",
                                        [&] { return calc_force(force); });
  force_words.add_option("--eccentric", force.eccentric, "mass: \"0.4 kg\"")->required();
  force_words.add_option("--radius", force.radius, "\"20 mm\"")->required();
  force_words.add_option("--speed", force.speed, "\"6000 vpm\"")->required();
  force_words.add_option("--form", force.form, "mass of form in reach: \"150 kg\"");
  force_words.add_option("--concrete", force.concrete, "mass of concrete in reach: \"900 kg\"");

  auto& cord = words.wish<VoltsWish>();
  auto& cord_words = words.add_formula(calc, "volts", "Three-phase voltage drop in a cord",
                                       [&] { return calc_volts(cord); });
  cord_words.add_option("--volts", cord.volts, "of the inverter: \"42 V\"");
  cord_words
      .add_option("--amps", cord.amps, "of one motor, or all that goes through the cord: \"7.5 A\"")
      ->required();
  cord_words.add_option("--section", cord.section, "of a motor's own cord: \"4 mm2\"");
  cord_words.add_option("--length", cord.length, "of a motor's own cord: \"25 m\"");
  cord_words.add_option("--trunk-section", cord.trunk_section, "of a cord motors share: \"6 mm2\"");
  cord_words.add_option("--trunk-length", cord.trunk_length, "of a cord motors share: \"20 m\"");
  cord_words.add_option("--motors", cord.motors, "on the trunk at once");
  cord_words.add_option("--speed", cord.speed, "\"6000 vpm\" or \"100 Hz\"");

  auto& amps = words.wish<AmpsWish>();
  auto& amps_words = words.add_formula(calc, "amps", "Load of an inverter and of a generator",
                                       [&] { return calc_amps(amps); });
  amps_words.add_option("--motors", amps.motors, "that run at once")->required();
  amps_words.add_option("--amps", amps.amps, "of one in each phase: \"4.2 A\"")->required();
  amps_words.add_option("--inverter", amps.inverter, "gives in each phase: \"40 A\"")->required();
  amps_words.add_option("--volts", amps.volts, "of the inverter: \"42 V\"");
  amps_words.add_option("--generator", amps.generator, "rating: \"10 kVA\"");
  amps_words.add_option("--inverters", amps.inverters, "alike on the generator");
  amps_words.add_option("--derate", amps.derate, "of the rating it gives on the site: \"85 %\"");
}

void add_screens(Words& words) {
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

}  // namespace

int run_cli(int argc, char** argv) {
  Words words;
  add_pour_commands(words);
  add_book_commands(words);
  add_plan_and_picture(words);
  CLI::App& calc = *words.app().add_subcommand("calc", "Single formulas; a unit on every number");
  calc.require_subcommand(1);
  add_form_formulas(words, calc);
  add_motor_formulas(words, calc);
  add_set_formulas(words, calc);
  add_screens(words);
  words.add("rules", "List the rules of the checker, their limits and sources", run_rules);
  return words.run(argc, argv);
}

}  // namespace rb
