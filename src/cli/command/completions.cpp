#include "completions.h"

#include <string_view>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <boost/algorithm/string/classification.hpp>
#include <boost/algorithm/string/replace.hpp>
#include <boost/algorithm/string/split.hpp>

namespace slabtide {

namespace {

/// The choices in "us|si"; empty for an argument that is not a list of choices.
std::vector<std::string> choices_of(const Option& option) {
  std::vector<std::string> choices;
  if (option.argument.find('|') == std::string::npos) return choices;
  boost::algorithm::split(choices, option.argument, boost::algorithm::is_any_of("|"));
  return choices;
}

bool takes_file(const Option& option) { return option.argument == "FILE"; }

bool takes_job(const CommandLine& command) { return command.operand.starts_with("JOB"); }

std::string replaced(std::string text, const char* what, const char* with) {
  boost::algorithm::replace_all(text, what, with);
  return text;
}

/// Quotes for bash and zsh.
std::string quoted(const std::string& text) {
  return fmt::format("'{}'", replaced(text, "'", "'\\''"));
}

/// Quotes for fish.
std::string fish_quoted(const std::string& text) {
  return fmt::format("'{}'", replaced(replaced(text, "\\", "\\\\"), "'", "\\'"));
}

/// Escapes the characters that would end the description of an option in zsh.
std::string zsh_help(std::string text) {
  for (const char* mark : {"\\", "[", "]", ":"}) {
    text = replaced(text, mark, fmt::format("\\{}", mark).c_str());
  }
  return text;
}

std::string option_names(const CommandLine& command) {
  std::string names;
  for (const Option& option : command.options) names += fmt::format("--{} ", option.name);
  return names + "--help";
}

std::string bash_value(const Option& option) {
  if (option.argument.empty()) return {};
  std::string values = "return";
  if (takes_file(option)) values = "_slabtide_files; return";
  if (const auto choices = choices_of(option); !choices.empty()) {
    values = fmt::format("_slabtide_words {}; return",
                         quoted(fmt::format("{}", fmt::join(choices, " "))));
  }
  return fmt::format("        --{}) {} ;;\n", option.name, values);
}

std::string bash_command(const CommandLine& command) {
  std::string text = fmt::format("    {})\n      case $prev in\n", command.name);
  for (const Option& option : command.options) text += bash_value(option);
  text += "      esac\n";
  const std::string words = fmt::format("_slabtide_words '{}'", option_names(command));
  text += takes_job(command)
              ? fmt::format("      if [[ $cur == -* ]]; then {}; else _slabtide_jobs; fi\n", words)
              : fmt::format("      {}\n", words);
  return text + "      ;;\n";
}

std::string zsh_value(const Option& option) {
  if (option.argument.empty()) return {};
  std::string values;
  if (takes_file(option)) values = "_files";
  if (const auto choices = choices_of(option); !choices.empty()) {
    values = fmt::format("({})", fmt::join(choices, " "));
  }
  return fmt::format(":{}:{}", zsh_help(option.argument), values);
}

std::string zsh_command(const CommandLine& command) {
  std::string text = fmt::format("    {})\n      _arguments", command.name);
  for (const Option& option : command.options) {
    const std::string entry = fmt::format("{}--{}[{}]{}", option.many ? "*" : "", option.name,
                                          zsh_help(option.help), zsh_value(option));
    text += fmt::format(" \\\n        {}", quoted(entry));
  }
  text += " \\\n        '--help[what it takes]'";
  if (takes_job(command)) text += " \\\n        '1:JOB:_files -g \"*.toml\"'";
  return text + "\n      ;;\n";
}

std::string fish_option(const CommandLine& command, const Option& option) {
  std::string values;
  if (takes_file(option)) {
    values = " -r -F";
  } else if (const auto choices = choices_of(option); !choices.empty()) {
    values = fmt::format(" -x -a {}", fish_quoted(fmt::format("{}", fmt::join(choices, " "))));
  } else if (!option.argument.empty()) {
    values = " -x";
  }
  return fmt::format("complete -c slabtide -n '__fish_seen_subcommand_from {}' -l {}{} -d {}\n",
                     command.name, option.name, values, fish_quoted(option.help));
}

}  // namespace

std::string bash_completions(std::span<const CommandLine> commands) {
  std::string text =
      "# What bash completes after slabtide. Made from the program's own option table.\n"
      "_slabtide_words() { mapfile -t COMPREPLY < <(compgen -W \"$1\" -- \"$cur\"); }\n"
      "_slabtide_files() {\n  compopt -o filenames 2>/dev/null\n"
      "  mapfile -t COMPREPLY < <(compgen -f -- \"$cur\")\n}\n"
      "_slabtide_jobs() {\n  compopt -o filenames 2>/dev/null\n"
      "  mapfile -t COMPREPLY < <(compgen -f -X '!*.toml' -- \"$cur\"; compgen -d -- \"$cur\")\n}\n"
      "_slabtide() {\n"
      "  local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]}\n"
      "  COMPREPLY=()\n";
  std::string names;
  for (const CommandLine& command : commands) names += fmt::format("{} ", command.name);
  text += fmt::format(
      "  if [ \"$COMP_CWORD\" -eq 1 ]; then _slabtide_words '{}--help --version'; return; fi\n",
      names);
  text += "  case ${COMP_WORDS[1]} in\n";
  for (const CommandLine& command : commands) text += bash_command(command);
  return text + "  esac\n}\ncomplete -F _slabtide slabtide\n";
}

std::string zsh_completions(std::span<const CommandLine> commands) {
  std::string text =
      "#compdef slabtide\n"
      "# What zsh completes after slabtide. Made from the program's own option table.\n"
      "_slabtide() {\n  local -a commands=(\n";
  for (const CommandLine& command : commands) {
    text += fmt::format("    {}\n",
                        quoted(fmt::format("{}:{}", command.name, zsh_help(command.summary))));
  }
  text +=
      "  )\n  if (( CURRENT == 2 )); then\n    _describe command commands\n    return\n  fi\n"
      "  shift words\n  (( CURRENT-- ))\n  case $words[1] in\n";
  for (const CommandLine& command : commands) text += zsh_command(command);
  return text + "  esac\n}\n_slabtide \"$@\"\n";
}

std::string fish_completions(std::span<const CommandLine> commands) {
  std::string text =
      "# What fish completes after slabtide. Made from the program's own option table.\n"
      "complete -c slabtide -f\n"
      "complete -c slabtide -l help -d 'what it takes'\n"
      "complete -c slabtide -n __fish_use_subcommand -l version -d 'which this is'\n";
  for (const CommandLine& command : commands) {
    text += fmt::format("complete -c slabtide -n __fish_use_subcommand -a {} -d {}\n", command.name,
                        fish_quoted(command.summary));
    for (const Option& option : command.options) text += fish_option(command, option);
    if (!takes_job(command)) continue;
    text += fmt::format(
        "complete -c slabtide -n '__fish_seen_subcommand_from {}' -k -a "
        "'(__fish_complete_suffix .toml)'\n",
        command.name);
  }
  return text;
}

}  // namespace slabtide
