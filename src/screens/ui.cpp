#include "screens/ui.h"

#include <imgui.h>

#include <stdexcept>

#include "screens/alarm.h"
#include "screens/dialogs.h"
#include "screens/plan_screen.h"
#include "screens/pour_screen.h"
#include "screens/pours_screen.h"

namespace rb::screens {

namespace {
constexpr int kMostFaults = 3;
}

struct Ui::Inside {
  Settings settings;
  Drafts drafts;
  Probe probe;
  TapReader taps;
  Alarm alarm;
  std::optional<PourId> shown;
  std::optional<Scale> scale;
  Fonts fonts;
  int fonts_version = 0;
  ImGuiContext* context = nullptr;
  int faults = 0;
  std::string fault;
  Moment fault_at{};

  void fit(int width, int height) {
    const Scale wanted(width, height, settings.diagonal_inches);
    if (scale == wanted) return;
    scale = wanted;
    fonts = build_fonts(*ImGui::GetIO().Fonts, *scale);
    ++fonts_version;
  }
  void draw(const UiInput& input, const World& world, const std::optional<Tap>& tap, UiOutput& out);
};

namespace {

void draw_trouble(Stage& stage, const Trouble& trouble) {
  Canvas& canvas = stage.canvas;
  // At the very top, over the head of the screen: it never covers the rows.
  Box box{0, 0, static_cast<float>(canvas.scale().width_px()), canvas.mm(18)};
  if (canvas.target("trouble", box, trouble.text)) stage.intents.emplace_back(PutTroubleAway{});
  const Pair pair = canvas.theme().stop;
  canvas.fill(box, pair.ground);
  Box in = box.inset(canvas.mm(4), canvas.mm(1));
  // A tap anywhere on it puts it away: what lies under it is wanted again.
  const Box cross = in.cut_right(canvas.mm(9), canvas.mm(3));
  canvas.symbol(Symbol::cross, cross.inset(0, canvas.mm(3)), pair.ink);
  const Box sign = in.cut_left(canvas.mm(9), canvas.mm(3));
  canvas.symbol(Symbol::stop_sign, sign.inset(0, canvas.mm(3)), pair.ink);
  const Word head = trouble.not_kept ? Word::not_kept : Word::trouble;
  canvas.text(stage.say(head), in.cut_top(canvas.height(Face::strong)),
              {.face = Face::strong, .colours = pair});
  canvas.text(
      trouble.text, in,
      {.face = Face::small, .colours = pair, .down = Down::top, .lines = 2, .free_text = true});
}

void draw_over_pours(Stage& stage, const std::vector<PourCard>& pours) {
  const Scale& scale = stage.canvas.scale();
  const Box all =
      Box{0, 0, static_cast<float>(scale.width_px()), static_cast<float>(scale.height_px())}.inset(
          stage.canvas.gap());
  if (std::holds_alternative<SettingsDraft>(stage.drafts.dialog)) {
    draw_settings(stage, all);
  } else if (std::holds_alternative<QuitDraft>(stage.drafts.dialog)) {
    draw_quit(stage, all);
  } else if (auto* from = std::get_if<PlanFromDraft>(&stage.drafts.dialog)) {
    draw_plan_from(stage, all, *from, pours);
  } else if (std::holds_alternative<PlanPanel>(stage.drafts.dialog) && stage.drafts.plan) {
    draw_plan(stage, all, *stage.drafts.plan);
  } else {
    draw_pours(stage, pours);
  }
}

}  // namespace

void Ui::Inside::draw(const UiInput& input, const World& world, const std::optional<Tap>& tap,
                      UiOutput& out) {
  const Theme& colours = theme(settings.theme);
  const auto second = std::chrono::floor<std::chrono::seconds>(world.now.time_since_epoch());
  Canvas canvas(*ImGui::GetBackgroundDrawList(), fonts, colours, *scale, probe, tap, taps.pressed(),
                static_cast<int>(second.count() % 3600));
  const bool planning = std::holds_alternative<PlanPanel>(drafts.dialog) && drafts.plan;
  const Units units = settings.units ? *settings.units
                      : world.state  ? world.state->plan->units
                      : planning     ? drafts.plan->draft.plan.units
                                     : Units::si;
  const Say say{settings.language, units, world.utc_offset};
  std::optional<Dialog> next;
  Stage stage{canvas, say,         settings,          drafts,       out.intents, world.now,
              next,   input.typed, world.sound_works, world.battery};
  const Box all{0, 0, static_cast<float>(scale->width_px()),
                static_cast<float>(scale->height_px())};
  canvas.fill(all, colours.page);
  if (input.escape) stage.close();
  // A plan whose pour could not be opened is still there to be mended.
  if (drafts.plan_sent && world.state != nullptr) drafts.plan.reset();
  drafts.plan_sent = false;
  if (world.state != nullptr && world.report != nullptr) {
    if (shown != world.state->pour) {  // another pour begins at its first element
      if (shown) drafts = Drafts{.plan = std::move(drafts.plan)};
      shown = world.state->pour;
    }
    PourView view = make_pour_view(*world.state, *world.report, drafts.element, world.now);
    view.attention =
        alarm.attention(world.state->pour, world.report->findings, world.state->clock(world.now));
    drafts.element = view.element;
    draw_pour(stage, view, world.report->findings, *world.state->plan);
    out.next_change = screens::next_change(view);
    const auto fresh = alarm.hear(world.state->pour, view.attention);
    if (settings.sound) out.tone = fresh;
  } else {
    static const std::vector<PourCard> none;
    draw_over_pours(stage, world.pours != nullptr ? *world.pours : none);
  }
  if (world.trouble) {
    const std::size_t before = out.intents.size();
    draw_trouble(stage, *world.trouble);
    if (out.intents.size() > before) fault.clear();
  }
  if (next) {
    drafts.dialog = std::move(*next);
    out.next_change = Seconds{0};
  }
}

Ui::Ui(Settings settings) : in_(std::make_unique<Inside>()) {
  in_->settings = settings;
  in_->context = ImGui::CreateContext();
  ImGui::SetCurrentContext(in_->context);
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
}

Ui::~Ui() {
  ImGui::DestroyContext(in_->context);
}

UiOutput Ui::frame(const UiInput& input, const World& world) {
  Inside& in = *in_;
  ImGui::SetCurrentContext(in.context);
  in.fit(input.width_px, input.height_px);
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = {static_cast<float>(input.width_px), static_cast<float>(input.height_px)};
  io.DeltaTime = static_cast<float>(std::max(input.passed.count(), 1e-4));

  // A touch is judged against what the user saw: the targets of the frame before.
  std::optional<Tap> tap;
  if (input.touch) {
    std::vector<Target> seen;
    seen.reserve(in.probe.targets.size());
    for (const SeenTarget& target : in.probe.targets) seen.push_back(target.target);
    tap = in.taps.feed(*input.touch, seen, in.scale->px_per_mm());
  }
  UiOutput out;
  in.probe.clear();
  ImGui::NewFrame();
  // The one catch of the screens: the frame is closed, the fault told, the next frame tries again.
  try {
    World shown = world;
    if (!in.fault.empty() && !shown.trouble) shown.trouble = Trouble{in.fault, false};
    in.draw(input, shown, tap, out);
    in.faults = 0;
    if (between(in.fault_at, world.now) > seconds(20)) in.fault.clear();
  } catch (const std::exception& fault) {
    ImGui::EndFrame();
    out.intents.clear();
    in.fault = fault.what();
    in.fault_at = world.now;
    // Where the user was goes; what he was making stays.
    Drafts kept{.element = in.drafts.element, .plan = std::move(in.drafts.plan)};
    in.drafts = std::move(kept);
    if (++in.faults >= kMostFaults) throw;
    ImGui::NewFrame();
  }
  ImGui::Render();
  if (tap) out.next_change = Seconds{0};
  return out;
}

int Ui::fonts_version() const {
  return in_->fonts_version;
}
const Settings& Ui::settings() const {
  return in_->settings;
}
void Ui::set(const Settings& settings) {
  in_->settings = settings;
}
Drafts& Ui::drafts() {
  return in_->drafts;
}
const Probe& Ui::probe() const {
  return in_->probe;
}
int Ui::refused_taps() const {
  return in_->taps.refused();
}

}  // namespace rb::screens
