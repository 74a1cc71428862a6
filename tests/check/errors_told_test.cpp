// Every error is told in the reader's language and units: what the sources say, and what is said
// when bad things are really given.
#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

#include "planner/follow_sheet.h"
#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/script.h"
#include "pour/planner/planner.h"
#include "words/sentence.h"

using namespace rb;

namespace {

namespace fs = std::filesystem;

std::string source(const fs::path& path) {
  std::ifstream in{path};
  return {std::istreambuf_iterator<char>{in}, {}};
}

std::vector<fs::path> sources() {
  std::vector<fs::path> files;
  for (const auto& entry :
       fs::recursive_directory_iterator{fs::path{RISEBOOK_SOURCE_DIR} / "src"}) {
    const std::string kind = entry.path().extension().string();
    if (kind == ".cpp" || kind == ".h") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

bool digit(char c) {
  return c >= '0' && c <= '9';
}
bool letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}
bool space(char c) {
  return c == ' ' || c == '\n';
}

// The literal that begins at a quotation mark, and where it ends.
std::string literal(const std::string& text, std::size_t& at) {
  std::string out;
  for (++at; at < text.size() && text[at] != '"'; ++at) {
    if (text[at] == '\\') ++at;
    out += text[at];
  }
  ++at;
  return out;
}

// From after an opening bracket to its closing one; literals may hold brackets.
std::size_t closing(const std::string& text, std::size_t at) {
  for (int depth = 1; at < text.size(); ++at) {
    if (text[at] == '"') literal(text, at), --at;
    if (text[at] == '(' || text[at] == '{') ++depth;
    if ((text[at] == ')' || text[at] == '}') && --depth == 0) return at;
  }
  return at;
}

struct Marked {
  std::string words, where;
};

// The next words marked with a literal, from a place on; npos when there are none.
std::size_t next_marked(const std::string& text, std::size_t from) {
  for (std::size_t at = text.find("said(", from); at != std::string::npos;
       at = text.find("said(", at + 1)) {
    const auto first = text.find_first_not_of(" \n", at + 5);
    if (first != std::string::npos && text[first] == '"') return at;
  }
  return std::string::npos;
}

// The words marked within a stretch of a source.
std::vector<std::string> marked_in(const std::string& text) {
  std::vector<std::string> all;
  for (std::size_t at = next_marked(text, 0); at != std::string::npos; at = next_marked(text, at)) {
    std::string words;
    at += 5;
    while (at < text.size() && (text[at] == '"' || space(text[at]))) {
      if (text[at] == '"') {
        words += literal(text, at);
      } else {
        ++at;
      }
    }
    all.push_back(words);
  }
  return all;
}

// The same stretch without its marked words.
std::string without_marked(std::string text) {
  for (std::size_t at = next_marked(text, 0); at != std::string::npos; at = next_marked(text, at)) {
    text.erase(at, closing(text, at + 5) - at + 1);
  }
  return text;
}

// Where errors and refusals are made.
std::vector<Marked> refusals() {
  std::vector<Marked> all;
  for (const fs::path& file : sources()) {
    const std::string text = source(file);
    for (const char* made : {"fail(", "refuse(", "Error{", "wrong(", "repeats(", "refusal(",
                             "add({", "method_does_not_hold(", "outside(", "no_gl(", "no_input("}) {
      const std::string_view head = made;
      for (std::size_t at = text.find(head); at != std::string::npos;
           at = text.find(head, at + 1)) {
        if (at > 0 && (letter(text[at - 1]) || text[at - 1] == '_')) continue;
        const std::size_t open = at + head.find_first_of("({") + 1;
        all.push_back({text.substr(open, closing(text, open) - open), file.string()});
      }
    }
  }
  return all;
}

// A figure with a unit that stands in the words, outside braces.
std::string bare_figure(const std::string& words) {
  bool braces = false;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == '{') braces = true;
    if (words[i] == '}') braces = false;
    const bool starts = i == 0 || words[i - 1] == ' ' || words[i - 1] == '(';
    if (braces || !starts || !digit(words[i])) continue;
    std::size_t end = i;
    while (end < words.size() && (digit(words[end]) || words[end] == '.')) ++end;
    if (end >= words.size() || words[end] != ' ') continue;
    const auto stop = words.find_first_of(" ,;.)", end + 1);
    const std::string unit =
        words.substr(end + 1, stop == std::string::npos ? stop : stop - end - 1);
    for (const char* one : {"m", "mm", "m3", "kPa", "m/h", "kN", "kN/m3", "kg/m2", "degC", "ft"}) {
      if (unit == one) return words.substr(i, stop == std::string::npos ? stop : stop - i);
    }
  }
  return {};
}

// The names in braces, in order; figures in braces are words.
std::vector<std::string> facts_in(const char* words) {
  auto names = names_in(words);
  std::erase_if(names, [](const std::string& name) { return name.empty() || digit(name.front()); });
  std::sort(names.begin(), names.end());
  return names;
}

