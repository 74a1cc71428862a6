#include "plain_fault.h"

#include <algorithm>

namespace rb::faults {

namespace {

using store::Done;
using store::PlainFile;

void put(std::string& bytes, std::uint64_t at, std::string_view what) {
  const auto end = static_cast<std::size_t>(at) + what.size();
  if (bytes.size() < end) bytes.resize(end, '\0');
  bytes.replace(static_cast<std::size_t>(at), what.size(), what);
}

/// What of a write the disk had done when the power went.
void survive(std::string& bytes, const PlainData::Write& write, std::mt19937& random) {
  constexpr std::size_t kBlock = 64;
  switch (random() % 4) {
    case 0:
      return;
    case 1:
      put(bytes, write.at, write.bytes);
      return;
    case 2:
      put(bytes, write.at,
          std::string_view(write.bytes).substr(0, random() % (write.bytes.size() + 1)));
      return;
    default:
      for (std::size_t from = 0; from < write.bytes.size(); from += kBlock) {
        if (random() % 2 == 0) {
          put(bytes, write.at + from, std::string_view(write.bytes).substr(from, kBlock));
        }
      }
  }
}

class FaultFile : public PlainFile {
 public:
  FaultFile(PlainFaultDisk& disk, std::shared_ptr<PlainData> data)
      : disk_(disk), data_(std::move(data)) {}

  Done<std::string> read(std::uint64_t from, std::size_t size) override {
    if (from >= data_->now.size()) return std::string{};
    return data_->now.substr(static_cast<std::size_t>(from), size);
  }
  Done<void> write(std::uint64_t at, std::string_view bytes) override {
    const auto wrong = disk_.step();
    if (wrong) bytes = bytes.substr(0, disk_.random()() % (bytes.size() + 1));
    put(data_->now, at, bytes);
    data_->pending.push_back({at, std::string(bytes)});
    if (wrong) return tl::unexpected(wrong);
    return {};
  }
  Done<void> sync() override {
    if (const auto wrong = disk_.step()) {
      // The system forgets after one failure that there was something to write.
      if (disk_.random()() % 2 == 0) forget();
      return tl::unexpected(wrong);
    }
    data_->durable = data_->now;
    data_->pending.clear();
    return {};
  }
  Done<std::uint64_t> size() override { return data_->now.size(); }
  bool in_place() override { return true; }

 private:
  /// Some of it reached the disk, the rest never will, though it still reads back.
  void forget() {
    for (const auto& write : data_->pending) survive(data_->durable, write, disk_.random());
    data_->pending.clear();
  }
  PlainFaultDisk& disk_;
  std::shared_ptr<PlainData> data_;
};

tl::unexpected<std::error_code> errc(std::errc code) {
  return tl::unexpected(std::make_error_code(code));
}

}  // namespace

std::error_code PlainFaultDisk::step() {
  if (dead_) return std::make_error_code(std::errc::io_error);
  if (left_ == 0 || --left_ > 0) return {};
  failed_ = true;
  dead_ = fault_ == Fault::power;
  return std::make_error_code(fault_ == Fault::full ? std::errc::no_space_on_device
                                                    : std::errc::io_error);
}

void PlainFaultDisk::power_up() {
  for (const auto& [name, data] : now_) {
    if (!durable_.contains(name) && random_() % 2 == 0) durable_[name] = data;
  }
  for (auto it = durable_.begin(); it != durable_.end();) {
    const bool renamed = !now_.contains(it->first);
    it = renamed && random_() % 2 == 0 ? durable_.erase(it) : std::next(it);
  }
  for (auto& [name, data] : durable_) {
    auto bytes = data->durable;
    for (const auto& write : data->pending) survive(bytes, write, random_);
    auto after = std::make_shared<PlainData>();
    after->durable = after->now = bytes;
    data = after;
  }
  now_ = durable_;
  left_ = 0;
  failed_ = dead_ = false;
}

Done<std::unique_ptr<PlainFile>> PlainFaultDisk::make(const std::filesystem::path& path) {
  if (const auto wrong = step()) return tl::unexpected(wrong);
  if (now_.contains(path)) return errc(std::errc::file_exists);
  now_[path] = std::make_shared<PlainData>();
  return std::make_unique<FaultFile>(*this, now_[path]);
}

Done<std::unique_ptr<PlainFile>> PlainFaultDisk::open(const std::filesystem::path& path) {
  if (const auto wrong = step()) return tl::unexpected(wrong);
  if (!now_.contains(path)) return errc(std::errc::no_such_file_or_directory);
  auto& data = *now_[path];
  data.now = data.durable;  // what a failed sync forgot does not read back
  for (const auto& write : data.pending) put(data.now, write.at, write.bytes);
  return std::make_unique<FaultFile>(*this, now_[path]);
}

Done<void> PlainFaultDisk::rename(const std::filesystem::path& from,
                                  const std::filesystem::path& to) {
  if (const auto wrong = step()) return tl::unexpected(wrong);
  if (now_.contains(to)) return errc(std::errc::file_exists);
  if (!now_.contains(from)) return errc(std::errc::no_such_file_or_directory);
  now_[to] = now_[from];
  now_.erase(from);
  return {};
}

Done<void> PlainFaultDisk::sync_folder(const std::filesystem::path& /*folder*/) {
  if (const auto wrong = step()) return tl::unexpected(wrong);
  durable_ = now_;
  return {};
}

}  // namespace rb::faults
