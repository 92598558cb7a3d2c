#include "many_jobs.h"

#include <algorithm>
#include <exception>
#include <filesystem>
#include <mutex>
#include <optional>
#include <ostream>
#include <set>
#include <sstream>
#include <utility>

#include <fmt/format.h>

#include "cli/line/command_line.h"
#include "cli/line/progress.h"
#include "core/parallel.h"
#include "core/utf8.h"

namespace slabtide {

namespace {

/// The outcome of one job.
struct JobOutcome {
  int exit_code = exit_done;
  std::string out;
  std::string err;
};

JobOutcome outcome_of(std::size_t job, const std::string& path, const JobWork& work) {
  std::ostringstream out;
  std::ostringstream err;
  JobOutcome outcome;
  try {
    outcome.exit_code = work(job, out, err);
  } catch (const std::exception& fault) {
    err << fmt::format(
        "{}: something went wrong inside the program: {}\n"
        "  this is a fault of the program, not of your file; nothing was written for it\n",
        printable(path), printable(fault.what()));
    outcome.exit_code = exit_could_not;
  }
  outcome.out = out.str();
  outcome.err = err.str();
  return outcome;
}

/// Passes the outcomes on in order, whichever is finished first.
class InOrder {
 public:
  InOrder(const std::vector<std::string>& paths, std::ostream& out, std::ostream& err)
      : paths_(paths), out_(out), err_(err), progress_("jobs done", err), waiting_(paths.size()) {}

  void put(std::size_t job, JobOutcome outcome) {
    const std::lock_guard<std::mutex> lock(mutex_);
    waiting_[job] = std::move(outcome);
    progress_.tell(++done_);
    while (next_ < paths_.size() && waiting_[next_]) {
      pass(*waiting_[next_]);
      waiting_[next_++].reset();
    }
  }

  /// "3 jobs: 2 planned, not b.toml".
  std::string summary() const {
    std::string words =
        fmt::format("{} jobs: {} planned", paths_.size(), paths_.size() - failed_.size());
    constexpr std::size_t max_named = 10;
    for (std::size_t i = 0; i < std::min(failed_.size(), max_named); ++i) {
      words += fmt::format("{}{}", i == 0 ? ", not " : ", ", printable(failed_[i]));
    }
    if (failed_.size() > max_named) {
      words += fmt::format(" and {} more", failed_.size() - max_named);
    }
    return words;
  }

  int exit_code() const { return exit_code_; }

 private:
  void pass(const JobOutcome& outcome) {
    const std::string& path = paths_[next_];
    exit_code_ = std::max(exit_code_, outcome.exit_code);
    err_ << outcome.err;
    if (outcome.exit_code != exit_done) failed_.push_back(path);
    if (!outcome.out.empty()) out_ << printable(path) << "\n\n" << outcome.out << "\n";
  }

  const std::vector<std::string>& paths_;
  std::ostream& out_;
  std::ostream& err_;
  Progress progress_;
  std::mutex mutex_;
  std::vector<std::optional<JobOutcome>> waiting_;
  std::size_t next_ = 0;
  std::size_t done_ = 0;
  std::vector<std::string> failed_;
  int exit_code_ = exit_done;
};

}  // namespace

int for_each_job(const std::vector<std::string>& paths, const JobWork& work, std::ostream& out,
                 std::ostream& err) {
  InOrder order(paths, out, err);
  in_parallel(paths.size(), 0, [&](std::size_t i) { order.put(i, outcome_of(i, paths[i], work)); });
  out << order.summary() << "\n";
  return order.exit_code();
}

std::vector<std::string> WriteTargets::all() const {
  std::vector<std::string> files;
  for (const auto& own : of_job) files.insert(files.end(), own.begin(), own.end());
  return files;
}

WriteTargets write_targets(const std::vector<std::string>& written,
                           const std::vector<std::string>& paths) {
  WriteTargets targets;
  std::set<std::string> taken;  // by earlier jobs
  for (const std::string& path : paths) {
    std::vector<std::string>& files = targets.of_job.emplace_back();
    for (const std::string& file : written) {
      const bool ending_alone = file.starts_with('.') && file.find_first_of("./", 1) == file.npos;
      files.push_back(ending_alone ? std::filesystem::path(path).replace_extension(file).string()
                                   : file);
      if (!taken.contains(files.back())) continue;
      targets.fault = fmt::format(
          "--write: {} would be written for more than one job; an ending alone, as in "
          "--write .html, writes beside each job",
          files.back());
    }
    taken.insert(files.begin(), files.end());
  }
  return targets;
}

}  // namespace slabtide
