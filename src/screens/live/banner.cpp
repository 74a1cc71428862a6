#include "screens/live/banner.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "screens/entry/severity_look.h"
#include "screens/review/review_memory.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

// What the banner says, and how it looks.
struct Banner {
  SeverityLook look{};
  std::string first{}, second{};
  std::string brief{};  // in a word or two, where a panel lies over the banner
  bool dim = false;     // was seen, or is of before: not to be taken for news
  std::size_t of = 0;   // so many need a hand
};

std::string joined(const std::string& a, const std::string& b) {
  if (a.empty() || b.empty()) return a + b;
  return a + " \u00B7 " + b;
}

// A battery about to fail needs a hand, too; only someone's safety comes before it.
bool draw_battery(Stage& stage, const Box& box, const PourView& view) {
  if (!stage.battery || stage.battery->charging || stage.battery->percent > kBatteryVeryLow) {
    return false;
  }
  if (!view.attention.empty() && view.attention.front().severity == Severity::stop) return false;
  Canvas& canvas = stage.canvas;
  const std::string first = stage.say(Word::battery_very, stage.battery->percent);
  const std::string second = stage.say(Word::battery_do);
  if (canvas.target("attention", box, first + " " + second)) stage.open(FindingsDraft{});
  const Pair pair = canvas.theme().mend;
  canvas.fill(box, pair.ground, canvas.mm(1.6));
  if (canvas.pressed("attention")) canvas.edge(box, pair.ink, canvas.mm(1.2), canvas.mm(1.6));
  Box in = box.inset(canvas.mm(2), canvas.mm(1));
  const float side = std::min(in.h(), canvas.mm(9));
  const Box sign = in.cut_left(side, canvas.mm(2.5));
  canvas.symbol(Symbol::mend_sign, sign.inset(0, (in.h() - side) / 2), pair.ink);
  const float tall = canvas.height(Face::strong) + canvas.height(Face::small);
  in.y0 += std::floor((in.h() - tall) / 2);
  canvas.text(first, in.cut_top(canvas.height(Face::strong)),
              {.face = Face::strong, .colours = pair});
  canvas.text(second, in.cut_top(canvas.height(Face::small)),
              {.face = Face::small, .colours = pair});
  return true;
}

// Of what is not in order the first, and how much more there is.
std::string gate_open(const Say& say, const PourView& view) {
  std::string first;
  std::size_t all = view.lift.open.size();
  if (all > 0) first = told(say.language, words_of(view.lift.open.front().gate));
  for (const RowView& row : view.rows) {
    if (!row.work_waits()) continue;
    const Gate gate = row.hung ? Gate::cables_open : Gate::not_hung;
    if (all++ == 0) {
      first = row_name(say, row.place, view.two_sides) + ": " +
              std::string{told(say.language, words_of(gate))};
    }
  }
  return all > 1 ? fmt::format("{} (+{})", first, all - 1) : first;
}

std::string time_of(const Stage& stage, const Finding& finding) {
  return stage.review == nullptr ? std::string{}
                                 : finding_time(stage.say, stage.review->state(), finding);
}

Banner of_news(const Stage& stage, const PourView& view, const Plan& plan) {
  const Say& say = stage.say;
  const Finding& worst = view.attention.front();
  Banner banner{.look = look_of(worst.severity), .of = view.attention.size()};
  const std::string word{say(banner.look.word)};
  banner.first = word + ": " + rule_title(say, worst.rule);
  banner.second = joined(time_of(stage, worst),
                         joined(finding_place(say, plan, worst), finding_figures(say, worst)));
  if (banner.second.empty()) banner.second = sentence(worst, plan, say.voice());
  banner.brief = banner.of > 1 ? fmt::format("{} 1/{}", word, banner.of) : word;
  return banner;
}

// Seen or old, and open all the same.
Banner of_behind(const Stage& stage, const PourView& view, const Plan& plan) {
  const Say& say = stage.say;
  const OpenBehind& behind = view.behind;
  const Finding& worst = *behind.gravest;
  Banner banner{.look = look_of(worst.severity), .dim = true};
  banner.brief = say(Word::banner_open, behind.stops, behind.mends);
  banner.first = view.closed ? std::string{say(Word::pour_is_closed)} : banner.brief;
  const std::string what = joined(
      time_of(stage, worst), joined(finding_place(say, plan, worst), rule_title(say, worst.rule)));
  banner.second = view.closed ? joined(banner.brief, what) : what;
  return banner;
}

