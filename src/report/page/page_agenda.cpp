#include "page_agenda.h"

#include <algorithm>
#include <optional>

#include <fmt/format.h>

#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"
#include "slabtide/report/text/text_saw.h"

namespace slabtide {

namespace {

struct Event {
  UtcTime at;
  std::string json;
  std::string words;
};

class Agenda {
 public:
  explicit Agenda(const PlannedPour& facts) : facts_(facts) {
    crew();
    trucks();
    for (const ShownPart& part : all_parts(facts)) work(part);
    for (std::size_t zone = 0; zone < facts.plan.zones.size(); ++zone) {
      faces(zone);
      saw(zone);
    }
    std::stable_sort(events_.begin(), events_.end(),
                     [](const Event& a, const Event& b) { return a.at < b.at; });
  }

  View view() const {
    std::vector<View> events;
    for (const Event& event : events_) {
      events.push_back(time_view(event.json, event.at, facts_.job).put("what", event.words));
    }
    View view;
    return view.put("events", std::move(events));
  }

 private:
  void add(const std::optional<UtcTime>& at, std::string json, std::string words) {
    if (at) events_.push_back({*at, std::move(json), std::move(words)});
  }

  void crew() {
    std::size_t shown = 0;  // the JSON leaves out those who are not needed
    for (const CrewMember& member : facts_.plan.crew.people) {
      if (member.visits.empty()) continue;
      add(member.visits.front().arrives, pointer("/crew", shown, "arrives"),
          member.name + " on site");
      ++shown;
    }
  }

  void trucks() {
    const std::vector<Load>& loads = facts_.run.order.loads;
    for (std::size_t i = 0; i < loads.size(); ++i) {
      add(loads[i].arrives, pointer("/trucks", i, "arrives"),
          fmt::format("load {} on site", loads[i].number));
    }
  }

  void work(const ShownPart& part) {
    const Operation main = main_operation(part.finish);
    const ShownWindow shown = window_of(part, main);
    if (shown.window == nullptr || !can_be_done(*shown.window)) return;
    const std::string where = place_words(part, facts_.job);
    add(shown.window->opens, shown.at("opens"),
        fmt::format("{}: {} opens", where, operation_words(main)));
    add(shown.window->closes, shown.at("closes"),
        fmt::format("{}: last call to {}", where, operation_words(main)));
  }

  void faces(std::size_t zone) {
    const ZonePlan& plan = facts_.plan.zones[zone];
    for (std::size_t i = 0; i < plan.faces.size(); ++i) {
      const std::string json = pointer(pointer("/zones", zone, "faces"), i, "windows/0/");
      const std::string words =
          fmt::format("{}, {}: strip the form", plan.name, plan.faces[i].name);
      if (can_be_done(plan.faces[i].strip)) add(plan.faces[i].strip.opens, json + "opens", words);
    }
  }

  void saw(std::size_t zone) {
    const auto sawing = sawing_of(facts_.plan.cuts, facts_.job, zone);
    if (!sawing) return;
    const std::string name = facts_.job.zones[zone].name;
    const std::string json = pointer("/zones", zone, "joints") + "/sawing/";
    if (!sawing->in_time) {
      add(sawing->due, json + "due",
          fmt::format("{}: cracks likely, {}", name, instead_of_saw_words(facts_, zone)));
      return;
    }
    add(sawing->starts, json + "starts",
        fmt::format("{}: start the {}", name, saw_words(sawing->kind)));
    add(sawing->due, json + "due", fmt::format("{}: first cut must be in", name));
  }

  const PlannedPour& facts_;
  std::vector<Event> events_;
};

}  // namespace

View agenda_view(const PlannedPour& facts) { return Agenda(facts).view(); }

}  // namespace slabtide
