#include "slabtide/report/text/text_shared_crew.h"

#include <algorithm>
#include <functional>
#include <optional>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "crew_lines.h"
#include "job/model/wording.h"
#include "report/words/made_words.h"
#include "slabtide/day/crew/crew_remedies.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/report/text/text_saw.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

namespace {

constexpr std::string_view own_sheets_words =
    "People, tasks and cuts go by this sheet and its calendar; a job's own sheets (plan, saw, "
    "their page and calendar) have its own crew there all day.";

/// From the first arrival of anybody on a site to the last departure.
struct Presence {
  UtcTime from;
  UtcTime to;
};

std::optional<Presence> presence_on(std::size_t site, const CrewPlan& crew) {
  std::optional<Presence> found;
  for (const CrewMember& member : crew.people) {
    for (const CrewVisit& visit : member.visits) {
      if (visit.site != site) continue;
      if (!found) found = Presence{visit.arrives, visit.leaves};
      found = Presence{std::min(found->from, visit.arrives), std::max(found->to, visit.leaves)};
    }
  }
  return found;
}

std::string finisher_count(int count) {
  return fmt::format("{} finisher{}", count, count == 1 ? "" : "s");
}

std::string site_line(const SharedCrew& shared, std::size_t index, const TextStyle& style) {
  const SharedSite& site = shared.sites[index];
  std::string words = late_words(site.late_min);
  if (const auto here = presence_on(index, shared.crew)) {
    words = fmt::format("someone there {}, {}", day_span(here->from, here->to, shared.job), words);
  }
  if (site.late_min > site.alone_min) {
    words += fmt::format("; with its own {} all day: {}", finisher_count(site.finishers),
                         late_words(site.alone_min));
  }
  if (site.other_crew) {
    words += fmt::format("; its job names another crew ({}), which is not used here",
                         finisher_count(site.finishers));
  }
  return style.paragraph(fmt::format("{}: {}", site.name, words), 2, 4);
}

std::string late_lines(const SharedCrew& shared, const TextStyle& style) {
  const CrewPlan& crew = shared.crew;
  if (crew.late.empty()) return {};
  std::string text = style.warning("Late") + "\n";
  for (const std::size_t task : crew.late) {
    text += style.entry(duration_words(crew.schedule.assignments[task].late_min),
                        fmt::format("{}: {}, {}", shared.sites[crew.tasks[task].site].name,
                                    task_words(crew.tasks[task]),
                                    day_span(crew.starts[task], crew.ends[task], shared.job)),
                        2, 11);
  }
  return text + "\n";
}

/// Once where all the pours go by one forecast.
std::string made_lines(const SharedCrew& shared, std::span<const PlannedPour> pours,
                       const TextStyle& style) {
  std::vector<std::string> made;
  for (const PlannedPour& pour : pours) made.push_back(made_words(pour));
  if (std::adjacent_find(made.begin(), made.end(), std::not_equal_to<>()) == made.end()) {
    return style.paragraph(made.front());
  }
  std::string text;
  for (std::size_t site = 0; site < made.size(); ++site) {
    text += style.paragraph(fmt::format("{}: {}", shared.sites[site].name, made[site]), 0, 2);
  }
  return text;
}

/// The cuts of each site as the shared crew comes to them.
std::string cut_blocks(const SharedCrew& shared, std::span<const PlannedPour> pours,
                       const TextStyle& style) {
  std::string text;
  for (std::size_t site = 0; site < pours.size(); ++site) {
    PlannedPour there = pours[site];
    there.plan.crew = crew_on_site(shared, there, site);
    const std::string cuts = text_cuts(there, style);
    if (cuts.empty()) continue;
    const bool is_same_day = there.job.pour.date == shared.job.pour.date;
    text += "\n" + style.titled(fmt::format("Cuts, {}", shared.sites[site].name),
                                is_same_day ? "" : clock_of(there.job).date(there.job.pour.start));
    text += cuts.substr(0, cuts.size() - 1);
  }
  return text;
}

std::string hand_lines(const SharedCrew& shared, std::size_t who, const TextStyle& style) {
  const CrewMember& member = shared.crew.people[who];
  std::string text = style.paragraph(style.heading(member.name), 0, 2);
  if (member.visits.empty()) return text + "  not needed\n";
  for (const CrewVisit& visit : member.visits) {
    text += style.paragraph(
        fmt::format("{}: there by {}, can leave {}", shared.sites[visit.site].name,
                    day_clock(visit.arrives, shared.job), day_clock(visit.leaves, shared.job)),
        2, 4);
    text += visit_lines(shared.crew, visit, who, shared.job, style);
  }
  return text;
}

}  // namespace

std::string text_shared_crew(const SharedCrew& shared, std::span<const PlannedPour> pours,
                             const TextStyle& style) {
  const CrewPlan& crew = shared.crew;
  std::string text =
      style.paragraph(fmt::format("{} {} on {} sites, {}: {}", style.heading("Crew"),
                                  finisher_count(crew.schedule.crew), shared.sites.size(),
                                  clock_of(shared.job).date(shared.job.pour.start),
                                  late_words(crew.schedule.late_min)),
                      0, 2);
  text += style.paragraph(
      fmt::format(
          "{} min is kept free to drive from site to site. The crew is that of {}; when each "
          "site's concrete is ready is planned by itself.",
          crew.roster.travel_min, shared.sites.front().name),
      0, 2);
  text += style.paragraph(own_sheets_words, 0, 2);
  text += made_lines(shared, pours, style);
  text += "\n" + late_lines(shared, style) + style.heading("Sites") + "\n";
  for (std::size_t site = 0; site < shared.sites.size(); ++site) {
    text += site_line(shared, site, style);
  }
  for (const Task& task : crew.after_plan) {
    text += style.paragraph(
        fmt::format("after the plan's end, in nobody's day: {}", task_words(task)), 2, 4);
  }
  text += "\n";
  for (std::size_t who = 0; who < crew.people.size(); ++who) text += hand_lines(shared, who, style);
  return style.finished(text + cut_blocks(shared, pours, style));
}

std::string text_shared_hand(const SharedCrew& shared, std::span<const PlannedPour> pours,
                             const std::string& name, const TextStyle& style) {
  const std::vector<CrewMember>& people = shared.crew.people;
  for (std::size_t who = 0; who < people.size(); ++who) {
    if (people[who].name != name) continue;
    return style.finished(clock_of(shared.job).date(shared.job.pour.start) + "\n" +
                          made_lines(shared, pours, style) + hand_lines(shared, who, style));
  }
  return {};
}

}  // namespace slabtide
