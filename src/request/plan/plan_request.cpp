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

/// A zone's first and last tenth, those of its parts and its border, what cools first, and faces.
std::size_t max_columns_of(const ZonePlan& zone) {
  const std::size_t parts = 1 + zone.parts.size() + (zone.border ? 1 : 0);
  return 2 * parts + 1 + zone.faces.size();
}

}  // namespace

std::size_t samples_for(const PlannedPour& pour, std::size_t usual) {
  std::size_t columns = 1;
  for (const ZonePlan& zone : pour.plan.zones) columns += max_columns_of(zone);
  return std::min(usual, std::max(min_samples, max_sampled_columns / columns));
}

Ensemble sampled_days(const PlannedPour& pour, const EnsembleSettings& settings) {
  const SampleScale scale = sample_scale(pour.job, pour.run, pour.forecast, pour.practice.spread);
  const DayModel model(pour.job, pour.run, pour.plan, pour.practice, scale);
  return sample_days(model, settings);
}

std::optional<PlannedPour> plan_loaded(LoadedJob loaded, std::ostream& findings, int threads) {
  SolverSettings solver;
  solver.threads = threads;
  Parsed<PourRun> run = run_pour(loaded.job, loaded.series, loaded.practice, solver);
  const std::string path = loaded.path.empty() ? "slabtide" : loaded.path;
  findings << render_all(run.diagnostics, path, loaded.text);
  if (!run.ok()) return std::nullopt;
  DayPlan plan = plan_day(loaded.job, *run.value, loaded.practice, loaded.forecast_age_h);
  return PlannedPour{std::move(loaded.job),
                     std::move(loaded.forecast),
                     std::move(loaded.practice),
                     std::move(*run.value),
                     std::move(plan),
                     loaded.forecast_age_h,
                     std::move(loaded.journal),
                     loaded.now};
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
