#include "pour/plan/amend.h"

#include "pour/plan/json_fields.h"
#include "pour/plan/plan_json.h"

namespace rb {

namespace {

using Parts = std::vector<std::string>;

std::string unescaped(std::string_view part) {
  std::string text;
  for (std::size_t i = 0; i < part.size(); ++i) {
    const bool escape =
        part[i] == '~' && i + 1 < part.size() && (part[i + 1] == '0' || part[i + 1] == '1');
    text += !escape ? part[i] : part[++i] == '0' ? '~' : '/';
  }
  return text;
}

Parts parts_of(std::string_view path) {
  Parts parts;
  while (true) {
    const auto end = path.find('/');
    parts.push_back(unescaped(path.substr(0, end)));
    if (end == std::string_view::npos) return parts;
    path.remove_prefix(end + 1);
  }
}

// A path of the list: "" stands for any id.
struct Open {
  Parts parts;
  enum class May { change, add, both } may = May::change;
};

const std::vector<Open>& open_paths() {
  using May = Open::May;
  static const std::vector<Open> kOpen{
      {{"name"}},
      {{"site"}},
      {{"people", ""}, May::both},
      {{"people", "", "name"}},
      {{"people", "", "role"}},
      {{"mixes", ""}, May::add},
      {{"elements", "", "thickness"}},
      {{"elements", "", "thickness_top"}},
      {{"elements", "", "rows", "", ""}, May::add},
      {{"elements", "", "rows", "", "", "z"}},
      {{"elements", "", "rows", "", "", "serves"}},
  };
  return kOpen;
}

const Open* opened(const Parts& parts) {
  for (const Open& open : open_paths()) {
    bool fits = open.parts.size() == parts.size();
    for (std::size_t i = 0; fits && i < parts.size(); ++i) {
      fits = open.parts[i].empty() ? !parts[i].empty() : open.parts[i] == parts[i];
    }
    if (fits) return &open;
  }
  return nullptr;
}

[[noreturn]] void refuse_path(const std::string& path, Saying why, Saying remedy = {}) {
  throw BadField{Error{Error::Kind::input,
                       {said("path {path}"), {{"path", path}}},
                       std::move(why),
                       std::move(remedy)}};
}

class Amending {
 public:
  Amending(const Plan& plan, const std::string& path, Json value)
      : json_(Json::parse(to_json(plan))),
        path_(path),
        parts_(parts_of(path)),
        value_(std::move(value)) {}

  Amended make(Bounds bounds) {
    const Open* open = opened(parts_);
    if (open == nullptr) {
      refuse_path(
          path_, said("is none that may be amended while a pour goes on"),
          said("People, mixes, rows and thicknesses may; for another plan open a new pour"));
    }
    may_ = open->may;
    put(json_, 0);
    auto plan = parse_plan(json_.dump(), said("the plan as amended"), bounds);
    if (!plan) throw BadField{plan.error()};
    made_.plan = std::move(*plan);
    tell_row();
    return std::move(made_);
  }

 private:
  // Goes down the path from part `at` of it, and puts the value where it ends.
  void put(Json& here, std::size_t at) {
    const std::string& field = parts_[at];
    if (at + 1 == parts_.size()) return put_field(here, field);
    Json& list = here[field];
    if (!list.is_array()) list = Json::array();
    const bool row = field == "rows";
    const std::size_t id_at = row ? at + 2 : at + 1;
    for (Json& item : list) {
      if (item.at("id") != parts_[id_at]) continue;
      if (row && item.value("side", "near") != parts_[at + 1]) continue;
      if (id_at + 1 == parts_.size()) return put_item(item);
      return put(item, id_at + 1);
    }
    if (id_at + 1 < parts_.size() || may_ == Open::May::change) {
      refuse_path(path_, {said("names {id}, which is not in the plan"), {{"id", parts_[id_at]}}});
    }
    Json item = whole(row ? parts_[at + 1] : std::string{}, parts_[id_at]);
    list.push_back(std::move(item));
  }

  void put_field(Json& here, const std::string& field) {
    if (here.contains(field)) made_.was = here[field].dump();
    if (made_.was == value_.dump()) refuse_same();
    here[field] = value_;
  }

  void put_item(Json& item) {
    if (may_ == Open::May::add) {
      refuse_path(path_,
                  {said("names {id}, which is in the plan already"), {{"id", parts_.back()}}},
                  said("What was logged goes by it; add another one"));
    }
    made_.was = item.dump();
    Json now = whole({}, parts_.back());
    if (now == item) refuse_same();
    item = std::move(now);
  }

