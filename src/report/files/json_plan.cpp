#include "json_plan.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <boost/date_time/gregorian/formatters.hpp>
#include <nlohmann/json.hpp>

#include "json_cost.h"
#include "json_crew.h"
#include "json_judged.h"
#include "json_values.h"
#include "report/words/decimals.h"
#include "report/words/tape_words.h"
#include "report/words/validate_facts.h"
#include "slabtide/core/units.h"
#include "slabtide/day/crew/sawing.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/job/geometry/canonical.h"
#include "slabtide/report/text/text_saw.h"

namespace slabtide {

namespace {

std::string_view saw_id(SawKind kind) {
  return operation_id(kind == SawKind::early_entry ? Operation::saw_dry : Operation::saw_wet);
}

class JsonPlan {
 public:
  explicit JsonPlan(const PlannedPour& facts) : facts_(facts) {}

  Json document() const {
    Json json = json_document();
    json["made_at"] = facts_.now.is_not_a_date_time() ? Json(nullptr) : time(facts_.now);
    json["verdict"] = json_verdict(judge(facts_.plan.cautions));
    json["job"] = job();
    json["weather"] = weather();
    json["mix"] = mix();
    json["zones"] = Json::array();
    for (std::size_t i = 0; i < facts_.plan.zones.size(); ++i) {
      json["zones"].push_back(zone(i));
    }
    json["tightest"] = tightest();
    json["order"] = order();
    json["cost"] = json_cost(cost_of_pour(facts_), facts_.job);
    json["trucks"] = trucks();
    json["crew"] = json_crew(facts_.plan.crew, facts_.job);
    json["crew_summary"] = json_crew_summary(facts_.plan.crew, facts_.job);
    json["supplies"] = json_supplies(facts_.plan.supplies, facts_.job.units);
    json["saw"] = saws();
    json["cautions"] = Json::array();
    for (const Caution& found : facts_.plan.cautions) {
      json["cautions"].push_back(json_caution(found, facts_.job));
    }
    json["assumptions"] = facts_.plan.assumptions;
    json["seen"] = facts_.plan.seen;
    json["sureness"] = sureness();
    return json;
  }

 private:
  Json time(const std::optional<UtcTime>& at) const { return json_time(at, facts_.job); }

  Json job() const {
    const Job& job = facts_.job;
    return {{"name", job.name},
            {"site", job.site.name},
            {"latitude_deg", job.site.latitude_deg},
            {"longitude_deg", job.site.longitude_deg},
            {"time_zone", job.site.time_zone.name()},
            {"date", boost::gregorian::to_iso_extended_string(job.pour.date)},
            {"start", time(job.pour.start)}};
  }

  Json weather() const {
    const WeatherSummary summary = summarise_weather(facts_.run);
    const SunTimes& sun = facts_.plan.sun;
    const bool ordinary = sun.kind == SunTimes::Kind::ordinary;
    return {{"source", facts_.forecast.source},
            {"issued", time(facts_.forecast.issued)},
            {"age_h", facts_.forecast_age_h ? Json(hundredths(*facts_.forecast_age_h)) : Json()},
            {"high_c", hundredths(summary.high_c)},
            {"low_c", hundredths(summary.low_c)},
            {"mean_wind_10m_m_s", hundredths(summary.mean_wind_10m_m_s)},
            {"daylight_cloud_share", hundredths(summary.daylight_cloud_fraction)},
            {"sunrise", ordinary ? time(sun.rise) : Json(nullptr)},
            {"sunset", ordinary ? time(sun.set) : Json(nullptr)},
            {"ground_c", hundredths(facts_.run.ground_c)},
            {"computed_until", time(facts_.run.at(facts_.run.weather.grid.end_s()))}};
  }

  Json mix() const {
    const MixModel& model = facts_.run.mixes.front();
    return {{"name", facts_.job.mix.name},
            {"initial_set_h", hundredths(model.setting.initial_set_h)},
            {"final_set_h", hundredths(model.setting.final_set_h)},
            {"admixture_shift_h", hundredths(model.setting.shift_h)},
            {"set_times_estimated", model.setting.estimated},
            {"discharge_c", hundredths(model.discharge_c)}};
  }

  /// On one day in ten it is before `early`, on half before `likely`, on one in ten after `late`.
  Json band(const std::optional<TimeBand>& band) const {
    if (!band) return nullptr;
    return {{"early", time(band->early)},
            {"likely", time(band->likely)},
            {"late", time(band->late)},
            {"share", hundredths(band->fraction)}};
  }

  Json window(const OperationWindow& window) const {
    return {{"operation", operation_id(window.operation)},
            {"opens", time(window.opens)},
            {"open_all_over", time(window.open_all_over)},
            {"closes", time(window.closes)},
            {"note", window.note},
            {"opens_band", band(window.opens_band)},
            {"open_all_over_band", band(window.all_over_band)},
            {"closes_band", band(window.closes_band)}};
  }

