#include "page_agenda.h"

#include <algorithm>
#include <optional>
#include <string_view>

#include <fmt/format.h>

#include "core/text.h"
#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"
#include "report/words/short_names.h"
#include "slabtide/day/crew/sawing.h"
#include "slabtide/report/text/text_saw.h"

namespace slabtide {

namespace {

/// A time and its pointer in the JSON.
struct Told {
  std::optional<UtcTime> at;
  std::string json;
};

/// What comes at a time. With `work` and `until` it is the opening of a window: "broom" may be done
/// there from then until that time.
struct Event {
  Told from;
  std::string where;  ///< empty for the whole job
  std::string what;
  std::string work = {};
  Told until = {};
  bool minor = false;  ///< not what a zone's finish is named for
  /// Those with a number are not on the truck sheet where there is no room, the highest first.
  int spare = 0;
  bool elsewhere = false;  ///< in the annex alone
};

/// A longer list leaves no room for the rest on the one side of the truck sheet, of whose columns a
/// line holds so many letters (ours).
constexpr std::size_t max_truck_lines = 36;
constexpr std::size_t truck_line_letters = 34;
constexpr int spare_due = 3;        // said by the start's "until"
constexpr int spare_last_call = 2;  // said by the opening's "until"
constexpr int spare_start = 1;      // said by the list of cuts

class Agenda {
 public:
  explicit Agenda(const PlannedPour& facts) : facts_(facts) {
    crew();
    trucks();
    for (const ShownPart& part : all_parts(facts)) work(part);
    for (std::size_t zone = 0; zone < facts.plan.zones.size(); ++zone) {
      faces(zone);
      saw(zone);
      wash_off(zone);
    }
    // What a zone's finish is named for stands before the rest of the same minute.
    std::stable_sort(events_.begin(), events_.end(), [](const Event& a, const Event& b) {
      return a.from.at != b.from.at ? a.from.at < b.from.at : a.minor < b.minor;
    });
    make_room();
  }

  View view() const {
    std::vector<View> events;
    for (const Event& event : events_) events.push_back(event_view(event));
    View view;
    view.put("count", fmt::format("{}", events_.size())).put("events", std::move(events));
    return view.flag("left_out", std::any_of(events_.begin(), events_.end(),
                                             [](const Event& event) { return event.elsewhere; }));
  }

 private:
  std::size_t lines_of(const Event& event) const {
    constexpr std::size_t until_letters = 15;  // "until 10:55 AM"
    const std::size_t letters = display_width(short_names(event.where, facts_.job)) +
                                display_width(event.what) + (event.until.at ? until_letters : 0);
    return 1 + letters / truck_line_letters;
  }

  std::size_t truck_lines() const {
    std::size_t lines = 0;
    for (const Event& event : events_) {
      if (!event.minor && !event.elsewhere) lines += lines_of(event);
    }
    return lines;
  }

  /// Leaves on the truck sheet what has room there: first without what is said twice, then without
  /// what comes last.
  void make_room() {
    for (int spare = spare_due; spare > 0 && truck_lines() > max_truck_lines; --spare) {
      for (Event& event : events_) event.elsewhere = event.elsewhere || event.spare == spare;
    }
    for (auto last = events_.rbegin(); last != events_.rend() && truck_lines() > max_truck_lines;
         ++last) {
      last->elsewhere = true;
    }
  }

  void add(Event event) {
    if (event.from.at) events_.push_back(std::move(event));
  }

  View event_view(const Event& event) const {
    View view = time_view(event.from.json, event.from.at, facts_.job);
    view.put("what", event.what);
    const bool apart = event.minor || event.elsewhere;
    const std::string_view kind = event.minor ? "minor" : "elsewhere";
    if (apart) view.put("apart", View().put("kind", kind));
    if (!event.where.empty()) {
      view.put("place", View().put("where", named_place(event.where, facts_.job).str()));
    }
    if (!event.work.empty()) view.put("window", View().put("work", event.work));
    if (event.until.at) {
      view.put("until", time_view(event.until.json, event.until.at, facts_.job));
    }
    return view;
  }

