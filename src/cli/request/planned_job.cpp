#include "slabtide/cli/request/planned_job.h"

#include <charconv>
#include <ostream>

#include <fmt/format.h>

#include "slabtide/cli/line/progress.h"
#include "slabtide/core/utf8.h"
#include "slabtide/day/field/seen_day.h"
#include "slabtide/day/uncertainty/bands.h"

namespace slabtide {

namespace {

/// What --draws says; empty for something else than a number up to `max_samples`.
std::optional<std::size_t> samples_of(const ParsedLine& line, std::size_t usual) {
  const auto text = line.text("draws");
  if (!text) return usual;
  std::size_t samples = 0;
  const char* end = text->data() + text->size();
  const auto [stopped, fault] = std::from_chars(text->data(), end, samples);
  if (fault != std::errc() || stopped != end || samples > max_samples) return std::nullopt;
  return samples;
}

/// The plan made again for what was noted so far.
void take_in(PlannedJob& planned, const EnsembleSettings& settings) {
  const LoadedJob& loaded = planned.loaded;
  SeenDay seen = see_day({loaded.job, loaded.forecast, loaded.practice, planned.run, planned.plan,
                          loaded.forecast_age_h},
                         loaded.journal, settings);
  std::vector<std::string> words;
  if (seen.observations_counted > 0)
    words.push_back(seen_words(seen, loaded.job, loaded.now) + ".");
  for (const Misfit& misfit : seen.misfits) words.push_back(misfit.why + ".");
  planned.plan = std::move(seen.plan);
  planned.plan.seen = std::move(words);
  planned.run = std::move(seen.run);
}

void add_bands(PlannedJob& planned, const BandWork& work, std::ostream& err) {
  const LoadedJob& loaded = planned.loaded;
  Progress progress("days drawn", err);
  const EnsembleSettings settings{work.samples, work.threads,
                                  [&progress](std::size_t done) { progress.tell(done); }};
  if (!loaded.journal.readings.empty()) {
    take_in(planned, settings);
    return;
  }
  const Ensemble ensemble = sampled_days(planned, settings);
  planned.plan = with_bands(std::move(planned.plan), loaded.job, ensemble);
}

}  // namespace

std::optional<std::size_t> samples_asked(const ParsedLine& line, std::size_t usual,
                                         std::ostream& err) {
  const auto samples = samples_of(line, usual);
  if (!samples) {
    err << fmt::format("slabtide: --draws: got '{}', expected a whole number from 0 to {}\n",
                       printable(*line.text("draws")), max_samples);
  }
  return samples;
}

Ensemble sampled_days(const PlannedJob& planned, const EnsembleSettings& settings) {
  const LoadedJob& loaded = planned.loaded;
  const SampleScale scale = sample_scale(planned.run, loaded.forecast, loaded.practice.spread);
  const DayModel model(loaded.job, planned.run, planned.plan, loaded.practice, scale);
  return sample_days(model, settings);
}

Option samples_option(std::size_t usual) {
  return {"draws", "N",
          fmt::format("days drawn for how sure each time is, up to {}; else {}; 0 for none",
                      max_samples, usual),
          false};
}

JobPlanning plan_loaded(JobLoading loading, std::ostream& err, int threads) {
  if (!loading.loaded) return {std::nullopt, loading.exit_code};
  LoadedJob& loaded = *loading.loaded;
  SolverSettings solver;
  solver.threads = threads;
  Parsed<PourRun> run = run_pour(loaded.job, loaded.series, loaded.practice, solver);
  const std::string path = loaded.path.empty() ? "slabtide" : loaded.path;
  err << render_all(run.diagnostics, path, loaded.text);
  if (!run.ok()) return {std::nullopt, exit_input_wrong};
  DayPlan plan = plan_day(loaded.job, *run.value, loaded.practice, loaded.forecast_age_h);
  return {PlannedJob{std::move(loaded), std::move(*run.value), std::move(plan)}, exit_done};
}

JobPlanning plan_job(const ParsedLine& line, std::ostream& err) {
  return plan_loaded(load_job(line.operands().front(), line, err), err);
}

JobPlanning plan_job_with_bands(const std::string& path, const ParsedLine& line,
                                const BandWork& work, std::ostream& err) {
  JobPlanning planning = plan_loaded(load_job(path, line, err), err, work.threads);
  if (planning.planned && work.samples > 0) add_bands(*planning.planned, work, err);
  return planning;
}

JobPlanning plan_job_with_bands(const ParsedLine& line, std::ostream& err) {
  const auto samples = samples_asked(line, usual_samples, err);
  if (!samples) return {std::nullopt, exit_input_wrong};
  return plan_job_with_bands(line.operands().front(), line, {*samples, 0}, err);
}

}  // namespace slabtide
