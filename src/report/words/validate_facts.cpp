#include "validate_facts.h"

#include "day/plan/validate_plan.h"
#include "day/pour/validate_run.h"
#include "job/checks/validate.h"
#include "weather/readers/validate_forecast.h"

namespace slabtide {

void validate(const PlannedPour& facts) {
  validate(facts.job);
  validate(facts.forecast);
  validate(facts.practice);
  validate(facts.run, facts.job);
  validate(facts.plan, facts.job);
}

}  // namespace slabtide
