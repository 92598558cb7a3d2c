#include "command_line.h"

#include <algorithm>

#include <fmt/format.h>
#include <boost/program_options.hpp>

#include "core/text.h"
#include "core/utf8.h"

namespace slabtide {

namespace {

namespace po = boost::program_options;

constexpr std::size_t help_width = 80;
constexpr std::size_t help_column = 26;
constexpr const char* operand_key = "operand";

using Texts = std::vector<std::string>;

po::options_description description_of(const CommandLine& command) {
  po::options_description description;
  for (const Option& option : command.options) {
    if (option.argument.empty()) {
      description.add_options()(option.name.c_str(), option.help.c_str());
    } else {
      description.add_options()(option.name.c_str(), po::value<Texts>(), option.help.c_str());
    }
  }
  description.add_options()(operand_key, po::value<Texts>());
  return description;
}

const Option* option_named(const CommandLine& command, std::string_view name) {
  const auto found = std::find_if(command.options.begin(), command.options.end(),
                                  [name](const Option& option) { return option.name == name; });
  return found == command.options.end() ? nullptr : &*found;
}

std::string unknown_option(const CommandLine& command, std::string_view given) {
  given.remove_prefix(std::min(given.find_first_not_of('-'), given.size()));
  const std::string_view name = given.substr(0, given.find('='));
  if (name == "help") return "--help takes no value";
  std::vector<std::string_view> known;
  for (const Option& option : command.options) known.emplace_back(option.name);
  known.emplace_back("help");
  const auto meant = nearest(name, known);
  return fmt::format("there is no option --{}{}", name,
                     meant ? fmt::format("; did you mean --{}?", *meant) : std::string());
}

std::string missing_value(const CommandLine& command, std::string_view given) {
  given.remove_prefix(std::min(given.find_first_not_of('-'), given.size()));
  const std::string_view name = given.substr(0, given.find('='));
  const Option* const option = option_named(command, name);
  return option == nullptr || option->argument.empty()
             ? fmt::format("--{} takes no value", name)
             : fmt::format("--{0} has no value; write --{0} {1}", name, option->argument);
}

/// True for a word that looks like a one-letter option; there are none.
bool is_short_option(const std::string& word) {
  return word.size() == 2 && word.front() == '-' && word.back() >= 'A';
}

std::optional<std::string> count_fault(const CommandLine& command, const ParsedLine& line) {
  for (const Option& option : command.options) {
    if (!option.many && line.texts(option.name).size() > 1) {
      return fmt::format("--{} is given {} times; give it once", option.name,
                         line.texts(option.name).size());
    }
  }
  const auto& operands = line.operands();
  const auto dash = std::find_if(operands.begin(), operands.end(), is_short_option);
  if (dash != operands.end()) {
    return fmt::format("there is no option {}: options are whole words, such as --help", *dash);
  }
  if (command.operand.empty() && !operands.empty()) {
    return fmt::format("'{}' is one word too many", operands.front());
  }
  if (!command.operand.empty() && operands.size() > command.max_operands) {
    return fmt::format("'{}' is one word too many: {}", operands[command.max_operands],
                       command.max_operands == 1
                           ? fmt::format("one {} at a time", command.operand)
                           : fmt::format("slabtide {} {}", command.name, command.operand));
  }
  if (!command.operand.empty() && command.operand_needed && operands.empty()) {
    return fmt::format("{} is missing: slabtide {} {}", command.operand, command.name,
                       command.operand);
  }
  return std::nullopt;
}

po::variables_map parse(const CommandLine& command, const Texts& args) {
  const po::options_description description = description_of(command);
  po::positional_options_description positional;
  positional.add(operand_key, -1);
  namespace style = po::command_line_style;
  const int long_only = style::allow_long | style::long_allow_adjacent | style::long_allow_next;
  po::variables_map map;
  po::store(po::command_line_parser(args)
                .options(description)
                .positional(positional)
                .style(long_only)
                .run(),
            map);
  return map;
}

}  // namespace

std::optional<std::string> ParsedLine::text(const std::string& option) const {
  const auto found = values_.find(option);
  if (found == values_.end() || found->second.empty()) return std::nullopt;
  return found->second.back();
}

std::vector<std::string> ParsedLine::texts(const std::string& option) const {
  const auto found = values_.find(option);
  return found == values_.end() ? Texts{} : found->second;
}

ParsedCommandLine read_line(const CommandLine& command, const std::vector<std::string>& args) {
  ParsedCommandLine reading;
  const auto asks_help = [](const std::string& arg) { return arg == "--help" || arg == "-h"; };
  if (std::any_of(args.begin(), args.end(), asks_help)) {
    reading.help_wanted = true;
    return reading;
  }
  ParsedLine line;
  try {
    for (const auto& [name, value] : parse(command, args)) {
      const Option* option = option_named(command, name);
      const bool is_switch = option != nullptr && option->argument.empty();
      (name == operand_key ? line.operands_ : line.values_[name]) =
          is_switch ? Texts{} : value.as<Texts>();
    }
  } catch (const po::unknown_option& fault) {
    reading.fault = unknown_option(command, fault.get_option_name());
    return reading;
  } catch (const po::invalid_command_line_syntax& fault) {
    reading.fault = missing_value(command, fault.get_option_name());
    return reading;
  } catch (const po::error& fault) {
    reading.fault = fault.what();
    return reading;
  }
  if (auto fault = count_fault(command, line)) {
    reading.fault = std::move(*fault);
    return reading;
  }
  reading.line = std::move(line);
  return reading;
}

std::string refusal(const std::string& command, const std::string& fault) {
  return fmt::format("slabtide {0}: {1}\n  slabtide {0} --help lists what it takes\n", command,
                     printable(fault));
}

std::string help_text(const CommandLine& command) {
  std::string usage = "slabtide " + command.name;
  if (!command.operand.empty()) usage += " " + command.operand;
  std::string text = fmt::format("{}\n\nUsage: {} [options]\n", command.summary, usage);
  if (!command.options.empty()) text += "\nOptions\n";
  for (const Option& option : command.options) {
    std::string left = "  --" + option.name;
    if (!option.argument.empty()) left.append(" ").append(option.argument);
    if (left.size() + 2 > help_column) {
      left.append("\n").append(help_column, ' ');
    } else {
      left.append(help_column - left.size(), ' ');
    }
    // Wrapped separately from the left side, so that a break after the name does not disturb it.
    const std::string right = wrap(option.help, help_width - help_column, 0);
    for (const char c : right) {
      left += c;
      if (c == '\n') left.append(help_column, ' ');
    }
    text += left + "\n";
  }
  if (!command.details.empty()) text += "\n" + command.details;
  return text;
}

}  // namespace slabtide
