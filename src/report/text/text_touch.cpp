#include "text_touch.h"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

#include "core/text.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

namespace {

constexpr std::size_t touch_label_width = 22;

std::string_view sign_of(Touch touch) {
  constexpr std::array<std::string_view, 5> signs{"·", "░", "█", "!", " "};
  return signs[static_cast<std::size_t>(touch)];
}

/// Every second hour, above its first quarter: a sign is too narrow for each.
std::string hour_line(const PartTouch& touch, const Job& job, std::size_t room) {
  constexpr std::size_t quarters_apart = 8;
  const Clock clock = clock_of(job);
  std::string line;
  std::size_t next = 0;
  for (std::size_t i = 0; i < std::min(room, touch.quarters.size()); ++i) {
    const UtcTime at = touch.quarters[i].at;
    if (i < next || clock.zone.local_from_utc(to_minute(at)).time_of_day().minutes() != 0) continue;
    line = pad(line, 2 + touch_label_width + i) + clock.hour(at);
    next = i + quarters_apart;
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
  return from ? day_span(*from, to, job) : std::string();
}

/// How many quarters of an hour there is room for between the parts' names and the crew's times.
std::size_t room_for_quarters(const std::vector<PartTouch>& touches, std::size_t zone,
                              const CrewPlan& crew, const Job& job, const TextStyle& style) {
  constexpr std::size_t usual_width = 17;  // of "11:40 AM–12:35 PM"
  std::size_t time_width = usual_width;
  for (const PartTouch& touch : touches) {
    time_width = std::max(time_width, display_width(crew_time(touch, zone, crew, job)));
  }
  return style.width - touch_label_width - 2 - 2 - time_width;
}

std::string strip(const PartTouch& touch, std::size_t zone, const CrewPlan& crew, const Job& job,
                  std::size_t room, const TextStyle& style) {
  const std::string part = touch.part.empty() ? job.zones[zone].name : touch.part;
  std::string line = fmt::format("  {}, {}", part, operation_words(touch.operation));
  // A label without room for it stands in a line of its own, and nothing of it is cut.
  std::string above;
  if (display_width(line) > touch_label_width + 1)
    above = style.paragraph(std::exchange(line, {}), 0, 4);
  line = pad(line, touch_label_width + 2);
  for (std::size_t i = 0; i < std::min(room, touch.quarters.size()); ++i)
    line += sign_of(touch.quarters[i].touch);
  line += "  " + crew_time(touch, zone, crew, job);
  return above + line.erase(line.find_last_not_of(' ') + 1) + "\n";
}

}  // namespace

std::string touch_strips(std::size_t zone, const DayPlan& plan, const Job& job,
                         const TextStyle& style) {
  const std::vector<PartTouch>& touches = plan.zones[zone].touch;
  if (touches.empty()) return {};
  const std::size_t room = room_for_quarters(touches, zone, plan.crew, job, style);
  std::string text = hour_line(touches.front(), job, room);
  for (const PartTouch& touch : touches) text += strip(touch, zone, plan.crew, job, room, style);
  return text;
}

std::string touch_legend() {
  return fmt::format("{} wait   {} light   {} full weight   {} last call   (one mark per 15 min)",
                     sign_of(Touch::wait), sign_of(Touch::light), sign_of(Touch::full),
                     sign_of(Touch::last_call));
}

}  // namespace slabtide
