#include "slabtide/report/text/text_crew.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/text.h"
#include "core/utf8.h"
#include "crew_lines.h"
#include "job/model/wording.h"
#include "report/words/made_words.h"
#include "report/words/validate_facts.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "text_parts.h"
#include "text_supplies.h"
#include "text_touch.h"

namespace slabtide {

namespace {

std::string people_words(int count) {
  return count == 1 ? std::string("1 finisher") : fmt::format("{} finishers", count);
}

/// When the first of the crew arrives; empty if nobody has to.
std::optional<UtcTime> first_on_site(const CrewPlan& crew) {
  std::optional<UtcTime> first;
  for (const CrewMember& member : crew.people) {
    if (member.visits.empty()) continue;
    const UtcTime arrives = member.visits.front().arrives;
    first = std::min(first.value_or(arrives), arrives);
  }
  return first;
}

/// ", missed on 38 days in 100"; empty where it is not known, or hardly ever.
std::string missed_words(const CrewPlan& crew, std::size_t task) {
  const auto days = days_missed(crew, task);
  return days ? fmt::format(", missed on {} days in 100", *days) : std::string();
}

std::string tightest_words(const CrewPlan& crew, const Job& job) {
  const TightTask& tight = *crew.tightest;
  const std::string spare = tight.slack_min < 0
                                ? fmt::format("{} late", duration_words(-tight.slack_min))
                                : fmt::format("{} min to spare", tight.slack_min);
  return fmt::format("{}, {}, {}{}", task_words(crew.tasks[tight.task]),
                     day_span(crew.starts[tight.task], crew.ends[tight.task], job), spare,
                     missed_words(crew, tight.task));
}

/// A name and what is told of it; where both do not fit on a line the rest stands below.
std::string member_line(const std::string& name, const std::string& told, const TextStyle& style) {
  constexpr std::size_t apart = 2;
  const std::size_t hang = display_width(printable(name)) + apart;
  return hang + display_width(told) <= style.width
             ? style.entry(style.heading(name), told, 0, hang)
             : style.paragraph(fmt::format("{}: {}", style.heading(name), told), 0, apart);
}

std::string member_block(const CrewPlan& crew, int who, const Job& job, const TextStyle& style) {
  const CrewMember& member = crew.people[static_cast<std::size_t>(who)];
  if (member.visits.empty()) return member_line(member.name, "not needed", style);
  std::string text;
  for (const CrewVisit& visit : member.visits) {
    const bool first = &visit == &member.visits.front();
    text += member_line(first ? member.name : std::string(),
                        fmt::format("{}on site {}, can leave {}", first ? "" : "back ",
                                    day_clock(visit.arrives, job), day_clock(visit.leaves, job)),
                        style);
    text += visit_lines(crew, visit, static_cast<std::size_t>(who), job, style);
  }
  return text;
}

std::string late_block(const CrewPlan& crew, const Job& job, const TextStyle& style) {
  if (crew.late.empty()) return {};
  std::string text = style.warning("Late") + "\n";
  constexpr std::size_t max_told = 7;
  for (std::size_t i = 0; i < std::min(max_told, crew.late.size()); ++i) {
    const std::size_t task = crew.late[i];
    const Assignment& at = crew.schedule.assignments[task];
    text += style.entry(duration_words(at.late_min),
                        fmt::format("{}, {}", task_words(crew.tasks[task]),
                                    day_span(crew.starts[task], crew.ends[task], job)),
                        2, 14);
  }
  if (crew.late.size() > max_told) {
    text += style.paragraph(
        fmt::format("and {} more, in the days below", crew.late.size() - max_told), 2, 6);
  }
  for (const CrewRemedy& remedy : crew.remedies)
    text += style.paragraph(remedy_words(remedy), 2, 6);
  for (const ZoneRescue& rescue : crew.rescues) text += style.paragraph(rescue_words(rescue), 2, 6);
  return text + "\n";
}

/// The tasks most likely to be late; empty if that is not known, or there are none.
std::string risk_block(const CrewPlan& crew, const Job& job, const TextStyle& style) {
  constexpr double told_from = 0.2;
  constexpr std::size_t max_told = 6;
  std::vector<std::size_t> tasks;
  for (std::size_t i = 0; i < crew.late_chances.size(); ++i) {
    if (crew.late_chances[i].value_or(0.0) >= told_from) tasks.push_back(i);
  }
  if (tasks.empty()) return {};
  std::stable_sort(tasks.begin(), tasks.end(), [&crew](std::size_t a, std::size_t b) {
    return *crew.late_chances[a] > *crew.late_chances[b];
  });
  std::string text =
      style.paragraph(style.heading("May be missed") +
                          " on this many days in 100, if the crew keeps to these hours",
                      0, 2);
  for (std::size_t i = 0; i < std::min(max_told, tasks.size()); ++i) {
    const std::size_t task = tasks[i];
    text += style.entry(fmt::format("{:.0f}", 100.0 * *crew.late_chances[task]),
                        fmt::format("{}, {}", task_words(crew.tasks[task]),
                                    day_span(crew.starts[task], crew.ends[task], job)),
                        2, 6);
  }
  return text + "\n";
}

std::string summary(const PlannedPour& facts, const TextStyle& style) {
  const CrewPlan& crew = facts.plan.crew;
  constexpr std::size_t hang = 11;
  std::string text = style.entry(style.heading("Crew"), crew_size_words(crew), 0, hang);
  if (const auto first = first_on_site(crew)) {
    text += style.entry(style.heading("On site"),
                        fmt::format("first {}, {:.0f} crew hours in all",
                                    day_clock(*first, facts.job), crew.crew_hours()),
                        0, hang);
  }
  if (crew.tightest) {
    text += style.entry(style.heading("Tightest"), tightest_words(crew, facts.job), 0, hang);
  }
  return text;
}

}  // namespace

std::optional<int> days_missed(const CrewPlan& crew, std::size_t task) {
  if (task >= crew.late_chances.size() || !crew.late_chances[task]) return std::nullopt;
  const long days = std::lround(percent_per_one * *crew.late_chances[task]);
  return days > 0 ? std::optional(static_cast<int>(days)) : std::nullopt;
}

std::string crew_size_words(const CrewPlan& crew) {
  std::string words =
      fmt::format("{}, {}", people_words(crew.schedule.crew), crew_late_words(crew));
  if (!crew.after_plan.empty()) words += " of what is ready by the plan's end";
  if (crew.smallest_crew) {
    // Of hands who differ, no fewer were tried.
    const bool fewer_tried = crew.roster.is_count();
    if (!fewer_tried && *crew.smallest_crew == crew.schedule.crew) return words;
    return words + (*crew.smallest_crew == crew.schedule.crew
                        ? fmt::format("; you need all {}", crew.schedule.crew)
                        : fmt::format("; {} would do", *crew.smallest_crew));
  }
  if (crew.enough_crew <= crew.schedule.crew) return words + "; more hands do not help";
  return words +
         fmt::format("; even {} hands: {}", crew.enough_crew, late_words(crew.min_late_min));
}

std::string text_hand(const PlannedPour& facts, const std::string& name, const TextStyle& style) {
  validate(facts);
  const CrewPlan& crew = facts.plan.crew;
  for (std::size_t who = 0; who < crew.people.size(); ++who) {
    const CrewMember& member = crew.people[who];
    if (member.name != name) continue;
    std::string text = fmt::format("{}: {}, {}\n", name, facts.job.name,
                                   clock_of(facts.job).date(facts.job.pour.start));
    text += made_words(facts) + "\n";
    if (member.visits.empty()) text += "not needed\n";
    for (const CrewVisit& visit : member.visits) {
      text += fmt::format("{}on site {}, can leave {}\n",
                          &visit == &member.visits.front() ? "" : "back ",
                          day_clock(visit.arrives, facts.job), day_clock(visit.leaves, facts.job));
      for (const DayLine& line : lines_of(crew, visit, who, facts.job)) {
        text += fmt::format("{} {}\n", line.span, line.words);
      }
    }
    return style.finished(text);
  }
  return {};
}

std::string crew_headline(const PlannedPour& facts, const TextStyle& style) {
  const CrewPlan& crew = facts.plan.crew;
  const auto first = first_on_site(crew);
  if (!first) return {};
  constexpr std::size_t hang = 11;
  std::string words =
      fmt::format("{}; first on site {}", crew_size_words(crew), day_clock(*first, facts.job));
  if (crew.tightest) words += fmt::format("; tightest {}", tightest_words(crew, facts.job));
  return style.entry(style.heading("Crew"), words, 0, hang);
}

std::string text_crew(const PlannedPour& facts, const TextStyle& style) {
  validate(facts);
  const CrewPlan& crew = facts.plan.crew;
  std::string text = text_opening(facts, style) + "\n" + summary(facts, style) + "\n";
  text += late_block(crew, facts.job, style) + risk_block(crew, facts.job, style);
  for (int who = 0; who < crew.schedule.crew; ++who) {
    text += member_block(crew, who, facts.job, style);
  }
  text += fmt::format("\n{}\n", style.heading("How hard to bear down"));
  for (std::size_t zone = 0; zone < facts.plan.zones.size(); ++zone) {
    text += touch_strips(zone, facts.plan, facts.job, style);
  }
  text += style.paragraph(touch_legend(), 2, 2) + "\n";
  text += style.heading("What to bring") + "\n" +
          supply_lines(facts.plan.supplies, facts.job.units, style);
  return style.finished(text);
}

}  // namespace slabtide
