#include "calendar_events.h"

#include <algorithm>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/words/validate_facts.h"
#include "slabtide/day/crew/sawing.h"

namespace slabtide {

namespace {

// How long before an event its alarm sounds; ours.
constexpr int before_work_min = 15;   // time to get tools and people in place
constexpr int before_close_min = 10;  // the last call

/// Separates the fields of an id; names may contain any printable character.
constexpr char separator = '\x1f';

template <class... Fields>
std::string id_of(const Fields&... fields) {
  std::string id;
  ((id += fmt::format("{}{}", fields, separator)), ...);
  return id;
}

/// A place's id within its zone (PlaceId): the whole has a number too.
std::string id_in_zone(const std::string& part_id) { return part_id.empty() ? "0" : part_id; }

std::string place_words(const std::string& zone, const std::string& part) {
  return part.empty() ? zone : fmt::format("{}, {}", zone, part);
}

class EventList {
 public:
  explicit EventList(const PlannedPour& facts) : facts_(facts) {}

  std::vector<CalendarEvent> in_detail() {
    add_trucks();
    for (const CrewMember& person : facts_.plan.crew.people) add_arrivals(person);
    for (const ZonePlan& zone : facts_.plan.zones) add_zone(zone);
    for (std::size_t i = 0; i < facts_.plan.zones.size(); ++i) add_joints(i);
    return std::move(events_);
  }

  std::vector<CalendarEvent> in_short() {
    add_trucks();
    for (std::size_t i = 0; i < facts_.plan.zones.size(); ++i) {
      add_finish(i);
      add_wash_off(facts_.plan.zones[i]);
    }
    for (const SawKind kind : kinds_of_saw) add_run(kind, nullptr);
    return std::move(events_);
  }

  std::vector<CalendarEvent> of_finisher(const CrewMember& person) {
    add_arrivals(person);
    for (std::size_t i = 0; i < facts_.plan.zones.size(); ++i) {
      const TaskKind main = task_kind_of(main_operation(facts_.job.zones[i].finish));
      const bool works_on_it = does_any(person, [&](std::size_t index) {
        const Task& task = facts_.plan.crew.tasks[index];
        return task.kind == main && task.place && task.place->zone == i;
      });
      if (works_on_it) add_finish(i);
    }
    for (const SawKind kind : kinds_of_saw) add_run(kind, &person);
    return std::move(events_);
  }

 private:
  /// Whether the person does a task, by index, that `is_it` holds for.
  template <class IsIt>
  static bool does_any(const CrewMember& person, IsIt is_it) {
    return std::any_of(person.visits.begin(), person.visits.end(), [&](const CrewVisit& visit) {
      return std::any_of(visit.tasks.begin(), visit.tasks.end(), is_it);
    });
  }

  /// Whether the cut is made in the zone's own way and, if a person is given, by that person.
  bool is_made(const SawnCut& sawn, SawKind kind, const CrewMember* by) const {
    const CutPlan& plan = facts_.plan.cuts;
    if (saw_of(plan.choices[plan.cuts[sawn.cut].zone].way) != kind) return false;
    return by == nullptr || does_any(*by, [&sawn](std::size_t task) { return task == sawn.task; });
  }

  /// "be done by 4:30 PM", or that it comes too late.
  std::string due_words(const SawnCut& sawn, const PlannedCut& cut) const {
    if (sawn.late) return fmt::format("was due by {}, too late", clock(cut.latest));
    return fmt::format("be done by {}", clock(cut.latest));
  }

  std::string clock(const std::optional<UtcTime>& time) const {
    return day_clock(time, facts_.job);
  }

  /// An event without duration has no end (RFC 5545 requires the end to be after the start).
  void add(CalendarEvent event) {
    event.starts = to_minute(event.starts);
    if (event.ends) event.ends = to_minute(*event.ends);
    if (event.ends && *event.ends <= event.starts) event.ends.reset();
    events_.push_back(std::move(event));
  }

  void add_trucks() {
    const Job& job = facts_.job;
    for (const Load& load : facts_.run.order.loads) {
      std::string zones;
      for (const LoadShare& fraction : load.fractions) {
        zones += fmt::format("{}{}", zones.empty() ? "" : ", ", job.zones[fraction.zone].name);
      }
      add({.id = id_of("load", load.number),
           .category = "truck",
           .summary = fmt::format("load {}, {}: {}", load.number,
                                  sold_words(load.sold_m3, job.units), zones),
           .description = fmt::format("Batched {}, here {}, starts unloading {}, empty {}.",
                                      clock(load.batched), clock(load.arrives), clock(load.starts),
                                      clock(load.empty)),
           .starts = load.arrives,
           .ends = load.empty,
           .alarm_before_min = before_work_min});
    }
  }

