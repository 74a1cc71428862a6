#include "screens/review/axis_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace rb::screens {

namespace {

constexpr double kTopsMm = 7;
constexpr double kLabelMm = 24.5;

// As tall as its name is.
float lane_height(const Canvas& canvas) {
  return canvas.height(Face::small);
}

class AxisDrawing {
 public:
  AxisDrawing(Stage& stage, const Box& box, const AxisView& view)
      : stage_(stage), canvas_(stage.canvas), view_(view), box_(box) {}

  // The chart's lanes from the top down; the room each took.
  void draw(std::optional<Seconds> at) {
    Box in = box_;
    const float gap = canvas_.mm(0.5);
    tops(lane(in, Word::axis_tops, canvas_.mm(kTopsMm), gap));
    const float low = lane_height(canvas_);
    runs(lane(in, Word::axis_runs, low, gap));
    loads(lane(in, Word::axis_loads, low, gap));
    moves(lane(in, Word::axis_moves, low, gap));
    findings(lane(in, Word::axis_findings, low, gap));
    const float mark = x(at.value_or(view_.end));
    const Box line{mark - canvas_.mm(0.5), box_.y0, mark + canvas_.mm(0.5), box_.y1};
    canvas_.fill(line.inset(-canvas_.mm(0.4), 0), canvas_.theme().panel);
    canvas_.fill(line, canvas_.theme().ink);
  }

  [[nodiscard]] Seconds moment(float at) const {
    const Box chart = this->chart();
    const double share = std::clamp((at - chart.x0) / std::max(chart.w(), 1.0F), 0.0F, 1.0F);
    return view_.begin + (view_.end - view_.begin) * share;
  }
  [[nodiscard]] bool at_end(float at) const { return at >= chart().x1 - canvas_.mm(1); }

 private:
  [[nodiscard]] Box chart() const {
    Box chart = box_;
    chart.cut_left(canvas_.mm(kLabelMm), canvas_.mm(1));
    return chart;
  }
  [[nodiscard]] float x(Seconds at) const {
    const Box chart = this->chart();
    const double share = (at - view_.begin) / (view_.end - view_.begin);
    return chart.x0 + chart.w() * static_cast<float>(std::clamp(share, 0.0, 1.0));
  }

  Box lane(Box& in, Word name, float tall, float gap) {
    Box one = in.cut_top(tall, gap);
    canvas_.text(stage_.say(name), one.cut_left(canvas_.mm(kLabelMm), canvas_.mm(1)),
                 {.face = Face::small, .colours = canvas_.on_panel()});
    canvas_.fill(one, canvas_.theme().quiet.ground);
    return one;
  }

  void spans(const Box& lane, const std::vector<AxisSpan>& all, Colour colour, int lines) {
    const float tall = lane.h() / static_cast<float>(std::max(lines, 1));
    const float least = canvas_.mm(0.35);
    for (const AxisSpan& span : all) {
      const float from = x(span.from);
      const float to = std::max(x(span.to), from + least);
      const float low = lines > 1 ? lane.y1 - static_cast<float>(span.line) * tall : lane.y1;
      canvas_.fill({from, low - std::max(tall, least), to, low}, colour);
    }
  }

  void tops(const Box& lane) {
    const Theme& theme = canvas_.theme();
    for (const AxisLift& lift : view_.lifts) {
      const Box box{x(lift.from), lane.y0, x(lift.to), lane.y1};
      canvas_.fill(box, lift.lift % 2 == 0 ? theme.off.ground : theme.well.ground);
      const std::string number = std::to_string(lift.lift);
      if (box.w() > canvas_.width(number, Face::small) + canvas_.mm(1)) {
        canvas_.text(number, {box.x0 + canvas_.mm(0.5), box.y0, box.x1, box.y1},
                     {.face = Face::small,
                      .colours = lift.lift % 2 == 0 ? theme.off : theme.well,
                      .down = Down::top,
                      .free_text = true});
      }
    }
    const double height = std::max(in_metres(view_.height), 0.1);
    const auto point = [&](const trade::SurfacePoint& p) {
      const double up = std::clamp(in_metres(p.height) / height, 0.0, 1.0);
      return Point{x(p.at), lane.y1 - lane.h() * static_cast<float>(up)};
    };
    for (const auto& top : view_.tops) {
      for (std::size_t i = 1; i < top.size(); ++i) {
        canvas_.line(point(top[i - 1]), point(top[i]), theme.ink, canvas_.mm(0.3));
      }
    }
  }

