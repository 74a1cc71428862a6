#include "pour/log/happening.h"

#include <algorithm>
#include <array>
#include <utility>

namespace rb {

namespace {

template <std::size_t... I>
std::vector<std::string> words_of(std::index_sequence<I...> /*kinds*/) {
  return {std::variant_alternative_t<I, event::AnyKind>::kWord...};
}

}  // namespace

template struct MadeOnce<event::AnyKind>;

bool Happening::operator==(const Happening& other) const {
  return static_cast<const event::AnyKind&>(*this) == static_cast<const event::AnyKind&>(other);
}

namespace event {

std::span<const char* const> words_of(Moving /*any*/) {
  static constexpr std::array kWords{"form", "motor"};
  return kWords;
}

const char* to_text(Moving what) {
  return words_of(what)[static_cast<std::size_t>(what)];
}

std::span<const char* const> words_of(Role /*any*/) {
  static constexpr std::array<const char*, 3> kWords{said("foreman"), said("inspector"),
                                                     said("superintendent")};
  return kWords;
}

// Words of books: never changed, only added to.
std::span<const char* const> words_of(Defect /*any*/) {
  static constexpr std::array<const char*, 10> kWords{
      said("honeycomb"),   said("bug holes"),   said("cold joint"),   said("pour line"),
      said("sand streak"), said("form offset"), said("bleed streak"), said("crack"),
      said("off colour"),  said("spall")};
  return kWords;
}

const char* to_text(Defect what) {
  return words_of(what)[static_cast<std::size_t>(what)];
}

std::optional<Defect> defect_named(std::string_view kind) {
  const auto plain = [](char c) {
    if (c == '-' || c == '_') return ' ';
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  };
  const auto words = words_of(Defect{});
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string_view word = words[i];
    if (std::equal(kind.begin(), kind.end(), word.begin(), word.end(),
                   [&](char a, char b) { return plain(a) == b; })) {
      return static_cast<Defect>(i);
    }
  }
  return std::nullopt;
}

const char* to_text(Role role) {
  return words_of(role)[static_cast<std::size_t>(role)];
}

namespace {

// In the order of Chosen. Words of a script: never changed, only added to.
constexpr std::array kChosen{"pump-stopped",      "no-trucks",         "rain",
                             "form-or-bracing",   "vibrator-or-power", "grout-leaks",
                             "mix-dry",           "mix-wet",           "inspector-on-site",
                             "tapped-by-mistake", "wrong-row",         "misread-height",
                             "tapped-late",       "told-later",        "taken-back",
                             "looked-over",       "engineer-agreed",   "superintendent-agreed",
                             "told-clear",        "as-built",          "other-people"};
constexpr std::array<const char*, kChosen.size()> kChosenSaid{
    said("Pump stopped"),
    said("Waiting for trucks"),
    said("Rain"),
    said("Form or bracing"),
    said("Vibrator or power"),
    said("Grout leaks at a joint"),
    said("Mix looks dry"),
    said("Mix looks wet"),
    said("Inspector on site"),
    said("Tapped by mistake"),
    said("Wrong row"),
    said("Misread the height"),
    said("Tapped too late"),
    said("Told of it later"),
    said("taken back at once"),
    said("Looked over on the form, not logged"),
    said("The engineer agreed"),
    said("The superintendent agreed"),
    said("area told clear"),
    said("As built on the form"),
    said("Other people on site")};
}  // namespace

std::span<const char* const> words_of(Chosen /*any*/) {
  return kChosen;
}

const char* to_text(Chosen what) {
  return kChosen[static_cast<std::size_t>(what)];
}

const char* says(Chosen what) {
  return kChosenSaid[static_cast<std::size_t>(what)];
}

}  // namespace event

const char* kind_text(const Happening& what) {
  return std::visit([](const auto& kind) { return kind.kWord; }, what);
}

EventId* target_of(Happening& what) {
  return std::visit(
      []<class Kind>(Kind& kind) -> EventId* {
        if constexpr (std::is_same_v<Kind, event::Photo>) {
          return kind.target.empty() ? nullptr : &kind.target;  // of an element
        } else if constexpr (requires { kind.target; }) {
          return &kind.target;
        } else {
          return nullptr;
        }
      },
      what);
}

const EventId* target_of(const Happening& what) {
  return target_of(const_cast<Happening&>(what));
}

const std::vector<std::string>& kind_words() {
  static const std::vector<std::string> words =
      words_of(std::make_index_sequence<std::variant_size_v<event::AnyKind>>{});
  return words;
}

bool is_kind(std::string_view word) {
  return std::find(kind_words().begin(), kind_words().end(), word) != kind_words().end();
}

}  // namespace rb
