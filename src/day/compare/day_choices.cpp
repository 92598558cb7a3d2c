#include "day_choices.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <utility>

#include <fmt/format.h>

#include "core/rounded.h"
#include "day/plan/shelter.h"
#include "job/model/limits.h"
#include "job_change.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/weather/sky/sun.h"
#include "weather/sky/nights.h"

namespace slabtide {

namespace {

/// At most this many zones, those with the tightest windows, are tried in the shade.
constexpr std::size_t max_shaded = 3;

double main_window_min(const ZonePlan& plan, Finish finish) {
  const OperationWindow* window = plan.whole.window(main_operation(finish));
  return window == nullptr ? std::numeric_limits<double>::infinity()
                           : window->minutes().value_or(std::numeric_limits<double>::infinity());
}

/// Zones in order of their main windows, the tightest first.
std::vector<std::size_t> zones_by_tightness(const ChoiceContext& context) {
  std::vector<std::size_t> zones;
  for (std::size_t i = 0; i < context.job.zones.size(); ++i) zones.push_back(i);
  std::stable_sort(zones.begin(), zones.end(), [&context](std::size_t a, std::size_t b) {
    const auto minutes = [&context](std::size_t i) {
      return rounded(main_window_min(context.plan.zones[i], context.job.zones[i].finish));
    };
    return minutes(a) < minutes(b);
  });
  return zones;
}

std::string joined_order(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    text += fmt::format("{}the {}",
                        i == 0                  ? ""
                        : i + 1 == names.size() ? " and last "
                                                : ", then ",
                        names[i]);
  }
  return text;
}

/// "start at 6:00 AM"; before sunrise with what that takes.
std::string start_words(const Job& job) {
  return fmt::format("start at {}{}", clock_of(job).time(job.pour.start),
                     starts_in_the_dark(job) ? ", with lights" : "");
}

void add_start(const ChoiceContext& context, double hours, ChoiceList& list) {
  const double minutes = hours * minutes_per_hour;
  const Job job = started_later(context.job, minutes);
  const double away_h = std::abs(hours);
  const std::string label =
      fmt::format("start {:g} h {}", away_h, hours < 0.0 ? "earlier" : "later");
  if (std::string fault = start_fault(job, context.rules); !fault.empty()) {
    list.leave_out(label, std::move(fault));
    return;
  }
  OfferedChoice offered{ChoiceKind::start,
                        label,
                        fmt::format("{:g} h {}", away_h, hours < 0.0 ? "sooner" : "later"),
                        start_words(job),
                        {}};
  offered.change.start_shift_min = minutes;
  list.offer(std::move(offered));
}

void add_order(const ChoiceContext& context, const std::string& label,
               std::vector<std::string> sequence, ChoiceList& list) {
  std::string words = fmt::format("place {}", joined_order(sequence));
  OfferedChoice offered{ChoiceKind::order, label, label, std::move(words), {}};
  if (sequence == context.job.pour.placing_sequence) return;
  offered.change.placing_sequence = std::move(sequence);
  list.offer(std::move(offered));
}

/// The job's order with one zone moved to the front, or to the back.
std::vector<std::string> moved_to_end(const Job& job, std::size_t zone, bool front) {
  std::vector<std::string> sequence = job.pour.placing_sequence;
  const std::string& name = job.zones[zone].name;
  sequence.erase(std::find(sequence.begin(), sequence.end(), name));
  sequence.insert(front ? sequence.begin() : sequence.end(), name);
  return sequence;
}

/// Rain and thunder move with the clock, and a short forecast or a frost may, so more hours are
/// tried against them.
bool hangs_on_the_hour(const ChoiceContext& context) {
  return context.fears(
      {"rain", "thunder", "freezing", "frost_days", "wind_crust", "hot_concrete", "after_plan"});
}

}  // namespace

bool starts_in_the_dark(const Job& job) {
  const SunTimes sun =
      sun_times(job.pour.date, job.site.time_zone, job.site.latitude_deg, job.site.longitude_deg);
  return sun.kind == SunTimes::Kind::ordinary &&
         job.pour.start < after_seconds(sun.rise, -twilight_s);
}

std::string start_fault(const Job& job, const CompareRules& rules) {
  const LocalTime local = job.site.time_zone.local_from_utc(job.pour.start);
  if (local.date() != job.pour.date) return "that is another day";
  const double minutes =
      static_cast<double>(local.time_of_day().total_seconds()) / seconds_per_minute;
  const std::string at = clock_of(job).time(job.pour.start);
  if (minutes < rules.earliest_start_h * minutes_per_hour) {
    return fmt::format("{} is before the plant opens (compare.earliest_start_h)", at);
  }
  if (minutes > rules.latest_start_h * minutes_per_hour) {
    return fmt::format("{} is too late in the day (compare.latest_start_h)", at);
  }
  return {};
}

