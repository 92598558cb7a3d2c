#include "json_check_back.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "report/words/decimals.h"
#include "slabtide/core/version.h"

namespace slabtide {

namespace {

using Json = nlohmann::ordered_json;

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
    Json json;
    json["slabtide"] = {{"version", version()}, {"schema", 1}};
    json["job"] = {{"name", job.name}, {"start", time(job.pour.start)}};
    json["readings"] = Json::array();
    for (const CheckedObservation& one : facts_.checked) json["readings"].push_back(entry(one));
    json["summary"] = {{"events", summary.events},
                       {"mean_late_min", std::lround(summary.mean_late_min)},
                       {"farthest_min", std::lround(summary.farthest_min)}};
    return json;
  }

 private:
  Json time(const std::optional<UtcTime>& at) const {
    if (!at) return nullptr;
    return iso8601_minute(*at, facts_.plan.job.site.time_zone);
  }

  Json entry(const CheckedObservation& one) const {
    const Observation& reading = facts_.reading(one);
    Json json = {{"reading", observation_id(reading.kind)},
                 {"zone", reading.zone.empty() ? Json(nullptr) : Json(reading.zone)},
                 {"part", reading.part.empty() ? Json(nullptr) : Json(reading.part)},
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
  constexpr int indent = 2;
  return JsonCheckBack(facts).document().dump(indent) + "\n";
}

}  // namespace slabtide
