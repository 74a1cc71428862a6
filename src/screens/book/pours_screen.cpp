#include "screens/book/pours_screen.h"

#include <algorithm>
#include <cmath>

#include "screens/entry/find_panel.h"
#include "screens/live/dialogs.h"

namespace rb::screens {

namespace {

void draw_card(Stage& stage, const Box& box, const PourCard& pour) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const std::string id = "pour " + pour.id.text;
  if (canvas.target(id, box, pour.name)) stage.intents.emplace_back(GoToPour{pour.id});
  const Pair ground = canvas.theme().quiet;
  const float radius = canvas.mm(1.6);
  canvas.fill(box, ground.ground, radius);
  const bool pressed = canvas.pressed(id);
  canvas.edge(box, pressed ? canvas.theme().ink : canvas.theme().line,
              canvas.mm(pressed ? 1.2 : 0.25), radius);
  if (!pour.closed) {
    canvas.fill({box.x0, box.y0 + radius, box.x0 + canvas.mm(1.6), box.y1 - radius},
                canvas.theme().act.ground);
  }
  Box in = box.inset(canvas.mm(3.4), canvas.mm(1.4));
  const Box sign = in.cut_right(canvas.mm(7), canvas.mm(2));
  canvas.symbol(Symbol::forward, sign.inset(0, (in.h() - canvas.mm(7)) / 2), ground.ink);
  Box right = in.cut_right(std::round(in.w() * 0.38F), canvas.mm(2));
  const float tall = canvas.height(Face::strong) + canvas.height(Face::small);
  const float spare = std::max(0.0F, std::floor((in.h() - tall) / 2));
  in.y0 += spare;
  right.y0 += spare;
  canvas.text(pour.name, in.cut_top(canvas.height(Face::strong)),
              {.face = Face::strong, .colours = ground, .free_text = true});
  const TextStyle soft{
      .face = Face::small, .colours = {ground.ground, canvas.theme().ink_soft}, .free_text = true};
  const std::string from = pour.from_script ? say(Word::from_script) : std::string{};
  // What does not read is told in place of where it is.
  if (const std::string lost = damage_words(say, pour.damage); !lost.empty()) {
    tag(canvas, in.cut_top(canvas.height(Face::small)), Symbol::stop_sign, lost, Look::stop,
        Face::small, true);
  } else {
    canvas.text(from + (from.empty() || pour.site.empty() ? "" : " \u00B7 ") + pour.site,
                in.cut_top(canvas.height(Face::small)), soft);
  }
  const Box state = right.cut_top(canvas.height(Face::strong));
  if (pour.rows_running > 0) {
    tag(canvas, state, Symbol::run, fmt::format("{} {}", say(Word::running), pour.rows_running),
        Look::live);
  } else if (!pour.placing.empty()) {
    tag(canvas, state, Symbol::rise, say(Word::pour_placing, pour.placing), Look::act);
  } else {
    tag(canvas, state, pour.closed ? Symbol::check : Symbol::none,
        say(pour.closed ? Word::pour_closed : Word::pour_open),
        pour.closed ? Look::off : Look::well);
  }
  canvas.text(say(Word::pour_from, say.day(pour.opened) + " " + say.clock_short(pour.opened)),
              right.cut_top(canvas.height(Face::small)), soft);
}

}  // namespace

void draw_pours(Stage& stage, const std::vector<PourCard>& pours, const PoursPart& part,
                bool opening) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box all = Box{0, 0, static_cast<float>(canvas.scale().width_px()),
                static_cast<float>(canvas.scale().height_px())}
                .inset(gap);
  Box head = all.cut_top(canvas.scale().target(), gap);
  const float side = canvas.mm(30);
  if (button(canvas, head.cut_right(canvas.mm(18), gap),
             {.id = "quit", .text = {}, .symbol = Symbol::cross})) {
    stage.open(QuitDraft{});
  }
  if (button(canvas, head.cut_right(side, gap),
             {.id = "settings",
              .text = say(Word::settings),
              .face = Face::small,
              .symbol_above = true})) {
    stage.open(SettingsDraft{});
  }
  // What was looked for stands where it is taken off again.
  std::string& find = stage.drafts.pours_find;
  if (button(canvas, head.cut_right(side, gap),
             {.id = find.empty() ? "find" : "find-all",
              .text = say(find.empty() ? Word::find : Word::find_all),
              .under = find,
              .face = Face::small,
              .free_text = true})) {
    if (find.empty()) stage.open(FindDraft{});
    find.clear();
    stage.drafts.pours_page = 0;
  }
  const bool waits = opening || part.coming;
  canvas.text(waits ? say(Word::opening) : say(Word::product) + " \u00B7 " + say(Word::pours), head,
              {.face = Face::title, .colours = canvas.on_page()});
  if (button(canvas, all.cut_bottom(canvas.mm(18), gap),
             {.id = "new pour",
              .text = say(Word::pour_new),
              .look = Look::act,
              .symbol = Symbol::plus,
              .face = Face::title})) {
    stage.open(PlanFromDraft{});
  }
  if (pours.empty() && waits) return;
  if (part.total == 0) {
    want_pours(stage, part, 0, 0, 1);
    panel(canvas, all);
    Box in = all.inset(canvas.mm(8));
    if (!find.empty()) {
      canvas.text(say(Word::find_none), in.cut_top(canvas.height(Face::title)),
                  {.face = Face::title, .colours = canvas.on_panel()});
      return;
    }
    canvas.text(say(Word::pours_none), in.cut_top(canvas.height(Face::title)),
                {.face = Face::title, .colours = canvas.on_panel()});
    canvas.text(say(Word::pours_none_do), in.cut_top(canvas.height(Face::body)),
                {.colours = canvas.soft()});
    return;
  }
  const float tall = canvas.mm(18);
  auto lines = static_cast<std::size_t>((all.h() + gap) / (tall + gap));
  int& page = stage.drafts.pours_page;
  if (part.total > lines) {
    const Box foot = all.cut_bottom(canvas.scale().target(), gap);
    lines = std::max<std::size_t>(1, static_cast<std::size_t>((all.h() + gap) / (tall + gap)));
    const int pages = static_cast<int>((part.total + lines - 1) / lines);
    page = std::clamp(page, 0, pages - 1);
    if (button(canvas, foot.column(0, 3, gap),
               {.id = "pours page-up", .text = {}, .symbol = Symbol::up, .enabled = page > 0})) {
      --page;
    }
    if (button(canvas, foot.column(2, 3, gap),
               {.id = "pours page-down",
                .text = {},
                .symbol = Symbol::down,
                .enabled = page + 1 < pages})) {
      ++page;
    }
    canvas.text(say(Word::page_of, page + 1, pages), foot.column(1, 3, gap),
                {.face = Face::strong, .colours = canvas.on_page(), .across = Across::middle});
  } else {
    page = 0;
  }
  const std::size_t first = static_cast<std::size_t>(page) * lines;
  want_pours(stage, part, pours.size(), first, lines);
  for (std::size_t i = first; i < first + lines; ++i) {
    if (i < part.first || i >= part.first + pours.size()) continue;  // it comes
    draw_card(stage, all.cut_top(tall, gap), pours[i - part.first]);
  }
}

}  // namespace rb::screens
