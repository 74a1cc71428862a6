// How much a line, a text or a plan may hold. What goes into a book or a script is held to it and
// refused by the name of its field; what a book already holds is read whatever its size, for books
// must fold for ever. Choices of this project: far over what a pour needs, and small enough that no
// screen, check or record becomes slow.
#pragma once

#include <cstddef>
#include <string_view>

namespace rb {

/// Whether what is read must keep to these bounds.
enum class Bounds { kept, as_it_is };

namespace most {

inline constexpr std::size_t kTextLetters = 2000;       ///< Unicode characters of a text
inline constexpr std::size_t kIdBytes = 100;            ///< UTF-8 bytes of an id
inline constexpr std::size_t kOpenLineBytes = 1 << 20;  ///< of a pour-open with its plan
inline constexpr std::size_t kLineBytes = 16 << 10;     ///< of any other line
inline constexpr std::size_t kExtraBytes = 8 << 10;     ///< of fields this version does not know

inline constexpr std::size_t kPeople = 200;
inline constexpr std::size_t kMixes = 100;
inline constexpr std::size_t kElements = 200;
inline constexpr std::size_t kBays = 500;        ///< of an element
inline constexpr std::size_t kLifts = 500;       ///< of an element
inline constexpr std::size_t kRows = 200;        ///< of an element
inline constexpr std::size_t kMotors = 500;      ///< of a row, of an inverter, or hung by one event
inline constexpr std::size_t kAllMotors = 5000;  ///< of a plan
inline constexpr std::size_t kPatches = 200;     ///< openings, or congested zones, of an element
inline constexpr std::size_t kInverters = 200;

inline constexpr std::size_t kSignLineBytes = 256 << 10;  ///< of a signature: it names what is open
inline constexpr std::size_t kOpenFindings = 2000;        ///< named by a signature
inline constexpr std::size_t kOutlinePoints = 500;        ///< of what is drawn on a face

}  // namespace most

/// Characters of a UTF-8 text.
std::size_t letters_of(std::string_view text);
/// The longest beginning of a text that holds so many characters.
std::string_view first_letters(std::string_view text, std::size_t letters);

}  // namespace rb
