#pragma once

#include <iosfwd>
#include <optional>

#include "slabtide/cli/request/load_job.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// A loaded job with its run and its plan: where every command that reports a day starts.
struct PlannedJob {
  LoadedJob loaded;
  PourRun run;
  DayPlan plan;

  PlannedPour facts() const {
    return {loaded.job, loaded.forecast, run, plan, loaded.practice, loaded.forecast_age_h};
  }
};

/// What went well, or the exit code after the findings were printed.
struct JobPlanning {
  std::optional<PlannedJob> planned;
  int exit_code = exit_done;
};

/// Days drawn for the bands of a plan where the line does not say.
inline constexpr std::size_t usual_samples = 200;
/// --draws, for commands that look at days that may come.
Option samples_option(std::size_t usual = usual_samples);

/// The draws that --draws asks for, else `usual`; where it is no such number, that is said.
std::optional<std::size_t> samples_asked(const ParsedLine& line, std::size_t usual,
                                         std::ostream& err);

/// The days that may come for a job as planned.
Ensemble sampled_days(const PlannedJob& planned, const EnsembleSettings& settings);

/// Loads the job at the line's operand and plans it, without bands.
JobPlanning plan_job(const ParsedLine& line, std::ostream& err);

/// How much is computed for bands, and on how many threads (0: as the machine has); the plan is the
/// same for any.
struct BandWork {
  std::size_t samples = usual_samples;
  int threads = 0;
};

/// Loads the job at `path`, which is one of the line's operands, and plans it with bands, telling
/// how far it is.
JobPlanning plan_job_with_bands(const std::string& path, const ParsedLine& line,
                                const BandWork& work, std::ostream& err);

/// The job at the line's operand, with as many draws as --draws says.
JobPlanning plan_job_with_bands(const ParsedLine& line, std::ostream& err);

/// Plans a job that was loaded already.
JobPlanning plan_loaded(JobLoading loading, std::ostream& err, int threads = 0);

}  // namespace slabtide
