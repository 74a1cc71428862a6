#include "screens/paper/sign_panel.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "screens/entry/keyboard.h"
#include "screens/entry/paging.h"
#include "screens/paper/pin_pad.h"
#include "screens/view/event_words.h"

namespace rb::screens {

namespace {

using SignStep = SignDraft::Step;

constexpr std::array kVerdictWords{Word::sign_accepted, Word::sign_accepted_but,
                                   Word::sign_not_accepted};

bool carried(const Stage& stage, const PersonId& person) {
  if (stage.signing == nullptr) return false;
  const auto& known = stage.signing->carried;
  return std::find(known.begin(), known.end(), person) != known.end();
}

std::string name_in(const SignView& view, const PersonId& person) {
  const SignerView* known = view.find(person);
  return known == nullptr ? person.text : known->name;
}

// Nothing typed is taken from one step into another that asks for it anew.
void to_step(SignDraft& draft, SignStep step) {
  draft.step = step;
  draft.page = 0;
}
void forget_pins(SignDraft& draft) {
  draft.pin.wipe();
  draft.again.wipe();
  draft.witness_pin.wipe();
}

// Somebody of another role sees who chooses the PIN, where such a one has a key.
void begin_enrolment(SignDraft& draft, const SignView& view) {
  forget_pins(draft);
  draft.enrolling = true;
  draft.differs = false;
  draft.witness = {};
  to_step(draft, view.witnesses_for(draft.person).empty() ? SignStep::new_pin : SignStep::witness);
}

std::string state_of(const Stage& stage, const SignerView& signer) {
  const Say& say = stage.say;
  if (signer.signed_at) {
    const std::string at = say.clock_short(*signer.signed_at);
    return signer.after > 0 ? say(Word::sign_after, at, signer.after) : say(Word::sign_signed, at);
  }
  if (signer.has_key) return say(Word::sign_has_key);
  return say(carried(stage, signer.person) ? Word::sign_carried : Word::sign_no_key);
}

void draw_who(Stage& stage, const Box& box, SignDraft& draft, const SignView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::sign_who));
  const bool may = stage.signing != nullptr;
  canvas.text(say(!may                   ? Word::sign_read_only
                  : view.signers.empty() ? Word::sign_nobody
                  : view.pour_open       ? Word::sign_pour_open
                                         : Word::sign_proves),
              in.cut_top(2 * canvas.height(Face::small), canvas.mm(1)),
              {.face = Face::small, .colours = canvas.soft(), .down = Down::top, .lines = 2});
  const float tall = canvas.mm(18);
  const Pages pages = turn_pages(stage, in, view.signers.size(), draft.page, "sign", tall);
  for (std::size_t i = 0; i < pages.lines && pages.first + i < view.signers.size(); ++i) {
    const SignerView& signer = view.signers[pages.first + i];
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    if (!button(canvas, {pages.room.x0, top, pages.room.x1, top + tall},
                {.id = "sign " + signer.person.text + " " + to_text(signer.role),
                 .text = signer.name + " \u00B7 " + role_words(say, to_text(signer.role)),
                 .under = state_of(stage, signer),
                 .symbol = signer.signed_at ? (signer.after > 0 ? Symbol::mend_sign : Symbol::check)
                                            : Symbol::pencil,
                 .enabled = may,
                 .free_text = true})) {
      continue;
    }
    draft.person = signer.person;
    draft.role = signer.role;
    draft.comment.clear();
    draft.enrolling = false;
    if (signer.has_key || carried(stage, signer.person)) {
      to_step(draft, SignStep::verdict);
    } else {
      begin_enrolment(draft, view);
    }
  }
}

