#include "slabtide/cli/output.h"

#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <iostream>

#include <fmt/format.h>

#include "slabtide/cli/command_line.h"
#include "slabtide/core/files.h"
#include "slabtide/report/json_plan.h"

namespace slabtide {

namespace {

/// A file format and what makes it.
struct Format {
  std::string_view ending;
  std::string (*make)(const PlanFacts&);
};

constexpr std::array<Format, 1> formats{{{".json", json_plan}}};

const Format* format_of(const std::string& path) {
  const std::string ending = std::filesystem::path(path).extension().string();
  for (const Format& format : formats) {
    if (format.ending == ending) return &format;
  }
  return nullptr;
}

bool is_set(const char* variable) {
  const char* value = std::getenv(variable);
  return value != nullptr && *value != '\0';
}

}  // namespace

TextStyle style_for(const std::ostream& out) {
  const char* term = std::getenv("TERM");
  const bool dumb = term != nullptr && std::string_view(term) == "dumb";
  const bool terminal = &out == &std::cout && isatty(STDOUT_FILENO) == 1;
  return {terminal && !dumb && !is_set("NO_COLOR")};
}

std::string write_fault(const std::vector<std::string>& paths) {
  for (const std::string& path : paths) {
    if (format_of(path) != nullptr) continue;
    std::string known;
    for (const Format& format : formats) {
      known += fmt::format("{}{}", known.empty() ? "" : ", ", format.ending);
    }
    return fmt::format("--write {}: the ending chooses the format, expected {}", path, known);
  }
  return {};
}

int write_plan_files(const std::vector<std::string>& paths, const PlanFacts& facts,
                     std::ostream& err) {
  for (const std::string& path : paths) {
    const auto fault = replace_file(path, format_of(path)->make(facts));
    if (!fault) continue;
    err << fmt::format("{}: {}\n", path, fault->message);
    if (!fault->next_step.empty()) err << "  " << fault->next_step << "\n";
    return exit_could_not;
  }
  return exit_done;
}

}  // namespace slabtide
