#include "day_choices.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "admixture_change.h"
#include "admixture_choices.h"
#include "core/rounded.h"
#include "job/model/limits.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

constexpr double half_the_loads = 0.5;
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

Job shaded(const Job& job, std::size_t zone) {
  Job changed = job;
  changed.zones[zone].shaded = true;
  return changed;
}

Job behind_windbreak(const ChoiceContext& context, Job job) {
  job.site.measured_wind_ratio = std::max(
      limits::wind_ratios.low, context.run.weather.wind_ratio * context.rules.windbreak_factor);
  return job;
}

Job with_finishers(Job job, int more) {
  job.crew.finishers =
      std::min(job.crew.finishers + more, static_cast<int>(limits::crew_sizes.high));
  return job;
}

std::string start_words(const Job& job) {
  return fmt::format("start at {}", clock_of(job).time(job.pour.start));
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

void add_start(const ChoiceContext& context, double hours, ChoiceList& list) {
  const Job job = started_later(context.job, hours * minutes_per_hour);
  const std::string label =
      fmt::format("start {:g} h {}", std::abs(hours), hours < 0.0 ? "earlier" : "later");
  if (std::string fault = start_fault(job, context.rules); !fault.empty()) {
    list.leave_out(label, std::move(fault));
  } else {
    list.add(ChoiceKind::start, label, start_words(job), job);
  }
}

}  // namespace

Job started_later(const Job& job, double minutes) {
  Job changed = job;
  const auto move = [minutes](UtcTime& time) {
    time = after_seconds(time, minutes * seconds_per_minute);
  };
  move(changed.pour.start);
  for (Zone& zone : changed.zones) {
    if (zone.placed_at) move(*zone.placed_at);
  }
  return changed;
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
  Job job = context.job;
  std::reverse(job.pour.placing_sequence.begin(), job.pour.placing_sequence.end());
  list.add(ChoiceKind::order, label,
           fmt::format("place {}", joined_order(job.pour.placing_sequence)), job);
}

void add_crew_choices(const ChoiceContext& context, ChoiceList& list) {
  for (const int more : {1, -1}) {
    const int hands = context.job.crew.finishers + more;
    const std::string label = fmt::format("{} finisher{}", hands, hands == 1 ? "" : "s");
    if (hands < 1) {
      list.leave_out(label, "somebody must be there");
      continue;
    }
    if (!limits::crew_sizes.holds(hands)) {
      list.leave_out(label, "no pour has use for so many");
      continue;
    }
    list.add(ChoiceKind::crew, label,
             fmt::format("bring {} finisher{} in place of {}", hands, hands == 1 ? "" : "s",
                         context.job.crew.finishers),
             with_finishers(context.job, more));
  }
}

void add_shelter_choices(const ChoiceContext& context, ChoiceList& list) {
  std::size_t tried = 0;
  for (const std::size_t i : zones_by_tightness(context)) {
    const Zone& zone = context.job.zones[i];
    const std::string label = fmt::format("shade on {}", zone.name);
    if (context.plan.zones[i].whole.sunlit_fraction <= 0.0) {
      list.leave_out(label, "it lies in the shade already");
    } else if (tried < max_shaded) {
      ++tried;
      list.add(ChoiceKind::shelter, label,
               fmt::format("put up shade over the {} before it is placed", zone.name),
               shaded(context.job, i));
    }
  }
  list.add(ChoiceKind::shelter, "windbreak", "put up a windbreak",
           behind_windbreak(context, context.job));
}

void add_saw_choice(const ChoiceContext& context, ChoiceList& list) {
  Job job = context.job;
  const std::string label = "early-entry saw hired";
  if (std::count(job.pour.saws.begin(), job.pour.saws.end(), SawKind::early_entry) > 0) {
    list.leave_out(label, "there is one on hand");
    return;
  }
  job.pour.saws.push_back(SawKind::early_entry);
  list.add(ChoiceKind::saw, label, "hire an early-entry saw", std::move(job));
}

void add_joined_choices(const ChoiceContext& context, ChoiceList& list) {
  const Job& job = context.job;
  const Admixture retarder = retarder_of(context.rules.retarder_low_ml_100kg);
  const std::string figure = dose_label(retarder, job.units);
  const std::string dose = dose_words(retarder, job.units);
  const LastLoads last = in_last_fraction(job, context.run.order, {retarder}, half_the_loads);
  const Job earlier = started_later(job, -minutes_per_hour);
  const bool can_start_earlier = start_fault(earlier, context.rules).empty();
  list.add(ChoiceKind::several, fmt::format("+1 hand, retarder {}", figure),
           fmt::format("put retarder at {} {} and bring one more finisher", dose,
                       last_loads_words(last)),
           with_finishers(last.job, 1));
  if (can_start_earlier) {
    list.add(ChoiceKind::several, fmt::format("1 h sooner, retarder {}", figure),
             fmt::format("put retarder at {} {} and {}", dose, last_loads_words(last),
                         start_words(earlier)),
             started_later(last.job, -minutes_per_hour));
    list.add(ChoiceKind::several, "1 h sooner, +1 hand",
             fmt::format("{} with one more finisher", start_words(earlier)),
             with_finishers(earlier, 1));
  }
  const std::size_t tightest = zones_by_tightness(context).front();
  if (context.plan.zones[tightest].whole.sunlit_fraction <= 0.0) return;
  list.add(ChoiceKind::several, "windbreak and shade",
           fmt::format("put up a windbreak and shade over the {}", job.zones[tightest].name),
           behind_windbreak(context, shaded(job, tightest)));
}

}  // namespace slabtide
