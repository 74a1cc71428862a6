#include "screens/load/truck_panel.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/figure_pad.h"
#include "screens/entry/paging.h"
#include "screens/load/truck_line.h"

namespace rb::screens {

namespace {

// The ticket after a ticket: its last figures one up, none that was entered already.
std::string next_ticket(std::string ticket, const PourView& view) {
  const auto taken = [&](const std::string& text) {
    return std::any_of(view.trucks.begin(), view.trucks.end(), [&](const TruckView& truck) {
      return truck.entered && truck.ticket.text == text;
    });
  };
  do {
    std::size_t at = ticket.size();
    while (at > 0 && ticket[at - 1] == '9') ticket[--at] = '0';
    if (at == 0 || ticket[at - 1] < '0' || ticket[at - 1] > '8') return {};
    ++ticket[at - 1];
  } while (taken(ticket));
  return ticket;
}

bool ticket_taken(const TruckDraft& draft, const PourView& view) {
  return std::any_of(view.trucks.begin(), view.trucks.end(), [&](const TruckView& truck) {
    return truck.entered && truck.ticket.text == draft.ticket;
  });
}

// A field of a form: its name above, its value below; the whole is the target.
bool field(Stage& stage, const Box& box, const std::string& id, Word name, const std::string& value,
           bool set, Symbol symbol = Symbol::none) {
  return button(stage.canvas, box,
                {.id = id,
                 .text = value,
                 .under = stage.say(name),
                 .look = set ? Look::quiet : Look::act,
                 .symbol = symbol,
                 .face = Face::title,
                 .free_text = true});
}

// When something was, and four buttons to shift it.
void draw_when(Stage& stage, const Box& line, Word name, const std::string& id, Moment at,
               Seconds& ago, Seconds least) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  constexpr Seconds kMost{12.0 * 3600};
  Box in = line;
  Box label = in.cut_left(std::round(line.w() * 0.27F), canvas.gap());
  canvas.text(say(name, say.clock_short(after(at, -ago))), label.cut_top(label.h() / 2),
              {.face = Face::strong, .colours = canvas.on_panel(), .down = Down::bottom});
  canvas.text(ago < Seconds{30} ? say(Word::just_now) : say(Word::minutes_ago, span_text(ago)),
              label, {.face = Face::small, .colours = canvas.on_panel(), .down = Down::top});
  int i = 0;
  for (const int minutes : {10, 1, -1, -10}) {
    const Seconds would = ago + Seconds{60.0 * minutes};
    if (button(canvas, in.column(i++, 4, canvas.gap()),
               {.id = fmt::format("{} {}", id, minutes),
                .text = say(Word::minutes_step, std::abs(minutes)),
                .symbol = minutes > 0 ? Symbol::back : Symbol::forward,
                .face = Face::small,
                .enabled = would >= least && would <= kMost,
                .repeats = true,
                .symbol_above = true})) {
      ago = would;
    }
  }
}

void draw_mixes(Stage& stage, const Box& box, TruckDraft& draft, const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  const Box in = panel_with_title(stage, box, stage.say(Word::mix_title));
  const float tall = canvas.mm(18);
  const Pages pages = turn_pages(stage, in, plan.mixes.size(), draft.page, "mixes", tall);
  if (stage.next) {  // the way back leads to the form
    stage.next.reset();
    draft.step = TruckDraft::Step::form;
  }
  for (std::size_t i = 0; i < pages.lines && pages.first + i < plan.mixes.size(); ++i) {
    const Mix& mix = plan.mixes[pages.first + i];
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    const bool on = mix.id == draft.mix;
    if (button(canvas, {pages.room.x0, top, pages.room.x1, top + tall},
               {.id = "mix " + mix.id.text,
                .text = mix.id.text,
                .look = on ? Look::act : Look::quiet,
                .symbol = on ? Symbol::check : Symbol::none,
                .free_text = true})) {
      draft.mix = mix.id;
      draft.step = TruckDraft::Step::form;
    }
  }
}

void draw_form(Stage& stage, const Box& box, TruckDraft& draft, const PourView& view,
               const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::truck_new));
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  const Box says = in.cut_bottom(canvas.height(Face::small) + canvas.mm(0.8), canvas.mm(1));
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(23));
  const Box first = in.line(0, 3, gap);
  if (field(stage, first.column(0, 3, gap), "ticket", Word::truck_ticket,
            draft.ticket.empty() ? "\u2013" : draft.ticket, !draft.ticket.empty())) {
    TypeDraft type{.use = TypeDraft::Use::ticket, .text = draft.ticket, .at = draft.at};
    type.truck = draft;
    stage.drafts.figures = true;
    stage.open(std::move(type));
  }
  if (field(stage, first.column(1, 3, gap), "mix", Word::truck_mix,
            draft.mix.empty() ? "\u2013" : draft.mix.text, !draft.mix.empty())) {
    draft.step = TruckDraft::Step::mix;
  }
  if (field(stage, first.column(2, 3, gap), "volume", Word::truck_volume,
            draft.volume ? figure_text(Figure::volume, shown(*draft.volume, say.units), say.units)
                         : "\u2013",
            draft.volume.has_value())) {
    draft.figure = FigureEntry{.what = Figure::volume};
    if (draft.volume) draft.figure->guess = shown(*draft.volume, say.units);
  }
  draw_when(stage, in.line(1, 3, gap), Word::batched_at, "batched", draft.at, draft.batched,
            draft.arrived);
  draw_when(stage, in.line(2, 3, gap), Word::arrived_at, "arrived", draft.at, draft.arrived,
            Seconds{0});
  draft.batched = std::max(draft.batched, draft.arrived);
  const bool twice = ticket_taken(draft, view);
  if (twice) {
    tag(canvas, says, Symbol::mend_sign, say(Word::ticket_twice, draft.ticket), Look::mend,
        Face::small, true);
  } else if (draft.ticket.empty()) {
    canvas.text(say(Word::ticket_missing), says,
                {.face = Face::small, .colours = canvas.on_panel()});
  } else if (draft.guessed) {
    canvas.text(say(Word::truck_guess), says, {.face = Face::small, .colours = canvas.on_panel()});
  }
  const bool whole = !draft.ticket.empty() && !twice && draft.volume && plan.find(draft.mix);
  const PanelEnd end = keep_or_cancel(stage, foot, whole && !view.closed);
  if (end == PanelEnd::kept) {
    stage.keep(event::Truck{TicketId{draft.ticket}, draft.mix, *draft.volume,
                            after(draft.at, -draft.batched), after(draft.at, -draft.arrived)},
               draft.at);
  }
  if (end != PanelEnd::open) stage.open(TrucksDraft{});
}

}  // namespace