  Json sureness() const {
    if (!facts_.plan.sureness) return nullptr;
    const Sureness& sureness = *facts_.plan.sureness;
    Json causes = Json::array();
    for (const DoubtCause& cause : sureness.causes) {
      causes.push_back({{"what", uncertain_input_words(cause.uncertain_input)},
                        {"share", hundredths(cause.fraction)}});
    }
    return {{"draws", sureness.samples},
            {"either_way_min",
             sureness.either_way_min ? Json(std::round(*sureness.either_way_min)) : Json(nullptr)},
            {"causes", causes}};
  }

  Json windows(const std::vector<OperationWindow>& all) const {
    Json json = Json::array();
    for (const OperationWindow& one : all) json.push_back(window(one));
    return json;
  }

  /// The windows of the zone as a whole, including its forms and saws.
  Json zone_windows(const ZonePlan& plan) const {
    Json json = windows(plan.whole.windows);
    for (const FacePlan& face : plan.faces) {
      OperationWindow strip = face.strip;
      strip.note = strip.note.empty() ? face.name : fmt::format("{}: {}", face.name, strip.note);
      json.push_back(window(strip));
    }
    for (const SawPlan& saw : plan.saws) json.push_back(window(window_of(saw)));
    return json;
  }

  /// The times and peaks that a zone and each of its parts have in common.
  void put_part(Json& json, const PartPlan& part) const {
    json["sunlit_share"] = hundredths(part.sunlit_fraction);
    json["sheen_gone"] = time(part.sheen_gone);
    json["initial_set"] = time(part.initial_set);
    json["final_set"] = time(part.final_set);
    json["sheen_gone_band"] = band(part.sheen_band);
    json["initial_set_band"] = band(part.initial_band);
    json["final_set_band"] = band(part.final_band);
    json["peak_evaporation_kg_m2_h"] = hundredths(part.peak_evaporation_kg_m2_h);
    json["peak_evaporation_at"] = time(part.peak_evaporation_at);
    json["surface_peak_c"] = hundredths(part.surface_peak_c);
    json["surface_peak_at"] = time(part.surface_peak_at);
    json["early_sheen_at"] = time(part.early_sheen_at);
    json["crust_at"] = time(part.crust_at);
    json["windows"] = windows(part.windows);
  }

  Json part(const PartPlan& part) const {
    Json json{{"id", part.id}, {"name", part.name}, {"area_m2", hundredths(part.area_m2)}};
    put_part(json, part);
    return json;
  }

  Json zone(std::size_t which) const {
    const ZonePlan& plan = facts_.plan.zones[which];
    const Zone& described = facts_.job.zones[which];
    Json json{{"name", plan.name},
              {"finish", finish_words(described.finish)},
              {"area_m2", hundredths(plan.area_m2)},
              {"volume_m3", hundredths(plan.volume_m3)},
              {"thickness_m", described.thickness_m},
              {"tied", described.tied},
              {"placed", {{"start", time(plan.placed.start)}, {"end", time(plan.placed.end)}}}};
    put_part(json, plan.whole);
    json["windows"] = zone_windows(plan);
    json["parts"] = Json::array();
    for (const PartPlan& one : plan.parts) json["parts"].push_back(part(one));
    json["border"] = plan.border ? part(*plan.border) : Json(nullptr);
    json["faces"] = Json::array();
    for (const FacePlan& face : plan.faces) {
      json["faces"].push_back({{"id", face.id},
                               {"name", face.name},
                               {"facing_deg", json_maybe(face.facing_deg)},
                               {"windows", windows({face.strip})}});
    }
    json["touch"] = json_touch(plan.touch, facts_.job);
    json["working_order"] = plan.working_order;
    json["joints"] = joints(which);
    json["saw_windows"] = saw_windows(plan);
    return json;
  }

  Json tightest() const {
    if (!facts_.plan.tightest) return nullptr;
    const Tightest& tightest = *facts_.plan.tightest;
    return {{"zone", tightest.zone},          {"part", tightest.part},
            {"part_id", tightest.place.part}, {"operation", operation_id(tightest.operation)},
            {"opens", time(tightest.opens)},  {"minutes", std::round(tightest.minutes)}};
  }

  Json order() const {
    const OrderPlan& order = facts_.run.order;
    return {{"neat_m3", hundredths(order.neat_m3)},
            {"ordered_m3", hundredths(order.ordered_m3)},
            {"sold_m3", hundredths(order.sold_m3)},
            {"low_base_m3", hundredths(order.low_base_m3)},
            {"placing_rate_m3_h", hundredths(order.placing_rate_m3_h)}};
  }

