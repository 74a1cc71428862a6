// How long frames take to build while a finger goes along the time axis of a pour of 5,000 events;
// drawing them is apart. Every map in turn, to and fro, slowly and in leaps.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "bench/bench.h"
#include "bench/pours.h"
#include "check/check.h"
#include "pour/log/fold.h"
#include "pour/outlook/form.h"
#include "screens/book/ui.h"
#include "trade/dose/dose.h"

using namespace rb;
using namespace rb::screens;

namespace {

constexpr double kP99Ms = 8;
constexpr double kLongestMs = 16;
constexpr int kSlow = 600;  // moves along the axis, each way
constexpr int kLeaps = 200;

class Dragging {
 public:
  Dragging() {
    const auto folded = fold(bench::long_pour(5000));
    if (!folded) throw bench::Trouble(to_text(folded.error()));
    state_ = *folded;
    now_ = state_.moment(state_.last);
    report_ = check(state_, AsOf::now(state_, now_));
  }

  void go() {
    for (const FaceKind kind : {FaceKind::dose, FaceKind::cover, FaceKind::head, FaceKind::load}) {
      // Beside the map a spot's story, then the table of marks, then a finding with its taps.
      ReviewDraft draft{.kind = kind};
      if (kind == FaceKind::dose) draft.spot = Spot{metres(20), metres(3)};
      if (kind == FaceKind::load) draft.cause = report_.findings.at(0).group;
      ui_.drafts().dialog = draft;
      frame({});
      frame({});  // opened: what a pour's map is made of stands
      const Box axis = axis_box();
      const auto at = [&](double share) {
        return Point{axis.x0 + axis.w() * static_cast<float>(share), axis.middle().y};
      };
      move(Touch::Kind::down, at(0.99));
      for (int i = 0; i < 2 * kSlow; ++i) {
        const double along = static_cast<double>(i % kSlow) / kSlow;
        keep(kind,
             move(Touch::Kind::move, at(i < kSlow ? 0.98 - 0.96 * along : 0.02 + 0.96 * along)));
      }
      for (int i = 0; i < kLeaps; ++i) {
        keep(kind, move(Touch::Kind::move, at(0.02 + 0.96 * ((i * 61) % kLeaps) / kLeaps)));
      }
      move(Touch::Kind::up, at(0.5));
    }
    std::sort(built_.begin(), built_.end());
  }

  [[nodiscard]] double p99() const { return built_[built_.size() * 99 / 100]; }
  [[nodiscard]] double longest() const { return built_.back(); }
  [[nodiscard]] double median() const { return built_[built_.size() / 2]; }
  void tell() const {
    fmt::print(
        "dragging through {} events: {} frames, median {:.2f} ms, p99 {:.2f} ms, longest {:.2f} ms "
        "to build (dose {:.2f}, cover {:.2f}, head {:.2f}, load {:.2f})\n",
        state_.log.size(), built_.size(), median(), p99(), longest(), most_[0], most_[1], most_[2],
        most_[3]);
  }
  // The whole dose field of the face anew, as a frame would do that remembers nothing.
  [[nodiscard]] double whole_field() const {
    return 1e3 * bench::best_of(
                     5, [&] { (void)trade::dose_field(face_of(state_, 0, {Side::near_side})); });
  }

 private:
  double frame(std::optional<Touch> touch) {
    const World world{.now = now_, .state = &state_, .report = &report_};
    const double from = bench::cpu_seconds();
    (void)ui_.frame({.width_px = 1280, .height_px = 800, .touch = touch}, world);
    return (bench::cpu_seconds() - from) * 1e3;
  }
  double move(Touch::Kind kind, Point at) {
    steady_ += Seconds{0.016};
    return frame(Touch{kind, at, now_, steady_});
  }
  void keep(FaceKind kind, double ms) {
    built_.push_back(ms);
    double& most = most_.at(static_cast<std::size_t>(kind));
    most = std::max(most, ms);
    const auto* draft = std::get_if<ReviewDraft>(&ui_.drafts().dialog);
    if (draft == nullptr || !draft->at) throw bench::Trouble("the finger does not move the moment");
  }
  [[nodiscard]] Box axis_box() const {
    const auto& targets = ui_.probe().targets;
    const auto found = std::find_if(targets.begin(), targets.end(),
                                    [](const SeenTarget& t) { return t.target.id == "axis"; });
    if (found == targets.end()) throw bench::Trouble("there is no axis on the screen");
    // Between the steps and the names of its lanes.
    const Box& box = found->target.box;
    return {box.x0 + box.w() * 0.25F, box.y0, box.x1 - 4, box.y1};
  }

  PourState state_;
  CheckReport report_;
  Moment now_{};
  Seconds steady_{1e6};
  Ui ui_;
  std::vector<double> built_;
  std::array<double, 4> most_{};
};

const Dragging& dragged() {
  static const Dragging* done = [] {
    static Dragging dragging;
    dragging.go();
    dragging.tell();
    return &dragging;
  }();
  return *done;
}

const bench::Bench p99{"drag-frame-p99-of-8-ms", 1, [] { return dragged().p99() / kP99Ms; }};
const bench::Bench longest{"drag-frame-longest-of-16-ms", 1,
                           [] { return dragged().longest() / kLongestMs; }};
// What a frame costs beside one whole dose field, on this machine.
const bench::Bench share{"drag-frame-median-to-whole-field", 0.25, [] {
                           const double whole = dragged().whole_field();
                           fmt::print("whole dose field {:.2f} ms\n", whole);
                           return dragged().median() / whole;
                         }};

}  // namespace
