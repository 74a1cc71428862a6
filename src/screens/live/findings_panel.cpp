#include "screens/live/findings_panel.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "screens/entry/filter_panel.h"
#include "screens/entry/paging.h"
#include "screens/entry/severity_look.h"
#include "screens/live/banner.h"
#include "screens/review/review_memory.h"
#include "screens/review/review_screen.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

constexpr int kSaysLines = 3;
constexpr int kAdviceLines = 3;
constexpr int kSourceLines = 3;  // where the findings of one cause are listed

// The ground of one finding, and the room on it.
Box card(Canvas& canvas, const Box& box) {
  card_ground(canvas, box);
  return box.inset(canvas.mm(2), canvas.mm(1));
}

// A joint past set, or near it, waits for the engineer's word: it is logged where it is told.
bool asks_decision(const Finding& finding) {
  const RuleCard* card = find_card(finding.rule);
  return card != nullptr && card->asks == Asks::joint_decision && finding.element && finding.lift;
}
void draw_decide(Stage& stage, const Box& box, std::size_t number, const Finding& finding,
                 const Plan& plan) {
  if (!button(stage.canvas, box,
              {.id = fmt::format("joint decided {}", number),
               .text = stage.say(Word::joint_decide),
               .look = Look::act,
               .symbol = Symbol::pencil})) {
    return;
  }
  event::Joint joint{plan.elements[*finding.element].id, finding.lift, {}, {}, {}};
  if (finding.bay) joint.bay = static_cast<int>(*finding.bay) + 1;
  stage.open(
      TypeDraft{.use = TypeDraft::Use::joint, .joint = std::move(joint), .at = stage.tapped()});
}

// The words of a finding lead to its place and moment, and to the taps it rests on.
// They are felt down to `low`: in a low room a card reaches below it.
void draw_way_to_taps(Stage& stage, Box& in, float low, std::size_t number,
                      const Finding& finding) {
  Canvas& canvas = stage.canvas;
  const std::string id = fmt::format("see {}", number);
  const Box felt{in.x0, in.y0, in.x1, std::min(in.y1, low)};
  if (canvas.target(id, felt, rule_title(stage.say, finding.rule)) && stage.review != nullptr) {
    const std::vector<Finding>& all = stage.review->report().findings;
    const auto at = std::find(all.begin(), all.end(), finding);
    if (at != all.end()) {
      ReviewDraft draft = review_of_finding(stage.review->state(), stage.review->report(),
                                            static_cast<std::size_t>(at - all.begin()));
      if (const auto* from = std::get_if<FindingsDraft>(&stage.drafts.dialog)) draft.from = *from;
      stage.drafts.element = finding.element.value_or(stage.drafts.element);
      stage.open(std::move(draft));
    }
  }
  if (canvas.pressed(id)) canvas.edge(felt, canvas.theme().ink, canvas.mm(0.8), canvas.mm(1));
  const Box sign = in.cut_right(canvas.mm(5), canvas.mm(1));
  canvas.symbol(Symbol::forward, sign.inset(0, std::max(0.0F, (sign.h() - canvas.mm(5)) / 2)),
                canvas.theme().ink_soft);
}

const GroupView* group_of(const PourView& view, const Finding& finding) {
  const auto group =
      std::find_if(view.review.begin(), view.review.end(),
                   [&](const GroupView& known) { return known.key == finding.group; });
  return group == view.review.end() ? nullptr : &*group;
}

// What was said of a cause; empty: nothing.
std::string standing_words(const Say& say, const GroupView& group) {
  if (group.came_back) return say(Word::review_came_back, group.by);
  const std::string at = group.at ? say.clock_short(*group.at) : std::string{};
  if (group.standing == Standing::accepted) return say(Word::review_accepted, group.by, at);
  if (group.standing == Standing::sent_back) return say(Word::review_sent, group.by, at, group.why);
  return {};
}

void draw_standing(Stage& stage, const Box& box, const GroupView& group) {
  const bool accepted = group.standing == Standing::accepted;
  tag(stage.canvas, box, accepted ? Symbol::check : Symbol::pencil,
      standing_words(stage.say, group), Look::off, Face::small, true);
}

