// The fields of an event kind, told once beside it (event.h): from them come its reading and its
// writing, its moments, what a correction of it changes, and the facts of its words.
#pragma once

namespace rb {

/// What a number may be; a message names the unit, so that a value in the wrong unit shows.
struct Span {
  double least = 0;
  double most = 0;
  const char* unit = "";
  bool open_least = false;  ///< least itself is not allowed
};

enum class Need {
  must,   ///< missing or empty is refused
  may,    ///< left out when empty
  shown,  ///< may be missing, is always written
};

/// A field by its name in a script. A number stands there in the unit of `span`.
template <class Kind, class T>
struct Field {
  using Value = T;
  const char* name;
  T Kind::*at;
  Span span{};
  Need need = Need::must;
  bool moves = true;  ///< a moment that moves with the event's own when that is put right
};

/// A row's place: the fields element, side (left out: near) and row.
template <class Kind, class T>
struct PlaceField {
  T Kind::*at;
};
/// A patch of the face: x, z, w and h.
template <class Kind, class T>
struct PatchField {
  T Kind::*at;
  Span span{};
};
/// A JSON object kept as its text.
template <class Kind, class T>
struct ObjectField {
  const char* name;
  T Kind::*at;
};
/// A JSON value of any kind kept as its text.
template <class Kind, class T>
struct ValueField {
  const char* name;
  T Kind::*at;
};
/// A line drawn on the face: a list of [x, z]; left out when empty.
template <class Kind, class T>
struct OutlineField {
  const char* name;
  T Kind::*at;
  Span span{};
};

// Clang 14 works out no arguments of an aggregate by itself.
template <class Kind, class T>
Field(const char*, T Kind::*) -> Field<Kind, T>;
template <class Kind, class T>
Field(const char*, T Kind::*, Span) -> Field<Kind, T>;
template <class Kind, class T>
Field(const char*, T Kind::*, Span, Need) -> Field<Kind, T>;
template <class Kind, class T>
Field(const char*, T Kind::*, Span, Need, bool) -> Field<Kind, T>;
template <class Kind, class T>
PlaceField(T Kind::*) -> PlaceField<Kind, T>;
template <class Kind, class T>
PatchField(T Kind::*, Span) -> PatchField<Kind, T>;
template <class Kind, class T>
ObjectField(const char*, T Kind::*) -> ObjectField<Kind, T>;
template <class Kind, class T>
ValueField(const char*, T Kind::*) -> ValueField<Kind, T>;
template <class Kind, class T>
OutlineField(const char*, T Kind::*, Span) -> OutlineField<Kind, T>;

}  // namespace rb
