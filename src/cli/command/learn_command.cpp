#include "learn_command.h"

#include <algorithm>
#include <ostream>
#include <sstream>

#include <fmt/format.h>

#include "cli/guard/write_guard.h"
#include "cli/jobs/job_line.h"
#include "cli/jobs/text_files.h"
#include "core/file_lock.h"
#include "core/utf8.h"
#include "request/plan/finished_pour.h"
#include "slabtide/core/files.h"

namespace slabtide {

namespace {

constexpr std::size_t max_learned_jobs = 200;

CommandLine learn_line() {
  CommandLine line;
  line.name = "learn";
  line.summary = "put finished pours in the mix book, which later plans start from";
  line.operand = "JOB...";
  line.max_operands = max_learned_jobs;
  line.options = {book_option(), force_option()};
  line.details =
      "A job must name its mix and have its journal beside it (slabtide note). Learning\n"
      "a job again puts its new readings in place of the old.\n";
  return line;
}

/// What a book has learned from the journals of the jobs on the command line.
struct Lessons {
  std::string book;  ///< its text
  std::string told;
};

int refuse(const std::string& path, const std::string& what, std::ostream& err) {
  err << fmt::format("slabtide learn: {}: {}\n", printable(path), what);
  return exit_input_wrong;
}

/// Learns one job; returns the exit code.
int learn_one(const std::string& path, const Job& job, Lessons& lessons, std::ostream& err) {
  auto lesson = learn_job(path, job, lessons.book, text_files(), err);
  if (!lesson) return exit_input_wrong;
  if (!lesson->book) {
    return refuse(path,
                  "the mix book is written in a way that cannot be added to\n  write it with "
                  "[[mix]] and [[mix.pour]] on lines of their own, each list on one line",
                  err);
  }
  lessons.book = std::move(*lesson->book);
  lessons.told += fmt::format("{}: {}\n", printable(path), lesson->told);
  return exit_done;
}

/// A job of the command line, whose findings have been reported.
struct FinishedJob {
  std::string path;
  Job job;
};

/// Checks the jobs and sorts them by day, so that each one finds what the earlier ones taught.
/// Empty if one is wrong, which has then been reported.
std::optional<std::vector<FinishedJob>> finished_jobs(const std::vector<std::string>& paths,
                                                      std::ostream& err) {
  std::vector<FinishedJob> jobs;
  for (const std::string& path : paths) {
    std::ostringstream findings;  // reported again when the job is learned
    auto found = load_job({.path = path}, text_files(), MixBook{}, findings);
    if (!found) {
      err << findings.str();
      return std::nullopt;
    }
    const bool nameless = found->job.mix.name.empty();
    if (nameless || found->journal.readings.empty()) {
      refuse(path,
             nameless ? "its mix has no name\n  give it one in [mix]: name = \"...\""
                      : "nothing was noted\n  slabtide note --list",
             err);
      return std::nullopt;
    }
    jobs.push_back({path, std::move(found->job)});
  }
  std::stable_sort(jobs.begin(), jobs.end(), [](const FinishedJob& a, const FinishedJob& b) {
    return a.job.pour.date < b.job.pour.date;
  });
  return jobs;
}

/// The files that are only read, which does not include the book.
std::vector<ReadFile> read_beside_book(const ParsedLine& line) {
  std::vector<ReadFile> files = files_read(line);
  std::erase_if(files, [](const ReadFile& file) { return file.role == mix_book_role; });
  return files;
}

/// The book's text, or "" if it is not a book and --force is given. Empty if it cannot be used,
/// which has then been reported.
std::optional<std::string> old_book(const std::string& path, bool force, std::ostream& err) {
  const FileText file = read_file(path);
  if (!file.text) {
    err << fmt::format("{}: {}\n  {}\n", printable(path), file.error.message, file.error.next_step);
    return std::nullopt;
  }
  const Parsed<MixBook> reading = read_mix_book(*file.text);
  if (!reading.ok() && force) return "";
  err << render_all(reading.diagnostics, path, *file.text);
  return reading.ok() ? file.text : std::nullopt;
}

int could_not(const std::string& path, const FileError& fault, std::ostream& err) {
  err << fmt::format("{}: {}\n  {}\n", printable(path), fault.message, fault.next_step);
  return exit_could_not;
}

/// The lock makes another `learn` wait from before the book is read until it is written.
int learn_into(const WrittenFile& file, const WriteGuard& guard, const ParsedLine& line,
               std::ostream& out, std::ostream& err) {
  const FileLock lock(file.path);
  if (lock.error()) return could_not(file.path, *lock.error(), err);
  const auto before = old_book(file.path, line.has("force"), err);
  if (!before) return exit_input_wrong;
  const auto jobs = finished_jobs(line.operands(), err);
  if (!jobs) return exit_input_wrong;
  Lessons lessons{*before, {}};
  for (const FinishedJob& job : *jobs) {
    if (const int code = learn_one(job.path, job.job, lessons, err); code != exit_done) return code;
  }
  if (const auto fault = guard.write(file, lessons.book)) return could_not(file.path, *fault, err);
  out << lessons.told << fmt::format("written to {}\n", printable(file.path));
  return exit_done;
}

int run_learn(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const WrittenFile file{book_path(request_of(line, line.operands().front())), FileKind::book};
  // A file that is not a book is reported by the book's reader, with line and column.
  const WriteGuard guard(read_beside_book(line), true);
  if (const auto fault = guard.fault({&file, 1})) return refuse_to_write("learn", *fault, err);
  return learn_into(file, guard, line, out, err);
}

}  // namespace

const Command learn_command{learn_line, run_learn};

}  // namespace slabtide
