#include "json_compare.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "json_cost.h"
#include "json_values.h"
#include "report/words/decimals.h"

namespace slabtide {

namespace {

class JsonCompare {
 public:
  explicit JsonCompare(const CompareFacts& facts) : facts_(facts) {}

  Json document() const {
    Json json = json_document();
    json["job"] = {{"name", facts_.plan.job.name}, {"start", time(facts_.plan.job.pour.start)}};
    json["days_drawn"] = facts_.comparison.days_sampled;
    json["choices"] = Json::array();
    for (const ComparedChoice& choice : facts_.comparison.choices) {
      json["choices"].push_back(choice_entry(choice));
    }
    json["left_out"] = Json::array();
    for (const LeftOutChoice& one : facts_.comparison.left_out) {
      json["left_out"].push_back({{"choice", one.label}, {"why", one.why}});
    }
    json["best"] = facts_.comparison.best;
    const auto& best = facts_.comparison.choices[facts_.comparison.best];
    json["verdict"] = verdict_id(best.figures.judgement.verdict);
    json["advice"] = {{"order", facts_.advice.order},
                      {"why", facts_.advice.why},
                      {"cost", facts_.advice.cost},
                      {"turning", facts_.advice.turning}};
    json["turning_point"] = turning();
    return json;
  }

 private:
  Json time(const std::optional<UtcTime>& at) const { return json_time(at, facts_.plan.job); }

  Json choice_entry(const ComparedChoice& compared) const {
    const ChoiceFigures& figures = compared.figures;
    Json json = {
        {"choice", compared.choice.label},
        {"kind", choice_kind_id(compared.choice.kind)},
        {"words", compared.choice.words},
        {"start", time(compared.choice.job.pour.start)},
        {"first_window", time(figures.first_window)},
        {"last_window", time(figures.last_window)},
        {"minutes_late", std::lround(figures.minutes_late)},
        {"expected_late_min", std::lround(figures.expected_late_min)},
        {"bad_day_late_min", std::lround(figures.bad_day_late_min)},
        {"finishers", compared.choice.job.crew.finishers},
        {"smallest_crew", json_maybe(figures.smallest_crew)},
        {"crew_h", hundredths(figures.crew_hours)},
        {"peak_evaporation_kg_m2_h", hundredths(figures.peak_evaporation_kg_m2_h)},
        {"early_sheens", figures.early_sheens},
        {"crusts", figures.crusts},
        {"last_finish", time(figures.last_finish)},
        {"daylight_left_min",
         figures.daylight_left_min ? Json(std::lround(*figures.daylight_left_min)) : Json(nullptr)},
        {"dark_min", std::lround(figures.dark_min)},
        {"latest_saw", time(figures.latest_saw)},
        {"saw_at_night", figures.saw_at_night},
        {"stops", figures.stops},
        {"cautions", figures.cautions},
        {"notes", figures.notes},
        {"takes", compared.cost.words},
        {"verdict", verdict_id(figures.judgement.verdict)},
        {"reasons", figures.judgement.reasons}};
    json["cost"] = json_cost(compared.money, compared.choice.job);
    if (const auto risk = worst_loss(figures.fears)) json["risk"] = loss_id(*risk);
    if (figures.lost_fraction) json["lost_day_share"] = hundredths(*figures.lost_fraction);
    return json;
  }

  Json turning() const {
    const TurningPoint& turning = facts_.turning;
    Json json{{"high_c", hundredths(turning.high_c)},
              {"concrete_c", hundredths(turning.concrete_c)},
              {"turns_at_high_c", Json::array()}};
    for (const double shift_k : turning.by_shift_k.turns) {
      json["turns_at_high_c"].push_back(hundredths(turning.high_c + shift_k));
    }
    return json;
  }

  const CompareFacts& facts_;
};

}  // namespace

std::string json_compare(const CompareFacts& facts) {
  return json_text(JsonCompare(facts).document());
}

}  // namespace slabtide