  /// Those who come at the same minute in one line.
  void crew() {
    std::vector<const CrewMember*> coming;  // the JSON leaves out those who are not needed
    for (const CrewMember& member : facts_.plan.crew.people) {
      if (!member.visits.empty()) coming.push_back(&member);
    }
    const auto arrives = [&coming](std::size_t i) { return coming[i]->visits.front().arrives; };
    for (std::size_t i = 0, next = 0; i < coming.size(); i = next) {
      while (next < coming.size() && arrives(next) == arrives(i)) ++next;
      add({.from = {arrives(i), pointer("/crew", i, "arrives")},
           .where = {},
           .what = next - i == 1 ? coming[i]->name + " on site"
                                 : fmt::format("{} finishers on site", next - i)});
    }
  }

  void trucks() {
    const std::vector<Load>& loads = facts_.run.order.loads;
    for (std::size_t i = 0; i < loads.size(); ++i) {
      add({.from = {loads[i].arrives, pointer("/trucks", i, "arrives")},
           .where = {},
           .what = fmt::format("load {} on site", loads[i].number)});
    }
  }

  void work(const ShownPart& part) {
    const std::string where = place_words(part, facts_.job);
    for (const Operation operation : operations_of(part.finish)) {
      const ShownWindow shown = window_of(part, operation);
      if (shown.window == nullptr || !can_be_done(*shown.window)) continue;
      const std::string words(operation_words(operation));
      const Told closes{shown.window->closes, shown.at("closes")};
      const bool minor = operation != main_operation(part.finish);
      add({.from = {shown.window->opens, shown.at("opens")},
           .where = where,
           .what = words + " opens",
           .work = words,
           .until = closes,
           .minor = minor});
      if (!minor) {
        add({.from = closes,
             .where = where,
             .what = fmt::format("last call to {}", operation_verb(operation)),
             .spare = spare_last_call});
      }
    }
  }

  void faces(std::size_t zone) {
    const ZonePlan& plan = facts_.plan.zones[zone];
    for (std::size_t i = 0; i < plan.faces.size(); ++i) {
      const std::string json = pointer(pointer("/zones", zone, "faces"), i, "windows/0/");
      const OperationWindow& strip = plan.faces[i].strip;
      if (!can_be_done(strip)) continue;
      add({.from = {strip.opens, json + "opens"},
           .where = fmt::format("{}, {}", plan.name, plan.faces[i].name),
           .what = "strip the form",
           .work = "strip the form",
           .until = {strip.closes, json + "closes"}});
    }
  }

  /// The one work after setting that can come too late.
  void wash_off(std::size_t zone) {
    const ShownWindow shown = late_window_of(facts_, zone, Operation::expose);
    if (shown.window == nullptr || !can_be_done(*shown.window)) return;
    const std::string words = late_work_words(facts_.plan.zones[zone], Operation::expose);
    add({.from = {shown.window->opens, shown.at("opens")},
         .where = facts_.job.zones[zone].name,
         .what = words + " opens",
         .work = words,
         .until = {shown.window->closes, shown.at("closes")}});
  }

  void saw(std::size_t zone) {
    const auto sawing = sawing_of(facts_.plan.cuts, facts_.plan.crew, facts_.job, zone);
    if (!sawing) return;
    const std::string name = facts_.job.zones[zone].name;
    const std::string json = pointer("/zones", zone, "joints") + "/sawing/";
    if (!sawing->can_be_in_time) {
      add({.from = {sawing->due, json + "due"},
           .where = name,
           .what = "cracks likely, " + instead_of_saw_words(facts_, zone)});
      return;
    }
    const bool late = sawing->late_min > 0;
    add({.from = {sawing->starts, json + "starts"},
         .where = name,
         .what = fmt::format("start the {}{}", saw_words(sawing->kind, facts_.job),
                             late ? ", too late" : ""),
         .work = late ? std::string() : saw_words(sawing->kind),
         .until = late ? Told() : Told{sawing->due, json + "due"},
         .spare = late ? 0 : spare_start});
    add({.from = {sawing->due, json + "due"},
         .where = name,
         .what = late ? "earliest cut must be in, and nobody is free to saw"
                      : "earliest cut must be in",
         .spare = late ? 0 : spare_due});
  }

  const PlannedPour& facts_;
  std::vector<Event> events_;
};

}  // namespace

View agenda_view(const PlannedPour& facts) { return Agenda(facts).view(); }

}  // namespace slabtide