Voice spanish_us() {
  const auto spanish = Language::of_code("es");
  REQUIRE(spanish);
  return {*spanish, Units::us, false};
}
const Voice kUs{{}, Units::us, true};

void check_told(const Saying& saying) {
  if (*saying.english() != '\0') {
    CAPTURE(saying.english());
    for (const Language language : Language::all()) CHECK(has_words(language, saying.english()));
    for (const std::string& name : names_in(saying.english())) {
      const std::string bare = name.substr(0, name.find_first_of("~+"));
      if (digit(bare.front()) || bare == "...") continue;
      CAPTURE(name);
      CHECK(std::any_of(saying.facts().begin(), saying.facts().end(),
                        [&](const Fact& f) { return f.name == bare; }));
    }
  }
  for (const Fact& fact : saying.facts()) {
    if (const auto* clause = std::get_if<Clause>(&fact.value)) check_told(clause->inner());
    if (const auto* term = std::get_if<Term>(&fact.value)) {
      CAPTURE(term->english);
      for (const Language language : Language::all()) CHECK(has_words(language, term->english));
    }
  }
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

const std::string kOpen =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
    R"("units":"us","people":[{"id":"f1","name":"A","role":"foreman"}],)"
    R"("mixes":[{"id":"50 mm hose","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"Wall 3 m","kind":"wall","length":6,"height":3,"thickness":0.3,)"
    R"("bays":[3,3],"lifts":[1,2,3],"rows":[{"id":"12 psi","side":"near","z":0.4,)"
    R"("motors":[{"id":"M1","x":1.5,"reach_x":1.6,"reach_z":0.7}]}]}]}})"
    "\n";

std::string put(std::string text, const std::string& find, const std::string& with) {
  const auto at = text.find(find);
  REQUIRE(at != std::string::npos);
  return text.replace(at, find.size(), with);
}

Error refused(const std::string& text) {
  const auto read = read_script(text, "day.jsonl");
  REQUIRE_FALSE(read);
  return read.error();
}

std::string line(const std::string& fields) {
  return R"({"at":"2026-03-02T05:10:00.000Z","by":"f1",)" + fields + "}\n";
}

}  // namespace

TEST_CASE("whatever an error or a refusal says is marked to be told in other languages") {
  const auto all = refusals();
  CHECK(all.size() > 150);
  std::size_t looked = 0;
  for (const Marked& made : all) {
    // What ails a book is worded by the screens from its BookTrouble.
    if (holds(made.where, "/src/store/") || holds(made.where, "/base/")) continue;
    ++looked;
    const std::string rest = without_marked(made.words);
    for (std::size_t at = rest.find('"'); at < rest.size(); at = rest.find('"', at)) {
      const std::string words = literal(rest, at);
      for (std::size_t i = 1; i + 1 < words.size(); ++i) {
        const bool prose = words[i] == ' ' && letter(words[i - 1]) && letter(words[i + 1]);
        CHECK_MESSAGE(!prose, made.where << " says without said(): " << words);
        if (prose) break;
      }
    }
  }
  CHECK(looked > 120);
}

TEST_CASE("every template of an error stands in every finished language with the same facts") {
  std::set<std::string> all;
  for (const Marked& made : refusals()) {
    for (const std::string& words : marked_in(made.words)) {
      CAPTURE(words);
      CHECK(bare_figure(words) == "");
    }
  }
  for (const fs::path& file : sources()) {
    for (const std::string& words : marked_in(source(file))) all.insert(words);
  }
  CHECK(all.size() > 400);
  for (const std::string& words : all) {
    CAPTURE(words);
    const auto english = facts_in(words.c_str());
    for (const Language language : Language::all()) {
      if (!language.finished()) continue;
      CHECK_MESSAGE(has_words(language, words.c_str()), language.code() << " lacks: " << words);
      CHECK(facts_in(told(language, words.c_str())) == english);
    }
  }
}

