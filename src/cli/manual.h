// The manual page and the shell's completion, made of the same words as --help. Inside this room.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <string_view>

namespace rb {

/// The first command or option that says nothing of what it is for; empty: all say something.
std::string without_word(const CLI::App& app);

/// The manual page (section 1), as roff.
std::string man_page(const CLI::App& app, std::string_view version);

/// What bash completes after `risebook`: commands, their options, and files.
std::string bash_completion(const CLI::App& app);

}  // namespace rb