  // The object that is added, with the id and side its path gives.
  Json whole(const std::string& side, const std::string& id) {
    if (!value_.is_object()) {
      refuse_path(path_, {said("is to be {given}; an object {...} was expected"),
                          {{"given", quoted(value_)}}});
    }
    Json item = value_;
    item["id"] = id;
    if (!side.empty()) item["side"] = side;
    return item;
  }

  [[noreturn]] void refuse_same() {
    refuse_path(path_, said("changes nothing of the plan"), said("Give another value"));
  }

  void tell_row() {
    if (parts_.size() < 5 || parts_[2] != "rows") return;
    for (std::size_t e = 0; e < made_.plan.elements.size(); ++e) {
      const Element& element = made_.plan.elements[e];
      if (element.id.text != parts_[1]) continue;
      if (parts_.size() == 5) made_.row_added_to = e;
      const bool moved = parts_.size() == 6 && parts_[5] == "z";
      for (std::size_t r = 0; moved && r < element.rows.size(); ++r) {
        const Row& row = element.rows[r];
        if (row.id.text == parts_[4] && to_text(row.side) == parts_[3]) made_.row_moved = {e, r};
      }
    }
  }

  Json json_;
  const std::string& path_;
  Parts parts_;
  Json value_;
  Open::May may_ = Open::May::change;
  Amended made_;
};

}  // namespace

Result<Amended> amended(const Plan& plan, const std::string& path, const std::string& value,
                        Bounds bounds) {
  try {
    return Amending{plan, path, parse_json(value, said("field value"))}.make(bounds);
  } catch (const BadField& bad) {
    return Failed{bad.error};
  }
}

namespace {

bool is_height(const Parts& parts) {
  const std::string& last = parts.back();
  return last == "thickness" || last == "thickness_top" || (parts.size() == 6 && last == "z");
}

std::string text_or(const Json& object, const char* field) {
  return object.contains(field) && object[field].is_string() ? object[field].get<std::string>()
                                                             : std::string{};
}

}  // namespace

Saying amended_what(const std::string& path) {
  const Parts parts = parts_of(path);
  const auto of = [&](Said words, std::size_t id) { return Saying{words, {{"id", parts[id]}}}; };
  const auto of_row = [&](Said words) {
    return Saying{words, {{"row", parts[4]}, {"element", parts[1]}}};
  };
  const std::string& last = parts.back();
  if (path == "name") return said("name of the pour");
  if (path == "site") return said("site");
  if (parts[0] == "people" && parts.size() == 2) return of(said("person {id}"), 1);
  if (parts[0] == "people" && last == "name") return of(said("name of {id}"), 1);
  if (parts[0] == "people" && last == "role") return of(said("role of {id}"), 1);
  if (parts[0] == "mixes" && parts.size() == 2) return of(said("mix {id}"), 1);
  if (last == "thickness") return of(said("thickness of {id}"), 1);
  if (last == "thickness_top") return of(said("thickness of {id} at its top"), 1);
  if (parts.size() == 5) return of_row(said("row {row} of {element}"));
  if (parts.size() == 6 && last == "z") return of_row(said("height of row {row} of {element}"));
  if (parts.size() == 6) return of_row(said("lifts of row {row} of {element}"));
  return path;
}

Saying amended_value(const std::string& path, const std::string& value) {
  if (value.empty()) return {};
  const Parts parts = parts_of(path);
  const Json json = Json::parse(value, nullptr, false);
  if (json.is_number() && is_height(parts)) {
    return Saying{said("{height}"), {{"height", amount(metres(json.get<double>()))}}};
  }
  if (json.is_string()) return json.get<std::string>();
  if (json.is_object() && parts[0] == "people") {
    const std::string name = text_or(json, "name");
    const std::string role = text_or(json, "role");
    return role.empty() ? name : name + ", " + role;
  }
  if (json.is_object() && parts.size() == 5 && json.contains("z") && json["z"].is_number()) {
    return Saying{said("at {height}"), {{"height", amount(metres(json["z"].get<double>()))}}};
  }
  return value;
}

std::string amend_path(const std::vector<std::string>& parts) {
  std::string path;
  for (const std::string& part : parts) {
    if (!path.empty()) path += '/';
    for (const char c : part) {
      if (c == '~' || c == '/') {
        path += c == '~' ? "~0" : "~1";
      } else {
        path += c;
      }
    }
  }
  return path;
}

}  // namespace rb
