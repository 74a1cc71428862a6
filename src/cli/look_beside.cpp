#include "cli/look_beside.h"

#include <algorithm>

#include "store/book/head_note.h"
#include "store/book/row_reader.h"

namespace rb {

std::optional<screens::Trouble> note_trouble(const Path& book) {
  auto rows = store::RowReader::open(book);
  if (!rows) return std::nullopt;
  const auto last = rows->last();
  if (!last) return std::nullopt;
  const auto notes = store::read_notes(store::plain_disk(), book);
  const auto verdict = store::judge_notes(notes, rows->name(), *last,
                                          [&](std::int64_t seq) { return rows->hash_at(seq); });
  if (!verdict || verdict->faults.empty()) return std::nullopt;
  std::int64_t farthest = *last;
  for (const store::NoteBeside& note : notes) {
    const bool ours = note.read.state == store::NoteRead::State::whole &&
                      note.read.note.uuid == rows->name().uuid;
    if (ours) farthest = std::max(farthest, note.read.note.seq);
  }
  screens::Trouble trouble{.text = verdict->faults.front()};
  trouble.word = farthest > *last ? screens::Word::note_short : screens::Word::note_other;
  trouble.number = static_cast<std::size_t>(farthest - *last);
  return trouble;
}

}  // namespace rb
