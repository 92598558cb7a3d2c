#include "json_check_back.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "json_values.h"
#include "report/words/decimals.h"

namespace slabtide {

namespace {

Json maybe_hundredths(const std::optional<double>& value) {
  return value ? Json(hundredths(*value)) : Json(nullptr);
}

Json whole(const std::optional<double>& value) {
  if (!value) return nullptr;
  return std::lround(*value);
}

class JsonCheckBack {
 public:
  explicit JsonCheckBack(const CheckBackFacts& facts) : facts_(facts) {}

  Json document() const {
    const Job& job = facts_.plan.job;
    const CheckSummary summary = summary_of(facts_);
    Json json = json_document();
    json["job"] = {{"name", job.name}, {"start", time(job.pour.start)}};
    json["readings"] = Json::array();
    for (const CheckedObservation& one : facts_.checked) json["readings"].push_back(entry(one));
    json["summary"] = {{"events", summary.events},
                       {"mean_late_min", std::lround(summary.mean_late_min)},
                       {"farthest_min", std::lround(summary.farthest_min)}};
    return json;
  }

 private:
  Json time(const std::optional<UtcTime>& at) const { return json_time(at, facts_.plan.job); }

  /// Of the plan's parts; null where the reading is held against the whole zone, or the job.
  Json part_id(const Observation& reading) const {
    return reading.zone.empty() ? Json() : json_maybe(place_of(reading, facts_.plan.plan).part);
  }

  Json entry(const CheckedObservation& one) const {
    const Observation& reading = facts_.reading(one);
    Json json = {{"reading", observation_id(reading.kind)},
                 {"zone", json_maybe(reading.zone)},
                 {"part", json_maybe(reading.part)},
                 {"part_id", part_id(reading)},
                 {"at", time(reading.at)},
                 {"planned", time(one.planned)},
                 {"late_min", whole(one.late_min(facts_.journal))}};
    const std::string unit(measure_unit(observation_measure(reading.kind)));
    if (!unit.empty()) {
      json["read_" + unit] = maybe_hundredths(reading.value);
      json["planned_" + unit] = maybe_hundredths(one.planned_value);
    }
    return json;
  }

  const CheckBackFacts& facts_;
};

}  // namespace

std::string json_check_back(const CheckBackFacts& facts) {
  return json_text(JsonCheckBack(facts).document());
}

}  // namespace slabtide
