#include "screens/seen/second_copy.h"

namespace rb::screens {

MirrorLight mirror_light(const MirrorSeen& mirror) {
  if (mirror.note_stuck) return MirrorLight::behind;
  if (mirror.folder.empty()) return MirrorLight::none;
  if (mirror.trouble != MirrorSeen::Trouble::none) return MirrorLight::behind;
  if (!mirror.behind) return MirrorLight::looking;
  return *mirror.behind > 0 ? MirrorLight::behind : MirrorLight::even;
}

std::string mirror_words(const Say& say, const MirrorSeen& mirror) {
  const bool mirror_well =
      mirror.folder.empty() || (mirror.trouble == MirrorSeen::Trouble::none && mirror.behind == 0);
  if (mirror.note_stuck && mirror_well) return say(Word::note_stuck);
  const std::string since = mirror.since ? say.clock_short(*mirror.since) : std::string{"?"};
  switch (mirror_light(mirror)) {
    case MirrorLight::none:
      return say(Word::mirror_none);
    case MirrorLight::looking:
      return say(Word::mirror_looking);
    case MirrorLight::even:
      return say(Word::mirror_even);
    case MirrorLight::behind:
      break;
  }
  // Not seen yet, or gone with nothing tapped since: there is no count to tell.
  const auto behind = mirror.behind.value_or(0);
  if (behind == 0) return say(Word::mirror_off, since);
  return behind == 1 ? say(Word::mirror_behind_one, since)
                     : say(Word::mirror_behind, behind, since);
}

std::string mirror_advice(const Say& say, const MirrorSeen& mirror) {
  const bool of_mirror = mirror.trouble != MirrorSeen::Trouble::none;
  if (mirror.note_stuck && !of_mirror) return say(Word::note_stuck_do);
  if (mirror.folder.empty()) return say(Word::mirror_choose);
  switch (mirror.trouble) {
    case MirrorSeen::Trouble::none:
      break;
    case MirrorSeen::Trouble::gone:
      return say(Word::mirror_is_gone);
    case MirrorSeen::Trouble::full:
      return say(Word::mirror_is_full);
    case MirrorSeen::Trouble::forbidden:
      return say(Word::mirror_forbidden);
    case MirrorSeen::Trouble::disk:
      return say(Word::mirror_disk);
    case MirrorSeen::Trouble::book:
      return say(Word::mirror_book);
  }
  return mirror.same_disk ? say(Word::mirror_same) : say(Word::mirror_goes);
}

}  // namespace rb::screens
