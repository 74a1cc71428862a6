#include <fmt/format.h>

#include <algorithm>
#include <cstdio>

#include "app/book_pours.h"
#include "app/device.h"
#include "app/local_time.h"
#include "app/signing/record_seal.h"
#include "cli/write_day.h"
#include "pour/outlook/form.h"
#include "store/photos/photo.h"

namespace rb {

namespace {

// The record knows no store: it asks here for each photo an event names.
PhotoSource photos_beside(const Path& book, const std::string& tag) {
  const Path folder = store::photos_folder(std::filesystem::absolute(book).parent_path(), tag);
  return [folder](const std::string& sha256) -> PhotoFile {
    store::PhotoLook look = store::read_kept_photo(folder, Hex{sha256});
    switch (look.state) {
      case store::PhotoState::whole:
        return {PhotoStanding::whole, std::move(look.bytes)};
      case store::PhotoState::altered:
        return {PhotoStanding::altered, {}};
      case store::PhotoState::missing:
        break;
    }
    return {PhotoStanding::missing, {}};
  };
}

// Printed in red: a record must not lend the book a face it does not deserve.
std::string damage_words(const VerifyReport& looked, Language language) {
  if (looked.sound()) return {};
  return words_of(Saying{said("The book does not hold; faults found in it: {count}. The command "
                              "risebook verify names them. What reads of it is shown."),
                         {{"count", std::to_string(looked.faults.size())}}},
                  {.language = language});
}

}  // namespace

Result<DayWritten> write_day(const Logbook& book, const LocalDay& day, const Path& folder,
                             const std::vector<Format>& formats, Language language) {
  const auto near = book.pours_in({day.start, day.end});
  if (!near) return Failed{near.error()};
  std::vector<PourId> pours;
  std::vector<PourState> touched;
  std::vector<Unread> unread;
  std::vector<PourWithoutPlan> without_plan;
  bool damaged = false;
  for (const PourId& pour : *near) {
    auto read = read_pour(book, pour);
    if (!read) return Failed{read.error()};
    if (!read->state || touches(*read->state, day)) {
      damaged = tell_unread(book.file(), *read) || damaged;
    }
    if (!read->state) {
      without_plan.push_back({pour, read->whole, std::move(read->unread)});
      continue;
    }
    if (!touches(*read->state, day)) continue;
    touched.push_back(std::move(*read->state));
    unread.push_back(std::move(read->unread));
    pours.push_back(pour);
  }
  const auto looked = book.verify(pours);
  if (!looked) return Failed{looked.error()};
  const std::string damage = damage_words(*looked, language);
  std::vector<CheckReport> reports;
  reports.reserve(touched.size());
  for (const PourState& state : touched) reports.push_back(check(state, AsOf::end(state)));
  if (touched.empty() && without_plan.empty()) {
    return fail(
        Error::Kind::input, "--day",
        {said("nothing was logged on {day}"), {{"day", day_text(day.start, day.utc_offset)}}},
        said("Give a day of a pour in the book"));
  }
  std::vector<RecordInput> inputs;
  const bool stories = std::find(formats.begin(), formats.end(), Format::html) != formats.end();
  const PhotoSource photos = photos_beside(book.file(), looked->tag);
  for (std::size_t i = 0; i < touched.size(); ++i) {
    inputs.push_back({touched[i], reports[i], dose_maps(touched[i]), unread[i], stories, photos});
  }
  const DailyRecord record =
      make_daily_record(inputs, day,
                        {.tag = looked->tag,
                         .head_hash = looked->head_hash,
                         .events = looked->events,
                         .damage = damage,
                         .looked = words_of(looked->looked, {.language = language}),
                         .head_event = looked->last},
                        without_plan, language);
  RecordProof proof;
  for (const PourState& state : touched) {
    if (auto added = add_proof(proof, book, state); !added) return Failed{added.error()};
  }
  const auto key = store::DeviceKey::standing(data_folder());
  auto files = write_record(record, folder, formats, [&](const std::string& json) {
    return sealed(json, proof, key ? std::optional(*key) : std::nullopt);
  });
  if (!files) return Failed{files.error()};
  if (!looked->sound()) {
    fmt::print(stderr, "{}: {}; {}\n", book.file().string(), damage, looked->faults.front());
  }
  return DayWritten{std::move(*files), damaged || !damage.empty()};
}

std::vector<SideDose> dose_maps(const PourState& state) {
  std::vector<SideDose> maps;
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    for (const Side side : judged_sides(state.plan->elements[e])) {
      maps.push_back(side_dose(e, side, trade::dose_field(face_of(state, e, {side}))));
    }
  }
  return maps;
}

Exit run_record(const RecordWish& wish) {
  std::vector<Format> formats;
  for (const std::string& name : wish.formats) {
    const auto format = parse_format(name);
    if (!format) {
      return report({Error::Kind::input, "--format", "is \"" + name + "\"",
                     "Use pdf, html, xlsx, csv, json or png, with commas between"});
    }
    formats.push_back(*format);
  }
  const auto given = read_utc_offset(wish.utc_offset);
  if (!given) return report(given.error());
  auto day = system_day(wish.day);
  if (!day) {
    return report({Error::Kind::input, "--day", "is \"" + wish.day + "\"", "Use YYYY-MM-DD"});
  }
  if (*given) day = plain_day(*parse_day(wish.day, **given), **given);
  const auto book = Logbook::open(wish.book, Access::read);
  if (!book) return report(book.error());
  const auto written = write_day(*book, *day, wish.folder, formats,
                                 Language::of_code(wish.language).value_or(Language{}));
  if (!written) return report(written.error());
  for (const Path& path : written->files) fmt::print("{}\n", path.string());
  return written->damaged ? Exit::book : Exit::fine;
}

}  // namespace rb
