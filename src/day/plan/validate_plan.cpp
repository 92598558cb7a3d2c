#include "validate_plan.h"

#include "job/checks/field_checks.h"

namespace slabtide {

void validate(const DayPlan& plan, const Job& job) {
  const FieldPath path("plan");
  const std::size_t zones = job.zones.size();
  path.at("zones").require(plan.zones.size() == zones, "is not of this job's zones");
  path.at("cuts.joints").require(plan.cuts.joints.size() == zones, "is not of this job's zones");
  path.at("cuts.choices").require(plan.cuts.choices.size() == zones, "is not of this job's zones");
  for (std::size_t i = 0; i < zones; ++i) {
    path.at("zones", i)
        .require(plan.zones[i].name == job.zones[i].name &&
                     plan.zones[i].faces.size() == job.zones[i].faces.size(),
                 "is another zone than the job's");
  }
  for (const PlannedCut& cut : plan.cuts.cuts) {
    path.at("cuts").require(cut.zone < zones, "is in a zone that is not there");
  }
}

}  // namespace slabtide
