#include "slabtide/cli/request/output.h"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <iostream>

#include <fmt/format.h>

#include "slabtide/cli/request/load_job.h"
#include "slabtide/core/files.h"
#include "slabtide/core/utf8.h"
#include "slabtide/report/files/calendar.h"
#include "slabtide/report/files/csv_plan.h"
#include "slabtide/report/files/json_check_back.h"
#include "slabtide/report/files/json_compare.h"
#include "slabtide/report/files/json_plan.h"
#include "slabtide/report/page/page_check_back.h"
#include "slabtide/report/page/page_compare.h"
#include "slabtide/report/page/page_outlook.h"
#include "slabtide/report/page/page_plan.h"

namespace slabtide {

namespace {

/// A format that goes by the facts alone.
template <class Facts, std::string (*make)(const Facts&)>
std::string from_facts(const Facts& facts, const Writing& /*writing*/) {
  return make(facts);
}

std::string day_calendar(const PlannedPour& facts, const Writing& writing) {
  return calendar(facts, {writing.now, writing.before});
}

constexpr std::array plan_table{
    FileFormat<PlannedPour>{".html", from_facts<PlannedPour, page_plan>},
    FileFormat<PlannedPour>{".json", from_facts<PlannedPour, json_plan>},
    FileFormat<PlannedPour>{".ics", day_calendar},
    FileFormat<PlannedPour>{".csv", from_facts<PlannedPour, csv_plan>},
};

constexpr std::array compare_table{
    FileFormat<CompareFacts>{".html", from_facts<CompareFacts, page_compare>},
    FileFormat<CompareFacts>{".json", from_facts<CompareFacts, json_compare>},
};

constexpr std::array outlook_table{
    FileFormat<OutlookFacts>{".html", from_facts<OutlookFacts, page_outlook>},
};

constexpr std::array check_back_table{
    FileFormat<CheckBackFacts>{".html", from_facts<CheckBackFacts, page_check_back>},
    FileFormat<CheckBackFacts>{".json", from_facts<CheckBackFacts, json_check_back>},
};

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

std::span<const FileFormat<PlannedPour>> plan_formats() { return plan_table; }

std::span<const FileFormat<CompareFacts>> compare_formats() { return compare_table; }

std::span<const FileFormat<OutlookFacts>> outlook_formats() { return outlook_table; }

std::span<const FileFormat<CheckBackFacts>> check_back_formats() { return check_back_table; }

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

Option write_option(std::string_view what, const std::vector<std::string_view>& endings) {
  return {"write", "FILE",
          fmt::format("write {} to FILE too, {} as its ending says", what, endings_words(endings)),
          true};
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
  // What is read costs time to find out: not where nothing is written.
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
