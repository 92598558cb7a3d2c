#include "json_days.h"

#include <cmath>

#include <boost/date_time/gregorian/formatters.hpp>
#include <nlohmann/json.hpp>

#include "json_cost.h"
#include "json_judged.h"
#include "report/words/decimals.h"
#include "slabtide/report/words/days_facts.h"

namespace slabtide {

namespace {

std::string iso_date(Date date) { return boost::gregorian::to_iso_extended_string(date); }

class JsonDays {
 public:
  explicit JsonDays(const PlannedDays& facts) : facts_(facts) {}

  Json document() const {
    Json json = json_document();
    json["made_at"] = time(facts_.now);
    json["job"] = {{"name", facts_.job.name},
                   {"site", facts_.job.site.name},
                   {"start", time(facts_.job.pour.start)},
                   {"finishers", facts_.job.crew.finishers}};
    json["forecast"] = forecast();
    json["advice"] = days_advice_words(facts_);
    json["best"] = facts_.days.best;
    json["days"] = Json::array();
    for (const ForecastDay& day : facts_.days.days) json["days"].push_back(day_entry(day));
    json["left_out"] = Json::array();
    for (const LeftOutDay& day : facts_.days.left_out) {
      json["left_out"].push_back({{"date", iso_date(day.date)}, {"why", day.why}});
    }
    json["assumptions"] = days_assumptions(facts_);
    return json;
  }

 private:
  Json time(const std::optional<UtcTime>& at) const { return json_time(at, facts_.job); }

  Json forecast() const {
    return {{"source", facts_.forecast.source},
            {"issued", time(facts_.forecast.issued)},
            {"age_h", facts_.forecast_age_h ? Json(hundredths(*facts_.forecast_age_h)) : Json()}};
  }

  Json rain(const RainRisk& risk) const {
    return {{"chance", hundredths(risk.chance)},
            {"amount_mm", hundredths(risk.amount_mm)},
            {"from", risk.first ? time(risk.first->from) : Json(nullptr)}};
  }

  Json day_entry(const ForecastDay& day) const {
    Json json{{"date", iso_date(day.date)},
              {"verdict", json_verdict(day.judged)},
              {"start", time(day.start)},
              {"first_batched", time(day.first_batched)},
              {"call_off_by", time(day.call_off_by)},
              {"finishers", day.finishers},
              {"smallest_crew", json_maybe(day.smallest_crew)},
              {"minutes_late", std::lround(day.late_min)},
              {"high_c", hundredths(day.weather.high_c)},
              {"low_c", hundredths(day.weather.low_c)},
              {"set", time(day.set)},
              {"rain_before_set", rain(day.rain_before_set)},
              {"rain_after_set", rain(day.rain_after_set)},
              {"frost",
               {{"at", time(day.frost.at)},
                {"least_surface_c", hundredths(day.frost.min_surface_c)},
                {"share", day.frost_fraction ? Json(hundredths(*day.frost_fraction)) : Json()}}},
              {"days_drawn", day.days_drawn},
              {"finish_lost_share",
               day.finish_lost_fraction ? Json(hundredths(*day.finish_lost_fraction)) : Json()},
              {"loss_share", hundredths(day.loss_chance())},
              {"cost", json_cost(day.cost, facts_.job)}};
    json["starts"] = Json::array();
    for (const TriedStart& start : day.starts) {
      json["starts"].push_back({{"at", time(start.at)}, {"verdict", verdict_id(start.verdict)}});
    }
    json["cautions"] = Json::array();
    for (const Caution& one : day.cautions) {
      json["cautions"].push_back(json_caution(one, facts_.job));
    }
    return json;
  }

  const PlannedDays& facts_;
};

}  // namespace

std::string json_days(const PlannedDays& facts) { return json_text(JsonDays(facts).document()); }

}  // namespace slabtide
