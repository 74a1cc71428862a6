// A pour's photos in the page itself, as far as a page may grow.
#include <glib.h>

#include <memory>

#include <fmt/format.h>

#include "record/form/html_parts.h"
#include "record/told/photo_words.h"

namespace rb {

namespace {

std::string base64(const std::string& bytes) {
  const std::unique_ptr<gchar, void (*)(void*)> text{
      g_base64_encode(reinterpret_cast<const guchar*>(bytes.data()), bytes.size()), &g_free};
  return text.get();
}

}  // namespace

std::string html_photos(const PourRecord& pour, const Shown& shown, std::size_t& room) {
  std::string out = "<div class=\"photos\">\n";
  for (const PhotoLine& photo : pour.photos) {
    const PhotoWords words = photo_words(photo, shown);
    out += "<figure class=\"photo\">";
    if (photo.picture && photo.picture->jpeg.size() <= room) {
      room -= photo.picture->jpeg.size();
      out += fmt::format(
          "<img alt=\"{}\" width=\"{}\" height=\"{}\" src=\"data:image/jpeg;base64,{}\"/>",
          html_text(words.title), photo.picture->wide, photo.picture->tall,
          base64(photo.picture->jpeg));
    } else if (photo.picture) {
      out += html_element(
          "p",
          shown.told(said("This photo is not in this page, which has as many as it can carry: see "
                          "the record on paper.")),
          "class=\"damage\"");
    } else {
      out += html_element("p", words.trouble, "class=\"damage\"");
    }
    out += "<figcaption>" + html_element("strong", words.title) + "<br/>" +
           html_element("span", words.where) + "<br/>" +
           html_element("span", words.taken, "class=\"quiet\"") + "</figcaption></figure>\n";
  }
  return out + "</div>\n";
}

}  // namespace rb
