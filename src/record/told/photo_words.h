// What stands under a photo, on paper, page and workbook alike. Inside this room.
#pragma once

#include "record/told/shown.h"

namespace rb {

struct PhotoWords {
  std::string title;    ///< "Blemish 2: honeycomb"
  std::string where;    ///< "W1, near side, 2.50 m from the left, 1.20 m up"
  std::string taken;    ///< "14:05:10, Inés Acuña, face.jpg, SHA-256 9f2c41d07be5..."
  std::string trouble;  ///< why there is no picture; empty where there is one
};
PhotoWords photo_words(const PhotoLine& photo, const Shown& shown);

}  // namespace rb
