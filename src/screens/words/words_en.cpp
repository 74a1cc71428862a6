#include "screens/words/words.h"

namespace rb::screens {

namespace {

#define RISEBOOK_WORD(id, ...) {Word::id, __VA_ARGS__},
constexpr WordTable kTable{{
#include "screens/words/list/book.inc"
#include "screens/words/list/copies.inc"
#include "screens/words/list/live.inc"
#include "screens/words/list/plan.inc"
#include "screens/words/list/pour.inc"
#include "screens/words/list/review.inc"
#include "screens/words/list/sign.inc"
}};
#undef RISEBOOK_WORD

constexpr bool none_is_empty() {
  for (const WordEntry& entry : kTable) {
    if (entry.text == nullptr || entry.text[0] == '\0') return false;
  }
  return true;
}
static_assert(none_is_empty(), "a word of list/*.inc has no English");

}  // namespace

const WordTable& word_table() {
  return kTable;
}

}  // namespace rb::screens
