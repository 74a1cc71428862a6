// Temperatures of a logger brought into a pour: all lines or none, each once, in either unit.
#include <doctest/doctest.h>

#include <fstream>

#include "app/book_pours.h"
#include "cli/commands.h"
#include "temp_folder.h"

using namespace rb;

namespace {

const std::string kPourOfDemo = std::string(RISEBOOK_SOURCE_DIR) + "/assets/demo-pour.jsonl";

class Site {
 public:
  Site() { REQUIRE(run_replay(kPourOfDemo, book) == Exit::fine); }

  Exit bring(const std::string& csv, const std::string& element = "CW2") {
    std::ofstream{file, std::ios::binary} << csv;
    return run_temps({file, book, "CW2-L14", element});
  }
  std::vector<ConcreteTempState> temps() const {
    const auto opened = Logbook::open(book, Access::read);
    REQUIRE(opened);
    const auto read = read_pour(*opened, PourId{"CW2-L14"});
    REQUIRE(read);
    return read->state->concrete_temps;
  }

  test::TempFolder folder{};
  Path book = folder.path / "a.risebook";
  Path file = folder.path / "t.csv";
};

}  // namespace

TEST_CASE("readings come in once, in degrees of either kind, at UTC or with an offset") {
  Site site;
  const std::size_t before = site.temps().size();
  const std::string csv =
      "time,temp_c,z_m,x_m\n2026-03-03T10:00:00Z,24.5,1.2,3\n2026-03-03T05:30:00-05:00,24,1.2,"
      "3\n\n";
  CHECK(site.bring(csv) == Exit::fine);
  const auto temps = site.temps();
  REQUIRE(temps.size() == before + 2);
  CHECK(temps[before].what.temp.degrees == doctest::Approx(24.5));
  CHECK(temps[before].what.z == metres(1.2));
  CHECK(temps[before + 1].at - temps[before].at == seconds(1800));
  CHECK(site.bring(csv) == Exit::fine);  // a second time adds nothing
  CHECK(site.temps().size() == before + 2);
  CHECK(site.bring("temp_f, time\r\n77, 2026-03-03T11:00:00Z\r\n") == Exit::fine);
  const auto more = site.temps();
  REQUIRE(more.size() == before + 3);
  CHECK(more.back().what.temp.degrees == doctest::Approx(25));
  CHECK_FALSE(more.back().what.z);
}

TEST_CASE("a line that is wrong keeps all of them out") {
  Site site;
  const std::size_t before = site.temps().size();
  const std::string good = "time,temp_c,z_m\n2026-03-03T10:00:00Z,24.5,1.2\n";
  for (const char* bad : {"2026-03-03T10:10:00,24,1.2\n", "2026-03-03T10:10:00Z,warm,1.2\n",
                          "2026-03-03T10:10:00Z,240,1.2\n", "2026-03-03T10:10:00Z,24,9\n",
                          "2026-03-03T10:00:00Z,25,1.2\n", "2026-02-01T10:00:00Z,24,1.2\n",
                          "2026-03-03T10:10:00Z\n"}) {
    const std::string line = bad;
    CAPTURE(line);
    CHECK(site.bring(good + line) == Exit::usage);
    CHECK(site.temps().size() == before);
  }
  CHECK(site.bring("time,temp\n") == Exit::usage);
  CHECK(site.bring("time,z_m\n2026-03-03T10:00:00Z,1\n") == Exit::usage);
  CHECK(site.bring("time,temp_c\n") == Exit::usage);
  CHECK(site.bring(good, "CW9") == Exit::usage);
  CHECK(site.temps().size() == before);
}
