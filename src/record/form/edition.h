// Which edition of a day's record comes next in a folder: nothing written earlier is written over.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "record/model/daily_record.h"

namespace rb {

struct NextEdition {
  int number = 1;
  std::optional<EarlierEdition> earlier{};
};

/// Looks for files of the folder that begin as `name` does ("consolidation-2026-03-02-TAG"):
/// edition 1 goes on with "." or "-WORD", edition n with "-n." or "-n-WORD". The earlier edition is
/// told by its PDF, or another of its files.
NextEdition next_edition(const std::filesystem::path& folder, const std::string& name);

/// "consolidation-2026-03-02-TAG", from the second edition on with "-2".
std::string edition_name(const std::string& name, int edition);

}  // namespace rb
