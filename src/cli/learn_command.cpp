#include "slabtide/cli/learn_command.h"

#include <algorithm>
#include <ostream>
#include <sstream>

#include <fmt/format.h>

#include "slabtide/cli/book_file.h"
#include "slabtide/cli/planned_job.h"
#include "slabtide/core/files.h"
#include "slabtide/day/learned_pour.h"

namespace slabtide {

namespace {

constexpr std::size_t max_learned_jobs = 200;

CommandLine learn_line() {
  CommandLine line;
  line.name = "learn";
  line.summary = "finished pours into the mix book, which later plans start from";
  line.operand = "JOB...";
  line.most_operands = max_learned_jobs;
  line.options = {book_option()};
  line.details =
      "A job must name its mix and have its journal beside it (slabtide note). Learning a job\n"
      "again puts its new readings in place of the old.\n";
  return line;
}

/// Without what this very pour taught before.
void forget(MixBook& book, const Job& job) {
  for (BookedMix& mix : book.mixes) {
    std::erase_if(mix.pours, [&job](const BookedPour& pour) {
      return pour.job == job.name && pour.site == job.site.name && pour.date == job.pour.date;
    });
  }
}

/// One job into the book; the exit code, and what was learned in words.
int learn_one(const std::string& path, MixBook& book, std::string& told, std::ostream& err) {
  const LineReading line = read_line({"plan", "", "JOB", true, 1, job_options(), ""}, {path});
  const JobLoading found = load_job(path, *line.line, MixBook{}, err);
  if (!found.loaded) return found.exit_code;
  const std::string mix = found.loaded->job.mix.name;
  if (mix.empty() || found.loaded->journal.readings.empty()) {
    err << fmt::format("slabtide learn: {}: {}\n", path,
                       mix.empty() ? "its mix has no name\n  give it one in [mix]: name = \"...\""
                                   : "nothing was noted\n  slabtide note --list");
    return exit_input_wrong;
  }
  forget(book, found.loaded->job);
  std::ostringstream again;  // mostly what the first reading said
  JobLoading loading = load_job(path, *line.line, book, again);
  if (!loading.loaded) err << again.str();
  const JobPlanning planning = plan_loaded(std::move(loading), err);
  if (!planning.planned) return planning.exit_code;
  const PlannedJob& planned = *planning.planned;
  BookedPour pour = learn_pour(planned.loaded.journal, planned.loaded.job, planned.run,
                               planned.plan, planned.loaded.practice);
  told += fmt::format("{}: {}, {}\n", path, mix,
                      pour.readings > 0
                          ? fmt::format("set times by {:.2f}, from {} reading{}", pour.set_factor,
                                        pour.readings, pour.readings == 1 ? "" : "s")
                          : std::string("no reading of the setting"));
  book.put(mix, std::move(pour));
  return exit_done;
}

int run_learn(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const std::string path = book_path(line, line.operands().front());
  std::optional<MixBook> book = load_book(path, err);
  if (!book) return exit_input_wrong;
  std::string told;
  for (const std::string& job : line.operands()) {
    if (const int code = learn_one(job, *book, told, err); code != exit_done) return code;
  }
  if (const auto fault = replace_file(path, mix_book_text(*book))) {
    err << fmt::format("{}: {}\n  {}\n", path, fault->message, fault->next_step);
    return exit_could_not;
  }
  out << told << fmt::format("written to {}\n", path);
  return exit_done;
}

}  // namespace

const Command learn_command{learn_line, run_learn};

}  // namespace slabtide
