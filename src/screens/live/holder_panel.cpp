// Who holds the tablet: chosen among the people of the plan at a change of shift.
#include "screens/entry/paging.h"
#include "screens/live/dialogs.h"
#include "screens/view/event_words.h"

namespace rb::screens {

void draw_holder(Stage& stage, const Box& box, HolderDraft& draft, const Plan& plan) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::holder_title));
  canvas.text(say(plan.people.empty() ? Word::holder_none : Word::holder_said),
              in.cut_top(canvas.height(Face::small), canvas.mm(2)),
              {.face = Face::small, .colours = canvas.soft()});
  const float tall = canvas.mm(18);
  const Person* now = holder_of(plan, stage.settings.holder);
  const Pages pages = turn_pages(stage, in, plan.people.size(), draft.page, "holder", tall);
  for (std::size_t i = 0; i < pages.lines && pages.first + i < plan.people.size(); ++i) {
    const Person& person = plan.people[pages.first + i];
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    const bool on = &person == now;
    if (button(canvas, {pages.room.x0, top, pages.room.x1, top + tall},
               {.id = "holder " + person.id.text,
                .text = person.name.empty() ? person.id.text : person.name,
                .under = role_words(say, person.role),
                .look = on ? Look::act : Look::quiet,
                .symbol = on ? Symbol::check : Symbol::none,
                .free_text = true})) {
      Settings changed = stage.settings;
      changed.holder = person;
      stage.intents.emplace_back(ChangeSettings{changed});
      stage.close();
    }
  }
}

}  // namespace rb::screens
