#include "screens/book/ui.h"

#include <imgui.h>

#include <map>
#include <stdexcept>

#include "screens/book/clock_question.h"
#include "screens/book/failure_screen.h"
#include "screens/book/pours_screen.h"
#include "screens/entry/find_panel.h"
#include "screens/entry/keyboard.h"
#include "screens/entry/scope.h"
#include "screens/glass/pictures.h"
#include "screens/live/dialogs.h"
#include "screens/live/pour_screen.h"
#include "screens/live/wipe.h"
#include "screens/paper/mirror_panel.h"
#include "screens/paper/record_panel.h"
#include "screens/plan/plan_screen.h"
#include "screens/review/review_memory.h"
#include "screens/view/alarm.h"

namespace rb::screens {

namespace {
constexpr int kMostFaults = 3;
}

struct Ui::Inside {
  Settings settings;
  Drafts drafts;
  Probe probe;
  TapReader taps;
  Pictures pictures;
  Notices notices;
  Wipe wipe;
  std::map<Moment, Seconds> unsure;  ///< moments of taps that may be off, by how much
  Alarm alarm;
  ReviewMemory review;
  std::optional<PourId> shown;
  std::optional<Scale> scale;
  Fonts fonts;
  int fonts_version = 0;
  ImGuiContext* context = nullptr;
  int faults = 0;
  std::string fault;
  Moment fault_at{};
  std::optional<Keeping::State> read;  ///< what stands in the way of keeping, and was put away

