#include "app/put_whole.h"

namespace rb {

std::optional<std::string> put_whole(
    const std::filesystem::path& to,
    const std::function<std::optional<std::string>(const std::filesystem::path&)>& write,
    Place place) {
  auto unfinished = Unfinished::beside(to);
  if (!unfinished) return unfinished.error().what.text();
  if (auto wrong = write(unfinished->path())) return wrong;
  if (const auto put = unfinished->put(place); !put) return put.error().what.text();
  return std::nullopt;
}

std::optional<std::string> put_whole(const std::filesystem::path& to, const std::string& text,
                                     Place place) {
  auto unfinished = Unfinished::beside(to);
  if (!unfinished) return unfinished.error().what.text();
  if (const auto written = unfinished->write(text); !written) return written.error().what.text();
  if (const auto put = unfinished->put(place); !put) return put.error().what.text();
  return std::nullopt;
}

}  // namespace rb
