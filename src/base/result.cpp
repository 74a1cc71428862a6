#include "base/result.h"

#include <cerrno>

namespace rb {

BookTrouble trouble_of(int error) {
  switch (error) {
    case EACCES:
    case EPERM:
      return BookTrouble::no_permission;
    case EROFS:
      return BookTrouble::read_only;
    case ENOSPC:
    case EDQUOT:
    case EFBIG:
      return BookTrouble::disk_full;
    case ENOENT:
    case ENOTDIR:
      return BookTrouble::no_folder;
    case EEXIST:
    case ELOOP:
    case EISDIR:
      return BookTrouble::in_the_way;
    default:
      return BookTrouble::no_answer;
  }
}

Saying as_saying(const Error& error) {
  Saying told = followed(error.what, error.remedy);
  if (error.where.empty()) return told;
  return {said("{where}: {what}"), {{"where", Clause{error.where}}, {"what", Clause{told}}}};
}

std::string fill(const Error& error, const Manner& manner) {
  std::string text = fill(as_saying(error), manner);
  if (!text.empty() && text.back() != '.') text += '.';
  return text;
}

std::string to_text(const Error& error) {
  return fill(error, Manner{});
}

}  // namespace rb