void draw_verdict(Stage& stage, const Box& box, SignDraft& draft, const SignView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box beside;
  Box in = panel_with_back(
      stage, box, name_in(view, draft.person) + " \u00B7 " + role_words(say, to_text(draft.role)),
      &beside);
  if (button(canvas, beside,
             {.id = "new pin", .text = say(Word::sign_new), .symbol = Symbol::more})) {
    begin_enrolment(draft, view);
    return;
  }
  Box says = in.cut_top(std::max(canvas.scale().target(), 3 * canvas.height(Face::small)), gap);
  if (button(canvas, says.cut_right(std::round(says.w() * 0.3F), gap),
             {.id = "sign comment",
              .text = say(Word::sign_comment),
              .under = draft.comment,
              .free_text = true})) {
    draft.typing = draft.comment;
  }
  canvas.text(
      view.open.empty() ? say(Word::sign_leaves_none) : say(Word::sign_leaves, view.open.size()),
      says, {.face = Face::small, .colours = canvas.on_panel(), .down = Down::top, .lines = 3});
  in.y1 = std::min(in.y1, in.y0 + 3 * canvas.mm(22));
  for (std::size_t i = 0; i < kVerdictWords.size(); ++i) {
    // What is left open is named, so it is not accepted without more words.
    const bool can = i == 0 ? view.open.empty() : i == 2 || !view.open.empty();
    if (button(canvas, in.line(static_cast<int>(i), 3, gap),
               {.id = "verdict " + std::to_string(i),
                .text = say(kVerdictWords.at(i)),
                .look = Look::act,
                .symbol = i == 0   ? Symbol::check
                          : i == 1 ? Symbol::pencil
                                   : Symbol::cross,
                .enabled = can})) {
      draft.verdict = i;
      draft.pin.wipe();
      to_step(draft, SignStep::pin);
    }
  }
}

void draw_witness(Stage& stage, const Box& box, SignDraft& draft, const SignView& view) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::sign_witness, name_in(view, draft.person)));
  canvas.text(say(Word::sign_witness_says),
              in.cut_top(2 * canvas.height(Face::small), canvas.mm(1)),
              {.face = Face::small, .colours = canvas.soft(), .down = Down::top, .lines = 2});
  const auto able = view.witnesses_for(draft.person);
  const float tall = canvas.mm(18);
  const Pages pages = turn_pages(stage, in, able.size(), draft.page, "witness", tall);
  for (std::size_t i = 0; i < pages.lines && pages.first + i < able.size(); ++i) {
    const SignerView& one = *able[pages.first + i];
    const float top = pages.room.y0 + static_cast<float>(i) * (tall + gap);
    if (button(canvas, {pages.room.x0, top, pages.room.x1, top + tall},
               {.id = "witness " + one.person.text,
                .text = one.name,
                .under = role_words(say, to_text(one.role)),
                .free_text = true})) {
      draft.witness = one.person;
      to_step(draft, SignStep::witness_pin);
    }
  }
}

// The pads one after the other; sent to the program behind the last.
void draw_pins(Stage& stage, const Box& box, SignDraft& draft, const SignView& view) {
  const Say& say = stage.say;
  const std::string own = name_in(view, draft.person);
  Secret* pin = &draft.pin;
  PinBeside beside;
  switch (draft.step) {
    case SignStep::pin:
      beside = {say(Word::sign_pin, own), say(Word::sign_proves), {}, Word::sign};
      break;
    case SignStep::witness_pin:
      pin = &draft.witness_pin;
      beside = {say(Word::sign_witness_pin, name_in(view, draft.witness)),
                say(Word::sign_witness_says)};
      break;
    case SignStep::new_pin:
      beside = {say(Word::sign_new_pin, own),
                say(Word::sign_new_says) +
                    (draft.witness.empty() ? " " + say(Word::sign_unwitnessed) : ""),
                draft.differs ? say(Word::sign_differs) : ""};
      break;
    default:
      pin = &draft.again;
      beside = {say(Word::sign_again, own), say(Word::sign_new_says)};
  }
  const PanelEnd end = draw_pin_pad(stage, box, *pin, beside);
  if (end == PanelEnd::cancelled) {
    forget_pins(draft);
    to_step(draft, SignStep::who);
  }
  if (end != PanelEnd::kept) return;
  if (draft.step == SignStep::witness_pin) return to_step(draft, SignStep::new_pin);
  if (draft.step == SignStep::new_pin) return to_step(draft, SignStep::again);
  if (draft.step == SignStep::again && !(draft.again == draft.pin)) {
    draft.pin.wipe();
    draft.again.wipe();
    draft.differs = true;
    return to_step(draft, SignStep::new_pin);
  }
  if (draft.enrolling) {
    stage.intents.emplace_back(
        EnrolPerson{draft.person, draft.role, draft.witness, draft.pin, draft.witness_pin});
  } else {
    stage.intents.emplace_back(SignPour{draft.person, draft.role,
                                        word(Language{}, kVerdictWords.at(draft.verdict)),
                                        view.open, draft.pin, draft.comment});
  }
  forget_pins(draft);
  to_step(draft, SignStep::answer);
}

