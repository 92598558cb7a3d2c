#include "compared_pour.h"

#include <optional>
#include <utility>

#include "slabtide/request/plan/plan_request.h"

namespace slabtide {

ComparedPour compare_pour(const PlannedPour& pour, std::size_t samples, int threads,
                          std::function<void(std::size_t done)> progress) {
  std::optional<Ensemble> ensemble;
  if (samples > 0) ensemble = sampled_days(pour, {samples, threads, {}});
  const CompareSettings settings{threads, std::move(progress), ensemble ? &*ensemble : nullptr};
  ComparedPour result;
  result.comparison = compare_choices(pour, settings);
  result.turning = find_turning_point(pour, result.comparison, settings);
  result.advice = advise(pour.job, result.comparison, result.turning, pour.practice.compare);
  return result;
}

}  // namespace slabtide
