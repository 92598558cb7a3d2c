#include "slabtide/request/plan/plan_request.h"

#include <algorithm>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include "day/field/seen_day.h"
#include "slabtide/day/uncertainty/bands.h"

namespace slabtide {

namespace {

/// The plan made again to agree with what has been noted so far.
PlannedPour with_seen(PlannedPour pour, const EnsembleSettings& settings) {
  SeenDay seen = see_day(pour, settings);
  std::vector<std::string> words;
  if (seen.observations_counted > 0) words.push_back(seen_words(seen, pour.job, pour.now) + ".");
  for (const Misfit& misfit : seen.misfits) words.push_back(misfit.why + ".");
  pour.plan = std::move(seen.plan);
  pour.plan.seen = std::move(words);
  pour.run = std::move(seen.run);
  return pour;
}

}  // namespace

std::optional<PlannedPour> plan_loaded(LoadedJob loaded, std::ostream& findings, int threads) {
  SolverSettings solver;
  solver.threads = threads;
  Parsed<PourRun> run = run_pour(loaded.job, loaded.series, loaded.practice, solver);
  const std::string path = loaded.path.empty() ? "slabtide" : loaded.path;
  findings << render_all(run.diagnostics, path, loaded.text);
  if (!run.ok()) return std::nullopt;
  DayPlan plan = plan_day(loaded.job, *run.value, loaded.practice, loaded.forecast_age_h,
                          {.threads = threads});
  return PlannedPour{std::move(loaded.job),     std::move(loaded.forecast),
                     loaded.practice,           std::move(*run.value),
                     std::move(plan),           loaded.forecast_age_h,
                     std::move(loaded.journal), loaded.now};
}

std::optional<PlannedPour> plan_request(const JobRequest& request, const Sources& sources,
                                        std::ostream& findings, int threads) {
  std::optional<LoadedJob> loaded = load_job(request, sources, findings);
  if (!loaded) return std::nullopt;
  return plan_loaded(std::move(*loaded), findings, threads);
}

PlannedPour with_uncertainty(PlannedPour pour, const EnsembleSettings& settings) {
  if (!pour.journal.readings.empty()) return with_seen(std::move(pour), settings);
  if (settings.samples == 0) return pour;
  const Ensemble ensemble = sampled_days(pour, settings);
  pour.plan = with_bands(std::move(pour.plan), pour.job, ensemble);
  return pour;
}

}  // namespace slabtide
