#include "job_line.h"

#include <charconv>
#include <ostream>
#include <utility>

#include <fmt/format.h>

#include "cli/line/progress.h"
#include "core/utf8.h"
#include "text_files.h"

namespace slabtide {

namespace {

/// The value of --draws; empty if it is not a number up to `max_samples`.
std::optional<std::size_t> samples_of(const ParsedLine& line, std::size_t usual) {
  const auto text = line.text("draws");
  if (!text) return usual;
  std::size_t samples = 0;
  const char* end = text->data() + text->size();
  const auto [stopped, fault] = std::from_chars(text->data(), end, samples);
  if (fault != std::errc() || stopped != end || samples > max_samples) return std::nullopt;
  return samples;
}

/// The forecast that the job names, if the job can be read.
std::optional<std::string> own_forecast(const JobRequest& request) {
  const FileText file = read_file(request.path);
  if (!file.text) return std::nullopt;
  const Parsed<Job> job = read_job(*file.text);
  return job.ok() ? forecast_path(request, *job.value) : std::nullopt;
}

}  // namespace

Option book_option() {
  return {"book", "FILE", "the mix book; else mix-book.toml beside the job", false};
}

std::vector<Option> job_options() {
  return {{"forecast", "FILE", "weather from this file instead of what the job names", false},
          {"practice", "FILE", "thresholds and rates of your own (see practice.toml)", false},
          {"units", "us|si", "units of the output; else the job file's", false},
          {"clock", "12|24", "12- or 24-hour clock: 7:30 AM or 07:30; else by the units", false},
          {"order", "ZONE,ZONE",
           "place the zones in this order; one name each time where names have "
           "commas",
           true},
          book_option(),
          {"now", "TIME", "plan as if it were this time (2026-05-13 6:00 PM); else now", false}};
}

JobRequest request_of(const ParsedLine& line, const std::string& path) {
  return {.path = path,
          .forecast = line.text("forecast"),
          .practice = line.text("practice"),
          .book = line.text("book"),
          .units = line.text("units"),
          .clock = line.text("clock"),
          .order = line.texts("order"),
          .now = line.text("now")};
}

Option samples_option(std::size_t usual) {
  return {"draws", "N",
          fmt::format("possible days tried for how sure each time is, up to {}; else {}, fewer for "
                      "very many zones; 0 for none",
                      max_samples, usual),
          false};
}

std::optional<std::size_t> samples_asked(const ParsedLine& line, std::size_t usual,
                                         std::ostream& err) {
  const auto samples = samples_of(line, usual);
  if (!samples) {
    err << fmt::format("slabtide: --draws: got '{}', expected a whole number from 0 to {}\n",
                       printable(*line.text("draws")), max_samples);
  }
  return samples;
}

std::vector<ReadFile> files_read(const ParsedLine& line) {
  std::vector<ReadFile> files;
  if (const auto path = line.text("practice")) files.push_back({*path, "the practice file"});
  if (const auto path = line.text("forecast")) files.push_back({*path, "the forecast"});
  for (const std::string& path : line.operands()) {
    const JobRequest request = request_of(line, path);
    files.push_back({path, "the job"});
    files.push_back({journal_path(path), fmt::format("the journal of {}", path)});
    files.push_back({book_path(request), mix_book_role});
    if (const auto forecast = own_forecast(request)) {
      files.push_back({*forecast, fmt::format("the forecast of {}", path)});
    }
  }
  return files;
}

std::optional<PlannedPour> plan_job(const ParsedLine& line, std::ostream& err) {
  return plan_request(request_of(line, line.operands().front()), text_files(), err);
}

std::optional<PlannedPour> plan_job_with_bands(const std::string& path, const ParsedLine& line,
                                               std::size_t samples, int threads,
                                               std::ostream& err) {
  std::optional<PlannedPour> pour =
      plan_request(request_of(line, path), text_files(), err, threads);
  if (!pour) return std::nullopt;
  if (!line.text("draws")) samples = samples_for(pour->plan, samples);
  Progress progress("days tried", err);
  return with_uncertainty(
      std::move(*pour), {samples, threads, [&progress](std::size_t done) { progress.tell(done); }});
}

std::optional<PlannedPour> plan_job_with_bands(const ParsedLine& line, std::ostream& err) {
  const auto samples = samples_asked(line, usual_samples, err);
  if (!samples) return std::nullopt;
  return plan_job_with_bands(line.operands().front(), line, *samples, 0, err);
}

}  // namespace slabtide
