#include "page_crew.h"

#include <algorithm>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/markup/page_views.h"
#include "report/words/hand_words.h"
#include "slabtide/day/crew/crew_remedies.h"
#include "slabtide/report/text/text_crew.h"

namespace slabtide {

namespace {

/// More late tasks than these nobody reads at once; the rest is folded away (ours).
constexpr std::size_t max_late_told = 5;

class CrewPage {
 public:
  explicit CrewPage(const PlannedPour& facts) : crew_(facts.plan.crew), job_(facts.job) {}

  View view() const {
    std::vector<View> people;
    for (std::size_t who = 0; who < crew_.people.size(); ++who) {
      if (!crew_.people[who].visits.empty()) people.push_back(member(who, people.size()));
    }
    View view;
    put_size(view);
    view.flag("any_cure", !crew_.remedies.empty() || !crew_.rescues.empty())
        .put("cures", remedies());
    put_late(view);
    view.put("people", std::move(people));
    if (crew_.tightest) view.put("tight", tight());
    return view;
  }

 private:
  static View count(const char* json, int number) {
    return figure_view(json, number, fmt::format("{}", number));
  }

  void put_size(View& view) const {
    view.put("finishers", count("/crew_summary/finishers", crew_.schedule.crew));
    view.flag("in_time", crew_.schedule.late_min == 0);
    if (!lost_finish_names(crew_).empty()) {
      view.put("lost", View().put("words", crew_late_words(crew_)));
    } else if (crew_.schedule.late_min > 0) {
      view.put("late_in_all", minutes_late("/crew_summary/late_min", crew_.schedule.late_min));
    }
    const bool no_fewer = crew_.smallest_crew && *crew_.smallest_crew == crew_.schedule.crew;
    // Of hands who differ, no fewer were tried.
    view.flag("no_fewer", no_fewer && crew_.roster.is_count());
    if (no_fewer) return;
    if (crew_.smallest_crew) {
      view.put("fewest", count("/crew_summary/smallest_crew", *crew_.smallest_crew));
      return;
    }
    const bool no_help = crew_.enough_crew <= crew_.schedule.crew;
    view.flag("no_help", no_help);
    if (no_help) return;
    View best;
    best.put("enough", count("/crew_summary/enough_crew", crew_.enough_crew));
    if (crew_.min_late_min < hopeless_late_min) {
      best.put("least", minutes_late("/crew_summary/least_late_min", crew_.min_late_min));
    } else {
      best.put("hopeless", late_words(crew_.min_late_min));
    }
    view.put("best", std::move(best));
  }

  View task_view(const std::string& json, std::size_t task) const {
    SpanViews span =
        span_views({crew_.starts[task], json + "/start"}, {crew_.ends[task], json + "/end"}, job_);
    View view;
    return view.put("start", std::move(span.from))
        .put("end", std::move(span.to))
        .put("task", task_words(crew_.tasks[task]));
  }

  View tight() const {
    const int slack = crew_.tightest->slack_min;
    View view = task_view("/crew_summary/tightest", crew_.tightest->task);
    if (const auto days = days_missed(crew_, crew_.tightest->task)) {
      const double chance = *crew_.late_chances[crew_.tightest->task];
      view.put("chance", figure_view("/crew_summary/tightest/late_chance", chance,
                                     fmt::format("{}%", *days)));
    }
    if (slack < 0)
      return view.put("behind", minutes_late("/crew_summary/tightest/late_min", -slack));
    return view.put("slack", figure_view("/crew_summary/tightest/slack_min", slack,
                                         fmt::format("{} min", slack)));
  }

  static View minutes_late(const std::string& json, int minutes) {
    return figure_view(json, minutes, duration_words(minutes));
  }

  void put_late(View& view) const {
    const std::size_t first = std::min(crew_.late.size(), max_late_told);
    view.put("late", late(0, first));
    if (first == crew_.late.size()) return;
    View more;
    more.put("count", fmt::format("{}", crew_.late.size() - first));
    view.put("more_late", more.put("rest", late(first, crew_.late.size())));
  }

  std::vector<View> late(std::size_t first, std::size_t last) const {
    std::vector<View> views;
    for (std::size_t i = first; i < last; ++i) {
      const std::string json = pointer("/crew_summary/late", i);
      View view = task_view(json, crew_.late[i]);
      const int minutes = crew_.schedule.assignments[crew_.late[i]].late_min;
      views.push_back(view.put("minutes", minutes_late(json + "/late_min", minutes)));
    }
    return views;
  }

  std::vector<View> remedies() const {
    std::vector<View> views;
    for (const CrewRemedy& remedy : crew_.remedies) {
      views.push_back(View().put("cure", remedy_words(remedy)));
    }
    for (const ZoneRescue& rescue : crew_.rescues) {
      views.push_back(View().put("cure", rescue_words(rescue)));
    }
    return views;
  }

  /// One of the crew; `shown` is the index in the JSON, which leaves out those who are not needed.
  View member(std::size_t who, std::size_t shown) const {
    const CrewMember& member = crew_.people[who];
    const std::string json = pointer("/crew", shown);
    std::vector<View> visits;
    std::size_t task = 0;
    for (std::size_t i = 0; i < member.visits.size(); ++i) {
      const std::string at = i == 0 ? json : pointer(json + "/returns", i - 1);
      View visit;
      visit.flag("back", i > 0)
          .put("arrives", time_view(at + "/arrives", member.visits[i].arrives, job_))
          .put("leaves", time_view(at + "/leaves", member.visits[i].leaves, job_));
      std::vector<View> tasks;
      for (const std::size_t done : member.visits[i].tasks) {
        tasks.push_back(one_task(done, who, pointer(json + "/tasks", task)));
        ++task;
      }
      visits.push_back(visit.put("tasks", std::move(tasks)));
    }
    View view;
    return view.put("name", member.name)
        .put("first_visit", time_view(json + "/arrives", member.visits.front().arrives, job_))
        .put("visits", std::move(visits));
  }

  View one_task(std::size_t task, std::size_t who, const std::string& json) const {
    const Assignment& assigned = crew_.schedule.assignments[task];
    View view = task_view(json, task);
    const std::string others = others_words(crew_, task, who);
    view.put("with", others.empty() ? others : "with " + others)
        .flag("is_late", assigned.late_min > 0);
    if (assigned.late_min > 0) {
      view.put("minutes", minutes_late(json + "/late_min", assigned.late_min));
    }
    return view;
  }

  const CrewPlan& crew_;
  const Job& job_;
};

}  // namespace

View crew_view(const PlannedPour& facts) { return CrewPage(facts).view(); }

}  // namespace slabtide
