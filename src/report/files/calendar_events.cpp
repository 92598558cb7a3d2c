#include "calendar_events.h"

#include <fmt/format.h>

#include "job/model/wording.h"
#include "report/words/validate_facts.h"

namespace slabtide {

namespace {

// How long before an event its alarm sounds; ours.
constexpr int before_arrival_min = 60;  // travel to the site
constexpr int before_work_min = 15;     // time to get tools and people in place

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

  std::vector<CalendarEvent> all() {
    add_trucks();
    for (const CrewMember& person : facts_.plan.crew.people) add_arrivals(person);
    for (const ZonePlan& zone : facts_.plan.zones) add_zone(zone);
    for (std::size_t i = 0; i < facts_.plan.zones.size(); ++i) add_joints(i);
    return std::move(events_);
  }

 private:
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
                                  volume_words(load.volume_m3, job.units), zones),
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
      if (const OperationWindow* window = zone.whole.window(operation)) add_ready(zone, *window);
    }
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
    std::string words = window.is_never()
                            ? std::string("No good time for it.")
                            : fmt::format("Opens {}, all over {}, closes {}.", clock(window.opens),
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

  void add_ready(const ZonePlan& zone, const OperationWindow& window) {
    if (!window.open_all_over) return;
    add({.id = id_of("window", zone.name, id_in_zone({}), operation_id(window.operation)),
         .category = "window",
         .summary = fmt::format("{}: {}", operation_words(window.operation), zone.name),
         .description = fmt::format("From {} on, all over.", clock(window.open_all_over)),
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
    for (const SawnCut& sawn : facts_.plan.cuts.shift(kind).cuts) {
      const PlannedCut& cut = facts_.plan.cuts.cuts[sawn.cut];
      if (cut.zone != zone) continue;
      add({.id = id_of("cut", job.zones[zone].name, cut.number),
           .category = "saw",
           .summary = fmt::format("saw cut {}: {}", cut.number, job.zones[zone].name),
           .description = fmt::format("{}, {} deep, {} long, {}. Be done by {}.", saw_words(kind),
                                      thickness_words(sawn.depth_m, job.units),
                                      length_words(cut.cut.length_m, job.units),
                                      cut_reason_words(cut.cut.reason), clock(cut.latest)),
           .starts = sawn.starts,
           .ends = sawn.ends,
           .alarm_before_min = before_work_min});
    }
  }

  const PlannedPour& facts_;
  std::vector<CalendarEvent> events_;
};

}  // namespace

std::vector<CalendarEvent> calendar_events(const PlannedPour& facts) {
  validate(facts);
  return EventList(facts).all();
}

}  // namespace slabtide