TEST_CASE("what is refused is told in the reader's units and language, ids as they were written") {
  struct Row {
    std::string script, us, spanish;
  };
  const Row rows[] = {
      {kOpen + line(R"("do":"top","element":"Wall 3 m","height":4)"),
       "day.jsonl line 2 (top): a top of 13.12 ft is above the form of Wall 3 m (9.843 ft).",
       "day.jsonl l\u00EDnea 2 (top): un nivel de 13.12\u00A0ft queda por encima de la cimbra de "
       "Wall 3 m (9.843\u00A0ft)."},
      {kOpen + line(R"("do":"run","element":"Wall 3 m","row":"10 kPa")"),
       "day.jsonl line 2 (run): row 10 kPa on the near side of Wall 3 m is not in the plan.",
       "day.jsonl l\u00EDnea 2 (run): la fila 10 kPa del lado de frente de Wall 3 m no est\u00E1 "
       "en "
       "el plan."},
      {kOpen + line(R"("do":"top","element":"Wall 3 m","height":1,"bay":5)"),
       "day.jsonl line 2 (top): bay 5 is not in the plan; Wall 3 m has 2.",
       "day.jsonl l\u00EDnea 2 (top): el tramo 5 no est\u00E1 en el plan; Wall 3 m tiene 2."},
      {put(kOpen, R"("length":6)", R"("length":600)"),
       "day.jsonl line 1, plan, elements[1], field length: is 1969 ft; a number above 0 ft and up "
       "to 1640 ft was expected. Check the sign and the unit.",
       "day.jsonl l\u00EDnea 1, plan, elements[1], campo length: es 1969\u00A0ft; se esperaba un "
       "n\u00FAmero mayor que 0\u00A0ft y hasta 1640\u00A0ft. Revise el signo y la unidad."},
      {put(kOpen, R"("x":1.5)", R"("x":6.5)"),
       "day.jsonl line 1, plan, elements[1], rows[1], motors[1], field x: is 21.33 ft, off the "
       "face of Wall 3 m (19.69 ft long).",
       "day.jsonl l\u00EDnea 1, plan, elements[1], rows[1], motors[1], campo x: es 21.33\u00A0ft, "
       "fuera de la cara de Wall 3 m (19.69\u00A0ft de largo)."},
      {put(kOpen, R"("unit_weight":23.5)", R"("unit_weight":-2)"),
       "day.jsonl line 1, plan, mixes[1], field unit_weight: is -12.73 lb/ft3; a number from 31.83 "
       "lb/ft3 to 382 lb/ft3 was expected. Check the sign and the unit.",
       "day.jsonl l\u00EDnea 1, plan, mixes[1], campo unit_weight: es -12.73\u00A0lb/ft\u00B3; se "
       "esperaba un n\u00FAmero de 31.83\u00A0lb/ft\u00B3 a 382\u00A0lb/ft\u00B3. Revise el signo "
       "y la unidad."},
      {kOpen + line(R"("do":"fix","target":"E9","set":{"height":2},"why":"typed wrong")"),
       "day.jsonl line 2, field target: names \"E9\", which no earlier line has as its id.",
       "day.jsonl l\u00EDnea 2, campo target: nombra \"E9\", que ninguna l\u00EDnea anterior tiene "
       "como id."},
      {kOpen + line(R"("do":"hum")"), "a kind this version does not know",
       "una clase que esta versi\u00F3n no conoce"},
  };
  for (const Row& row : rows) {
    const Error error = refused(row.script);
    check_told(as_saying(error));
    CAPTURE(words_of(error, kUs));
    CAPTURE(words_of(error, spanish_us()));
    CHECK(holds(words_of(error, kUs), row.us));
    CHECK(holds(words_of(error, spanish_us()), row.spanish));
  }
}

TEST_CASE("why an event does not count is kept as data and told in any language") {
  const std::string text =
      kOpen + line(R"("id":"E1","do":"top","element":"Wall 3 m","height":1)") +
      line(R"("id":"E2","do":"fix","target":"E1","set":{"height":-1},"why":"typed wrong")");
  const auto read = read_script(text, "day.jsonl");
  REQUIRE_FALSE(read);
  check_told(as_saying(read.error()));
  CHECK(holds(words_of(read.error(), kUs), "is -3.281 ft; a number"));
  CHECK(holds(words_of(read.error(), spanish_us()), "la correcci\u00F3n, campo height: es -3.281"));
}

TEST_CASE("what a planner and a formula refuse is told in the reader's units and language") {
  const PlanWish w = wish_for(ElementId{"Wall 3 m"});
  REQUIRE(plan_pour(w));
  const auto error_of = [](const PlanWish& wish) {
    const auto plan = plan_pour(wish);
    REQUIRE_FALSE(plan);
    check_told(as_saying(plan.error()));
    return plan.error();
  };
  PlanWish weak = w;
  weak.motor.force = kilonewtons(0.1);
  CHECK(holds(words_of(error_of(weak), kUs), " lbf are too weak for 12"));
  CHECK(holds(words_of(error_of(weak), spanish_us()), "dimensionado, fuerza: motores de "));
  PlanWish hungry = w;
  hungry.inverter_amps = amperes(4);
  CHECK(holds(words_of(error_of(hungry), spanish_us()),
              "un inversor de 4.0\u00A0A no alimenta un motor de 4.2\u00A0A"));
  PlanWish quick = w;
  quick.mix.initial_set = hours(0.5);
  const std::string sets = words_of(error_of(quick), kUs);
  CAPTURE(sets);
  CHECK(holds(sets, "ft/h"));
  CHECK_FALSE(holds(sets, "m/h"));
  CHECK(holds(words_of(error_of(quick), spanish_us()), "una capa tarda"));
  PlanWish cold = w;
  cold.concrete = celsius(-5);
  CHECK(
      holds(words_of(error_of(cold), kUs), "concrete 23 degF is not between 32 degF and 122 degF"));
  CHECK(holds(words_of(error_of(cold), spanish_us()), "concreto de 23\u00A0\u00B0F no est\u00E1"));
}