  Json trucks() const {
    Json json = Json::array();
    for (const Load& load : facts_.run.order.loads) {
      Json zones = Json::array();
      for (const LoadShare& fraction : load.fractions) {
        zones.push_back({{"zone", facts_.job.zones[fraction.zone].name},
                         {"start", time(fraction.start)},
                         {"end", time(fraction.end)}});
      }
      json.push_back({{"number", load.number},
                      {"volume_m3", hundredths(load.volume_m3)},
                      {"sold_m3", hundredths(load.sold_m3)},
                      {"batched", time(load.batched)},
                      {"arrives", time(load.arrives)},
                      {"starts", time(load.starts)},
                      {"empty", time(load.empty)},
                      {"own_admixtures", load.own_admixtures},
                      {"short", load.is_short},
                      {"over_limit", load.over_limit},
                      {"zones", zones}});
    }
    return json;
  }

  Json place(Point at) const {
    const Point drawn = on_drawing(at, facts_.job);
    return Json::array({thousandths(drawn.x_m), thousandths(drawn.y_m)});
  }

  Json saw_windows(const ZonePlan& zone) const {
    Json json = Json::array();
    for (const SawPlan& saw : zone.saws) {
      json.push_back({{"operation", saw_id(saw.kind)},
                      {"on_hand", saw.on_hand},
                      {"opens", time(saw.opens)},
                      {"open_all_over", time(saw.open_all_over)},
                      {"stress_limit", time(saw.stress_limit)},
                      {"stress_late", time(saw.stress_late)},
                      {"surface_limit", time(saw.surface_limit)},
                      {"latest", time(saw.latest)},
                      {"too_late", saw.too_late},
                      {"depth_m", saw.depth_m},
                      {"opens_band", band(saw.opens_band)},
                      {"latest_band", band(saw.latest_band)}});
    }
    return json;
  }

  Json sawing(std::size_t zone) const {
    const auto sawing = sawing_of(facts_.plan.cuts, facts_.plan.crew, facts_.job, zone);
    if (!sawing) return nullptr;
    return {{"operation", saw_id(sawing->kind)},
            {"in_time", sawing->in_time()},
            {"starts", time(sawing->starts)},
            {"due", time(sawing->due)},
            {"late_min", sawing->late_min}};
  }

  Json joints(std::size_t zone) const {
    const ZoneJoints& joints = facts_.plan.cuts.joints[zone];
    const JointChoice& choice = facts_.plan.cuts.choices[zone];
    Json json{{"drawn", joints.drawn},
              {"panels", joints.panels.size()},
              {"most_spacing_m", thousandths(joints.limits.spacing_m)},
              {"most_aspect", joints.limits.aspect},
              {"way", joint_way_id(choice.way)},
              {"says", joint_choice_words(facts_, zone)},
              {"sawing", sawing(zone)},
              {"tooled", window(choice.tooled)}};
    if (choice.way == JointWay::none_needed) json["tooled"] = nullptr;
    json["lines"] = Json::array();
    for (const Joint& joint : joints.joints) {
      json["lines"].push_back({{"from_m", place(joint.from)}, {"to_m", place(joint.to)}});
    }
    json["faults"] = Json::array();
    for (const JointFault& fault : joints.faults) {
      json["faults"].push_back(fault_words(fault, facts_.job));
    }
    json["isolation"] = Json::array();
    for (const Isolation& one : joints.isolation) {
      json["isolation"].push_back({{"structure", one.structure},
                                   {"length_m", hundredths(one.length_m)},
                                   {"tied", one.tied}});
    }
    return json;
  }

  Json cut(const SawShift& shift, const PlannedCut& planned) const {
    return {{"zone", facts_.job.zones[planned.zone].name},
            {"number", planned.number},
            {"operation", saw_id(shift.kind)},
            {"on_hand", shift.on_hand},
            {"from_m", place(planned.cut.joint.from)},
            {"to_m", place(planned.cut.joint.to)},
            {"length_m", thousandths(planned.cut.length_m)},
            {"where", tape_words(planned.cut.joint, planned.zone, facts_.job)},
            {"depth_m", nullptr},
            {"starts", nullptr},
            {"latest", time(planned.latest)},
            {"minutes", nullptr},
            {"late", true},
            {"reason", cut_reason_id(planned.cut.reason)}};
  }

  Json saws() const {
    const CutPlan& plan = facts_.plan.cuts;
    Json json = Json::array();
    for (const SawKind kind : kinds_of_saw) {
      const SawShift shift = worked_shift(kind, plan, facts_.plan.crew);
      for (const SawnCut& sawn : shift.cuts) {
        Json one = cut(shift, plan.cuts[sawn.cut]);
        one["depth_m"] = sawn.depth_m;
        one["starts"] = time(sawn.starts);
        one["minutes"] = std::round(seconds_between(sawn.starts, sawn.ends) / seconds_per_minute);
        one["late"] = sawn.late;
        json.push_back(std::move(one));
      }
      for (const std::size_t never : shift.never_open) json.push_back(cut(shift, plan.cuts[never]));
    }
    return json;
  }

  const PlannedPour& facts_;
};

}  // namespace

std::string json_plan(const PlannedPour& facts) {
  validate(facts);
  return json_text(JsonPlan(facts).document());
}

}  // namespace slabtide
