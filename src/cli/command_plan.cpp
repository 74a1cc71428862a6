// `plan`: sizes a pour, prints its run sheet, and writes the script that opens it.
#include <fmt/format.h>

#include "app/put_whole.h"
#include "cli/commands.h"
#include "cli/plan_inputs.h"
#include "cli/plan_text.h"
#include "pour/log/event_json.h"
#include "pour/log/script.h"
#include "pour/planner/planner.h"
#include "record/sheet/run_sheet_pdf.h"
#include "store/file/entry_now.h"

namespace rb {

namespace {

Exit write_open(const PlannedPour& planned, const PlanRequest& request, const Path& to) {
  if (std::filesystem::exists(std::filesystem::symlink_status(to))) {
    return report({Error::Kind::input, to.string(), "is there already",
                   "Nothing is written over: name another file"});
  }
  Event open;
  open.at = entry_now().wall;
  open.by = PersonId{request.by};
  open.what = event::PourOpen{PourId{request.pour}, std::make_shared<const Plan>(planned.plan)};
  const std::string line = to_line(open) + "\n";
  // What replay would refuse is refused here, before anything is written.
  if (const auto script = read_script(line, "the plan"); !script) return report(script.error());
  const auto wrong = put_whole(to, line, Place::must_be_free);
  if (!wrong) return Exit::fine;
  return report({Error::Kind::input, to.string(), *wrong,
                 "Name a file in a folder that can be written to and has room"});
}

// How the sheet is told, and on what paper.
struct SheetWish {
  RunSheetManner manner;
  Paper paper = kA4;
};

Result<SheetWish> read_sheet_wish(const PlanCommand& command, Units units) {
  SheetWish wish;
  wish.manner.voice.units = units;
  const bool letter = command.paper.empty() ? units == Units::us : command.paper == "letter";
  if (letter) wish.paper = kLetter;
  if (!command.language.empty()) {
    const auto language = Language::of_code(command.language);
    if (!language) {
      return fail(Error::Kind::input, "--language",
                  {said("is \"{given}\""), {{"given", command.language}}},
                  said("Use the code of a language the screens have: en, es"));
    }
    wish.manner.voice.language = *language;
  }
  if (!command.start.empty()) {
    const auto start = read_day_time(command.start);
    if (!start) {
      return fail(Error::Kind::input, "--start",
                  {said("is \"{given}\""), {{"given", command.start}}},
                  said("Give hours and minutes: 05:30"));
    }
    wish.manner.start = start;
  }
  return wish;
}

Exit write_sheet(const PlannedPour& planned, const PlanRequest& request, const SheetWish& wish,
                 const Path& to) {
  if (std::filesystem::exists(std::filesystem::symlink_status(to))) {
    return report({Error::Kind::input, to.string(), "is there already",
                   "Nothing is written over: name another file"});
  }
  const auto pdf = to_pdf(run_sheet(planned, request.wish, wish.manner), wish.paper);
  if (!pdf) return report(pdf.error());
  const auto wrong = put_whole(to, *pdf, Place::must_be_free);
  if (!wrong) return Exit::fine;
  return report({Error::Kind::input, to.string(), *wrong,
                 "Name a file in a folder that can be written to and has room"});
}

}  // namespace

Exit run_plan(const PlanCommand& command) {
  const auto request = read_plan_request(command.given);
  if (!request) return report(request.error());
  const auto sheet = read_sheet_wish(command, request->units);
  if (!sheet) return report(sheet.error());
  auto planned = plan_pour(request->wish);
  if (!planned) return report(planned.error());
  planned->plan.site = request->site;
  planned->plan.name = request->name;
  planned->plan.units = request->units;
  planned->plan.people.push_back({PersonId{request->by}, {}, "foreman"});
  if (!command.to.empty()) {
    const Exit written = write_open(*planned, *request, command.to);
    if (written != Exit::fine) return written;
  }
  if (!command.sheet.empty()) {
    const Exit written = write_sheet(*planned, *request, *sheet, command.sheet);
    if (written != Exit::fine) return written;
  }
  fmt::print("{}", command.json ? plan_json(*planned) + "\n" : plan_text(*planned, *request));
  return Exit::fine;
}

}  // namespace rb
