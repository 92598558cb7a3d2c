#include "text_touch.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "slabtide/report/words/text_style.h"

namespace slabtide {

namespace {

constexpr std::size_t touch_label_width = 22;
/// The rest of the line is for the crew's time on the part.
constexpr std::size_t max_quarters = 40;

std::string_view sign_of(Touch touch) {
  constexpr std::array<std::string_view, 5> signs{"·", "░", "█", "!", " "};
  return signs[static_cast<std::size_t>(touch)];
}

std::size_t shown(const PartTouch& touch) { return std::min(max_quarters, touch.quarters.size()); }

/// The hours, each above its first quarter.
std::string hour_line(const PartTouch& touch, const Job& job) {
  constexpr std::size_t hour_digits = 2;
  std::string line = pad("", 2 + touch_label_width);
  for (std::size_t i = 0; i < shown(touch); ++i) {
    const std::string clock = clock_time(touch.quarters[i].at, job.site.time_zone);
    const bool whole_hour = clock.ends_with(":00");
    if (whole_hour) line = pad(line, 2 + touch_label_width + i) + clock.substr(0, hour_digits);
  }
  return line + "\n";
}

/// When the crew works on the part: from its first task of that kind to its last.
std::string crew_time(const PartTouch& touch, std::size_t zone, const CrewPlan& crew,
                      const Job& job) {
  const PlaceId place{zone, touch.part_id};
  std::optional<UtcTime> from;
  UtcTime to;
  for (std::size_t i = 0; i < crew.tasks.size(); ++i) {
    const Task& task = crew.tasks[i];
    if (task.place != place || task.kind != task_kind_of(touch.operation)) continue;
    to = from ? std::max(to, crew.ends[i]) : crew.ends[i];
    from = std::min(from.value_or(crew.starts[i]), crew.starts[i]);
  }
  return from ? fmt::format("{}-{}", day_clock(*from, job), day_clock(to, job)) : std::string();
}

std::string strip(const PartTouch& touch, std::size_t zone, const CrewPlan& crew, const Job& job) {
  const std::string part = touch.part.empty() ? job.zones[zone].name : touch.part;
  std::string line = fmt::format(
      "  {} ",
      pad(fmt::format("{}, {}", part, operation_words(touch.operation)), touch_label_width - 1));
  for (std::size_t i = 0; i < shown(touch); ++i) line += sign_of(touch.quarters[i].touch);
  line += "  " + crew_time(touch, zone, crew, job);
  return line.erase(line.find_last_not_of(' ') + 1) + "\n";
}

}  // namespace

std::string touch_strips(std::size_t zone, const DayPlan& plan, const Job& job) {
  const std::vector<PartTouch>& touches = plan.zones[zone].touch;
  if (touches.empty()) return {};
  std::string text = hour_line(touches.front(), job);
  for (const PartTouch& touch : touches) text += strip(touch, zone, plan.crew, job);
  return text;
}

std::string touch_legend() {
  return fmt::format("{} wait   {} light   {} full weight   {} last call   (a sign a quarter hour)",
                     sign_of(Touch::wait), sign_of(Touch::light), sign_of(Touch::full),
                     sign_of(Touch::last_call));
}

}  // namespace slabtide
