#include "screens/live/type_dialog.h"

#include "screens/entry/keyboard.h"
#include "screens/live/correct_dialog.h"
#include "screens/live/gate_dialog.h"

namespace rb::screens {

void draw_typing(Stage& stage, const Box& box, TypeDraft& draft) {
  const Word title = draft.use == TypeDraft::Use::note     ? Word::note_title
                     : draft.use == TypeDraft::Use::hold   ? Word::hold_title
                     : draft.use == TypeDraft::Use::ticket ? Word::ticket_title
                     : draft.use == TypeDraft::Use::joint  ? Word::joint_title
                     : draft.use == TypeDraft::Use::gate   ? Word::gate_why
                     : draft.use == TypeDraft::Use::permit ? Word::after_permit_why
                                                           : Word::correct_why;
  const PanelEnd end = draw_text_entry(stage, box, stage.say(title), draft.text,
                                       draft.use == TypeDraft::Use::ticket ? kName : kText);
  if (end == PanelEnd::open) return;
  stage.close();
  if (end == PanelEnd::cancelled) {
    if (draft.truck) stage.open(*draft.truck);
    return;
  }
  switch (draft.use) {
    case TypeDraft::Use::note:
      stage.keep(event::Note{draft.text, {}, {}}, draft.at);
      break;
    case TypeDraft::Use::hold:
      stage.keep(event::Hold{draft.text}, draft.at);
      break;
    case TypeDraft::Use::why:
      if (draft.correcting) keep_correction(stage, *draft.correcting, draft.text);
      break;
    case TypeDraft::Use::gate:
      keep_gone_on(stage, draft, draft.text);
      break;
    case TypeDraft::Use::joint:
      if (draft.joint) {
        draft.joint->decision = draft.text;
        stage.keep(*draft.joint, draft.at);
      }
      break;
    case TypeDraft::Use::permit:
      if (draft.permit) {
        draft.permit->why = draft.text;
        stage.keep(*draft.permit, draft.at);
      }
      break;
    case TypeDraft::Use::ticket:
      if (draft.truck) {
        draft.truck->ticket = draft.text;
        stage.open(*draft.truck);
      }
      break;
  }
}

}  // namespace rb::screens
