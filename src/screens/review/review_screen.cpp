#include "screens/review/review_screen.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "screens/entry/filter_panel.h"
#include "screens/entry/paging.h"
#include "screens/review/axis_drawing.h"
#include "screens/review/face_drawing.h"
#include "screens/review/marks_panel.h"
#include "screens/review/review_memory.h"
#include "screens/review/spot_panel.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

constexpr float kBeside = 1.4F;
constexpr float kPanelShare = 0.38F;

struct ReviewLayout {
  std::array<Box, 6> tiles;  ///< the way back, four maps, the side
  Box face, keys, axis, panel;
};

ReviewLayout lay_out(const Canvas& canvas, Box in) {
  ReviewLayout out;
  const float target = canvas.scale().target();
  const float gap = canvas.gap();
  const int tiles = static_cast<int>(out.tiles.size());
  const float column = static_cast<float>(tiles) * (target + gap) - gap;
  if (in.h() >= column) {
    Box side = in.cut_left(canvas.mm(25), gap);
    side.y1 = side.y0 + std::min(side.h(), column * 1.25F);
    for (int i = 0; i < tiles; ++i)
      out.tiles.at(static_cast<std::size_t>(i)) = side.line(i, tiles, gap);
  } else {
    const Box top = in.cut_top(target, gap);
    for (int i = 0; i < tiles; ++i) {
      out.tiles.at(static_cast<std::size_t>(i)) = top.column(i, tiles, gap);
    }
  }
  // Where there is the width for it the panel stands beside the face, as tall as all the rest.
  const bool beside = in.w() > kBeside * in.h();
  if (beside) out.panel = in.cut_right(std::round(in.w() * kPanelShare), gap);
  const float keys = face_keys_height(canvas);
  const float axis = std::max(axis_height(canvas), target);
  const float rest = in.h() - keys - axis - canvas.mm(1) - (beside ? gap : 2 * gap);
  const float face = beside ? rest : std::max(target, std::min(rest - target, rest * 0.56F));
  out.face = in.cut_top(std::floor(face), canvas.mm(1));
  out.keys = in.cut_top(keys, gap);
  out.axis = in.cut_top(axis, gap);
  if (!beside) out.panel = in;
  return out;
}

// When a finding came about; none: it tells no time.
std::optional<Seconds> moment_of(const PourState& state, const Finding& finding) {
  const auto at = finding.to ? finding.to : finding.from;
  if (!at || *at >= state.last) return std::nullopt;
  return std::max(*at, Seconds{0});
}

class Screen {
 public:
  Screen(Stage& stage, ReviewDraft& draft, const PourView& view)
      : stage_(stage), canvas_(stage.canvas), draft_(draft), view_(view), memory_(*stage.review) {}

  void draw(const Box& box) {
    const Box in = box.inset(canvas_.mm(2.2));
    if (draw_filter(stage_, in, draft_.filter, view_)) return;
    const ReviewLayout layout = lay_out(canvas_, in);
    tiles(layout);
    // A copy of each: what a tap opens may ask for others.
    std::vector<FaceMark> marks = memory_.marks(view_.element, draft_.side);
    const TapFilter& filter = draft_.filter.set;
    if (filter.any()) {
      std::erase_if(marks, [&](const FaceMark& mark) {
        return mark.blemish || !memory_.lets_through(filter, mark.finding);
      });
    }
    axis(layout.axis);
    face(layout, marks);
    panel(layout.panel, marks);
  }

 private:
  [[nodiscard]] const PourState& state() const { return memory_.state(); }
  // What is told of the time to come (a discharge that will end) has not happened yet.
  [[nodiscard]] Seconds shown_at() const {
    const Seconds now =
        view_.closed ? state().last : std::min(state().last, state().clock(view_.now));
    return std::min(draft_.at.value_or(now), std::max(now, Seconds{0}));
  }

  void tiles(const ReviewLayout& layout) {
    const Say& say = stage_.say;
    if (button(canvas_, layout.tiles.front(),
               {.id = "back", .text = say(Word::back), .symbol = Symbol::back})) {
      back();
    }
    struct Kind {
      FaceKind kind;
      const char* id;
      Word word;
    };
    constexpr std::array<Kind, 4> kKinds{{{FaceKind::dose, "map dose", Word::face_dose},
                                          {FaceKind::cover, "map cover", Word::face_cover},
                                          {FaceKind::head, "map head", Word::face_head},
                                          {FaceKind::load, "map load", Word::face_load}}};
    for (std::size_t i = 0; i < kKinds.size(); ++i) {
      const Kind& kind = kKinds.at(i);
      if (button(canvas_, layout.tiles.at(i + 1),
                 {.id = kind.id,
                  .text = say(kind.word),
                  .look = draft_.kind == kind.kind ? Look::act : Look::quiet})) {
        draft_.kind = kind.kind;
      }
    }
    const bool near = draft_.side == Side::near_side;
    if (button(canvas_, layout.tiles.back(),
               {.id = "side", .text = say(near ? Word::face_near : Word::face_far)})) {
      draft_.side = near ? Side::far_side : Side::near_side;
      draft_.spot.reset();
    }
  }

