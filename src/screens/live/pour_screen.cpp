#include "screens/live/pour_screen.h"

#include "screens/correct/correct_dialog.h"
#include "screens/entry/insert_panel.h"
#include "screens/entry/keyboard.h"
#include "screens/entry/number_pad.h"
#include "screens/entry/power_panel.h"
#include "screens/entry/ready_panel.h"
#include "screens/entry/scope.h"
#include "screens/live/after_panel.h"
#include "screens/live/banner.h"
#include "screens/live/bay_start.h"
#include "screens/live/dialogs.h"
#include "screens/live/elevation.h"
#include "screens/live/findings_panel.h"
#include "screens/live/gate_dialog.h"
#include "screens/live/lift_panel.h"
#include "screens/live/motor_out.h"
#include "screens/live/next_panel.h"
#include "screens/live/pour_layout.h"
#include "screens/live/pressure_panel.h"
#include "screens/live/ran_earlier.h"
#include "screens/live/rows_panel.h"
#include "screens/live/taps_panel.h"
#include "screens/live/type_dialog.h"
#include "screens/load/specimen_panel.h"
#include "screens/load/truck_panel.h"
#include "screens/paper/amend_panel.h"
#include "screens/paper/mirror_panel.h"
#include "screens/paper/record_panel.h"
#include "screens/paper/sign_panel.h"
#include "screens/review/review_screen.h"
#include "screens/strip/strip_panel.h"

namespace rb::screens {

namespace {

// Of a closed pour no row is run: looking back takes their room, too.
Box review_box(const PourLayout& layout, const PourView& view) {
  if (!view.closed) return layout.tall;
  return {std::min(layout.tall.x0, layout.rows.x0), layout.tall.y0,
          std::max(layout.tall.x1, layout.rows.x1), std::max(layout.tall.y1, layout.rows.y1)};
}

// Draws whichever panel is open over the work area; false when none is.
class DrawDialog {
 public:
  DrawDialog(Stage& stage, const PourLayout& layout, const PourView& view,
             const std::vector<Finding>& findings, const Plan& plan)
      : stage_(stage), layout_(layout), view_(view), findings_(findings), plan_(plan) {}