// Of one cause: taken as it is, or sent back with a reason, by name.
void draw_review(Stage& stage, const Box& box, const GroupView& group, FindingsDraft& draft) {
  const float gap = stage.canvas.gap();
  if (button(stage.canvas, box.column(0, 2, gap),
             {.id = "review accept",
              .text = stage.say(Word::review_accept),
              .look = Look::act,
              .symbol = Symbol::check,
              .enabled = group.standing != Standing::accepted})) {
    stage.keep(event::Accept{group.key, group.figures, {}});
    draft = {.page = draft.causes_page, .filter = draft.filter};
  }
  if (button(stage.canvas, box.column(1, 2, gap),
             {.id = "review send-back",
              .text = stage.say(Word::review_send_back),
              .symbol = Symbol::pencil})) {
    stage.open(TypeDraft{.use = TypeDraft::Use::sent_back,
                         .sent = event::SendBack{group.key, group.figures, {}},
                         .at = stage.tapped()});
  }
}

std::string counts_text(const Say& say, const PourView& view) {
  std::string counts = severity_words(say, view);
  std::array<std::size_t, 3> standing{};
  for (const GroupView& group : view.review) {
    ++standing.at(static_cast<std::size_t>(group.standing));
  }
  if (standing[1] + standing[2] > 0) {
    counts += " \u00B7 " + say(Word::review_counts, standing[0], standing[1], standing[2]);
  }
  return counts;
}

// How a finding is drawn: as the first of its cause, with a button to the rest and to where its
// limit is from, or among those of the cause, with that.
struct AsFirst {
  std::size_t more = 0;  ///< findings of the cause behind it
};

// True when what lies behind the first is asked for.
bool draw_finding(Stage& stage, const Box& box, float low, std::size_t number,
                  const Finding& finding, std::optional<AsFirst> first_of, const PourView& view,
                  const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const SeverityLook look = look_of(finding.severity);
  const Pair ground = canvas.theme().quiet;
  Box in = card(canvas, box);
  bool asked = false;
  if (first_of) {
    const Box side = in.cut_right(canvas.mm(26), canvas.gap());
    asked = button(canvas, side,
                   {.id = fmt::format("of cause {}", number),
                    .text = first_of->more > 0 ? say(Word::findings_more, first_of->more)
                                               : say(Word::findings_why),
                    .symbol = Symbol::more});
  }
  if (asks_decision(finding)) {
    const Box side = in.cut_right(canvas.mm(38), canvas.gap());
    draw_decide(stage, side, number, finding, plan);
  }
  draw_way_to_taps(stage, in, low, number, finding);
  Box first = in.cut_top(canvas.height(Face::strong));
  const Box sign = tag(canvas, first, look.symbol, say(look.word), look.look);
  first.x0 = sign.x1 + canvas.mm(2);
  const std::string when =
      stage.review == nullptr ? "" : finding_time(say, stage.review->state(), finding);
  const float wide = canvas.width(when, Face::small);
  if (canvas.width(rule_title(say, finding.rule), Face::strong) + wide < first.w()) {
    canvas.text(when, first.cut_right(wide, canvas.mm(2)),
                {.face = Face::small, .colours = ground, .across = Across::right});
  }
  canvas.text(rule_title(say, finding.rule), first, {.face = Face::strong, .colours = ground});
  // Names are a user's own and may be long; the figures stand near the front.
  TextStyle told{.face = Face::small,
                 .colours = ground,
                 .down = Down::top,
                 .lines = kSaysLines,
                 .free_text = true};
  const float line = canvas.height(Face::small);
  canvas.text(sentence(finding, plan, say.voice()), in.cut_top(kSaysLines * line), told);
  told.lines = kAdviceLines;
  told.free_text = false;
  const GroupView* group = first_of ? group_of(view, finding) : nullptr;
  if (group != nullptr && !standing_words(say, *group).empty()) {
    draw_standing(stage, in.cut_top(line, canvas.mm(0.4)), *group);
    told.lines = kAdviceLines - 1;
  }
  canvas.text(say(Word::what_to_do, advice_text(finding, say.voice())),
              in.cut_top(static_cast<float>(told.lines) * line), told);
  const std::string source = source_text(finding.source, say.voice());
  if (!first_of && !source.empty()) {
    told.colours.ink = canvas.theme().ink_soft;
    told.lines = kSourceLines;
    canvas.text(say(Word::finding_source, source), in.cut_top(kSourceLines * line), told);
  }
  return asked;
}