  void add_arrivals(const CrewMember& person) {
    const CrewPlan& crew = facts_.plan.crew;
    int number = 0;
    for (const CrewVisit& visit : person.visits) {
      std::string work;
      for (const std::size_t task : visit.tasks) {
        work += fmt::format("{}{} {}", work.empty() ? "" : "\n", clock(crew.starts[task]),
                            task_words(crew.tasks[task]));
      }
      add({.id = id_of("crew", person.name, ++number),
           .category = "crew",
           .summary = fmt::format("{} on site", person.name),
           .description = std::move(work),
           .starts = visit.arrives,
           .ends = visit.leaves,
           .alarm_before_min = before_arrival_min});
    }
  }

  void add_zone(const ZonePlan& zone) {
    if (zone.parts.empty()) add_part(zone, zone.whole);
    for (const PartPlan& part : zone.parts) add_part(zone, part);
    if (zone.border) add_part(zone, *zone.border);
    for (const FacePlan& face : zone.faces) add_window(zone.name, face.name, face.id, face.strip);
    for (const Operation operation : {Operation::walk, Operation::wash, Operation::seal}) {
      if (const OperationWindow* window = zone.late_window(operation)) add_ready(zone, *window);
    }
    add_wash_off(zone);
  }

  void add_part(const ZonePlan& zone, const PartPlan& part) {
    for (const OperationWindow& window : part.windows) {
      if (window.operation >= Operation::saw_dry) continue;  // these apply to the zone as a whole
      add_window(zone.name, part.name, part.id, window);
    }
  }

  void add_window(const std::string& zone, const std::string& part, const std::string& part_id,
                  const OperationWindow& window) {
    if (!window.opens) return;
    std::string words =
        window.is_never()
            ? std::string("No good time for it.")
            : fmt::format("Opens {}, ready all over {}, closes {}.", clock(window.opens),
                          clock(window.open_all_over), clock(window.closes));
    if (!window.note.empty()) words += fmt::format("\nNote: {}", window.note);
    add({.id = id_of("window", zone, id_in_zone(part_id), operation_id(window.operation)),
         .category = "window",
         .summary =
             fmt::format("{}: {}", operation_words(window.operation), place_words(zone, part)),
         .description = std::move(words),
         .starts = *window.opens,
         .ends = window.closes,
         .alarm_before_min = before_work_min});
  }

  /// The main work of a zone, from its first part's opening to its last part's closing.
  void add_finish(std::size_t which) {
    const ZonePlan& zone = facts_.plan.zones[which];
    const Operation main = main_operation(facts_.job.zones[which].finish);
    std::optional<UtcTime> opens;
    std::optional<UtcTime> closes;
    std::string words;
    for (const PartPlan& part : zone.parts) take_finish(part, main, opens, closes, words);
    if (zone.parts.empty()) take_finish(zone.whole, main, opens, closes, words);
    if (!opens) return;
    add({.id = id_of("finish", zone.name),
         .category = "finish",
         .summary = fmt::format("{}: {}", operation_words(main), zone.name),
         .description = std::move(words),
         .starts = *opens,
         .ends = closes,
         .alarm_before_min = before_work_min,
         .last_call_min = before_close_min});
  }

  void take_finish(const PartPlan& part, Operation main, std::optional<UtcTime>& opens,
                   std::optional<UtcTime>& closes, std::string& words) const {
    const OperationWindow* const window = part.window(main);
    if (window == nullptr || !window->opens) return;
    opens = std::min(opens.value_or(*window->opens), *window->opens);
    if (window->closes) closes = std::max(closes.value_or(*window->closes), *window->closes);
    words +=
        fmt::format("{}{}{}", words.empty() ? "" : "\n", part.name, part.name.empty() ? "" : ": ");
    words += window->is_never()
                 ? std::string("No good time for it.")
                 : fmt::format("opens {}, ready all over {}, closes {}.", clock(window->opens),
                               clock(window->open_all_over), clock(window->closes));
  }