  bool operator()(std::monostate&) const { return false; }
  bool operator()(PadDraft& d) const { return draw_pad(stage_, box(), d, view_), true; }
  bool operator()(CorrectDraft& d) const {
    return draw_correct(stage_, layout_.tall, d, view_, plan_), true;
  }
  bool operator()(TypeDraft& d) const { return draw_typing(stage_, layout_.typing, d), true; }
  bool operator()(NoteDraft& d) const { return draw_note(stage_, box(), d, view_), true; }
  bool operator()(HoldDraft& d) const { return draw_hold(stage_, box(), d), true; }
  bool operator()(RowDraft& d) const { return draw_row(stage_, layout_.tall, d, view_), true; }
  bool operator()(GateDraft& d) const {
    return draw_gate(stage_, layout_.tall, d, view_, plan_), true;
  }
  bool operator()(ResumeDraft& d) const { return draw_resume(stage_, box(), d, plan_), true; }
  bool operator()(TapsDraft& d) const { return draw_all_taps(stage_, box(), d, view_), true; }
  bool operator()(FindingsDraft& d) const {
    return draw_findings(stage_, box(), d, view_, findings_, plan_), true;
  }
  bool operator()(MoreDraft&) const { return draw_more(stage_, layout_.tall, view_, plan_), true; }
  bool operator()(SettingsDraft&) const { return draw_settings(stage_, layout_.tall), true; }
  bool operator()(MirrorDraft& d) const {
    return draw_mirror(stage_, d.typing ? layout_.typing : layout_.tall, d), true;
  }
  bool operator()(CloseDraft&) const { return draw_close(stage_, box(), view_), true; }
  bool operator()(QuitDraft&) const { return draw_quit(stage_, box()), true; }
  bool operator()(PlanFromDraft&) const { return false; }  // over the list of pours only
  bool operator()(PlanPanel&) const { return false; }
  bool operator()(FindDraft&) const { return false; }
  bool operator()(ReadyDraft& d) const {
    return draw_ready(stage_, d.noting ? layout_.typing : layout_.tall, d, view_), true;
  }
  bool operator()(ElementsDraft& d) const { return draw_elements(stage_, box(), d, view_), true; }
  bool operator()(TrucksDraft& d) const {
    return draw_trucks(stage_, box(), d, view_, plan_), true;
  }
  bool operator()(TruckDraft& d) const { return draw_truck(stage_, box(), d, view_, plan_), true; }
  bool operator()(LoadDraft& d) const { return draw_load(stage_, box(), d, view_), true; }
  bool operator()(TestDraft& d) const { return draw_test(stage_, box(), d, view_), true; }
  bool operator()(SpecimensDraft& d) const { return draw_specimens(stage_, box(), d, view_), true; }
  bool operator()(SpecimenDraft& d) const { return draw_specimen(stage_, box(), d), true; }
  bool operator()(AirDraft& d) const { return draw_air(stage_, box(), d), true; }
  bool operator()(InvertersDraft& d) const { return draw_inverters(stage_, box(), d, view_), true; }
  bool operator()(AfterDraft& d) const { return draw_after(stage_, box(), d, view_), true; }
  bool operator()(StripDraft& d) const {
    return draw_strip(stage_, d.typing ? layout_.typing : layout_.tall, d, view_), true;
  }
  bool operator()(PressureDraft&) const { return draw_pressure(stage_, box(), view_), true; }
  bool operator()(SpeedDraft& d) const { return draw_speed(stage_, box(), d, view_, plan_), true; }
  bool operator()(InsertDraft& d) const { return draw_insert(stage_, box(), d, view_), true; }
  bool operator()(NextDraft& d) const { return draw_next(stage_, box(), d, view_), true; }
  bool operator()(BayStartDraft& d) const { return draw_bay_starts(stage_, box(), d, view_), true; }
  bool operator()(MotorOutDraft& d) const {
    return draw_motor_out(stage_, layout_.tall, d, view_), true;
  }
  bool operator()(RanEarlierDraft& d) const {
    return draw_ran_earlier(stage_, layout_.tall, d, view_), true;
  }
  bool operator()(RecordDraft& d) const {
    return draw_record(stage_, d.typing ? layout_.typing : layout_.tall, d), true;
  }
  bool operator()(SignDraft& d) const {
    if (view_.sign) draw_sign(stage_, d.typing ? layout_.typing : box(), d, *view_.sign);
    return true;
  }
  bool operator()(ReviewDraft& d) const {
    return draw_review_screen(stage_, review_box(layout_, view_), d, view_), true;
  }
  bool operator()(AmendDraft& d) const {
    return draw_amend(stage_, types_letters(d) ? layout_.typing : box(), d, view_, plan_), true;
  }
  bool operator()(HolderDraft& d) const { return draw_holder(stage_, box(), d, plan_), true; }

