#include "screens/live/type_dialog.h"

#include "screens/correct/correct_dialog.h"
#include "screens/correct/correct_fields.h"
#include "screens/entry/keyboard.h"
#include "screens/live/gate_dialog.h"
#include "screens/live/ran_earlier.h"
#include "screens/load/specimen_panel.h"

namespace rb::screens {

namespace {

Word typing_title(TypeDraft::Use use) {
  switch (use) {
    case TypeDraft::Use::note:
      return Word::note_title;
    case TypeDraft::Use::hold:
      return Word::hold_title;
    case TypeDraft::Use::ticket:
    case TypeDraft::Use::new_ticket:
      return Word::ticket_title;
    case TypeDraft::Use::joint:
      return Word::joint_title;
    case TypeDraft::Use::gate:
      return Word::gate_why;
    case TypeDraft::Use::permit:
      return Word::after_permit_why;
    case TypeDraft::Use::specimens:
      return Word::specimens_title;
    case TypeDraft::Use::sent_back:
      return Word::review_why;
    case TypeDraft::Use::ran_earlier:
      return Word::ran_why;
    case TypeDraft::Use::why:
      break;
  }
  return Word::correct_why;
}

}  // namespace

void draw_typing(Stage& stage, const Box& box, TypeDraft& draft) {
  // Of several ids none can be longer than one may be.
  const bool ids = draft.use == TypeDraft::Use::ticket || draft.use == TypeDraft::Use::specimens ||
                   draft.use == TypeDraft::Use::new_ticket;
  const PanelEnd end = draw_text_entry(stage, box, stage.say(typing_title(draft.use)), draft.text,
                                       ids ? kName : kText);
  if (end == PanelEnd::open) return;
  stage.close();
  if (end == PanelEnd::cancelled) {
    if (draft.truck) stage.open(*draft.truck);
    if (draft.test) stage.open(*draft.test);
    if (draft.ran) stage.open(*draft.ran);
    if (draft.use == TypeDraft::Use::new_ticket) stage.open(*draft.correcting);
    if (draft.sent) stage.open(FindingsDraft{.cause = draft.sent->finding});
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
    case TypeDraft::Use::sent_back:
      if (draft.sent) {
        draft.sent->reason = draft.text;
        stage.keep(*draft.sent, draft.at);
      }
      stage.open(FindingsDraft{});
      break;
    case TypeDraft::Use::ran_earlier:
      if (draft.ran) keep_ran_earlier(stage, *draft.ran, draft.text);
      break;
    case TypeDraft::Use::new_ticket:
      if (draft.correcting) {
        CorrectDraft& to = *draft.correcting;
        to.edited = to.what;
        put_ticket(*to.edited, draft.text);
        to.step = CorrectDraft::Step::why;
        stage.open(to);
      }
      break;
    case TypeDraft::Use::specimens:
      if (draft.test) {
        draft.test->specimens = specimens_typed(draft.text);
        stage.open(*draft.test);
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
