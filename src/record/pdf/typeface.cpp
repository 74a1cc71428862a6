#include "record/pdf/typeface.h"

#include <fmt/format.h>
#include <fontconfig/fontconfig.h>
#include <risebook_fonts.h>
#include <sys/mman.h>
#include <unistd.h>

#include <string>

namespace rb {

namespace {

// The library reads fonts from files only: one in memory, kept open as long as the program runs.
bool bring(const unsigned char* begin, const unsigned char* end) {
  const int fd = memfd_create("typeface", MFD_CLOEXEC);
  if (fd < 0) return false;
  while (begin < end) {
    const ssize_t wrote = ::write(fd, begin, static_cast<std::size_t>(end - begin));
    if (wrote <= 0) {
      ::close(fd);
      return false;
    }
    begin += wrote;
  }
  const std::string path = fmt::format("/proc/self/fd/{}", fd);
  return FcConfigAppFontAddFile(nullptr, reinterpret_cast<const FcChar8*>(path.c_str())) == FcTrue;
}

bool bring_all() {
  const bool regular = bring(embedded::rb_face_regular, embedded::rb_face_regular_end);
  const bool bold = bring(embedded::rb_face_bold, embedded::rb_face_bold_end);
  return regular && bold;
}

}  // namespace

void bring_typeface() {
  static const bool brought = bring_all();
  (void)brought;
}

}  // namespace rb
