#include "slabtide/report/words/plan_facts.h"

#include <algorithm>

#include <fmt/format.h>

#include "job/geometry/compass.h"
#include "job/model/wording.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

/// Set times are given for 73 °F (ASTM C403).
constexpr double set_age_reference_c = celsius_from_fahrenheit(73.0);

}  // namespace

std::string day_clock(UtcTime time, const Job& job) {
  return clock_of(job).time_seen_from(job.pour.date, time);
}

std::string day_span(UtcTime from, UtcTime to, const Job& job) {
  return clock_of(job).span_seen_from(job.pour.date, from, to);
}

std::string day_clock(const std::optional<UtcTime>& time, const Job& job) {
  return time ? day_clock(*time, job) : std::string(after_plan_words);
}

std::string weather_words(const PlannedPour& facts) {
  const WeatherSummary weather = summarise_weather(facts.run);
  const UnitSystem units = facts.job.units;
  const SunTimes& sun = facts.plan.sun;
  std::string line = fmt::format(
      "Weather: high {}, low {}, wind {}, cloud {}.", temperature_words(weather.high_c, units),
      temperature_words(weather.low_c, units), wind_words(weather.mean_wind_10m_m_s, units),
      percent_words(weather.daylight_cloud_fraction));
  if (sun.kind == SunTimes::Kind::ordinary) {
    line += fmt::format(" Sun {} to {}.", day_clock(sun.rise, facts.job),
                        day_clock(sun.set, facts.job));
  }
  return line;
}

std::string set_words(const SettingParameters& setting, UnitSystem units) {
  std::string words =
      fmt::format("initial set {}, final {} at {} ({})",
                  duration_words(minutes_per_hour * (setting.initial_set_h + setting.shift_h)),
                  duration_words(minutes_per_hour * (setting.final_set_h + setting.shift_h)),
                  temperature_words(set_age_reference_c, units),
                  setting.estimated ? "estimated" : "the supplier's");
  if (setting.shift_h != 0.0) {
    words += fmt::format(", {} {} by admixture", duration_words(minutes_per_hour * setting.shift_h),
                         setting.shift_h > 0.0 ? "later" : "sooner");
  }
  return words;
}

std::string mix_words(const PlannedPour& facts) {
  const Mix& mix = facts.job.mix;
  const MixModel& model = facts.run.mixes.front();
  std::string words = fmt::format("{}, w/cm {:.2f}",
                                  content_words(mix.cementitious_kg_m3, facts.job.units), mix.w_cm);
  if (mix.ash_fraction > 0.0) {
    words += fmt::format(", {} class {} ash", percent_words(mix.ash_fraction),
                         mix.ash_class == AshClass::f ? "F" : "C");
  }
  if (mix.slag_fraction > 0.0) words += fmt::format(", {} slag", percent_words(mix.slag_fraction));
  if (mix.silica_fume_fraction > 0.0) {
    words += fmt::format(", {} silica fume", percent_words(mix.silica_fume_fraction));
  }
  words += fmt::format(", {} air, {} at the chute", percent_words(mix.air_fraction),
                       temperature_words(model.discharge_c, facts.job.units));
  return mix.name.empty() ? words : mix.name + ": " + words;
}

std::string_view sure_words(SureWord word) {
  switch (word) {
    case SureWord::quite:
      return "high";
    case SureWord::fairly:
      return "medium";
    case SureWord::roughly:
      return "low";
    case SureWord::hardly:
      return "very low";
  }
  return "";
}

std::vector<DoubtCause> told_causes(const Sureness& sureness) {
  constexpr double told_fraction = 0.08;
  constexpr std::size_t max_told = 3;
  std::vector<DoubtCause> told;
  for (const DoubtCause& cause : sureness.causes) {
    if (told.size() == max_told || cause.fraction < told_fraction) break;
    told.push_back(cause);
  }
  return told;
}

std::string short_words(const Load& load, const Job& job) {
  if (!load.is_short) return {};
  return fmt::format(", a short load (under {})", volume_words(job.order.short_load_m3, job.units));
}

std::string finish_words(Finish finish) {
  switch (finish) {
    case Finish::stamp:
      return "stamp";
    case Finish::texture_roll:
      return "texture roll";
    case Finish::broom:
      return "broom";
    case Finish::float_finish:
      return "float";
    case Finish::trowel:
      return "trowel";
    case Finish::exposed_aggregate:
      return "exposed aggregate";
    case Finish::salt:
      return "salt";
  }
  return "broom";
}

std::string saw_words(SawKind kind) {
  return kind == SawKind::early_entry ? "early-entry saw" : "wet saw";
}

std::string saw_words(SawKind kind, const Job& job) {
  const std::vector<SawKind>& saws = job.pour.saws;
  const bool on_hand = std::find(saws.begin(), saws.end(), kind) != saws.end();
  return saw_words(kind) + (on_hand ? "" : " (not on hand)");
}

std::string compass_words(double bearing_deg) { return std::string(compass_word(bearing_deg)); }

std::string late_work_words(const ZonePlan& plan, Operation operation) {
  const bool of_field = plan.whole.window(operation) != nullptr;
  return fmt::format("{}{}", operation_words(operation), of_field ? "" : " of the border");
}

}  // namespace slabtide
