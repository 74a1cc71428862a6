// The words of the command line: each command with its options, bound to a wish that lives as long
// as the parse. Inside this room.
#pragma once

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "app/outcome.h"

namespace rb {

// What was not given and has a default, with it.
inline void tell_defaults(const CLI::App& formula) {
  std::string taken;
  for (const CLI::Option* option : formula.get_options()) {
    if (option->count() > 0 || option->get_default_str().empty()) continue;
    taken += fmt::format("{}{} {}", taken.empty() ? "" : ", ", option->get_name(),
                         option->get_default_str());
  }
  if (!taken.empty()) fmt::print("Not given, so taken by default: {}.\n", taken);
}

class CommandWords {
 public:
  explicit CommandWords(const char* version) {
    app_.description("Risebook, a field pour logbook. Without a command: the touch screens.");
    app_.footer(
        "Exit codes: 0 fine, 1 findings of weight stop or mend, 2 bad usage or input, 3 trouble "
        "with the book.\nThe tool advises. Local codes, the form designer and licensed practice "
        "decide.");
    app_.set_version_flag("--version", version);
    app_.require_subcommand(0, 1);
  }

  CLI::App& add(const char* name, const char* what, std::function<Exit()> run) {
    CLI::App* sub = app_.add_subcommand(name, what);
    sub->callback([this, run = std::move(run)] { chosen_ = run; });
    return *sub;
  }

  /// A formula: behind its answer stands every default it took.
  CLI::App& add_formula(CLI::App& parent, const char* name, const char* what,
                        std::function<Exit()> run) {
    CLI::App* sub = parent.add_subcommand(name, what);
    sub->option_defaults()->always_capture_default();
    sub->callback([this, sub, run = std::move(run)] {
      chosen_ = [sub, run] {
        const Exit exit = run();
        if (exit != Exit::usage) tell_defaults(*sub);
        return exit;
      };
    });
    return *sub;
  }

  int run(int argc, char** argv) {
    try {
      app_.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
      return app_.exit(error) == 0 ? 0 : static_cast<int>(Exit::usage);
    }
    if (!app_.get_subcommands().empty() && app_.count("book") > 0) {
      return static_cast<int>(report({Error::Kind::input, "a book before a command",
                                      "is not asked for there", "Give it by --book"}));
    }
    return static_cast<int>(chosen_ ? chosen_() : Exit::usage);
  }

  /// What a command's options are bound to.
  template <class Wish, class... Start>
  Wish& wish(Start&&... start) {
    const auto made = std::make_shared<Wish>(std::forward<Start>(start)...);
    wishes_.push_back(made);
    return *made;
  }

  CLI::App& app() { return app_; }
  void otherwise(std::function<Exit()> run) { chosen_ = std::move(run); }

 private:
  CLI::App app_;
  std::vector<std::shared_ptr<void>> wishes_;
  std::function<Exit()> chosen_;
};

/// The formulas behind "calc".
void add_formulas(CommandWords& words);

}  // namespace rb