  void fit(int width, int height) {
    const Scale wanted(width, height, settings.diagonal_inches);
    if (scale == wanted) return;
    scale = wanted;
    fonts = build_fonts(*ImGui::GetIO().Fonts, *scale);
    ++fonts_version;
  }
  std::optional<Tap> touched(const Touch& touch, Moment now, UiOutput& out);
  void draw(const UiInput& input, const World& world, const std::optional<Tap>& tap, UiOutput& out);
  void tell_keeping(Stage& stage, const World& world);
  void draw_screen(Stage& stage, const World& world, Seconds steady, UiOutput& out);
};

namespace {

std::string trouble_text(const Say& say, const Trouble& trouble) {
  if (trouble.word == Word::note_short && trouble.number == 1) return say(Word::note_short_one);
  if (trouble.word != Word::count_) return say(trouble.word, trouble.number);
  return trouble.error ? words_of(*trouble.error, say.voice()) : trouble.text;
}

void draw_trouble(Stage& stage, const std::string& title, const std::string& words) {
  Canvas& canvas = stage.canvas;
  // At the very top, over the head of the screen: it never covers the rows.
  Box box{0, 0, static_cast<float>(canvas.scale().width_px()), canvas.mm(18)};
  if (canvas.target("trouble", box, words)) stage.intents.emplace_back(PutTroubleAway{});
  const Pair pair = canvas.theme().stop;
  canvas.fill(box, pair.ground);
  Box in = box.inset(canvas.mm(4), canvas.mm(1));
  // A tap anywhere on it puts it away: what lies under it is wanted again.
  const Box cross = in.cut_right(canvas.mm(9), canvas.mm(3));
  canvas.symbol(Symbol::cross, cross.inset(0, canvas.mm(3)), pair.ink);
  const Box sign = in.cut_left(canvas.mm(9), canvas.mm(3));
  canvas.symbol(Symbol::stop_sign, sign.inset(0, canvas.mm(3)), pair.ink);
  canvas.text(title, in.cut_top(canvas.height(Face::strong)),
              {.face = Face::strong, .colours = pair});
  canvas.text(
      words, in,
      {.face = Face::small, .colours = pair, .down = Down::top, .lines = 2, .free_text = true});
}

Seconds steady_of(const UiInput& input, const World& world) {
  return input.steady > Seconds{0} ? input.steady : Seconds{world.now.time_since_epoch()};
}

bool usable(const Probe& probe, const std::string& id) {
  return std::any_of(probe.targets.begin(), probe.targets.end(), [&](const SeenTarget& seen) {
    return seen.target.id == id && seen.target.enabled;
  });
}

std::vector<Target> targets_of(const Probe& probe) {
  std::vector<Target> all;
  all.reserve(probe.targets.size());
  for (const SeenTarget& target : probe.targets) all.push_back(target.target);
  return all;
}

// Letters want more height than width: from the foot up.
Box typing_box(const Scale& scale, Box all) {
  const float tall = keyboard_height(scale, all.w());
  return tall < all.h() ? all.cut_bottom(tall) : all;
}

void draw_over_pours(Stage& stage, const std::vector<PourCard>& pours, const World& world) {
  const PoursPart part =
      world.part.value_or(PoursPart{.total = pours.size(), .find = stage.drafts.pours_find});
  const Scale& scale = stage.canvas.scale();
  const Box all =
      Box{0, 0, static_cast<float>(scale.width_px()), static_cast<float>(scale.height_px())}.inset(
          stage.canvas.gap());
  if (std::holds_alternative<SettingsDraft>(stage.drafts.dialog)) {
    draw_settings(stage, all);
  } else if (auto* mirror = std::get_if<MirrorDraft>(&stage.drafts.dialog)) {
    draw_mirror(stage, mirror->typing ? typing_box(scale, all) : all, *mirror);
  } else if (auto* record = std::get_if<RecordDraft>(&stage.drafts.dialog)) {
    draw_record(stage, record->typing ? typing_box(scale, all) : all, *record);
  } else if (std::holds_alternative<QuitDraft>(stage.drafts.dialog)) {
    draw_quit(stage, all);
  } else if (auto* from = std::get_if<PlanFromDraft>(&stage.drafts.dialog)) {
    draw_plan_from(stage, all, *from, pours, part);
  } else if (std::holds_alternative<PlanPanel>(stage.drafts.dialog) && stage.drafts.plan) {
    draw_plan(stage, all, *stage.drafts.plan);
  } else if (auto* looked = std::get_if<FindDraft>(&stage.drafts.dialog)) {
    draw_find(stage, typing_box(stage.canvas.scale(), all), *looked);
  } else {
    draw_pours(stage, pours, part, world.opening);
  }
}

}  // namespace

// What stands in the way of keeping is told until it is put away, and anew when it is another.
void Ui::Inside::tell_keeping(Stage& stage, const World& world) {
  std::string told = keeping_told(stage.say, world.keeping, world.now);
  if (told.empty()) {
    read.reset();
    return;
  }
  if (read == world.keeping.state) return;
  if (world.keeping.trouble != BookTrouble::none) {
    told += " " + stage.say(failure_word(world.keeping.trouble)) + ".";
  } else if (!world.keeping.why.empty()) {
    told += " " + world.keeping.why;
  }
  const bool reading = world.keeping.state == Keeping::State::read_only;
  const std::size_t before = stage.intents.size();
  draw_trouble(stage, stage.say(reading ? Word::keep_reading : Word::keep_not_yet), told);
  if (stage.intents.size() == before) return;
  stage.intents.pop_back();
  read = world.keeping.state;
}

// A touch is judged against what the finger that made it saw.
std::optional<Tap> Ui::Inside::touched(const Touch& touch, Moment now, UiOutput& out) {
  if (wipe.on()) {
    out.press = wipe.feed(touch, *scale);
    return {};
  }
  std::optional<Tap> tap =
      taps.feed(touch, pictures.at(touch.steady), scale->px_per_mm(), &pictures.latest());
  out.press = taps.ended();
  if (out.press && notices.ended(*out.press, now) && settings.sound) out.tone = Severity::mend;
  // A moment given to a panel may be kept much later: it stays in doubt.
  if (tap && tap->uncertain > Seconds{0}) unsure[tap->wall] = tap->uncertain;
  return tap;
}

void Ui::Inside::draw_screen(Stage& stage, const World& world, Seconds steady, UiOutput& out) {
  Canvas& canvas = stage.canvas;
  if (world.state != nullptr && world.report != nullptr) {
    if (shown != world.state->pour) {  // another pour begins at its first element
      if (shown) drafts = Drafts{.plan = std::move(drafts.plan), .clock = drafts.clock};
      shown = world.state->pour;
    }
    PourView view = make_pour_view(*world.state, *world.report, drafts.element, world.now);
    mark_keeping(view, *world.state, world.keeping.here);
    drafts.element = view.element;
    if (std::holds_alternative<SignDraft>(drafts.dialog)) {
      view.sign = make_sign_view(*world.state, *world.report);
    }
    review.look(*world.state, *world.report);
    stage.review = &review;
    Attention found = alarm.attention(world.state->pour, world.report->findings,
                                      world.state->clock(world.now), review.accepted());
    view.attention = std::move(found.now);
    view.behind = std::move(found.behind);
    canvas.on_scope(scope_of(*shown, view.element));
    if (wipe.on()) {
      wipe.draw(stage, &view, steady);
    } else {
      draw_pour(stage, view, world.report->findings, *world.state->plan);
    }
    out.next_change = screens::next_change(view);
    for (const Finding& finding : stage.looked_at) {
      if (alarm.saw(finding)) out.next_change = Seconds{0};
    }
    const auto fresh = alarm.hear(world.state->pour, view.attention);
    if (settings.sound && fresh) out.tone = fresh;
  } else if (wipe.on()) {
    wipe.draw(stage, nullptr, steady);
  } else {
    canvas.on_scope(scope_of(drafts));
    static const std::vector<PourCard> none;
    draw_over_pours(stage, world.pours != nullptr ? *world.pours : none, world);
  }
  if (wipe.on()) out.next_change = std::min(out.next_change, Seconds{0.25});
}

void Ui::Inside::draw(const UiInput& input, const World& world, const std::optional<Tap>& tap,
                      UiOutput& out) {
  const Theme& colours = theme(settings.theme);
  const auto second = std::chrono::floor<std::chrono::seconds>(world.now.time_since_epoch());
  Canvas canvas(*ImGui::GetBackgroundDrawList(), fonts, colours, *scale, probe, tap, taps.pressed(),
                static_cast<int>(second.count() % 3600));
  canvas.on_drag(taps.drag());
  const bool planning = std::holds_alternative<PlanPanel>(drafts.dialog) && drafts.plan;
  const Units units = settings.units ? *settings.units
                      : world.state  ? world.state->plan->units
                      : planning     ? drafts.plan->draft.plan.units
                                     : Units::si;
  const Say say{settings.language, units, world.utc_offset};
  std::optional<Dialog> next;
  Stage stage{canvas,
              say,
              settings,
              drafts,
              out.intents,
              world.now,
              next,
              input.typed,
              world.sound_works,
              world.battery,
              world.keeping,
              world.mirror ? &*world.mirror : nullptr,
              world.head,
              world.damage,
              world.signing ? &*world.signing : nullptr,
              world.photos ? &*world.photos : nullptr};
  const Box all{0, 0, static_cast<float>(scale->width_px()),
                static_cast<float>(scale->height_px())};
  canvas.fill(all, colours.page);
  if (input.escape && !wipe.on()) stage.close();
  if (drafts.failure) {
    draw_failure(stage, *drafts.failure);
    return;
  }
  if (drafts.clock) {
    draw_clock_question(stage, *drafts.clock);
    return;
  }
  // A plan whose pour could not be opened is still there to be mended.
  if (drafts.plan_sent && world.state != nullptr) drafts.plan.reset();
  if (!world.opening) drafts.plan_sent = false;
  const Seconds steady = steady_of(input, world);
  draw_screen(stage, world, steady, out);
  if (world.leaving && world.keeping.waiting > 0) {
    draw_trouble(stage, say(Word::leaving), say(Word::leaving_waits, world.keeping.waiting));
  } else if (world.trouble) {
    const std::size_t before = out.intents.size();
    draw_trouble(stage, say(world.trouble->not_kept ? Word::not_kept : Word::trouble),
                 trouble_text(say, *world.trouble));
    if (out.intents.size() > before) fault.clear();
  } else {
    tell_keeping(stage, world);
  }
  if (world.keeping.waiting > 0) out.next_change = std::min(out.next_change, Seconds{1});
  const auto* strip = std::get_if<StripDraft>(&drafts.dialog);
  const bool choosing = strip != nullptr && strip->step == StripDraft::Step::photos;
  if (choosing || std::holds_alternative<MirrorDraft>(drafts.dialog)) {
    out.next_change = std::min(out.next_change, kLookForPlaces);
  }
  if (const auto ends = notices.draw(stage, world.trouble ? canvas.mm(18) : 0)) {
    out.next_change = std::min(out.next_change, *ends);
  }
  if (std::exchange(drafts.wipe, false)) {
    wipe.begin(steady);
    taps.forget();
    next = std::monostate{};
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
  // Both painters (app/window, app/picture) draw by OpenGL 3.3, which takes lists of more than
  // 65,536 corners; said here, for a frame may be built before its painter stands.
  io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
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

  UiOutput out;
  in.wipe.tick(steady_of(input, world));
  if (input.stall) in.notices.stood(*input.stall, world.now);
  std::optional<Tap> tap;
  if (input.touch) tap = in.touched(*input.touch, world.now, out);
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
    Drafts kept{.element = in.drafts.element,
                .plan = std::move(in.drafts.plan),
                .failure = std::move(in.drafts.failure),
                .clock = in.drafts.clock};
    in.drafts = std::move(kept);
    if (++in.faults >= kMostFaults) throw;
    ImGui::NewFrame();
  }
  ImGui::Render();
  // What was tapped could be used when it was drawn last, and cannot by now: also told.
  if (tap && out.press && !usable(in.probe, tap->id)) {
    out.press->end = PressEnd::gone;
    if (in.notices.ended(*out.press, world.now) && in.settings.sound) out.tone = Severity::mend;
  }
  in.pictures.drawn(targets_of(in.probe));
  for (Intent& intent : out.intents) {
    auto* keep = std::get_if<KeepEvent>(&intent);
    const auto off = keep != nullptr ? in.unsure.find(keep->at) : in.unsure.end();
    if (off != in.unsure.end()) keep->uncertain = off->second;
  }
  if (tap) out.next_change = Seconds{0};
  return out;
}

void Ui::shown(Seconds steady) {
  in_->pictures.shown(steady);
}
bool Ui::wiping() const {
  return in_->wipe.on();
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