  // One level up: from a story or a finding to the table or to where it was opened from.
  void back() {
    if (draft_.from) {
      stage_.open(*draft_.from);
    } else if (draft_.spot || !draft_.cause.empty()) {
      draft_.spot.reset();
      draft_.cause.clear();
      draft_.page = draft_.marks_page;
    } else {
      stage_.close();
    }
  }

  void axis(const Box& box) {
    const AxisView& axis = memory_.axis(view_.element);
    draw_axis(stage_, box, axis, draft_.at, told(shown_at()));
  }

  [[nodiscard]] std::string told(Seconds at) const {
    const Say& say = stage_.say;
    const MomentSeen seen = make_moment_seen(state(), view_.element, at);
    std::string words = say.clock(state().moment(at));
    const auto add = [&](const std::string& part) { words += " \u00B7 " + part; };
    if (!draft_.at) add(say(Word::axis_end));
    if (seen.held) add(say(Word::hold));
    if (seen.lift) add(say(Word::place_lift, *seen.lift));
    std::string rows;
    for (const RowPlace& row : seen.running) {
      rows += (rows.empty() ? "" : ", ") + row_name(say, row, view_.naming.two_sides);
    }
    if (!rows.empty()) add(say(Word::axis_running, rows));
    if (seen.last) add(event_words(say, view_.taps.of(*seen.last).what, view_.naming));
    return words;
  }

  void face(const ReviewLayout& layout, const std::vector<FaceMark>& marks) {
    const Seconds at = shown_at();
    const FaceMap& face = memory_.face(draft_.kind, view_.element, draft_.side, at);
    FaceFocus focus{.spot = draft_.spot};
    if (const auto found = finding_of(memory_.report(), draft_)) {
      focus.place = memory_.place(*found);
    }
    const FaceTouch touch = draw_face(stage_, layout.face, face, marks, focus);
    if (touch.mark) open(marks[*touch.mark]);
    if (touch.spot) {
      leave_table();
      draft_.spot = *touch.spot;
      draft_.cause.clear();
    }
    if (draft_.kind == FaceKind::dose && face.rows.empty()) {
      canvas_.text(stage_.say(Word::face_unjudged), layout.keys,
                   {.face = Face::small, .colours = canvas_.on_panel(), .lines = 2});
      return;
    }
    draw_face_keys(stage_, layout.keys, draft_.kind,
                   face_keys(draft_.kind, state(), view_.element));
  }

  void leave_table() {
    if (!draft_.spot && draft_.cause.empty()) draft_.marks_page = draft_.page;
    draft_.page = 0;
    draft_.from.reset();
  }

  void open(const FaceMark& mark) {
    leave_table();
    draft_.spot.reset();
    draft_.cause.clear();
    if (mark.blemish) {
      draft_.spot = Spot{mark.box->x + mark.box->w / 2.0, mark.box->z + mark.box->h / 2.0};
      return;
    }
    const ReviewDraft of = review_of_finding(state(), memory_.report(), mark.finding);
    draft_.cause = of.cause;
    draft_.of = of.of;
    draft_.at = of.at;
  }

  void panel(const Box& box, const std::vector<FaceMark>& marks) {
    const auto found = finding_of(memory_.report(), draft_);
    if (draft_.spot) {
      draw_spot(stage_, box, memory_.spot(view_.element, draft_.side, *draft_.spot), view_.naming,
                draft_.page);
    } else if (found) {
      draw_behind(stage_, box, *found, view_, draft_);
    } else {
      table(box, marks);
    }
  }

  void table(const Box& box, const std::vector<FaceMark>& marks) {
    Box room = box;
    const bool wanted = marks.size() > 1 || draft_.filter.set.any();
    const float target = canvas_.scale().target();
    if (wanted && room.h() > 3 * target) {
      filter_button(stage_, room.cut_bottom(target, canvas_.gap()), draft_.filter, view_);
    }
    if (const auto tapped = draw_marks(stage_, room, marks, view_, draft_)) open(marks[*tapped]);
  }

  Stage& stage_;
  Canvas& canvas_;
  ReviewDraft& draft_;
  const PourView& view_;
  ReviewMemory& memory_;
};

}  // namespace

ReviewDraft review_of_finding(const PourState& state, const CheckReport& report,
                              std::size_t finding) {
  const Finding& told = report.findings[finding];
  ReviewDraft draft{.side = told.side.value_or(Side::near_side), .cause = told.group};
  draft.at = moment_of(state, told);
  for (std::size_t i = 0; i < finding; ++i) {
    if (report.findings[i].group == told.group) ++draft.of;
  }
  return draft;
}

void draw_review_screen(Stage& stage, const Box& box, ReviewDraft& draft, const PourView& view) {
  panel(stage.canvas, box);
  stage.canvas.edge(box, stage.canvas.theme().act.ground, stage.canvas.mm(0.6),
                    stage.canvas.mm(1.6));
  if (stage.review == nullptr || view.elements.empty()) {
    back_button(stage, box.inset(stage.canvas.mm(2.2))
                           .column(0, 3, stage.canvas.gap())
                           .line(0, 3, stage.canvas.gap()));
    return;
  }
  Screen{stage, draft, view}.draw(box);
}

}  // namespace rb::screens