// What nobody looked at, and why: never to be taken for "nothing found".
void draw_gap(Stage& stage, const Box& box, const NotJudged& gap, const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Pair ground = canvas.theme().quiet;
  Box in = card(canvas, box);
  Box first = in.cut_top(canvas.height(Face::strong));
  tag(canvas, first, Symbol::note_sign, stage.say(Word::not_judged), Look::off);
  canvas.text(sentence(gap, plan, stage.say.voice()), in,
              {.face = Face::small,
               .colours = ground,
               .down = Down::top,
               .lines = kSaysLines + kAdviceLines,
               .free_text = true});
}

}  // namespace

void draw_findings(Stage& stage, const Box& box, FindingsDraft& draft, const PourView& view,
                   const std::vector<Finding>& findings, const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.mm(2);
  Box in = panel_with_title(stage, box, say(Word::findings));
  // The first of each cause, or all of one.
  std::vector<std::span<const Finding>> listed = by_cause(findings);
  const auto asked = std::find_if(listed.begin(), listed.end(), [&](const auto& same) {
    return same.front().group == draft.cause;
  });
  const bool one = !draft.cause.empty() && asked != listed.end();
  if (!one && draw_filter(stage, in, draft.filter, view)) return;
  if (!one && draft.filter.set.any() && stage.review != nullptr) {
    std::erase_if(listed, [&](const auto& same) {
      return std::none_of(same.begin(), same.end(), [&](const Finding& finding) {
        return stage.review->lets_through(draft.filter.set,
                                          static_cast<std::size_t>(&finding - findings.data()));
      });
    });
  }
  if (one) {
    const std::span<const Finding> same = *asked;
    listed.clear();
    for (std::size_t i = 0; i < same.size(); ++i) listed.push_back(same.subspan(i, 1));
    Box head = in.cut_top(canvas.scale().target(), gap);
    if (button(canvas, head.cut_left(canvas.mm(50), gap),
               {.id = "all findings", .text = say(Word::findings_all), .symbol = Symbol::back})) {
      draft = {.page = draft.causes_page, .filter = draft.filter};
    }
    canvas.text(
        say(same.size() == 1 ? Word::finding_of_cause : Word::findings_of_cause, same.size()), head,
        {.face = Face::strong, .colours = canvas.on_panel()});
    if (const GroupView* group = group_of(view, same.front())) {
      draw_review(stage, in.cut_bottom(canvas.scale().target(), canvas.gap()), *group, draft);
    }
  } else {
    const Box counts = in.cut_top(canvas.height(Face::small), canvas.mm(1));
    canvas.text(findings.empty() ? say(Word::findings_none) : counts_text(say, view), counts,
                {.face = Face::small, .colours = canvas.soft()});
  }
  const auto lines = static_cast<float>(kSaysLines + kAdviceLines + (one ? kSourceLines : 0));
  const float tall =
      canvas.height(Face::strong) + lines * canvas.height(Face::small) + canvas.mm(2.4);
  const std::vector<NotJudged> none;
  const auto& gaps = one || draft.filter.set.any() ? none : view.not_judged;
  const Pages pages =
      turn_pages(stage, in, listed.size() + gaps.size(), draft.page, "findings", tall, !one);
  if (!one) filter_button(stage, pages.beside, draft.filter, view);
  Box room = pages.room;
  for (std::size_t i = pages.first;
       i < pages.first + pages.lines && i < listed.size() + gaps.size(); ++i) {
    const Box line = room.cut_top(tall, gap);
    if (i >= listed.size()) {
      draw_gap(stage, line, gaps[i - listed.size()], plan);
      continue;
    }
    const Finding& first = listed[i].front();
    const auto first_of = one ? std::nullopt : std::optional{AsFirst{listed[i].size() - 1}};
    // What is shown of a cause tells of all its findings.
    stage.looked_at.insert(stage.looked_at.end(), listed[i].begin(), listed[i].end());
    if (draw_finding(stage, line, pages.room.y1, i, first, first_of, view, plan)) {
      draft = {.cause = first.group, .causes_page = draft.page, .filter = draft.filter};
    }
  }
  const std::string advice = say(Word::advice_defer);
  const float small = canvas.height(Face::small);
  const float needs = canvas.width(advice, Face::small) <= room.w() ? small : 2 * small;
  if (room.h() >= needs) {
    canvas.text(advice, room.cut_bottom(needs),
                {.face = Face::small, .colours = canvas.soft(), .down = Down::bottom, .lines = 2});
  }
}

}  // namespace rb::screens
