#include "cli/manual.h"

#include <fmt/format.h>

#include <iterator>
#include <vector>

namespace rb {

namespace {

// As roff prints it: a backslash and a dash as they stand, no line of ours taken for a command.
std::string roff(std::string_view text) {
  std::string out;
  bool line_begins = true;
  for (const char letter : text) {
    if (line_begins && (letter == '.' || letter == '\'')) out += "\\&";
    line_begins = letter == '\n';
    if (letter == '\\') {
      out += "\\e";
    } else if (letter == '-') {
      out += "\\-";
    } else if (letter == '\'') {
      out += "\\(aq";
    } else if (letter == '\n') {
      out += "\n.br\n";
    } else {
      out += letter;
    }
  }
  return out;
}

// What --help shows: neither the hidden nor what has no name.
std::vector<const CLI::App*> shown_commands(const CLI::App& app) {
  return app.get_subcommands([](const CLI::App* command) {
    return !command->get_name().empty() && !command->get_group().empty();
  });
}

std::vector<const CLI::Option*> shown_options(const CLI::App& app) {
  return app.get_options([](const CLI::Option* option) { return !option->get_group().empty(); });
}

// "--book TEXT", as it is typed; a word that has its own place only its name.
std::string typed(const CLI::Option& option) {
  std::string out;
  if (option.nonpositional()) {
    out = fmt::format("\\fB{}\\fR", roff(option.get_name(false, true)));
    if (option.get_items_expected_max() > 0) out += " \\fIVALUE\\fR";
  } else {
    out = fmt::format("\\fI{}\\fR", roff(option.get_name(true)));
  }
  return out;
}

void add_options(std::string& page, const CLI::App& app) {
  for (const CLI::Option* option : shown_options(app)) {
    fmt::format_to(std::back_inserter(page), ".TP\n{}\n{}", typed(*option),
                   roff(option->get_description()));
    if (option->get_required()) page += " (must be given)";
    if (const std::string taken = option->get_default_str(); !taken.empty()) {
      fmt::format_to(std::back_inserter(page), " (default: {})", roff(taken));
    }
    page += '\n';
  }
}

void add_commands(std::string& page, const CLI::App& app, const std::string& before) {
  for (const CLI::App* command : shown_commands(app)) {
    const std::string name = before + command->get_name();
    fmt::format_to(std::back_inserter(page), ".SS {}\n{}\n", roff(name),
                   roff(command->get_description()));
    add_options(page, *command);
    add_commands(page, *command, name + ' ');
  }
}

std::string words_after(const CLI::App& app) {
  std::string words;
  for (const CLI::App* command : shown_commands(app)) {
    words += command->get_name();
    words += ' ';
  }
  for (const CLI::Option* option : shown_options(app)) {
    for (const std::string& name : option->get_lnames()) {
      words += "--";
      words += name;
      words += ' ';
    }
  }
  if (!words.empty()) words.pop_back();
  return words;
}

// One line a command: what may follow "calc rise".
void add_cases(std::string& script, const CLI::App& app, const std::string& before) {
  for (const CLI::App* command : shown_commands(app)) {
    const std::string name = before + command->get_name();
    fmt::format_to(std::back_inserter(script), "    \"{}\") words=\"{}\" ;;\n", name,
                   words_after(*command));
    add_cases(script, *command, name + ' ');
  }
}

// The commands, and those that have commands of their own.
std::string names_of(const CLI::App& app, const std::string& before) {
  std::string names;
  for (const CLI::App* command : shown_commands(app)) {
    fmt::format_to(std::back_inserter(names), "|\"{}{}\"", before, command->get_name());
    names += names_of(*command, before + command->get_name() + ' ');
  }
  return names;
}

}  // namespace

std::string without_word(const CLI::App& app) {
  if (app.get_description().empty()) return app.get_name();
  for (const CLI::Option* option : shown_options(app)) {
    if (option->get_description().empty()) {
      return fmt::format("{} {}", app.get_name(), option->get_name(true, true));
    }
  }
  for (const CLI::App* command : shown_commands(app)) {
    std::string lacking = without_word(*command);
    if (!lacking.empty()) return lacking;
  }
  return {};
}

std::string man_page(const CLI::App& app, std::string_view version) {
  std::string page = fmt::format(
      ".TH RISEBOOK 1 \"\" \"Risebook {0}\" \"User commands\"\n"
      ".SH NAME\nrisebook \\- field pour logbook for the foreman on the form\n"
      ".SH SYNOPSIS\n.B risebook\n[\\fIbook\\fR] [\\fIoptions\\fR]\n.br\n.B risebook\n"
      "\\fIcommand\\fR [\\fIoptions\\fR]\n"
      ".SH DESCRIPTION\n{1}\n.SH OPTIONS\n",
      version, roff(app.get_description()));
  add_options(page, app);
  page += ".SH COMMANDS\n";
  add_commands(page, app, {});
  fmt::format_to(
      std::back_inserter(page),
      ".SH FILES\n.TP\n\\fI$XDG_DATA_HOME/risebook/pours.risebook\\fR\nThe user\\(aqs own book.\n"
      ".TP\n\\fI$XDG_CONFIG_HOME/risebook/screens.json\\fR\nSettings of the screens.\n"
      ".SH NOTES\n{}\n",
      roff(app.get_footer()));
  return page;
}

std::string bash_completion(const CLI::App& app) {
  std::string names = names_of(app, {});
  if (!names.empty()) names.erase(0, 1);
  std::string script = fmt::format(
      "# bash completion of risebook: made by the program of the same words as --help.\n"
      "_risebook() {{\n"
      "  local word=${{COMP_WORDS[COMP_CWORD]}} said=\"\" next words i\n"
      "  for ((i = 1; i < COMP_CWORD; i++)); do\n"
      "    next=\"${{said:+$said }}${{COMP_WORDS[i]}}\"\n"
      "    case \"$next\" in\n"
      "    {}) said=$next ;;\n"
      "    esac\n"
      "  done\n"
      "  case \"$said\" in\n"
      "    \"\") words=\"{}\" ;;\n",
      names, words_after(app));
  add_cases(script, app, {});
  script +=
      "  esac\n"
      "  mapfile -t COMPREPLY < <(compgen -W \"$words\" -- \"$word\")\n"
      "}\n"
      "complete -o default -F _risebook risebook\n";
  return script;
}

}  // namespace rb