void draw_answer(Stage& stage, const Box& box, SignDraft& draft, const SignView& view) {
  using State = SigningSeen::State;
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  Box in = panel_with_title(stage, box, say(Word::sign) + " \u00B7 " + name_in(view, draft.person));
  const Box foot = in.cut_bottom(std::max(canvas.scale().target(), canvas.mm(17)), gap);
  const State state = stage.signing == nullptr ? State::idle : stage.signing->state;
  std::string told;
  if (state == State::trying) told = say(Word::sign_trying);
  if (state == State::waiting || state == State::keeping) {
    told = say(Word::sign_waiting, stage.keeping.waiting);
  }
  if (state == State::made) told = say(draft.enrolling ? Word::sign_enrolled : Word::sign_made);
  if (state == State::refused && stage.signing->why)
    told = words_of(*stage.signing->why, say.voice());
  const bool refused = state == State::refused;
  const Box line = in.cut_top(5 * canvas.height(Face::body), gap);
  if (refused) {
    tag(canvas, line, Symbol::mend_sign, told, Look::mend, Face::body, true);
  } else {
    canvas.text(told, line,
                {.colours = canvas.on_panel(), .down = Down::top, .lines = 5, .free_text = true});
  }
  if (state == State::made && !draft.enrolling) {
    canvas.text(say(Word::sign_proves), in,
                {.face = Face::small, .colours = canvas.soft(), .down = Down::top, .lines = 3});
  }
  const bool busy = state == State::trying || state == State::waiting;
  if (button(
          canvas, foot.column(0, 2, gap),
          {.id = "back", .text = say(busy ? Word::cancel : Word::back), .symbol = Symbol::back})) {
    stage.intents.emplace_back(PutSigningAway{});
    to_step(draft, SignStep::who);
  }
  if (busy || state == State::keeping) return;
  const bool go_on = state == State::made && draft.enrolling;
  if ((refused || go_on) && button(canvas, foot.column(1, 2, gap),
                                   {.id = "sign on",
                                    .text = say(go_on ? Word::sign : Word::sign_try_again),
                                    .look = Look::act,
                                    .symbol = Symbol::pencil})) {
    stage.intents.emplace_back(PutSigningAway{});
    if (refused && draft.enrolling) {
      begin_enrolment(draft, view);
    } else {
      draft.enrolling = false;
      to_step(draft, refused ? SignStep::pin : SignStep::verdict);
    }
  }
}

}  // namespace

void draw_sign(Stage& stage, const Box& box, SignDraft& draft, const SignView& view) {
  if (!draft.asked && stage.signing != nullptr) {
    stage.intents.emplace_back(LookForKeys{});
    draft.asked = true;
  }
  if (draft.typing) {
    const PanelEnd end =
        draw_text_entry(stage, box, stage.say(Word::sign_comment_title), *draft.typing);
    if (end == PanelEnd::kept) draft.comment = *draft.typing;
    if (end != PanelEnd::open) draft.typing.reset();
    return;
  }
  switch (draft.step) {
    case SignStep::who:
      return draw_who(stage, box, draft, view);
    case SignStep::verdict:
      return draw_verdict(stage, box, draft, view);
    case SignStep::witness:
      return draw_witness(stage, box, draft, view);
    case SignStep::answer:
      return draw_answer(stage, box, draft, view);
    default:
      return draw_pins(stage, box, draft, view);
  }
}

}  // namespace rb::screens
