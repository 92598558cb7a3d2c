#include "output.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <iostream>

#include <fmt/format.h>

#include "core/text.h"
#include "core/utf8.h"
#include "job_line.h"
#include "slabtide/core/files.h"

namespace slabtide {

namespace {

bool is_set(const char* variable) {
  const char* value = std::getenv(variable);
  return value != nullptr && *value != '\0';
}

/// The columns that COLUMNS tells, else those of the terminal, as far as texts go along.
std::size_t width_for(bool terminal) {
  std::size_t columns = text_width;
  winsize size{};
  const char* const told = std::getenv("COLUMNS");
  if (const auto number = told == nullptr ? std::nullopt : parse_number(told)) {
    columns = static_cast<std::size_t>(std::clamp(*number, 1.0, 1000.0));
  } else if (terminal && ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) {
    columns = size.ws_col;
  }
  return std::clamp(columns, min_text_width, text_width);
}

}  // namespace

TextStyle style_for(const std::ostream& out) {
  const char* term = std::getenv("TERM");
  const bool dumb = term != nullptr && std::string_view(term) == "dumb";
  const bool terminal = &out == &std::cout && isatty(STDOUT_FILENO) == 1;
  return {terminal && !dumb && !is_set("NO_COLOR"), width_for(terminal)};
}

std::string ending_of(const std::string& path) {
  return std::filesystem::path(path).extension().string();
}

std::string text_before(const std::string& path) { return read_file(path).text.value_or(""); }

std::string endings_words(const std::vector<std::string_view>& endings) {
  std::string words;
  for (const std::string_view ending : endings) {
    if (!words.empty()) words += ending == endings.back() ? " or " : ", ";
    words += ending;
  }
  return words;
}

void add_write_options(CommandLine& line, std::string_view what,
                       const std::vector<std::string_view>& endings) {
  line.options.push_back(
      {"write", "FILE",
       fmt::format("write {} to FILE too, {} as its ending says", what, endings_words(endings)),
       true});
  line.options.push_back(force_option());
}

std::string ending_fault(const std::vector<std::string>& paths,
                         const std::vector<std::string_view>& endings) {
  const auto unknown = std::find_if(paths.begin(), paths.end(), [&](const std::string& path) {
    return std::find(endings.begin(), endings.end(), ending_of(path)) == endings.end();
  });
  if (unknown == paths.end()) return {};
  return fmt::format("--write {}: the ending chooses the format, expected {}", *unknown,
                     endings_words(endings));
}

std::optional<WriteGuard> guard_files(std::string_view command, const ParsedLine& line,
                                      const std::vector<std::string>& files,
                                      const std::vector<std::string_view>& endings,
                                      std::ostream& err) {
  if (const std::string fault = ending_fault(files, endings); !fault.empty()) {
    err << refusal(std::string(command), fault);
    return std::nullopt;
  }
  // Finding out which files are read takes time, so it is skipped when nothing is written.
  WriteGuard guard(files.empty() ? std::vector<ReadFile>{} : files_read(line), line.has("force"));
  std::vector<WrittenFile> written;
  for (const std::string& file : files) written.push_back({file, kind_of_ending(ending_of(file))});
  const auto fault = guard.fault(written);
  if (!fault) return guard;
  refuse_to_write(command, *fault, err);
  return std::nullopt;
}

int write_files(const std::vector<MadeFile>& files, const WriteGuard& guard, std::ostream& err) {
  for (const MadeFile& file : files) {
    const auto fault = guard.write({file.path, kind_of_ending(ending_of(file.path))}, file.text);
    if (!fault) continue;
    err << fmt::format("{}: {}\n", printable(file.path), fault->message);
    if (!fault->next_step.empty()) err << "  " << fault->next_step << "\n";
    return exit_could_not;
  }
  return exit_done;
}

}  // namespace slabtide
