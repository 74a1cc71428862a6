#include "app/paper_job.h"

#include <mutex>

#include "app/put_whole.h"
#include "record/sheet/run_sheet_pdf.h"

namespace rb {

namespace {

constexpr int kMostNames = 99;  // of one element and day

std::string name_of(const screens::WriteSheet& wish, int number) {
  std::string element;
  for (const char c : wish.planned->plan.elements.front().id.text) {
    const bool plain = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    if (plain) element += c;
  }
  std::string name = "run-sheet-" + (element.empty() ? "element" : element.substr(0, 40)) + "-" +
                     day_text(wish.at, wish.voice.utc_offset);
  if (number > 1) name += "-" + std::to_string(number);
  return name + ".pdf";
}

}  // namespace

Result<Path> write_run_sheet(const screens::WriteSheet& wish, const std::vector<Path>& folders) {
  const RunSheetManner manner{wish.voice, std::nullopt};
  const Paper paper = wish.voice.units == Units::us ? kLetter : kA4;
  const auto pdf = to_pdf(run_sheet(*wish.planned, *wish.wish, manner), paper);
  if (!pdf) return Failed{pdf.error()};
  std::string wrong;
  for (const Path& folder : folders) {
    std::error_code error;
    if (folder.empty() || !std::filesystem::is_directory(folder, error)) continue;
    for (int number = 1; number <= kMostNames; ++number) {
      const Path to = folder / name_of(wish, number);
      if (std::filesystem::exists(std::filesystem::symlink_status(to, error))) continue;
      const auto failed = put_whole(to, *pdf, Place::must_be_free);
      if (!failed) return to;
      wrong = *failed;
      break;
    }
  }
  return fail(Error::Kind::input, folders.empty() ? std::string{} : folders.front().string(),
              wrong.empty() ? Saying{said("there is no such folder")} : Saying{wrong},
              said("Plug in the mirror's stick, or make room"));
}

struct PaperJob::Shared {
  std::mutex mutex;
  screens::CopySeen seen{screens::CopySeen::State::under_way, 0, {}};
  bool begun = false;
};

PaperJob::PaperJob(Write write, Voice voice, std::function<void()> changed)
    : shared_(std::make_shared<Shared>()) {
  auto turn = [shared = shared_, write = std::move(write), voice,
               changed = std::move(changed)](bool /*stopping*/) -> std::optional<Seconds> {
    {
      const std::lock_guard lock(shared->mutex);
      if (shared->begun) return std::nullopt;
      shared->begun = true;
    }
    const auto written = write();
    {
      using State = screens::CopySeen::State;
      const std::lock_guard lock(shared->mutex);
      shared->seen = written
                         ? screens::CopySeen{State::made, 1, *written}
                         : screens::CopySeen{State::failed, 0, words_of(written.error(), voice)};
    }
    if (changed) changed();
    return std::nullopt;
  };
  thread_ = std::make_unique<store::SideThread>(std::move(turn));
}

screens::CopySeen PaperJob::seen() const {
  const std::lock_guard lock(shared_->mutex);
  return shared_->seen;
}

}  // namespace rb
