#include "screens/book/failure_screen.h"

#include <array>

#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

struct FailureWords {
  BookTrouble trouble;
  Word says, advice;
  bool may_read;  ///< where writing is what it could not be opened for
};

using T = BookTrouble;
constexpr std::array kFailures{
    FailureWords{T::none, Word::fail_none, Word::fail_do_none, true},
    FailureWords{T::second_start, Word::fail_second_start, Word::fail_do_second_start, true},
    FailureWords{T::no_permission, Word::fail_no_permission, Word::fail_do_no_permission, true},
    FailureWords{T::read_only, Word::fail_read_only, Word::fail_do_read_only, true},
    FailureWords{T::disk_full, Word::fail_disk_full, Word::fail_do_disk_full, true},
    FailureWords{T::no_answer, Word::fail_no_answer, Word::fail_do_no_answer, true},
    FailureWords{T::newer, Word::fail_newer, Word::fail_do_newer, false},
    FailureWords{T::older, Word::fail_older, Word::fail_do_older, false},
    FailureWords{T::damaged, Word::fail_damaged, Word::fail_do_damaged, true},
    FailureWords{T::not_a_book, Word::fail_not_a_book, Word::fail_do_not_a_book, false},
    FailureWords{T::not_there, Word::fail_not_there, Word::fail_do_not_there, false},
    FailureWords{T::no_folder, Word::fail_no_folder, Word::fail_do_no_folder, false},
    FailureWords{T::in_the_way, Word::fail_in_the_way, Word::fail_do_in_the_way, true},
    FailureWords{T::many_names, Word::fail_many_names, Word::fail_do_many_names, true},
};

const FailureWords& words_of(BookTrouble trouble) {
  for (const FailureWords& words : kFailures) {
    if (words.trouble == trouble) return words;
  }
  return kFailures.front();
}

}  // namespace

Word failure_word(BookTrouble trouble) {
  return words_of(trouble).says;
}
Word failure_advice(BookTrouble trouble) {
  return words_of(trouble).advice;
}
bool may_still_read(BookTrouble trouble) {
  return words_of(trouble).may_read;
}

void draw_failure(Stage& stage, const FailureDraft& failure) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  const Box all = Box{0, 0, static_cast<float>(canvas.scale().width_px()),
                      static_cast<float>(canvas.scale().height_px())}
                      .inset(gap);
  Box in = panel_with_title(stage, all, say(Word::fail_title));
  const Box foot = in.cut_bottom(canvas.mm(20), gap);
  in.y0 += canvas.mm(2);
  const std::string says = say(failure_word(failure.trouble));
  const Pair loud = canvas.theme().stop;
  Box line = in.cut_top(canvas.mm(16), gap);
  canvas.fill(line, loud.ground, canvas.mm(1.6));
  line = line.inset(canvas.mm(3), canvas.mm(1));
  canvas.symbol(Symbol::stop_sign, line.cut_left(canvas.mm(9), canvas.mm(3)).inset(0, canvas.mm(2)),
                loud.ink);
  canvas.text(says, line, {.face = Face::strong, .colours = loud, .lines = 2});
  canvas.text(say(failure_advice(failure.trouble)), in.cut_top(3 * canvas.height(Face::body), gap),
              {.colours = canvas.on_panel(), .down = Down::top, .lines = 3});
  canvas.text(failure.file, in.cut_top(2 * canvas.height(Face::small), gap),
              {.face = Face::small,
               .colours = canvas.on_panel(),
               .down = Down::top,
               .lines = 2,
               .free_text = true});
  canvas.text(failure.text, in,
              {.face = Face::small,
               .colours = canvas.soft(),
               .down = Down::top,
               .lines = 4,
               .free_text = true});
  const int across = failure.may_read ? 3 : 2;
  if (button(canvas, foot.column(0, across, gap),
             {.id = "quit now", .text = say(Word::quit), .symbol = Symbol::cross})) {
    stage.intents.emplace_back(Quit{});
  }
  if (failure.may_read && button(canvas, foot.column(1, across, gap),
                                 {.id = "open for reading", .text = say(Word::open_reading)})) {
    stage.intents.emplace_back(OpenForReading{});
  }
  if (button(canvas, foot.column(across - 1, across, gap),
             {.id = "try again", .text = say(Word::try_again), .look = Look::act})) {
    stage.intents.emplace_back(TryAgain{});
  }
}

}  // namespace rb::screens
