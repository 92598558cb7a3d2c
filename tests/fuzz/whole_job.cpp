#include "fuzz/whole_job.h"

#include <array>
#include <filesystem>
#include <sstream>
#include <vector>

#include <fmt/format.h>

#include "slabtide/cli/command/run.h"
#include "support/number_checks.h"
#include "support/order_checks.h"
#include "support/page_checks.h"
#include "support/run_program.h"

namespace slabtide::fuzz {

namespace {

namespace fs = std::filesystem;

constexpr std::array<const char*, 4> endings{".json", ".html", ".ics", ".csv"};

/// One folder for all jobs of a process, emptied before each.
const fs::path& empty_folder() {
  static const test::TempFolder folder;
  for (const auto& entry : fs::directory_iterator(folder.path())) fs::remove_all(entry.path());
  return folder.path();
}

std::vector<std::string> words_of(const fs::path& folder, const JobRun& run) {
  std::vector<std::string> words{run.command, (folder / "job.toml").string(), "--now",
                                 "2026-05-13T18:00Z"};
  if (run.command == "plan" || run.command == "compare" || run.command == "outlook") {
    words.insert(words.end(), {"--draws", fmt::format("{}", run.samples)});
  }
  if (run.command != "plan") return words;
  for (const char* ending : endings) {
    words.insert(words.end(), {"--write", (folder / ("plan" + std::string(ending))).string()});
  }
  return words;
}

/// Adds faults and where they are.
void add(std::vector<std::string>& faults, const std::string& where,
         const std::vector<std::string>& more) {
  for (const std::string& fault : more) faults.push_back(where + ": " + fault);
}

std::vector<std::string> file_faults(const fs::path& folder) {
  std::vector<std::string> faults;
  for (const char* ending : endings) {
    const std::string name = "plan" + std::string(ending);
    const std::string text = test::read_text(folder / name);
    if (text.empty()) return {name + " is empty"};
    add(faults, name, test::number_faults(text));
  }
  const std::string json = test::read_text(folder / "plan.json");
  add(faults, "times", test::order_faults(json));
  add(faults, "page", test::page_faults(test::read_text(folder / "plan.html"), json));
  return faults;
}

}  // namespace

std::vector<std::string> job_faults(const test::RandomJob& job, const JobRun& run) {
  const fs::path& folder = empty_folder();
  test::write_text(folder / "job.toml", job.toml);
  if (!job.forecast_csv.empty()) {
    test::write_text(folder / test::random_forecast_name, job.forecast_csv);
  }
  std::ostringstream out;
  std::ostringstream err;
  const int code = slabtide::run(words_of(folder, run), out, err);
  std::vector<std::string> faults;
  if (code == 2 && !err.str().empty()) return faults;
  if (code != 0) return {fmt::format("exit code {}: {}", code, err.str())};
  if (out.str().empty()) faults.emplace_back("nothing is printed");
  add(faults, "text", test::number_faults(out.str()));
  if (run.command == "plan") add(faults, "files", file_faults(folder));
  return faults;
}

DrawnJob drawn_job(test::ByteSource bytes) {
  constexpr std::array<const char*, 16> commands{"plan", "plan", "plan", "plan",   "plan", "plan",
                                                 "plan", "plan", "plan", "plan",   "plan", "plan",
                                                 "plan", "crew", "saw",  "outlook"};
  constexpr std::size_t one_with_draws_in = 8;
  constexpr int some_draws = 6;
  constexpr std::size_t one_compared_in = 40;
  JobRun run{bytes.one_of(commands), bytes.one_in(one_with_draws_in) ? some_draws : 0};
  if (bytes.one_in(one_compared_in)) run.command = "compare";
  return {test::random_job(bytes), run};
}

}  // namespace slabtide::fuzz
