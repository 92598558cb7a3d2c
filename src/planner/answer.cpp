#include "answer.h"

#include <array>
#include <optional>
#include <stdexcept>
#include <utility>

#include <nlohmann/json.hpp>

#include "asked.h"
#include "core/zone_at.h"
#include "job_document.h"
#include "plan_answers.h"
#include "record_answers.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/weather/sky/sun.h"
#include "weather/readers/read_forecast.h"

namespace slabtide {
namespace {

using Json = nlohmann::ordered_json;

Json answer_read(const Asked& asked) {
  const std::string text = asked.job_text();
  const Parsed<std::string> document = json_of_toml(text);
  if (!document.ok()) return refused(document.diagnostics);
  const Parsed<Job> job = read_job(text, asked.time_zones);
  return {{"ok", job.ok()},
          {"findings", findings_of(job.diagnostics)},
          {"document", Json::parse(*document.value)}};
}

/// The zone that the request names, or the answer that there is none.
std::optional<TimeZone> zone_of(const Asked& asked, Json& result) {
  TimeZone::Loaded loaded = asked.time_zones(asked.text("time_zone"));
  if (!loaded.zone) result = refused(loaded.error.message, loaded.error.next_step);
  return loaded.zone;
}

Json answer_forecast(const Asked& asked) {
  Json result;
  const auto zone = zone_of(asked, result);
  if (!zone) return result;
  const Parsed<Forecast> reading = read_forecast(asked.text("text"), {*zone, {}});
  if (!reading.ok()) return refused(reading.diagnostics);
  const Forecast& read = *reading.value;
  result = {{"ok", true},
            {"findings", findings_of(reading.diagnostics)},
            {"source", read.source},
            {"first", iso8601_minute(read.hours.front().at, *zone)},
            {"last", iso8601_minute(read.hours.back().at, *zone)}};
  if (read.issued) result["issued"] = iso8601_minute(*read.issued, *zone);
  return result;
}

Json answer_sun(const Asked& asked) {
  Json result;
  const auto zone = zone_of(asked, result);
  const auto date = parse_date(asked.text("date"));
  if (!zone) return result;
  if (!date) return refused("this is no date", "");
  constexpr int step_min = 10;
  constexpr int day_min = 1440;
  constexpr double overhead_deg = 90.0;
  Json positions = Json::array();
  for (int minute = 0; minute <= day_min; minute += step_min) {
    const LocalTime local(*date, boost::posix_time::minutes(minute));
    const SunPosition at =
        sun_position(zone->utc_from_local(local).utc, asked.json.at("latitude").get<double>(),
                     asked.json.at("longitude").get<double>());
    positions.push_back({{"minute", minute},
                         {"elevation_deg", overhead_deg - at.zenith_deg},
                         {"azimuth_deg", at.azimuth_deg}});
  }
  return {{"ok", true}, {"positions", std::move(positions)}};
}

/// Off by a few miles along a border, as `zone_name_at` tells: the page shows which it is.
Json answer_time_zone(const Asked& asked) {
  return {{"ok", true},
          {"time_zone", zone_name_at(asked.json.at("latitude").get<double>(),
                                     asked.json.at("longitude").get<double>())}};
}

/// What can be asked, by its word.
struct Question {
  std::string_view word;
  Json (*answer)(const Asked& asked);
};

constexpr std::array questions{
    Question{"plan", answer_plan},          Question{"compare", answer_compare},
    Question{"outlook", answer_outlook},    Question{"read", answer_read},
    Question{"note", answer_note},          Question{"check-back", answer_check_back},
    Question{"learn", answer_learn},        Question{"mixes", answer_mixes},
    Question{"forecast", answer_forecast},  Question{"sun", answer_sun},
    Question{"time-zone", answer_time_zone}};

Json answer_of(const Asked& asked) {
  const std::string word = asked.text("ask");
  for (const Question& question : questions) {
    if (question.word == word) return question.answer(asked);
  }
  throw std::invalid_argument("nothing can be asked by this word: " + word);
}

}  // namespace

std::string answer(std::string_view request, const TimeZoneLoader& time_zones) {
  Json result;
  try {
    const Json json = Json::parse(request);
    result = answer_of({json, time_zones});
  } catch (const std::exception& error) {
    result = {{"ok", false}, {"error", error.what()}, {"findings", Json::array()}};
  }
  return result.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace slabtide