  /// One saw's cuts in the zones that are sawn with it, from the first to the last; those that a
  /// person makes if one is given.
  void add_run(SawKind kind, const CrewMember* by) {
    const CutPlan& plan = facts_.plan.cuts;
    std::optional<UtcTime> from;
    std::optional<UtcTime> to;
    std::string words;
    for (const SawnCut& sawn : worked_shift(kind, plan, facts_.plan.crew).cuts) {
      if (!is_made(sawn, kind, by)) continue;
      const PlannedCut& cut = plan.cuts[sawn.cut];
      from = std::min(from.value_or(sawn.starts), sawn.starts);
      to = std::max(to.value_or(sawn.ends), sawn.ends);
      words += fmt::format("{}{} cut {}, {}: {}.", words.empty() ? "" : "\n", clock(sawn.starts),
                           cut.number, facts_.job.zones[cut.zone].name, due_words(sawn, cut));
    }
    if (!from) return;
    add({.id = id_of("saw run", operation_id(kind == SawKind::early_entry ? Operation::saw_dry
                                                                          : Operation::saw_wet)),
         .category = "saw",
         .summary = fmt::format("saw the joints: {}", saw_words(kind, facts_.job)),
         .description = std::move(words),
         .starts = *from,
         .ends = to,
         .alarm_before_min = before_work_min});
  }

  /// The wash-off of exposed aggregate, which cannot wait.
  void add_wash_off(const ZonePlan& zone) {
    const OperationWindow* window = zone.late_window(Operation::expose);
    if (window != nullptr) add_window(zone.name, {}, {}, *window);
  }

  void add_ready(const ZonePlan& zone, const OperationWindow& window) {
    if (!window.open_all_over) return;
    add({.id = id_of("window", zone.name, id_in_zone({}), operation_id(window.operation)),
         .category = "window",
         .summary = fmt::format("{}: {}", operation_words(window.operation), zone.name),
         .description = fmt::format("From {} on, everywhere.", clock(window.open_all_over)),
         .starts = *window.open_all_over,
         .ends = std::nullopt,
         .alarm_before_min = before_work_min});
  }

  void add_joints(std::size_t zone) {
    const JointChoice& choice = facts_.plan.cuts.choices[zone];
    switch (choice.way) {
      case JointWay::none_needed:
        return;
      case JointWay::early_entry:
        return add_cuts(zone, SawKind::early_entry);
      case JointWay::wet:
        return add_cuts(zone, SawKind::wet);
      case JointWay::tool:
        // If the finish has its own tooled joints, these are already among the windows.
        if (facts_.plan.zones[zone].whole.window(Operation::tooled_joint) == nullptr) {
          add_window(facts_.job.zones[zone].name, {}, {}, choice.tooled);
        }
    }
  }

  void add_cuts(std::size_t zone, SawKind kind) {
    const Job& job = facts_.job;
    for (const SawnCut& sawn : worked_shift(kind, facts_.plan.cuts, facts_.plan.crew).cuts) {
      const PlannedCut& cut = facts_.plan.cuts.cuts[sawn.cut];
      if (cut.zone != zone) continue;
      add({.id = id_of("cut", job.zones[zone].name, cut.number),
           .category = "saw",
           .summary = fmt::format("saw cut {}: {}", cut.number, job.zones[zone].name),
           .description = fmt::format("{}, {} deep, {} long, {}; {}.", saw_words(kind, job),
                                      thickness_words(sawn.depth_m, job.units),
                                      length_words(cut.cut.length_m, job.units),
                                      cut_reason_words(cut.cut.reason), due_words(sawn, cut)),
           .starts = sawn.starts,
           .ends = sawn.ends,
           .alarm_before_min = before_work_min});
    }
  }

  const PlannedPour& facts_;
  std::vector<CalendarEvent> events_;
};

}  // namespace

std::vector<CalendarEvent> calendar_events(const PlannedPour& facts, const CalendarScope& scope) {
  validate(facts);
  if (scope.finisher.empty()) {
    return scope.detail ? EventList(facts).in_detail() : EventList(facts).in_short();
  }
  for (const CrewMember& person : facts.plan.crew.people) {
    if (person.name == scope.finisher) return EventList(facts).of_finisher(person);
  }
  return {};
}

std::string finisher_fault(const CrewPlan& crew, const std::string& finisher) {
  std::string names;
  for (const CrewMember& person : crew.people) {
    if (finisher.empty() || person.name == finisher) return {};
    names += fmt::format("{}{}", names.empty() ? "" : ", ", person.name);
  }
  if (finisher.empty()) return {};
  return fmt::format("--for: there is no '{}' on the crew; there {}", finisher,
                     names.empty() ? std::string("is nobody") : "are " + names);
}

}  // namespace slabtide
