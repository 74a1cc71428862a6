// Writes the record into a folder, whole or nothing.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "record/model/daily_record.h"

namespace rb {

enum class Format { pdf, xlsx, csv, json, png, html };

/// "pdf", "html", "xlsx", "csv", "json", "png"; nothing on other text.
std::optional<Format> parse_format(std::string_view text);

/// "consolidation-2026-03-02-TAG": how the files' names begin.
std::string record_name(const DailyRecord& record);

/// Puts its seal under the record's JSON: what it gives stands in the file and in the PDF.
using Seal = std::function<std::string(const std::string& json)>;

/// One file for PDF, HTML, XLSX and JSON, one a table that has rows for CSV (with an index of
/// them), one a face for PNG; returns their paths. Each is written beside its place, made durable
/// and then renamed, so that nobody meets half a file. Nothing is written over: where a record of
/// the day and book stands, this one is the next edition (edition.h), named "...-2", and tells of
/// the one before. Error (input, naming the path): the folder is missing or cannot be written; then
/// nothing is left behind.
Result<std::vector<std::filesystem::path>> write_record(const DailyRecord& record,
                                                        const std::filesystem::path& folder,
                                                        const std::vector<Format>& formats,
                                                        const Seal& seal = {});

}  // namespace rb