 private:
  [[nodiscard]] const Box& box() const { return layout_.work; }
  Stage& stage_;
  const PourLayout& layout_;
  const PourView& view_;
  const std::vector<Finding>& findings_;
  const Plan& plan_;
};

// The room a panel takes.
const Box& box_of(const Dialog& dialog, const PourLayout& layout) {
  if (std::holds_alternative<TypeDraft>(dialog)) return layout.typing;
  if (const auto* ready = std::get_if<ReadyDraft>(&dialog)) {
    return ready->noting ? layout.typing : layout.tall;
  }
  const auto* mirror = std::get_if<MirrorDraft>(&dialog);
  const auto* record = std::get_if<RecordDraft>(&dialog);
  if ((mirror != nullptr && mirror->typing) || (record != nullptr && record->typing)) {
    return layout.typing;
  }
  const auto* sign = std::get_if<SignDraft>(&dialog);
  if (sign != nullptr && sign->typing) return layout.typing;
  const auto* amend = std::get_if<AmendDraft>(&dialog);
  if (amend != nullptr && types_letters(*amend)) return layout.typing;
  const auto* strip = std::get_if<StripDraft>(&dialog);
  if (strip != nullptr && strip->typing) return layout.typing;
  const bool tall =
      strip != nullptr || std::holds_alternative<CorrectDraft>(dialog) ||
      std::holds_alternative<RowDraft>(dialog) || std::holds_alternative<GateDraft>(dialog) ||
      std::holds_alternative<SettingsDraft>(dialog) ||
      std::holds_alternative<MirrorDraft>(dialog) ||
      std::holds_alternative<RanEarlierDraft>(dialog) ||
      std::holds_alternative<MotorOutDraft>(dialog) || std::holds_alternative<MoreDraft>(dialog) ||
      std::holds_alternative<ReviewDraft>(dialog) || record != nullptr;
  return tall ? layout.tall : layout.work;
}

void draw_clock(Stage& stage, Box box) {
  Canvas& canvas = stage.canvas;
  // Under the time: how the taps stand with the disk, in words; what is kept gives way to a low
  // battery.
  const bool low =
      stage.battery && !stage.battery->charging && stage.battery->percent <= kBatteryLow;
  if (!low || stage.keeping.state != Keeping::State::kept) {
    canvas.text(keeping_short(stage.say, stage.keeping, stage.now),
                box.cut_bottom(canvas.height(Face::small)),
                {.face = Face::small, .colours = canvas.on_page(), .across = Across::middle});
  } else if (stage.battery && !stage.battery->charging && stage.battery->percent <= kBatteryLow) {
    // Under the time: a low battery in words and figures.
    const Box under = box.cut_bottom(2 * canvas.height(Face::small));
    canvas.text(
        stage.say(Word::battery_low, stage.battery->percent), under,
        {.face = Face::small, .colours = canvas.on_page(), .across = Across::middle, .lines = 2});
  }
  canvas.text(stage.say.clock_short(stage.now), box,
              {.face = Face::title, .colours = canvas.on_page(), .across = Across::middle});
}

}  // namespace

void draw_pour(Stage& stage, const PourView& view, const std::vector<Finding>& findings,
               const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const double high = std::max(in_metres(view.elevation.height), 0.1);
  const PourLayout layout = lay_out_pour(canvas.scale(), in_metres(view.elevation.length) / high,
                                         stage.settings.rows_on, stage.mirror != nullptr);
  if (button(canvas, layout.back,
             {.id = "pours", .text = stage.say(Word::all_pours), .symbol = Symbol::back})) {
    stage.close();
    stage.intents.emplace_back(LeavePour{});
  }
  if (button(canvas, layout.more,
             {.id = "more", .text = stage.say(Word::more), .symbol = Symbol::more})) {
    stage.open(MoreDraft{});
  }
  draw_clock(stage, layout.clock);
  draw_mirror_light(stage, layout.light);
  Dialog& dialog = stage.drafts.dialog;
  const Box& panel_box = box_of(dialog, layout);
  if (panel_box.y0 > layout.attention.y0) {
    draw_attention(stage, layout.attention, view, plan);
  } else {
    stage.covered = covered_banner(stage, view, plan);
  }
  const std::uint64_t outside = canvas.on_scope(scope_of(stage.drafts));
  const bool open = std::visit(DrawDialog{stage, layout, view, findings, plan}, dialog);
  canvas.on_scope(outside);
  if (!open) {
    draw_elevation(stage, layout.elevation, view);
    draw_lift(stage, layout.lift, view);
    draw_last_taps(stage, layout.taps, view);
  }
  const bool covered = view.closed && std::holds_alternative<ReviewDraft>(dialog);
  if (!covered) draw_rows(stage, layout.rows, view);
}

}  // namespace rb::screens
