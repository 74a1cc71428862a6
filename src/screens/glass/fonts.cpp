#include "screens/glass/fonts.h"

#include <imgui.h>
#include <risebook_fonts.h>

namespace rb::screens {

namespace {

struct Cut {
  double mm;  ///< ascent to descent
  bool bold;
};

// A capital is about 0.6 of this: 2.5 mm at the least, read at arm's length.
constexpr std::array<Cut, kFaces> kCuts{{
    {4.1, false},  // small
    {4.8, false},  // body
    {4.8, true},   // strong
    {6.6, true},   // title
    {11.0, true},  // huge
    {14.0, true},  // timer
}};

// Latin-1 for English and Spanish, and the signs the screens write.
constexpr ImWchar kGlyphs[] = {0x20,   0x7E,   0xA0,   0xFF,   0x2013, 0x2014, 0x2018,
                               0x2019, 0x201C, 0x201D, 0x2026, 0x2026, 0x2032, 0x2033,
                               0x2190, 0x2193, 0x2212, 0x2212, 0x2264, 0x2265, 0};

constexpr ImWchar kFigures[] = {0x20, 0x20, 0x2D, 0x3A, 0};

}  // namespace

Fonts build_fonts(ImFontAtlas& atlas, const Scale& scale) {
  atlas.Clear();
  Fonts fonts;
  for (std::size_t i = 0; i < kCuts.size(); ++i) {
    const Cut& cut = kCuts[i];
    const unsigned char* from = cut.bold ? embedded::rb_face_bold : embedded::rb_face_regular;
    const unsigned char* to = cut.bold ? embedded::rb_face_bold_end : embedded::rb_face_regular_end;
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;
    config.OversampleH = 1;
    config.PixelSnapH = true;
    // ImGui only reads the data, but its interface takes a plain pointer.
    fonts.faces[i] = atlas.AddFontFromMemoryTTF(
        const_cast<unsigned char*>(from), static_cast<int>(to - from),  // NOLINT
        scale.mm(cut.mm), &config,
        i == static_cast<std::size_t>(Face::timer) ? static_cast<const ImWchar*>(kFigures)
                                                   : static_cast<const ImWchar*>(kGlyphs));
  }
  unsigned char* pixels = nullptr;
  int width = 0;
  int height = 0;
  atlas.GetTexDataAsAlpha8(&pixels, &width, &height);
  return fonts;
}

Face smaller(Face face) {
  switch (face) {
    case Face::timer:
      return Face::huge;
    case Face::huge:
      return Face::title;
    case Face::title:
      return Face::strong;
    case Face::strong:
    case Face::body:
    case Face::small:
      break;
  }
  return Face::small;
}

}  // namespace rb::screens
