#include <algorithm>

#include <fmt/format.h>

#include "faults.h"
#include "pour/log/event.h"

namespace rb::test {

namespace {

const Expected kThin{"", {}, "rows alone work a thin wall"};

// An insertion of the pour: a column's second lift, a deck's second bay.
std::string one(ElementKind kind) {
  return kind == ElementKind::deck ? R"("bay":2,"points")"
                                   : R"("do":"insert","element":"W1","lift":2)";
}
std::function<void(Pour&, ElementKind)> inserted(const std::string& was, const std::string& is) {
  return [=](Pour& p, ElementKind kind) { p.changed(one(kind), was, is); };
}

// The event nearest after the second lift began, or the deck's second strip.
Event& midway(std::vector<Event>& events) {
  const Moment then = after(events.front().at, seconds(1540));
  for (Event& event : events) {
    if (event.at >= then) return event;
  }
  return events.back();
}

std::vector<Fault> faults_of_insertions() {
  return {
      {"insertions far too wide apart",
       inserted(R"("spacing":0.27)", R"("spacing":0.5)"),
       {kThin,
        Expected{"insert-sparse", {"insert-few"}, "between them nothing is reached"},
        {"insert-sparse", {"insert-few"}, "between them nothing is reached"}}},
      {"heads held too long at a point",
       inserted(R"("seconds":10)", R"("seconds":20)"),
       {Expected{"", {}, "the wall is thin: it needs none"},
        Expected{"insert-long"},
        {"insert-long"}}},
      {"insertions not down into the lift below",
       inserted(R"("depth_below":0.15)", R"("depth_below":0.05)"),
       {kThin, Expected{"insert-sparse"}, {"", {}, "a deck is one layer"}}},
      {"too few points worked",
       inserted(R"("points":8)", R"("points":2)"),
       {kThin, Expected{"insert-few"}, {"insert-few"}}},
      {"insertions of two seconds",
       inserted(R"("seconds":10)", R"("seconds":2)"),
       {kThin, Expected{"insert-few"}, {"insert-few"}}},
      {"an insertion after the concrete had set",
       [](Pour& p, ElementKind kind) {
         const bool deck = kind == ElementKind::deck;
         p.without(deck ? R"("bay":2,"points")" : R"("do":"insert","element":"W1","lift":4)");
         p.later(deck ? 2950 : 7150, 43200);
         p.at(45000, deck ? insert(1, 2, 0.27, 0) + R"(,"heads":1)"
                          : insert(4) + R"(,"points":8,"heads":1)");
       },
       {kThin, Expected{"insert-few"}, {"insert-few"}}},
      {"a lift or strip not inserted",
       [](Pour& p, ElementKind kind) {
         p.without(kind == ElementKind::deck ? R"("bay":2,"points")" : one(kind));
       },
       {kThin, Expected{"insert-missing"}, {"unvibrated"}}},
      {"nothing vibrated the last lift",
       [](Pour& p, ElementKind kind) {
         if (kind != ElementKind::deck) never_ran(p, "R4");
         if (kind == ElementKind::column) p.without(R"("do":"insert","element":"W1","lift":4)");
         if (kind == ElementKind::deck) p.without(R"("do":"insert")");
       },
       {Expected{"unvibrated", {"knit-late"}, "nor was it worked into the lift below"},
        {"unvibrated", {"knit-late"}, "nor was it worked into the lift below"},
        {"unvibrated"}}},
  };
}

std::vector<Fault> faults_of_paper() {
  const auto book = [](const std::function<void(std::vector<Event>&)>& change) {
    return [=](Pour& p, ElementKind) { in_book(p, change); };
  };
  return {
      {"no walk-down", [](Pour& p, ElementKind) { p.without(R"("do":"ready")"); },
       everywhere(kGap + "ready")},
      {"placing began with an item not in order",
       [](Pour& p, ElementKind) { p.changed("ties tight", "true", "false"); },
       everywhere("ready-open")},
      {"the inspector did not sign",
       [](Pour& p, ElementKind) { p.without(R"("role":"inspector")"); }, everywhere("unsigned")},
      {"nobody signed", [](Pour& p, ElementKind) { p.without(R"("do":"sign")"); },
       everywhere("unsigned")},
      {"the foreman signed for the inspector",
       book([](std::vector<Event>& events) { events.back().by = PersonId{"f1"}; }),
       everywhere("unsigned")},
      {"signed before the pour was closed",
       [](Pour& p, ElementKind kind) {
         p.without(R"("role":"foreman")");
         p.at(kind == ElementKind::deck ? 2990 : 7190, sign("foreman"));
       },
       everywhere("unsigned")},
      {"the tablet's clock was set", book([](std::vector<Event>& events) {
         const Moment then = midway(events).at;
         for (Event& event : events) {
           if (event.at < then) continue;
           event.at = after(event.at, seconds(120));
           event.entry->wall = event.entry->kept.emplace(event.at);
         }
       }),
       everywhere("clock-step")},
      {"a lift begun over a walk-down not in order, by name",
       [](Pour& p, ElementKind) {
         p.at(599, R"("do":"override","rule":"ready-open","element":"W1","why":"looked over")");
       },
       everywhere("gate-passed")},
      {"an event kept ten minutes after its tap", book([](std::vector<Event>& events) {
         auto& entry = *midway(events).entry;
         entry.kept = after(entry.wall, seconds(600));
       }),
       everywhere("kept-late")},
      {"an event entered before it happened", book([](std::vector<Event>& events) {
         auto& entry = *midway(events).entry;
         entry.wall = entry.kept.emplace(after(entry.wall, seconds(-10)));
         entry.steady -= seconds(10);
       }),
       everywhere("entered-before")},
      {"lines of a script in a pour that was tapped", book([](std::vector<Event>& events) {
         Event line = midway(events);
         line.what = event::Note{"added", {}, {}};
         line.entry = script_entry(*line.entry);
         // Before it was signed.
         const auto sign = std::find_if(events.begin(), events.end(), [](const Event& e) {
           return std::holds_alternative<event::Sign>(e.what);
         });
         events.insert(sign, line);
       }),
       everywhere("from-script")},
  };
}

}  // namespace

std::vector<Fault> faults() {
  std::vector<Fault> all;
  for (const auto& some :
       {faults_of_rows(), faults_of_concrete(), faults_of_insertions(), faults_of_paper()}) {
    all.insert(all.end(), some.begin(), some.end());
  }
  return all;
}

}  // namespace rb::test
