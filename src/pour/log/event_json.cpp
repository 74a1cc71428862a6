// Events from lines of JSON, by the descriptors of their kinds.
#include "pour/log/event_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "pour/log/event_fields.h"
#include "pour/log/kind_fields.h"

namespace rb {

namespace {

constexpr Span kUncertain{0, 86400, "s"};

// What must hold between the fields of a kind.
template <class Kind>
void hold_together(Fields& /*fields*/, Kind& /*kind*/) {}
void hold_together(Fields& f, event::Truck& truck) {
  if (truck.arrived < truck.batched)
    f.refuse("arrived", said("is before batched"), said("Check both times"));
}

// A line's id may be the specimen's own.
void hold_together(Fields& f, event::Specimen& specimen) {
  if (specimen.specimen.empty()) specimen.specimen.text = f.maybe_id("id");
  if (specimen.specimen.empty()) {
    f.refuse("specimen", said("is missing"), said("Name the specimen as its test did"));
  }
}

void hold_together(Fields& f, event::Blemish& blemish) {
  constexpr Length kMillimetre = millimetres(1);
  const Patch& p = blemish.patch;
  if (blemish.outline.empty()) return;
  if (blemish.outline.size() < 3) f.refuse("outline", said("needs three points at least"));
  for (const trade::FacePoint& point : blemish.outline) {
    if (point.x >= p.x - kMillimetre && point.x <= p.x + p.w + kMillimetre &&
        point.z >= p.z - kMillimetre && point.z <= p.z + p.h + kMillimetre) {
      continue;
    }
    f.refuse("outline", said("leaves the patch told by x, z, w and h"),
             said("Give the patch that holds all of it"));
  }
}

// What a key signs stands whole or not at all.
void hold_together(Fields& f, event::Sign& sign) {
  const bool keyed = sign.key.has_value();
  const auto hold = [&](const char* field, bool there) {
    if (there == keyed) return;
    f.refuse(field, keyed ? said("is missing beside key") : said("stands without key"),
             said("A signature by key has key, book, number, hash, events and signature"));
  };
  hold("book", !sign.book.empty());
  hold("number", sign.number.has_value());
  hold("hash", sign.hash.has_value());
  hold("events", sign.events.has_value());
  hold("signature", sign.signature.has_value());
}

void hold_together(Fields& f, event::Photo& photo) {
  if (photo.target.empty() && !photo.element) {
    f.refuse("target", said("is missing"), said("Name a blemish, a repair or an element"));
  }
  if (photo.name.find_first_of("/\\") != std::string::npos || photo.name.front() == '.') {
    f.refuse("name", {said("is \"{given}\"; a file's name without a folder was expected"),
                      {{"given", photo.name}}});
  }
}

void hold_together(Fields& f, event::Enrol& enrol) {
  const auto hold = [&](const char* field, bool there) {
    if (there == !enrol.witness.empty()) return;
    f.refuse(field, there ? said("stands without witness") : said("is missing beside witness"),
             said("A witnessed enrolment has witness, witness_key and witness_signature"));
  };
  hold("witness_key", enrol.witness_key.has_value());
  hold("witness_signature", enrol.witness_signature.has_value());
}

using Reader = Happening (*)(Fields&);

template <std::size_t I>
Happening read_kind(Fields& f) {
  using Kind = std::variant_alternative_t<I, event::AnyKind>;
  Kind kind{};
  for_fields<Kind>([&](const auto& field) { read_field(f, kind, field); });
  hold_together(f, kind);
  return Happening{std::move(kind)};
}

template <std::size_t... I>
constexpr std::array<Reader, sizeof...(I)> readers(std::index_sequence<I...>) {
  return {&read_kind<I>...};
}
constexpr auto kReaders = readers(std::make_index_sequence<std::variant_size_v<event::AnyKind>>{});

std::size_t kind_index(Fields& f) {
  const auto& all = kind_words();
  const std::string kind = f.id("do");
  const auto found = std::find(all.begin(), all.end(), kind);
  if (found != all.end()) return static_cast<std::size_t>(found - all.begin());
  f.refuse("do", {said("is \"{given}\", a kind this version does not know"), {{"given", kind}}},
           {said("Known kinds: {kinds}"), {{"kinds", fmt::format("{}", fmt::join(all, ", "))}}});
}

Event read_event(const Json& object, const Saying& where, Bounds bounds) {
  Fields f{object, where, bounds};
  Event event;
  const std::size_t kind = kind_index(f);
  event.at = f.moment("at");
  event.by = PersonId{f.id("by")};
  event.id = EventId{f.maybe_id("id")};
  if (f.has("entered")) {
    event.entry =
        Entry{f.moment("entered"), seconds(f.number("mono", {0, 1e12, "s"})), f.id("boot")};
  }
  event.uncertain = seconds(f.maybe_number("uncertain_s", kUncertain).value_or(0));
  event.what = kReaders.at(kind)(f);
  event.extra = f.unknown();
  return event;
}

void hold_line(std::size_t bytes, std::size_t most, const Saying& where, Said line) {
  if (bytes <= most) return;
  throw BadField{
      Error{Error::Kind::input,
            where,
            {said("is {bytes} bytes long; {line} may have {most}"),
             {{"bytes", counted(bytes)}, {"line", Term{line}}, {"most", counted(most)}}},
            said("Shorten its texts, or leave out fields that are not of a pour script")}};
}

}  // namespace

Result<Event> parse_event(std::string_view line, const Saying& where, Bounds bounds) {
  try {
    const bool kept = bounds == Bounds::kept;
    if (kept) hold_line(line.size(), most::kOpenLineBytes, where, said("a line"));
    Event event = read_event(parse_json(line, where), where, bounds);
    if (kept && std::holds_alternative<event::Sign>(event.what)) {
      hold_line(line.size(), most::kSignLineBytes, where, said("a signature"));
    } else if (kept && !std::holds_alternative<event::PourOpen>(event.what)) {
      hold_line(line.size(), most::kLineBytes, where, said("a line that opens no pour"));
    }
    return event;
  } catch (const BadField& bad) {
    return Failed{bad.error};
  }
}

Result<Event> with_fields(const Event& event, const std::string& fields, const Saying& where) {
  try {
    const Json set = parse_json(fields, where);
    for (const char* kept : {"do", "id", "entered", "mono", "boot"}) {
      if (set.contains(kept)) {
        return fail(Error::Kind::input, field_of(where, "set"),
                    {said("changes \"{given}\", which stands"), {{"given", kept}}},
                    said("Strike the event and enter it anew"));
      }
    }
    Json json = event_json(event);
    if (set.contains("at")) json.erase("uncertain_s");  // who puts a time right vouches for it
    json.merge_patch(set);
    Event changed = read_event(json, where, Bounds::as_it_is);
    if (changed.at == event.at && changed.by == event.by && changed.what == event.what &&
        changed.uncertain == event.uncertain) {
      return fail(Error::Kind::input, field_of(where, "set"),
                  said("changes nothing the event tells"),
                  said("Name fields of the event with other values than they have"));
    }
    return changed;
  } catch (const BadField& bad) {
    return Failed{bad.error};
  }
}

std::vector<trade::FacePoint> read_outline(Fields& f, const char* field, const Span& span) {
  std::vector<trade::FacePoint> points;
  if (!f.has(field)) return points;
  const Json& list = f.any(field);
  const auto no_points = [&] {
    f.refuse(field,
             {said("is {given}; a list of places [x, z] was expected"), {{"given", quoted(list)}}});
  };
  if (!list.is_array()) no_points();
  if (f.bounds() == Bounds::kept && list.size() > most::kOutlinePoints) {
    f.refuse(field, {said("has {entries} entries; it may have {most}"),
                     {{"entries", counted(list.size())}, {"most", counted(most::kOutlinePoints)}}});
  }
  points.reserve(list.size());
  for (const Json& point : list) {
    if (!point.is_array() || point.size() != 2 || !point[0].is_number() || !point[1].is_number()) {
      no_points();
    }
    const double x = point[0].get<double>(), z = point[1].get<double>();
    if (!(x >= span.least && x <= span.most && z >= span.least && z <= span.most)) no_points();
    points.push_back({metres(x), metres(z)});
  }
  return points;
}

}  // namespace rb
