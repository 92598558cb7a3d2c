#include "answer.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "job/records/journal_line.h"
#include "job/records/read_journal.h"
#include "job_document.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/report/text/text_plan.h"
#include "slabtide/request/plan/plan_request.h"
#include "slabtide/request/write/report_formats.h"
#include "slabtide/weather/sky/sun.h"
#include "weather/readers/read_forecast.h"

namespace slabtide {
namespace {

using Json = nlohmann::ordered_json;

/// A request, read; what is missing in it or of another kind throws.
struct Asked {
  const Json& json;
  const TimeZoneLoader& time_zones;

  std::string text(const char* key) const { return json.at(key).get<std::string>(); }
  std::string text_or_empty(const char* key) const { return json.value(key, std::string()); }
  std::map<std::string, std::string> texts() const {
    return json.at("texts").get<std::map<std::string, std::string>>();
  }
  std::string job_text() const { return texts().at(text("job")); }
};

Json finding_of(const Diagnostic& diagnostic) {
  Json finding{{"severity", diagnostic.severity == Severity::error ? "error" : "warning"},
               {"key", diagnostic.key},
               {"message", diagnostic.message},
               {"next", diagnostic.next_step}};
  if (diagnostic.where) {
    finding["line"] = diagnostic.where->line;
    finding["column"] = diagnostic.where->column;
  }
  return finding;
}

Json findings_of(const std::vector<Diagnostic>& diagnostics) {
  Json findings = Json::array();
  for (const Diagnostic& diagnostic : diagnostics) findings.push_back(finding_of(diagnostic));
  return findings;
}

Json refused(const std::vector<Diagnostic>& diagnostics) {
  return {{"ok", false}, {"findings", findings_of(diagnostics)}};
}

Json finding(const std::string& message, const std::string& next) {
  return {{"severity", "error"}, {"key", ""}, {"message", message}, {"next", next}};
}

JobRequest job_request(const Asked& asked) {
  JobRequest request{.path = asked.text("job"), .now = asked.text("now")};
  if (asked.json.contains("units")) request.units = asked.text("units");
  return request;
}

Json files_of(const PlannedPour& pour, const Asked& asked) {
  Json files = Json::object();
  for (const Json& ending : asked.json.at("formats")) {
    const auto name = ending.get<std::string>();
    if (auto text = made_as(name, plan_formats(), pour, {pour.now, {}})) files[name] = *text;
  }
  return files;
}

std::size_t draws_of(const Asked& asked) {
  const auto draws = asked.json.at("draws").get<double>();
  if (!(draws >= 0.0 && draws <= static_cast<double>(max_samples)))
    throw std::invalid_argument("draws: not from 0 to " + std::to_string(max_samples));
  return static_cast<std::size_t>(draws);
}

/// Its sign is 0 to pour, 1 to pour with care, 2 to think again.
Json verdict_of(const PlannedPour& pour) {
  const Judgement judged = judge(pour.plan.cautions);
  return {{"level", static_cast<int>(judged.verdict)},
          {"words", verdict_words(judged.verdict)},
          {"reasons", judged.reasons}};
}

Json plan(const Asked& asked) {
  std::ostringstream messages;
  const Sources sources = sources_in_memory(asked.texts(), asked.time_zones, UtcTime());
  auto pour = plan_request(job_request(asked), sources, messages, 1);
  const Parsed<Job> job = read_job(asked.job_text(), asked.time_zones);
  Json result{{"ok", pour.has_value()},
              {"findings", findings_of(job.diagnostics)},
              {"messages", messages.str()}};
  if (!pour) return result;
  const std::size_t draws = draws_of(asked);
  *pour = with_uncertainty(std::move(*pour), {draws, 1, {}});
  result["files"] = files_of(*pour, asked);
  result["verdict"] = verdict_of(*pour);
  result["text"] = text_plan(*pour, TextStyle{});
  return result;
}

Json read(const Asked& asked) {
  const std::string text = asked.job_text();
  const Parsed<std::string> document = json_of_toml(text);
  if (!document.ok()) return refused(document.diagnostics);
  const Parsed<Job> job = read_job(text, asked.time_zones);
  return {{"ok", job.ok()},
          {"findings", findings_of(job.diagnostics)},
          {"document", Json::parse(*document.value)}};
}

TypedObservation typed_in(const Asked& asked) {
  TypedObservation typed;
  typed.at = asked.text("at");
  typed.reading = asked.text("reading");
  typed.zone = asked.text_or_empty("zone");
  if (const std::string value = asked.text_or_empty("value"); !value.empty()) {
    typed.value.push_back(value);
  }
  return typed;
}

/// The reading is judged alone, then beside what was noted before.
Json note(const Asked& asked) {
  const Parsed<Job> job = read_job(asked.job_text(), asked.time_zones);
  if (!job.ok()) return refused(job.diagnostics);
  const Parsed<Journal> alone = read_journal(typed_line(typed_in(asked), *job.value), *job.value);
  if (!alone.ok()) return refused(alone.diagnostics);
  const Observation& reading = alone.value->readings.front();
  const std::string line = journal_line(reading, *job.value);
  const auto texts = asked.texts();
  const auto before = texts.find(journal_path(asked.text("job")));
  const Parsed<Journal> together =
      read_journal((before == texts.end() ? "" : before->second) + line, *job.value);
  if (!together.ok()) return refused(together.diagnostics);
  return {{"ok", true},
          {"findings", findings_of(together.diagnostics)},
          {"line", line},
          {"heading", journal_heading(*job.value)},
          {"sentence", observation_sentence(reading, *job.value)}};
}

/// The zone that the request names, or the answer that there is none.
std::optional<TimeZone> zone_of(const Asked& asked, Json& result) {
  TimeZone::Loaded loaded = asked.time_zones(asked.text("time_zone"));
  if (!loaded.zone) {
    result = {{"ok", false},
              {"findings", Json::array({finding(loaded.error.message, loaded.error.next_step)})}};
  }
  return loaded.zone;
}

Json forecast(const Asked& asked) {
  Json result;
  const auto zone = zone_of(asked, result);
  if (!zone) return result;
  const Parsed<Forecast> reading = read_forecast(asked.text("text"), *zone);
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

Json sun(const Asked& asked) {
  Json result;
  const auto zone = zone_of(asked, result);
  const auto date = parse_date(asked.text("date"));
  if (!zone) return result;
  if (!date) return {{"ok", false}, {"findings", Json::array({finding("this is no date", "")})}};
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

/// What can be asked, by its word.
struct Question {
  std::string_view word;
  Json (*answer)(const Asked& asked);
};

constexpr std::array questions{Question{"plan", plan}, Question{"read", read},
                               Question{"note", note}, Question{"forecast", forecast},
                               Question{"sun", sun}};

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
