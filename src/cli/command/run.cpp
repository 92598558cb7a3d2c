#include "slabtide/cli/command/run.h"

#include <exception>
#include <ostream>

#include <fmt/format.h>

#include "commands.h"
#include "core/text.h"
#include "core/utf8.h"
#include "slabtide/core/version.h"

namespace slabtide {

namespace {

std::string overview() {
  std::string text =
      "Slabtide, a tide table for fresh concrete: when each part of a pour takes\n"
      "release agent, stamp or texture, edging, stripping and the saw.\n\n"
      "Usage: slabtide COMMAND ...\n\n"
      "Commands\n";
  for (const Command& command : commands()) {
    const CommandLine line = command.line();
    constexpr int name_width = 11;
    text += fmt::format("  {:<{}}{}\n", line.name, name_width, line.summary);
  }
  return text +
         "\nslabtide COMMAND --help says more on each; slabtide --version says which it is.\n"
         "Start with: slabtide starter --write job.toml\n";
}

int unknown_command(const std::string& word, std::ostream& err) {
  for (const std::string_view option : {"--help", "--version"}) {
    if (word.substr(0, word.find('=')) != option) continue;
    err << fmt::format("slabtide: {} takes no value\n", option);
    return exit_input_wrong;
  }
  std::vector<std::string> names;
  for (const Command& command : commands()) names.push_back(command.line().name);
  const std::vector<std::string_view> known(names.begin(), names.end());
  const auto meant = nearest(word, known);
  err << fmt::format("slabtide: there is no command '{}'{}\n", printable(word),
                     meant ? fmt::format("; did you mean {}?", *meant) : std::string());
  err << "  slabtide --help lists the commands\n";
  return exit_input_wrong;
}

int run_command(const Command& command, const std::vector<std::string>& args, std::ostream& out,
                std::ostream& err) {
  const CommandLine line = command.line();
  const ParsedCommandLine reading = read_line(line, args);
  if (reading.help_wanted) {
    out << help_text(line);
    return exit_done;
  }
  if (!reading.line) {
    err << refusal(line.name, reading.fault);
    return exit_input_wrong;
  }
  return command.run(*reading.line, out, err);
}

int dispatch(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  if (args.empty()) {
    err << overview();
    return exit_input_wrong;
  }
  if (args[0] == "--help" || args[0] == "-h" || args[0] == "help") {
    out << overview();
    return exit_done;
  }
  if (args[0] == "--version") {
    out << "slabtide " << version() << "\n";
    return exit_done;
  }
  for (const Command& command : commands()) {
    if (command.line().name == args[0]) {
      return run_command(command, {args.begin() + 1, args.end()}, out, err);
    }
  }
  return unknown_command(args[0], err);
}

}  // namespace

int run(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  try {
    const int code = dispatch(args, out, err);
    out.flush();
    if (code == exit_done && !out) {
      err << "slabtide: the output could not all be written\n";
      return exit_could_not;
    }
    return code;
  } catch (const std::exception& fault) {
    err << "slabtide: something went wrong inside the program: " << printable(fault.what()) << "\n"
        << "  this is a fault of the program, not of your file; nothing was written\n";
    return exit_could_not;
  }
}

}  // namespace slabtide
