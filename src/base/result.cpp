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

std::string to_text(const Error& error) {
  std::string text = error.where;
  if (!text.empty()) text += ": ";
  text += error.what;
  if (!error.remedy.empty()) text += ". " + error.remedy;
  if (!text.empty() && text.back() != '.') text += '.';
  return text;
}

}  // namespace rb
