#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/day/plan/planned_pour.h"
#include "slabtide/day/plan/weather_summary.h"

namespace slabtide {

/// "Fri 6:10 AM" on another day than the pour's, "6:10 AM" on the day itself, as the job's clock
/// shows it.
std::string day_clock(UtcTime time, const Job& job);
/// The same, or "-" if there is no time.
std::string day_clock(const std::optional<UtcTime>& time, const Job& job);

/// "8:10–9:25 AM", with weekdays where they are other days than the pour's.
std::string day_span(UtcTime from, UtcTime to, const Job& job);

/// "Weather: high ..., low ..., wind ..., cloud ... Sun 5:38 AM to 8:28 PM."
std::string weather_words(const PlannedPour& facts);

/// The mix in a sentence, and the source of its set times.
std::string mix_words(const PlannedPour& facts);
std::string set_words(const SettingParameters& setting, UnitSystem units);
/// "fairly", as in "fairly sure".
std::string_view sure_words(SureWord word);
/// Why the plan is hardly sure when `Sureness::either_way_min` is absent.
inline constexpr std::string_view past_end_words =
    "on one day in ten or more the main work opens after the plan's end";
/// The causes of doubt that are worth reporting: at most three.
std::vector<DoubtCause> told_causes(const Sureness& sureness);
/// ", a short load (under 4.0 yd³)"; empty where the plant charges nothing extra for its size.
std::string short_words(const Load& load, const Job& job);
std::string finish_words(Finish finish);
std::string saw_words(SawKind kind);
/// The same, marked where the job has none of the kind: "wet saw (not on hand)".
std::string saw_words(SawKind kind, const Job& job);
std::string compass_words(double bearing_deg);

/// "wash", "wash of the border" where the field has no such work (ZonePlan::late_window).
std::string late_work_words(const ZonePlan& plan, Operation operation);

}  // namespace slabtide
