#include "app/device.h"

#include "app/settings_file.h"

namespace rb {

Path data_folder() {
  const auto book = default_book();
  return book ? book->parent_path() : Path{};
}

Result<void> sign_heads(Logbook& book, const Path& folder) {
  const auto key = store::DeviceKey::ready(folder);
  if (!key) return Failed{key.error()};
  return book.sign_with(*key);
}

}  // namespace rb
