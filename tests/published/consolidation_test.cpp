#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published.h"
#include "trade/motors/internal_vibrator.h"

using namespace rb;
using namespace rb::trade;
using namespace rb::published;

PUBLISHED(internal_vibrator_groups, "internal vibrators are those of ACI 309R's groups") {
  struct Group {
    double head[2], hz[2], amplitude[2], radius[2], output[2];
  };
  const Group table[] = {{{20, 40}, {150, 250}, {0.4, 0.8}, {80, 150}, {0.8, 4}},
                         {{30, 60}, {140, 210}, {0.5, 1.0}, {130, 250}, {2.3, 8}},
                         {{50, 90}, {130, 200}, {0.6, 1.3}, {180, 360}, {4.6, 15}},
                         {{80, 150}, {120, 180}, {0.8, 1.5}, {300, 500}, {11, 31}},
                         {{130, 180}, {90, 140}, {1.0, 2.0}, {400, 600}, {19, 38}}};
  Sheet sheet{
      "ACI 309R, internal vibrators by group",
      "as the Cement and Concrete Association of New Zealand prints them, Compaction Equipment",
      Mark::read,
      Kind::transcribed,
      {}};
  for (int g = 1; g <= 5; ++g) {
    const Group& theirs = table[g - 1];
    const auto ours = internal_vibrator(g);
    const auto add = [&](const char* what, double least, double most, const double(&pair)[2]) {
      sheet.rows.push_back({fmt::format("group {} {} from", g, what), least, pair[0], 1e-9});
      sheet.rows.push_back({fmt::format("group {} {} to", g, what), most, pair[1], 1e-9});
    };
    if (!ours) return {};
    add("head, mm", in_millimetres(ours->head.least), in_millimetres(ours->head.most), theirs.head);
    add("Hz", in_hertz(ours->frequency.least), in_hertz(ours->frequency.most), theirs.hz);
    add("amplitude, mm", in_millimetres(ours->amplitude.least),
        in_millimetres(ours->amplitude.most), theirs.amplitude);
    add("radius, mm", in_millimetres(ours->radius.least), in_millimetres(ours->radius.most),
        theirs.radius);
    add("m3/h", in_cubic_metres_per_hour(ours->output.least),
        in_cubic_metres_per_hour(ours->output.most), theirs.output);
  }
  return {sheet};
}

PUBLISHED(insertion_rules, "insertions follow the rules of ACI 309R and the army") {
  return {{"US Army Engineer School, subcourse EN5466A",
           "consolidation by internal vibrators",
           Mark::read,
           Kind::transcribed,
           {{"shortest time, s", in_seconds(kInsertTime.least), 5.0, 1e-12},
            {"longest time, s", in_seconds(kInsertTime.most), 15.0, 1e-12}}},
          {"ACI 309R",
           "rules of insertion",
           Mark::memory,
           Kind::transcribed,
           {{"spacing / radius", kInsertSpacingFactor, 1.5, 1e-12},
            {"into the layer below, mm", in_millimetres(kInsertPenetration), 150.0, 1e-9},
            {"deepest layer, mm", in_millimetres(kDeepestLayer), 500.0, 1e-9}}},
          {"ACI 309R",
           "rules, radius: the middle of its range (ours); values worked out apart",
           Mark::computed,
           Kind::worked_out,
           {{"group 3 spacing, mm", in(insert_spacing(3), in_millimetres), 405.0, 1e-9},
            {"12 m x 0.3 m at 0.27 m",
             in(insertions(metres(12), metres(0.3), metres(0.27)), [](int n) { return n; }), 90.0,
             1e-9}}}};
}