TruckDraft new_truck(const PourView& view, const Plan& plan, Moment at) {
  TruckDraft draft{.batched = Seconds{30.0 * 60}, .guessed = true, .at = at};
  if (!plan.mixes.empty()) draft.mix = plan.mixes.front().id;
  const TruckView* last = nullptr;
  for (const TruckView& truck : view.trucks) {
    if (truck.arrived && (last == nullptr || *truck.arrived >= *last->arrived)) last = &truck;
  }
  if (last == nullptr) return draft;
  draft.ticket = next_ticket(last->ticket.text, view);
  draft.mix = last->mix;
  draft.volume = last->volume;
  const Seconds way = between(*last->batched, *last->arrived);
  draft.batched = Seconds{std::round(std::clamp(way.count(), 0.0, 6 * 3600.0) / 60) * 60};
  return draft;
}

void draw_trucks(Stage& stage, const Box& box, TrucksDraft& draft, const PourView& view,
                 const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::trucks_title));
  const Box top = in.cut_top(canvas.scale().target(), gap);
  const bool can = !view.closed;
  if (button(canvas, top.column(0, 2, gap),
             {.id = "new truck",
              .text = say(Word::truck_new),
              .look = Look::act,
              .symbol = Symbol::plus,
              .enabled = can})) {
    stage.open(new_truck(view, plan, stage.tapped()));
  }
  if (button(canvas, top.column(1, 2, gap),
             {.id = "air temp",
              .text = say(Word::air_temp),
              .under = view.air ? say.temperature(*view.air) : say(Word::not_measured),
              .enabled = can})) {
    AirDraft air{.at = stage.tapped()};
    if (view.air) air.figure->guess = std::round(shown(*view.air, say.units));
    stage.open(std::move(air));
  }
  const float tall = canvas.mm(kListLineMm);
  const Pages pages = turn_pages(stage, in, view.trucks.size(), draft.page, "trucks", tall);
  if (view.trucks.empty()) {
    canvas.text(say(Word::trucks_none), pages.room,
                {.colours = canvas.soft(), .down = Down::top, .lines = 2});
  }
  for (std::size_t i = 0; i < pages.lines && pages.first + i < view.trucks.size(); ++i) {
    const float y = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    draw_truck_line(stage, {pages.room.x0, y, pages.room.x1, y + tall},
                    view.trucks[pages.first + i], view);
  }
}

void draw_truck(Stage& stage, const Box& box, TruckDraft& draft, const PourView& view,
                const Plan& plan) {
  if (draft.figure) {
    const PanelEnd end = draw_figure_pad(stage, box, *draft.figure, stage.say(Word::truck_volume));
    if (end == PanelEnd::kept) {
      draft.volume = volume_of(*entered(*draft.figure, stage.say.units), stage.say.units);
    }
    if (end != PanelEnd::open) draft.figure.reset();
    return;
  }
  if (draft.step == TruckDraft::Step::mix) {
    draw_mixes(stage, box, draft, plan);
  } else {
    draw_form(stage, box, draft, view, plan);
  }
}

}  // namespace rb::screens
