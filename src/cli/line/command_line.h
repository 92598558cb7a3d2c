#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace slabtide {

/// Exit codes of the program.
inline constexpr int exit_done = 0;
inline constexpr int exit_could_not = 1;    ///< a file, the network
inline constexpr int exit_input_wrong = 2;  ///< the input or the command line

/// One option of a command. Parsing and help both use this table.
struct Option {
  std::string name;      ///< "forecast"
  std::string argument;  ///< "FILE"; empty for a switch
  std::string help;
  bool many = false;  ///< may be repeated
};

/// What a command accepts.
struct CommandLine {
  std::string name;     ///< "plan"
  std::string summary;  ///< one line
  std::string operand;  ///< "JOB"; empty if it takes none
  bool operand_needed = true;
  std::size_t max_operands = 1;  ///< if it takes any
  std::vector<Option> options;
  std::string details;  ///< more help; may be empty
};

/// A command line that was read against its table.
class ParsedLine {
 public:
  bool has(const std::string& option) const { return values_.contains(option); }
  /// The last value given for the option.
  std::optional<std::string> text(const std::string& option) const;
  std::vector<std::string> texts(const std::string& option) const;
  const std::vector<std::string>& operands() const { return operands_; }

 private:
  friend struct ParsedCommandLine read_line(const CommandLine&, const std::vector<std::string>&);

  std::map<std::string, std::vector<std::string>> values_;
  std::vector<std::string> operands_;
};

/// A parsed line, or why it is wrong.
struct ParsedCommandLine {
  std::optional<ParsedLine> line;
  bool help_wanted = false;
  std::string fault;  ///< in words for the user, if there is no line
};

/// Reads `args` (everything after the command's name).
ParsedCommandLine read_line(const CommandLine& command, const std::vector<std::string>& args);

/// The message for a wrong command line: the fault, and where to find help.
std::string refusal(const std::string& command, const std::string& fault);

/// The text of `slabtide plan --help`, 80 columns wide.
std::string help_text(const CommandLine& command);

}  // namespace slabtide
