#include "screens/review/marks_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/severity_look.h"
#include "screens/entry/tap_line.h"
#include "screens/review/review_memory.h"
#include "screens/review/side_pages.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

struct MarkWords {
  std::string title, under;
};

MarkWords words_of_mark(const Stage& stage, const FaceMark& mark, const PourView& view) {
  const Say& say = stage.say;
  if (mark.blemish) {
    const TapView tap = view.taps.of(mark.ref);
    return {event_words(say, tap.what, view.naming), say.clock_short(tap.at) + " \u00B7 " +
                                                         say.height(mark.box->w) + " \u00D7 " +
                                                         say.height(mark.box->h)};
  }
  const ReviewMemory& memory = *stage.review;
  const Finding& finding = memory.report().findings[mark.finding];
  MarkWords words{rule_title(say, finding.rule), finding_place(say, *memory.state().plan, finding)};
  const auto add = [&](const std::string& part) {
    if (!part.empty()) words.under += (words.under.empty() ? "" : " \u00B7 ") + part;
  };
  add(finding_figures(say, finding));
  const auto group =
      std::find_if(view.review.begin(), view.review.end(),
                   [&](const GroupView& known) { return known.key == finding.group; });
  if (group != view.review.end() && group->at && !group->came_back) {
    const std::string at = say.clock_short(*group->at);
    if (group->standing == Standing::accepted) add(say(Word::review_accepted, group->by, at));
    if (group->standing == Standing::sent_back) {
      add(say(Word::review_sent, group->by, at, group->why));
    }
  }
  if (mark.count > 1) words.title += fmt::format(" (+{})", mark.count - 1);
  return words;
}

bool draw_mark(Stage& stage, const Box& box, const FaceMark& mark, const PourView& view) {
  Canvas& canvas = stage.canvas;
  const MarkWords words = words_of_mark(stage, mark, view);
  const std::string id = fmt::format("{} {}", mark.blemish ? "blemish" : "mark", mark.number);
  const bool tapped = canvas.target(id, box, words.title + " " + words.under);
  card_ground(canvas, box);
  if (canvas.pressed(id)) {
    canvas.edge(box, canvas.theme().ink, canvas.mm(1.2), canvas.mm(1.6));
  }
  Box in = box.inset(canvas.mm(1.8), canvas.mm(0.9));
  const Pair pair = mark.blemish ? canvas.theme().mend : canvas.theme().act;
  const float side = canvas.mm(7);
  const Box sign = in.cut_left(side, canvas.mm(2));
  const Box number{sign.x0, sign.middle().y - side / 2, sign.x1, sign.middle().y + side / 2};
  canvas.fill(number, pair.ground, mark.blemish ? 0 : side / 2);
  canvas.text(std::to_string(mark.number), number,
              {.face = Face::strong, .colours = pair, .across = Across::middle, .free_text = true});
  const float tall = canvas.height(Face::strong) + canvas.height(Face::small);
  in.y0 += std::max(0.0F, std::floor((in.h() - tall) / 2));
  Box first = in.cut_top(canvas.height(Face::strong));
  SeverityLook look{Look::off, Symbol::pencil, Word::mark_blemish};
  if (!mark.blemish) look = look_of(stage.review->report().findings[mark.finding].severity);
  const Box took = tag(canvas, first, look.symbol, stage.say(look.word), look.look);
  first.x0 = took.x1 + canvas.mm(2);
  canvas.text(words.title, first,
              {.face = Face::strong, .colours = canvas.theme().quiet, .free_text = true});
  in.y1 = in.y0 + canvas.height(Face::small);
  canvas.text(words.under, in,
              {.face = Face::small, .colours = canvas.theme().quiet, .free_text = true});
  return tapped;
}

}  // namespace

std::optional<std::size_t> draw_marks(Stage& stage, const Box& box,
                                      const std::vector<FaceMark>& marks, const PourView& view,
                                      ReviewDraft& draft) {
  Canvas& canvas = stage.canvas;
  if (marks.empty()) {
    canvas.text(stage.say(Word::marks_none), box,
                {.colours = canvas.soft(), .down = Down::top, .lines = 4});
    return std::nullopt;
  }
  const float tall = canvas.scale().target();
  const float gap = canvas.gap();
  const SidePages pages = side_pages(stage, box, marks.size(), draft.page, "marks", tall, gap);
  Box room = pages.room;
  std::optional<std::size_t> tapped;
  for (std::size_t i = pages.first; i < pages.first + pages.lines && i < marks.size(); ++i) {
    if (draw_mark(stage, room.cut_top(tall, gap), marks[i], view)) tapped = i;
  }
  return tapped;
}

std::optional<std::size_t> finding_of(const CheckReport& report, const ReviewDraft& draft) {
  if (draft.cause.empty()) return std::nullopt;
  std::size_t nth = 0;
  std::optional<std::size_t> last;
  for (std::size_t i = 0; i < report.findings.size(); ++i) {
    if (report.findings[i].group != draft.cause) continue;
    last = i;
    if (nth++ == draft.of) return i;
  }
  return last;
}

void draw_behind(Stage& stage, const Box& box, std::size_t index, const PourView& view,
                 ReviewDraft& draft) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  ReviewMemory& memory = *stage.review;
  const Finding& finding = memory.report().findings[index];
  const std::vector<EventRef>& taps = memory.behind(index);
  Box in = box;
  const float target = canvas.scale().target();
  const float gap = canvas.gap();
  const float small = canvas.height(Face::small);
  // The sentence gives way before the taps do.
  const int room = static_cast<int>((in.h() - target - canvas.mm(1)) / small);
  const int lines = std::clamp(room, 0, 3);
  if (lines > 0) {
    Box head = in.cut_top(static_cast<float>(lines) * small, canvas.mm(1));
    Box first = head;
    first.y1 = first.y0 + small;
    const SeverityLook look = look_of(finding.severity);
    const Box took = tag(canvas, first, look.symbol, say(look.word), look.look);
    head.x0 = took.x1 + canvas.mm(2);
    canvas.text(sentence(finding, *memory.state().plan, say.voice()) + " \u00B7 " +
                    say(Word::behind_count, taps.size()),
                head,
                {.face = Face::small,
                 .colours = canvas.on_panel(),
                 .down = Down::top,
                 .lines = lines,
                 .free_text = true});
  }
  if (taps.empty()) {
    canvas.text(say(Word::behind_none), in,
                {.colours = canvas.soft(), .down = Down::top, .lines = 2, .free_text = true});
    return;
  }
  const SidePages pages = side_pages(stage, in, taps.size(), draft.page, "behind", target, gap);
  Box list = pages.room;
  for (std::size_t i = pages.first; i < pages.first + pages.lines && i < taps.size(); ++i) {
    draw_tap(stage, list.cut_top(target, gap), view.taps.of(taps[i]), view);
  }
}

}  // namespace rb::screens
