#include "slabtide/report/words/validate_facts.h"

#include "slabtide/day/plan/validate_plan.h"
#include "slabtide/day/pour/validate_run.h"
#include "slabtide/job/checks/validate.h"
#include "slabtide/weather/readers/validate_forecast.h"

namespace slabtide {

void validate(const PlannedPour& facts) {
  validate(facts.job);
  validate(facts.forecast);
  validate(facts.practice);
  validate(facts.run, facts.job);
  validate(facts.plan, facts.job);
}

}  // namespace slabtide
