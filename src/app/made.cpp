#include "app/made.h"

namespace rb {

const char* made_text() {
  return RISEBOOK_MADE;
}

}  // namespace rb
