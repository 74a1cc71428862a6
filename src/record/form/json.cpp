#include "record/form/json.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "record/model/book_words.h"
#include "record/model/clean_text.h"
#include "record/told/shown.h"

namespace rb {

namespace {

using Json = nlohmann::ordered_json;

struct ToJson {
  Json operator()(std::monostate) const { return nullptr; }
  Json operator()(const std::string& text) const { return text; }
  Json operator()(bool yes) const { return yes; }
  Json operator()(double number) const { return std::isfinite(number) ? Json(number) : Json(); }
  Json operator()(Moment moment) const { return to_text(moment); }
};

// The texts of a row as its reader sees them, for all that stands on paper.
Json texts_of(const Table& table, const std::vector<Cell>& row, const Shown& shown) {
  Json texts = Json::object();
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    const Column& column = table.columns[i];
    if (column.on == On::data || std::holds_alternative<std::monostate>(row[i])) continue;
    texts[column.key] = shown.text(row[i], column);
  }
  return texts;
}

// How a table is headed on paper, column by column.
Json headed(const Table& table, const Shown& shown) {
  Json columns = Json::array();
  for (const Column& column : table.columns) {
    if (column.on == On::data) continue;
    columns.push_back({{"shown", column.key},
                       {"heading", shown.told(column.heading)},
                       {"unit", unit_text(column.measure, shown.units())}});
  }
  return Json{{"title", shown.title(table)}, {"columns", std::move(columns)}};
}

Json rows_of(const Table& table, const Shown& shown) {
  Json rows = Json::array();
  for (const auto& row : table.rows) {
    Json object = Json::object();
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      const Column& column = table.columns[i];
      if (column.on == On::paper) continue;
      // Whole numbers are written without a fraction.
      const auto* number = std::get_if<double>(&row[i]);
      const bool whole = number != nullptr && column.measure == Measure::count;
      object[key_with_unit(column)] =
          whole ? Json(std::llround(*number)) : std::visit(ToJson{}, row[i]);
    }
    object["shown"] = texts_of(table, row, shown);
    rows.push_back(std::move(object));
  }
  return rows;
}

Json map_of(const DoseMap& map) {
  Json patches = Json::array();
  for (const DoseMapPatch& p : map.patches) {
    patches.push_back({in_metres(p.x), in_metres(p.z), in_metres(p.w), in_metres(p.h),
                       in_seconds(p.dose_low), in_seconds(p.dose_high)});
  }
  return Json{{"element", clean_text(map.element)},
              {"side", to_text(map.side)},
              {"length_m", in_metres(map.length)},
              {"height_m", in_metres(map.height)},
              {"dose_min_s", in_seconds(map.dose_min)},
              {"dose_max_s", in_seconds(map.dose_max)},
              {"patch_fields", {"x_m", "z_m", "w_m", "h_m", "dose_low_s", "dose_high_s"}},
              {"patches", std::move(patches)}};
}

}  // namespace

std::string to_json(const DailyRecord& record) {
  const Shown shown{record};
  Json out{
      {"record", "daily consolidation"},
      {"version", 1},
      {"day", day_text(record)},
      {"starts", to_text(record.day)},
      {"ends", to_text(record.day_end)},
      {"utc_offset_min", record.utc_offset.count()},
      {"utc_offset_end_min", record.utc_offset_end.count()},
      {"language", record.language.code()},
      {"units", record.units == Units::us ? "us" : "si"},
      {"site", clean_text(record.site)},
      {"as_of", to_text(record.as_of)},
      {"book",
       {{"tag", clean_text(record.book.tag)},
        {"head_event", record.book.head_event > 0 ? Json(record.book.head_event) : Json()},
        {"head_hash", clean_text(record.book.head_hash)},
        {"short_code", head_code(record.book)},
        {"events", record.book.events},
        {"verified", record.book.looked.empty() ? Json() : Json(clean_text(record.book.looked))},
        {"damage", record.book.damage.empty() ? Json() : Json(clean_text(record.book.damage))}}}};
  Json heads = Json::object();
  for (const Table& table : tables_of(record)) {
    out[table.key] = rows_of(table, shown);
    heads[table.key] = headed(table, shown);
  }
  out["tables"] = std::move(heads);
  Json maps = Json::array();
  for (const PourRecord& pour : record.pours) {
    for (const DoseMap& map : pour.dose_maps) {
      Json one = map_of(map);
      one["pour"] = clean_text(pour.id);
      maps.push_back(std::move(one));
    }
  }
  out["dose_maps"] = std::move(maps);
  Json cautions = Json::array();
  for (const std::string& caution : record_cautions()) cautions.push_back(shown.told(caution));
  out["cautions"] = std::move(cautions);
  return out.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace rb