  void runs(const Box& lane) { spans(lane, view_.runs, canvas_.theme().run.ground, view_.rows); }

  void loads(const Box& lane) {
    Box upper = lane;
    const Box lower = upper.cut_bottom(lane.h() / 2);
    spans(upper, view_.trucks, canvas_.theme().mark, 1);
    spans(lower, view_.tests, canvas_.theme().ink, 1);
  }

  void moves(const Box& lane) {
    Box upper = lane;
    const Box lower = upper.cut_bottom(lane.h() / 2);
    spans(upper, view_.moves, canvas_.theme().ink, 1);
    spans(lower, view_.holds, canvas_.theme().stop.ground, 1);
  }

  // The graver the taller, besides the colour.
  void findings(const Box& lane) {
    const Theme& theme = canvas_.theme();
    const std::array colours{theme.stop.ground, theme.mend.ground, theme.ink_soft};
    const std::array shares{1.0F, 0.66F, 0.33F};
    for (const AxisSpan& span : view_.findings) {
      const float from = x(span.from);
      const float to = std::max(x(span.to), from + canvas_.mm(0.5));
      canvas_.fill({from, lane.y1 - lane.h() * shares.at(span.line), to, lane.y1},
                   colours.at(span.line));
    }
  }

  Stage& stage_;
  Canvas& canvas_;
  const AxisView& view_;
  Box box_;
};

// The tap before a moment, or the one after it.
std::optional<Seconds> step(const AxisView& view, Seconds at, bool later) {
  const auto& events = view.events;
  if (later) {
    const auto next = std::upper_bound(events.begin(), events.end(), at);
    return next == events.end() ? std::nullopt : std::optional{*next};
  }
  const auto here = std::lower_bound(events.begin(), events.end(), at);
  return here == events.begin() ? std::optional{view.begin} : std::optional{*(here - 1)};
}

}  // namespace

float axis_height(const Canvas& canvas) {
  return canvas.height(Face::small) + canvas.mm(0.8) + canvas.mm(kTopsMm) +
         4 * lane_height(canvas) + 4 * canvas.mm(0.5);
}

void draw_axis(Stage& stage, const Box& box, const AxisView& view, std::optional<Seconds>& at,
               const std::string& told) {
  Canvas& canvas = stage.canvas;
  Box in = box;
  const float target = canvas.scale().target();
  const Box earlier = in.cut_left(target, canvas.gap());
  const Box later = in.cut_right(target, canvas.gap());
  const Box said_box = Box{in}.cut_top(canvas.height(Face::small));
  Box chart = in;
  chart.cut_top(canvas.height(Face::small), canvas.mm(0.8));
  AxisDrawing axis{stage, chart, view};
  const bool any = !view.events.empty();
  const std::optional<Point> finger = canvas.dragged("axis");
  const bool tapped = canvas.drag_target("axis", in, told, any);
  if (any && (finger || tapped)) {
    const float where = finger ? finger->x : canvas.tap()->to.x;
    at = axis.at_end(where) ? std::nullopt : std::optional{axis.moment(where)};
  }
  const Seconds now = at.value_or(view.end);
  if (button(canvas, earlier,
             {.id = "axis earlier", .symbol = Symbol::back, .enabled = any && now > view.begin})) {
    at = step(view, now, false);
  }
  if (button(canvas, later,
             {.id = "axis later", .symbol = Symbol::forward, .enabled = any && at.has_value()})) {
    at = step(view, now, true);
  }
  canvas.text(told, said_box,
              {.face = Face::small, .colours = canvas.on_panel(), .free_text = true});
  if (any) axis.draw(at);
}

}  // namespace rb::screens