Banner banner_of(const Stage& stage, const PourView& view, const Plan& plan) {
  const Say& say = stage.say;
  if (!view.attention.empty()) return of_news(stage, view, plan);
  // What is not in order yet is nothing to be quiet about, whether gone on over or not.
  const std::string gate = view.closed ? std::string{} : gate_open(say, view);
  if (!gate.empty()) {
    const std::string first{say(Word::gates_open)};
    return {{Look::mend, Symbol::mend_sign, Word::gates_open}, first, gate, first};
  }
  if (view.behind.gravest) return of_behind(stage, view, plan);
  // Nothing found is good news only where everything was looked at.
  if (!view.closed && !view.not_judged.empty()) {
    const std::string first = say(Word::not_judged_some, view.not_judged.size());
    return {{Look::off, Symbol::note_sign, Word::not_judged},
            first,
            sentence(view.not_judged.front(), plan, say.voice()),
            first};
  }
  Banner banner{.look = {Look::well, Symbol::check, Word::all_quiet}};
  banner.first = say(view.closed ? Word::pour_is_closed : Word::all_quiet);
  if (view.stops + view.mends + view.notes > 0) {
    banner.second = severity_words(say, view);
  }
  return banner;
}

// The sign on its own ground, of a dim banner; of any other on the banner's.
void draw_sign(Canvas& canvas, Box& in, const Banner& banner, Pair pair) {
  const float side = std::min(in.h(), canvas.mm(9));
  Box sign = in.cut_left(side, canvas.mm(2.5)).inset(0, (in.h() - side) / 2);
  if (banner.dim) {
    const Pair own = pair_of(canvas.theme(), banner.look.look);
    canvas.fill(sign, own.ground, canvas.mm(1));
    sign = sign.inset(canvas.mm(1.5));
    pair = own;
  }
  canvas.symbol(banner.look.symbol, sign, pair.ink);
}

}  // namespace

std::string severity_words(const Say& say, const PourView& view) {
  return view.notes == 1 ? say(Word::findings_counts_one, view.stops, view.mends)
                         : say(Word::findings_counts, view.stops, view.mends, view.notes);
}

void draw_attention(Stage& stage, const Box& box, const PourView& view, const Plan& plan) {
  Canvas& canvas = stage.canvas;
  if (draw_battery(stage, box, view)) return;
  const float radius = canvas.mm(1.6);
  const Banner banner = banner_of(stage, view, plan);
  const Pair pair = banner.dim ? canvas.theme().quiet : pair_of(canvas.theme(), banner.look.look);
  if (canvas.target("attention", box, banner.first + " " + banner.second)) {
    stage.open(FindingsDraft{});
  }
  canvas.fill(box, pair.ground, radius);
  if (banner.dim) canvas.edge(box, canvas.theme().line, canvas.mm(0.25), radius);
  if (canvas.pressed("attention")) canvas.edge(box, pair.ink, canvas.mm(1.2), radius);
  Box in = box.inset(canvas.mm(2), canvas.mm(1));
  draw_sign(canvas, in, banner, pair);
  if (banner.of > 1) {
    const std::string count = fmt::format("1 / {}", banner.of);
    const Box box_of = in.cut_right(canvas.width(count, Face::strong), canvas.mm(2));
    canvas.text(count, box_of, {.face = Face::strong, .colours = pair});
  }
  if (banner.second.empty()) {
    canvas.text(banner.first, in, {.face = Face::strong, .colours = pair, .lines = 2});
    return;
  }
  const float tall = canvas.height(Face::strong) + canvas.height(Face::small);
  in.y0 += std::floor((in.h() - tall) / 2);
  canvas.text(banner.first, in.cut_top(canvas.height(Face::strong)),
              {.face = Face::strong, .colours = pair});
  in.y1 = in.y0 + canvas.height(Face::small);
  canvas.text(banner.second, in, {.face = Face::small, .colours = pair, .free_text = true});
}

Covered covered_banner(const Stage& stage, const PourView& view, const Plan& plan) {
  Banner banner = banner_of(stage, view, plan);
  return {banner.look.symbol, banner.look.look, std::move(banner.brief)};
}

}  // namespace rb::screens