void add_start_choices(const ChoiceContext& context, ChoiceList& list) {
  for (const double hours : {-2.0, -1.0, 1.0, 2.0}) add_start(context, hours, list);
  if (!hangs_on_the_hour(context)) return;
  for (const double hours : {-3.0, 3.0, 4.0, 5.0}) add_start(context, hours, list);
}

void add_order_choice(const ChoiceContext& context, ChoiceList& list) {
  const std::string label = "reversed order";
  const auto fixed = [](const Zone& zone) { return zone.placed_at.has_value(); };
  if (context.job.zones.size() < 2) {
    list.leave_out(label, "there is one zone");
    return;
  }
  if (std::any_of(context.job.zones.begin(), context.job.zones.end(), fixed)) {
    list.leave_out(label, "zones have times of their own");
    return;
  }
  std::vector<std::string> reversed = context.job.pour.placing_sequence;
  std::reverse(reversed.begin(), reversed.end());
  add_order(context, label, std::move(reversed), list);
  if (context.job.zones.size() < 3) return;
  const std::size_t tightest = zones_by_tightness(context).front();
  const std::string& name = context.job.zones[tightest].name;
  add_order(context, fmt::format("{} first", name), moved_to_end(context.job, tightest, true),
            list);
  add_order(context, fmt::format("{} last", name), moved_to_end(context.job, tightest, false),
            list);
}

void add_crew_choices(const ChoiceContext& context, ChoiceList& list) {
  std::vector<int> changes{1, -1};
  if (context.runs_late()) changes = {1, 2, 3, -1};
  for (const int more : changes) {
    const int hands = context.job.crew.finishers + more;
    OfferedChoice offered{ChoiceKind::crew,
                          fmt::format("{} finisher{}", hands, hands == 1 ? "" : "s"),
                          fmt::format("{:+} hand{}", more, std::abs(more) == 1 ? "" : "s"),
                          fmt::format("bring {} finisher{} instead of {}", hands,
                                      hands == 1 ? "" : "s", context.job.crew.finishers),
                          {}};
    offered.change.finishers = hands;
    list.offer(std::move(offered));
  }
}

void add_windbreak(const ChoiceContext& context, ChoiceList& list) {
  OfferedChoice windbreak{ChoiceKind::shelter, "windbreak", "windbreak", "put up a windbreak", {}};
  const auto& zones = context.plan.zones;
  const bool windy = std::any_of(zones.begin(), zones.end(), [&context](const ZonePlan& zone) {
    return windbreak_makes_sense(zone, context.run, context.ordered.practice.shelter);
  });
  if (!windy) {
    list.leave_out(windbreak.label, "there is too little wind for one");
    return;
  }
  windbreak.change.wind_ratio = std::max(
      limits::wind_ratios.low, context.run.weather.wind_ratio * context.rules.windbreak_factor);
  list.offer(std::move(windbreak));
}

void add_shelter_choices(const ChoiceContext& context, ChoiceList& list) {
  std::size_t tried = 0;
  for (const std::size_t i : zones_by_tightness(context)) {
    const Zone& zone = context.job.zones[i];
    const std::string label = fmt::format("shade on {}", zone.name);
    std::string why_not = why_no_shade(context.plan.zones[i], context.run,
                                       context.ordered.practice.shelter, context.job.units);
    if (!why_not.empty()) {
      list.leave_out(label, std::move(why_not));
    } else if (tried < max_shaded) {
      ++tried;
      OfferedChoice offered{ChoiceKind::shelter,
                            label,
                            label,
                            fmt::format("put up shade over the {} before it is placed", zone.name),
                            {}};
      offered.change.shaded_zones = {zone.name};
      list.offer(std::move(offered));
    }
  }
  add_windbreak(context, list);
  if (!context.fears({"evaporation_precautions", "evaporation_caution", "early_sheen", "crust",
                      "wind_crust", "hot_weather"})) {
    return;
  }
  OfferedChoice film{ChoiceKind::shelter,
                     "evaporation film",
                     "film",
                     "spray an evaporation film after the bull float and after each pass",
                     {}};
  film.change.evaporation_film = true;
  list.offer(std::move(film));
}

void add_saw_choice(const ChoiceContext& context, ChoiceList& list) {
  const std::string label = "early-entry saw rented";
  const auto& saws = context.job.pour.saws;
  if (std::count(saws.begin(), saws.end(), SawKind::early_entry) > 0) {
    list.leave_out(label, "there is one on hand");
    return;
  }
  OfferedChoice offered{ChoiceKind::saw, label, "early-entry saw", "rent an early-entry saw", {}};
  offered.change.saws = {SawKind::early_entry};
  list.offer(std::move(offered));
}

}  // namespace slabtide
