#include "starter_command.h"

#include <unistd.h>

#include <array>
#include <filesystem>
#include <iostream>
#include <ostream>
#include <string>

#include <fmt/format.h>

#include "cli/fetch/fetch.h"
#include "cli/guard/write_guard.h"
#include "cli/starter/day_option.h"
#include "cli/starter/place_option.h"
#include "cli/starter/starter_job.h"
#include "cli/starter/starter_questions.h"
#include "core/utf8.h"
#include "fetch_command.h"

namespace slabtide {

namespace {

namespace fs = std::filesystem;

CommandLine starter_line() {
  CommandLine line;
  line.name = "starter";
  line.summary = "a job file to start from: every key explained, or a short one";
  line.options = {
      {"write", "FILE", "write it to FILE, which must not exist yet; else print it", false},
      {"short", "", "only what a plan needs, in about forty lines", false},
      place_option(),
      day_option(),
      {"finish", "WORD", "stamp, texture roll, broom, float or trowel; the short file", false},
      {"size", "FT x FT", "along the house and out from it, such as 16x12; the short file", false},
      {"sun-side", "SIDE",
       "south, west, north or east, with the house across from it, or open; the short file", false},
      {"forecast", "FILE",
       "take the weather from this file, its path as seen from the job's folder", false},
      {"fetch", "", "get the forecast as slabtide fetch does, and take the weather from it", false},
      {"base-url", "URL", "with --fetch, another server that works like the service", false},
      now_option(),
      force_option()};
  line.details =
      "Without options it asks, in a terminal.\n"
      "Example: slabtide starter --write job.toml --place \"44.9, -91.9\" --date tomorrow\n"
      "             --finish broom --size 20x10 --sun-side west --fetch\n";
  return line;
}

/// What is wrong with the options; empty if they are all put in.
std::string put_options(const ParsedLine& line, StarterJob& job) {
  const bool drawn = line.has("finish") || line.has("size") || line.has("sun-side");
  if (line.has("short") || drawn) job.shorten();
  if (line.has("fetch") && !line.text("write")) return "--fetch needs --write FILE";
  if (line.has("fetch") && line.has("forecast")) return "give --fetch or --forecast, not both";
  std::string fault;
  const auto put = [&](const char* option, std::string (StarterJob::*member)(const std::string&)) {
    const auto text = line.text(option);
    if (text && fault.empty()) fault = (job.*member)(*text);
  };
  put("place", &StarterJob::put_place);
  put("date", &StarterJob::put_day);
  put("finish", &StarterJob::put_finish);
  put("size", &StarterJob::put_size);
  put("sun-side", &StarterJob::put_sun_side);
  if (const auto path = line.text("forecast")) job.put_forecast(*path);
  return fault;
}

/// One run that writes a file.
class StarterFile {
 public:
  StarterFile(const ParsedLine& line, std::string path, std::ostream& out, std::ostream& err)
      : line_(line), path_(std::move(path)), out_(out), err_(err), guard_({}, line.has("force")) {}

  int write(StarterJob job, bool wants_forecast) {
    const WrittenFile file{path_, FileKind::job};
    if (const auto fault = guard_.fault({&file, 1}))
      return refuse_to_write("starter", *fault, err_);
    const std::string without_forecast = job.text();
    const std::string example_remarks = job.remarks();
    if (wants_forecast) job.put_forecast(fs::path(path_).stem().string() + "-forecast.json");
    if (const int code = keep(job.text()); code != exit_done) return code;
    if (!wants_forecast) return tell(example_remarks);
    const FetchOrder order{.job_path = path_,
                           .from = {},
                           .to = {},
                           .contact = usual_contact(),
                           .force = line_.has("force"),
                           .base_url = line_.text("base-url")};
    const int code = fetch(order, real_fetch_world(), out_, err_);
    if (code == exit_done) return tell(job.remarks());
    if (const int kept = keep(without_forecast); kept != exit_done) return kept;
    tell(example_remarks);
    err_ << fmt::format("  for its weather later: slabtide fetch {}\n", printable(path_));
    return code;
  }

 private:
  int keep(const std::string& text) {
    const auto fault = guard_.write({path_, FileKind::job}, text);
    if (!fault) return exit_done;
    err_ << fmt::format("{}: {}\n  {}\n", printable(path_), fault->message, fault->next_step);
    return exit_could_not;
  }

  int tell(const std::string& remarks) {
    out_ << fmt::format("{0} written: edit it, then run slabtide plan {0}\n", printable(path_))
         << remarks;
    return exit_done;
  }

  const ParsedLine& line_;
  std::string path_;
  std::ostream& out_;
  std::ostream& err_;
  WriteGuard guard_;
};

bool is_asked_at_terminal(const ParsedLine& line, const std::ostream& out) {
  constexpr auto of_the_job = std::to_array<const char*>(
      {"write", "short", "place", "date", "finish", "size", "sun-side", "forecast", "fetch"});
  for (const char* const option : of_the_job) {
    if (line.has(option)) return false;
  }
  return &out == &std::cout && isatty(STDIN_FILENO) == 1 && isatty(STDOUT_FILENO) == 1;
}

int ask_and_write(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  StarterJob job(line);
  const auto wish = ask_for_starter(job, std::cin, out);
  if (!wish) {
    err << "\nslabtide starter: not every question was answered, so nothing is written\n"
           "  slabtide starter --short prints a job without asking\n";
    return exit_input_wrong;
  }
  if (!job.warning().empty()) err << place_warning("starter", job.warning());
  return StarterFile(line, wish->path, out, err).write(job, wish->wants_forecast);
}

int run_starter(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  if (is_asked_at_terminal(line, out)) return ask_and_write(line, out, err);
  StarterJob job(line);
  if (const std::string fault = put_options(line, job); !fault.empty()) {
    err << refusal("starter", fault);
    return exit_input_wrong;
  }
  if (!job.warning().empty()) err << place_warning("starter", job.warning());
  if (const auto path = line.text("write")) {
    return StarterFile(line, *path, out, err).write(job, line.has("fetch"));
  }
  out << job.text();
  return exit_done;
}

}  // namespace

const Command starter_command{starter_line, run_starter};

}  // namespace slabtide
