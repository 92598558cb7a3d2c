#include "manual.h"

#include <string_view>

#include <fmt/format.h>

#include "slabtide/core/version.h"

namespace slabtide {

namespace {

/// Text as the macros need it: no line may look like a request, and a dash must not become a
/// hyphen.
std::string plain(std::string_view text) {
  std::string escaped;
  bool line_starts = true;
  for (const char c : text) {
    if (line_starts && (c == '.' || c == '\'')) escaped += "\\&";
    line_starts = c == '\n';
    if (c == '\\') {
      escaped += "\\e";
    } else if (c == '-') {
      escaped += "\\-";
    } else {
      escaped += c;
    }
  }
  return escaped;
}

/// When the text of the pages last changed.
constexpr std::string_view manual_date = "2026-11-25";

/// The start of a page of section 1, with the customary name in capitals.
std::string opening(const std::string& name, std::string_view summary) {
  std::string title;
  for (const char c : name) title += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  return fmt::format(".TH {} 1 {} \"slabtide {}\" \"User commands\"\n.SH NAME\n{} \\- {}\n",
                     plain(title), manual_date, plain(version()), plain(name), plain(summary));
}

std::string option_entry(const Option& option) {
  std::string entry = fmt::format(".TP\n.B \\-\\-{}\n", plain(option.name));
  if (!option.argument.empty()) {
    entry = fmt::format(".TP\n.BI \\-\\-{} \" {}\"\n", plain(option.name), plain(option.argument));
  }
  entry += plain(option.help);
  if (option.many) entry += "; may be given again";
  return entry + ".\n";
}

std::string as_printed(std::string_view text) {
  return fmt::format(".nf\n{}{}.fi\n", plain(text), text.ends_with('\n') ? "" : "\n");
}

std::string exit_status() {
  return fmt::format(
      ".SH EXIT STATUS\n.TP\n{}\nDone.\n.TP\n{}\nA file or the network failed.\n.TP\n{}\nThe input "
      "or the command line is wrong; the message says where and what to do.\n",
      exit_done, exit_could_not, exit_input_wrong);
}

std::string cautions() {
  return ".SH CAUTIONS\nEvery figure is an estimate made before the pour: the slab decides. Wet "
         "cement burns skin and eyes, and sawing makes silica dust. Structural slabs, the local "
         "code, a licensed engineer and the mix supplier come before this program.\n";
}

}  // namespace

std::string manual_page(std::span<const CommandLine> commands) {
  std::string page = opening("slabtide", "a tide table for fresh concrete");
  page +=
      ".SH SYNOPSIS\n.B slabtide\n.I COMMAND\n.RI [ options ]\n.br\n.B slabtide\n.B "
      "\\-\\-help\n|\n.B \\-\\-version\n"
      ".SH DESCRIPTION\nFrom the job, the mix, the forecast and the shade on the site, slabtide "
      "computes when each part of a pour takes release agent, stamp or texture, edging, stripping "
      "and the saw, and plans the day around that.\n.SH COMMANDS\n";
  for (const CommandLine& command : commands) {
    page += fmt::format(".TP\n.BR slabtide\\-{} (1)\n{}.\n", plain(command.name),
                        plain(command.summary));
  }
  page +=
      ".SH ENVIRONMENT\n.TP\n.B NO_COLOR\nWhere it is set, no color is printed.\n"
      ".TP\n.B COLUMNS\nHow wide the terminal is: texts fit 60 to 80 columns.\n"
      ".SH FILES\nA job file is TOML;\n.B slabtide starter\nwrites one in which every entry is "
      "explained. Thresholds and rates are in practice.toml and can be changed in a job's "
      "[practice] table.\n";
  return page + exit_status() + cautions();
}

std::string manual_page(const CommandLine& command) {
  std::string page = opening("slabtide-" + command.name, command.summary);
  page += fmt::format(".SH SYNOPSIS\n.B slabtide {}\n", plain(command.name));
  if (!command.operand.empty()) {
    page += fmt::format(
        ".I {}\n", plain(command.operand_needed ? command.operand : "[" + command.operand + "]"));
  }
  page += ".RI [ options ]\n";
  if (!command.options.empty()) page += ".SH OPTIONS\n";
  for (const Option& option : command.options) page += option_entry(option);
  if (!command.details.empty()) page += ".SH NOTES\n" + as_printed(command.details);
  return page + exit_status() + cautions() + ".SH SEE ALSO\n.BR slabtide (1)\n";
}

}  // namespace slabtide
