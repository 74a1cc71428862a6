#include "app/put_whole.h"

#include <fstream>
#include <system_error>

namespace rb {

std::optional<std::string> put_whole(
    const std::filesystem::path& to,
    const std::function<std::optional<std::string>(const std::filesystem::path&)>& write) {
  const std::filesystem::path beside = to.string() + ".new";
  std::optional<std::string> wrong = write(beside);
  std::error_code failed;
  if (!wrong) std::filesystem::rename(beside, to, failed);
  if (failed) wrong = failed.message();
  if (wrong) std::filesystem::remove(beside, failed);
  return wrong;
}

std::optional<std::string> put_whole(const std::filesystem::path& to, const std::string& text) {
  return put_whole(to, [&](const std::filesystem::path& beside) -> std::optional<std::string> {
    std::ofstream out{beside, std::ios::binary};
    out << text;
    out.close();
    if (out) return std::nullopt;
    return "cannot be written";
  });
}

}  // namespace rb
