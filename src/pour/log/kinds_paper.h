// What stops a pour, what is written of it, and what is found and mended afterwards.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "base/hex.h"
#include "pour/log/kinds_placing.h"
#include "trade/shape/outline.h"

namespace rb {

namespace event {

/// What is chosen from a list instead of typed. A book keeps its word beside the English text, so
/// that it reads in whatever language the reader has.
enum class Chosen {
  pump_stopped,
  no_trucks,
  rain,
  form_or_bracing,
  vibrator_or_power,
  grout_leaks,
  mix_dry,
  mix_wet,
  inspector_on_site,
  tapped_by_mistake,
  wrong_row,
  misread_height,
  tapped_late,
  told_later,
  taken_back,
  looked_over,
  engineer_agreed,
  superintendent_agreed,
  told_clear,
  as_built,
  other_people,
};
/// "pump-stopped", as a script has it.
const char* to_text(Chosen what);
/// Every word of it, in order.
std::span<const char* const> words_of(Chosen);
/// "Pump stopped", to be said in any language.
const char* says(Chosen what);

struct Hold {
  std::string reason;
  std::optional<Chosen> chosen{};
  static constexpr const char* kWord = "hold";
  static constexpr auto fields() {
    return std::tuple{Field{"reason", &Hold::reason}, Field{"chosen", &Hold::chosen}};
  }
  [[nodiscard]] const char* says() const { return said("Hold: {reason}"); }
  bool operator==(const Hold&) const = default;
};
struct Resume {
  std::string reason;
  std::optional<Chosen> chosen{};
  static constexpr const char* kWord = "resume";
  static constexpr auto fields() {
    return std::tuple{Field{"reason", &Resume::reason, {}, Need::may},
                      Field{"chosen", &Resume::chosen}};
  }
  [[nodiscard]] const char* says() const { return said("Resumed"); }
  bool operator==(const Resume&) const = default;
};
struct Note {
  std::string text;
  std::optional<ElementId> element;
  std::optional<int> lift;
  std::optional<Chosen> chosen{};
  static constexpr const char* kWord = "note";
  static constexpr auto fields() {
    return std::tuple{Field{"text", &Note::text}, Field{"element", &Note::element},
                      Field{"lift", &Note::lift, kLifts}, Field{"chosen", &Note::chosen}};
  }
  [[nodiscard]] const char* says() const { return said("Note: {text}"); }
  bool operator==(const Note&) const = default;
};
struct Fix {
  EventId target;
  std::string set;  ///< the fields to change, a JSON object's text
  std::string why;
  std::optional<Chosen> chosen{};
  static constexpr const char* kWord = "fix";
  static constexpr auto fields() {
    return std::tuple{Field{"target", &Fix::target}, ObjectField{"set", &Fix::set},
                      Field{"why", &Fix::why}, Field{"chosen", &Fix::chosen}};
  }
  [[nodiscard]] const char* says() const { return said("Correction"); }
  bool operator==(const Fix&) const = default;
};
struct Strike {
  EventId target;
  std::string why;
  std::optional<Chosen> chosen{};
  static constexpr const char* kWord = "strike";
  static constexpr auto fields() {
    return std::tuple{Field{"target", &Strike::target}, Field{"why", &Strike::why},
                      Field{"chosen", &Strike::chosen}};
  }
  [[nodiscard]] const char* says() const { return said("Struck out"); }
  bool operator==(const Strike&) const = default;
};
struct PourClose {
  static constexpr const char* kWord = "pour-close";
  static constexpr auto fields() { return std::tuple<>{}; }
  [[nodiscard]] const char* says() const { return said("Pour closed"); }
  bool operator==(const PourClose&) const = default;
};
/// Whose name a pour is signed by.
enum class Role {
  foreman,
  inspector,
  superintendent,
};
/// "foreman", as a script has it.
const char* to_text(Role role);
/// Every word of it, in order.
std::span<const char* const> words_of(Role);

inline constexpr Span kKeyBytes{32, 32, "bytes"};        ///< of Ed25519, public half
inline constexpr Span kHashBytes{32, 32, "bytes"};       ///< of an event, of a file
inline constexpr Span kSignatureBytes{64, 64, "bytes"};  ///< of Ed25519
inline constexpr Span kEventNumbers{0, 2000000000, ""};

/// With a key it is a signature of that key's over the book as it stood at an event; without one
/// it is a name and a word, as scripts and older books have it. All of the key's fields, or none.
struct Sign {
  Role role = Role::foreman;
  std::string verdict;
  std::string comment;
  std::optional<Hex> key{};         ///< of the person who signs
  std::string book{};               ///< the one signed in, by its name among all books
  std::optional<int> number{};      ///< of the book's last event that is signed for
  std::optional<Hex> hash{};        ///< of that event: it stands for all before it
  std::optional<int> events{};      ///< of the pour, that many were in the book
  std::optional<Hex> signature{};   ///< over all of it: sign/claim.h
  std::vector<std::string> open{};  ///< groups of findings that were not accepted, by their keys
  static constexpr const char* kWord = "sign";
  static constexpr auto fields() {
    return std::tuple{Field{"role", &Sign::role},
                      Field{"verdict", &Sign::verdict},
                      Field{"comment", &Sign::comment, {}, Need::may},
                      Field{"key", &Sign::key, kKeyBytes},
                      Field{"book", &Sign::book, {}, Need::may},
                      Field{"number", &Sign::number, kEventNumbers},
                      Field{"hash", &Sign::hash, kHashBytes},
                      Field{"events", &Sign::events, kEventNumbers},
                      Field{"signature", &Sign::signature, kSignatureBytes},
                      Field{"open", &Sign::open, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const { return said("Signed: {role}"); }
  bool operator==(const Sign&) const = default;
};
struct Strip {
  ElementId element;
  Side side = Side::near_side;
  static constexpr const char* kWord = "strip";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &Strip::element}, Field{"side", &Strip::side}};
  }
  [[nodiscard]] const char* says() const { return said("Stripped {element}"); }
  bool operator==(const Strip&) const = default;
};
/// What is found on a stripped face, by the trade's names (a list like that of ACI 309.2R; from
/// memory). A blemish of none of them keeps the words it was told in.
enum class Defect {
  honeycomb,
  bug_holes,
  cold_joint,
  pour_line,
  sand_streak,
  offset,
  bleed,
  crack,
  colour,
  spall,
};
/// "bug holes": what a book keeps, and what is said of it in any language.
const char* to_text(Defect what);
/// Every word of it, in order.
std::span<const char* const> words_of(Defect);
/// What a blemish's kind names, however it is written ("Bug-holes"); none: none of ours.
std::optional<Defect> defect_named(std::string_view kind);

struct Blemish {
  ElementId element;
  Side side = Side::near_side;
  std::string kind;
  Patch patch;
  std::string note;
  std::optional<Length> depth{};            ///< into the face
  std::vector<trade::FacePoint> outline{};  ///< as drawn, inside the patch; empty: all of it
  static constexpr const char* kWord = "blemish";
  static constexpr auto fields() {
    return std::tuple{Field{"element", &Blemish::element},
                      Field{"side", &Blemish::side},
                      Field{"kind", &Blemish::kind},
                      PatchField{&Blemish::patch, kPositions},
                      Field{"note", &Blemish::note, {}, Need::may},
                      Field{"depth", &Blemish::depth, {0, 5, "m"}},
                      OutlineField{"outline", &Blemish::outline, kPositions}};
  }
  [[nodiscard]] Area area() const {
    return outline.empty() ? patch.w * patch.h : trade::area_of(outline);
  }
  [[nodiscard]] const char* says() const { return said("Blemish: {kind}"); }
  bool operator==(const Blemish&) const = default;
};
struct Repair {
  EventId target;
  std::string note;
  std::string method{}, product{}, who{};
  static constexpr const char* kWord = "repair";
  static constexpr auto fields() {
    return std::tuple{Field{"target", &Repair::target},
                      Field{"note", &Repair::note, {}, Need::shown},
                      Field{"method", &Repair::method, {}, Need::may},
                      Field{"product", &Repair::product, {}, Need::may},
                      Field{"who", &Repair::who, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const { return said("Repair: {note}"); }
  bool operator==(const Repair&) const = default;
};
/// What came loose or gave way: a danger to whoever stands near.
enum class Moving {
  form,
  motor,
};
/// "form", as a script has it.
const char* to_text(Moving what);
/// Every word of it, in order.
std::span<const char* const> words_of(Moving);

/// The form moved or a motor came loose: the pour is on hold from then on.
struct Moved {
  Moving thing = Moving::form;
  ElementId element;
  std::string note;
  static constexpr const char* kWord = "moved";
  static constexpr auto fields() {
    return std::tuple{Field{"what", &Moved::thing}, Field{"element", &Moved::element},
                      Field{"note", &Moved::note, {}, Need::may}};
  }
  [[nodiscard]] const char* says() const { return says(thing); }
  [[nodiscard]] static const char* says(Moving what) {
    return what == Moving::form ? said("Form moved") : said("Motor came loose");
  }
  bool operator==(const Moved&) const = default;
};

/// What was not in order and was gone on over, with whoever logs it for a name. It lets the log
/// book what happens; it clears nothing.
struct Override {
  std::string rule;  ///< what was not in order: gates.h
  std::optional<ElementId> element;
  std::optional<Side> side;
  std::optional<RowId> row;
  std::optional<int> lift;
  std::string why;
  std::optional<Chosen> chosen{};
  static constexpr const char* kWord = "override";
  static constexpr auto fields() {
    return std::tuple{Field{"rule", &Override::rule},         Field{"element", &Override::element},
                      Field{"side", &Override::side},         Field{"row", &Override::row},
                      Field{"lift", &Override::lift, kLifts}, Field{"why", &Override::why},
                      Field{"chosen", &Override::chosen}};
  }
  [[nodiscard]] const char* says() const { return said("{rule}: went on over it: {why}"); }
  bool operator==(const Override&) const = default;
};

using PaperKinds = std::tuple<Hold, Resume, Note, Fix, Strike, PourClose, Sign, Strip, Blemish,
                              Repair, Moved, Override>;

}  // namespace event

}  // namespace rb
