// The run sheet asked for on the tablet: where it goes, and that nothing is written over.
#include "app/paper_job.h"

#include <doctest/doctest.h>

#include <fstream>
#include <thread>

#include "temp_folder.h"

using namespace rb;

namespace {

screens::WriteSheet sheet_of_a_wall() {
  PlanWish wish;
  wish.element = ElementId{"W1"};
  wish.length = metres(6);
  wish.height = metres(3);
  wish.thickness = metres(0.3);
  wish.form_rating = kilopascals(80);
  wish.mix.id = MixId{"C1"};
  wish.mix.unit_weight = kilonewtons_per_m3(24);
  wish.mix.slump = millimetres(120);
  wish.mix.initial_set = hours(6);
  wish.motor = {amperes(4.2), kilonewtons(6), vibrations_per_minute(6000)};
  auto planned = plan_pour(wish);
  REQUIRE_MESSAGE(planned, (planned ? std::string{} : to_text(planned.error())));
  return {std::make_shared<const PlannedPour>(*std::move(planned)),
          std::make_shared<const PlanWish>(wish), Voice{}, *parse_moment("2026-03-02T05:00:00Z")};
}

std::string first_bytes(const Path& file) {
  std::ifstream in(file, std::ios::binary);
  std::string bytes(5, ' ');
  in.read(bytes.data(), 5);
  return bytes;
}

}  // namespace

TEST_CASE("the sheet goes to the mirror's folder, and one that is there is never written over") {
  const test::TempFolder stick;
  const test::TempFolder beside;
  const auto wish = sheet_of_a_wall();
  const auto first = write_run_sheet(wish, {stick.path, beside.path});
  REQUIRE(first);
  CHECK(*first == stick.path / "run-sheet-W1-2026-03-02.pdf");
  CHECK(first_bytes(*first) == "%PDF-");
  const auto second = write_run_sheet(wish, {stick.path, beside.path});
  REQUIRE(second);
  CHECK(*second == stick.path / "run-sheet-W1-2026-03-02-2.pdf");
  CHECK(std::filesystem::is_empty(beside.path));
}

TEST_CASE(
    "where the mirror is away the sheet goes beside the book; where nothing takes it, it says so") {
  const test::TempFolder beside;
  const auto wish = sheet_of_a_wall();
  const auto there = write_run_sheet(wish, {beside.path / "gone", beside.path});
  REQUIRE(there);
  CHECK(there->parent_path() == beside.path);
  const auto nowhere = write_run_sheet(wish, {beside.path / "gone"});
  REQUIRE_FALSE(nowhere);
  CHECK_FALSE(nowhere.error().remedy.empty());
  CHECK_FALSE(std::filesystem::exists(beside.path / "gone"));
}

TEST_CASE("a sheet under way ends with its path") {
  const test::TempFolder folder;
  const auto wish = sheet_of_a_wall();
  const auto write = [&]() -> Result<std::string> {
    const auto written = write_run_sheet(wish, {folder.path});
    if (!written) return Failed{written.error()};
    return written->string();
  };
  const PaperJob job{write, wish.voice, {}};
  using State = screens::CopySeen::State;
  for (int i = 0; i < 500 && job.seen().state == State::under_way; ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
  }
  CHECK(job.seen().state == State::made);
  CHECK(std::filesystem::exists(job.seen().says));
}
