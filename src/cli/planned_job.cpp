#include "slabtide/cli/planned_job.h"

#include <ostream>

namespace slabtide {

JobPlanning plan_loaded(JobLoading loading, std::ostream& err) {
  if (!loading.loaded) return {std::nullopt, loading.exit_code};
  LoadedJob& loaded = *loading.loaded;
  Reading<PourRun> run = run_pour(loaded.job, loaded.series, loaded.practice, SolverSettings{});
  const std::string path = loaded.path.empty() ? "slabtide" : loaded.path;
  err << render_all(run.diagnostics, path, loaded.text);
  if (!run.ok()) return {std::nullopt, exit_input_wrong};
  DayPlan plan = plan_day(loaded.job, *run.value, loaded.practice, loaded.forecast_age_h);
  return {PlannedJob{std::move(loaded), std::move(*run.value), std::move(plan)}, exit_done};
}

JobPlanning plan_job(const ParsedLine& line, std::ostream& err) {
  return plan_loaded(load_job(line.operands().front(), line, err), err);
}

}  // namespace slabtide
