#include "page_bands.h"

#include <algorithm>

#include <fmt/format.h>

#include "job/geometry/placing_sequence.h"
#include "page_lanes.h"
#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"

namespace slabtide {

namespace {

constexpr double strip_height = 9.0;
constexpr double strip_gap = 4.0;
/// Sun and shade are drawn at this interval.
constexpr double sun_step_s = 900.0;

/// "first edge 10:58 to 12:03, stamp 11:38 to 12:34", for those who cannot see the picture.
std::string bands_words(const std::vector<Band>& bands, const Job& job) {
  std::string words;
  for (const Band& one : bands) {
    words +=
        fmt::format("{}{} {}", words.empty() ? "" : ", ", one.name, day_clock(one.from.at, job));
    if (one.until) words += fmt::format(" to {}", day_clock(one.until->at, job));
  }
  return words;
}

std::optional<Band> window_band(const ShownWindow& shown, std::string name, std::string style) {
  const OperationWindow& window = *shown.window;
  if (!window.opens || (window.closes && !can_be_done(window))) return std::nullopt;
  Band band;
  band.name = std::move(name);
  band.style = std::move(style);
  band.from = {*window.opens, shown.at("opens")};
  band.all_over = window.open_all_over;
  if (window.closes) band.until = PointedTime{*window.closes, shown.at("closes")};
  band.gone = window.closed_all_over;
  return band;
}

std::vector<Band> part_bands(const ShownPart& part) {
  std::vector<Band> bands;
  for (const Operation operation : operations_of(part.finish)) {
    const ShownWindow shown = window_of(part, operation);
    if (shown.window == nullptr) continue;
    auto band = window_band(shown, std::string(operation_words(operation)),
                            fmt::format("op-{}", operation_id(operation)));
    if (!band) continue;
    band->main = operation == main_operation(part.finish);
    bands.push_back(std::move(*band));
  }
  return bands;
}

/// Fraction of the part's area that is in the sun, through the day.
std::vector<SharePoint> sun_of(const ShownPart& part, const DayAxis& axis, const PourRun& run) {
  const ZoneRun& zone = run.zones[part.zone];
  const TimeGrid& grid = run.weather.grid;
  std::vector<SharePoint> points;
  const auto every = std::max<std::size_t>(1, static_cast<std::size_t>(sun_step_s / grid.step_s));
  for (std::size_t k = 0; k < grid.count; k += every) {
    const UtcTime at = run.at(static_cast<double>(k) * grid.step_s);
    if (!axis.holds(at)) continue;
    double area = 0.0;
    double sunlit = 0.0;
    for (const std::size_t index : part.plan->cells) {
      const CellRun& cell = zone.cells[index];
      area += cell.cell.area_m2;
      sunlit += cell.cell.area_m2 * run.exposures[cell.exposure].sunlit_fraction[k];
    }
    points.push_back({at, area > 0.0 ? sunlit / area : 0.0});
  }
  return points;
}

class Bands {
 public:
  explicit Bands(const PlannedPour& facts) : facts_(facts), axis_(day_axis(facts)) {}

  std::string markup() const {
    Element inner("div");
    inner.set("class", "day").set("data-from", iso(axis_.from)).set("data-to", iso(axis_.to));
    inner.add(lane_definitions(axis_, facts_));
    for (const std::size_t zone : zones_in_order(facts_.job)) add_zone(inner, zone);
    add_trucks(inner);
    add_crew(inner);
    inner.add(Element("div")
                  .set("class", "now")
                  .set("aria-hidden", "true")
                  .mark("hidden")
                  .add(Element("span")));
    return Element("div")
        .set("class", "scroller")
        .set("role", "region")
        .set("aria-label", "The day as bands, time across")
        .set("tabindex", "0")
        .add(inner)
        .str();
  }

 private:
  std::string iso(UtcTime time) const { return iso8601_minute(time, facts_.job.site.time_zone); }

  /// A heading with the clock below it.
  static void add_heading(Element& inner, const std::string& name, const std::string& about) {
    inner.add(Element("h3").text(name).add_markup(" ").add(Element("small").text(about)));
    inner.add(clock_drawing());
  }

  void add_zone(Element& inner, std::size_t zone) const {
    const ZonePlan& plan = facts_.plan.zones[zone];
    add_heading(inner, plan.name, finish_words(facts_.job.zones[zone].finish));
    for (const ShownPart& part : parts_of(facts_, zone)) add_part(inner, part);
    // Forms, saw and wash-off are for all of the zone: under a part they would read as the part's.
    const bool in_parts = parts_of(facts_, zone).size() > 1;
    add_lanes(inner, plan.name, zone_bands(zone), in_parts ? "all of it" : "", {});
  }

  void add_part(Element& inner, const ShownPart& part) const {
    const bool whole = part.plan->name.empty();
    add_lanes(inner, place_words(part, facts_.job), part_bands(part),
              whole ? std::string() : part.title, sun_of(part, axis_, facts_.run));
  }

  /// Lanes one below another, with a title and a strip of sun if these are given.
  void add_lanes(Element& inner, const std::string& place, const std::vector<Band>& bands,
                 const std::string& title, const std::vector<SharePoint>& sun) const {
    if (bands.empty() && sun.empty()) return;
    if (!title.empty()) inner.add(Element("p").set("class", "part-name").text(title));
    const double lanes = lane_height * static_cast<double>(bands.size());
    const double strip = sun.empty() ? 0.0 : strip_height + strip_gap;
    Element drawing =
        lane_drawing(lanes + strip, fmt::format("{}: {}", place, bands_words(bands, facts_.job)));
    if (!sun.empty()) drawing.add(sun_strip(sun, axis_, 2.0, strip_height));
    double top = strip;
    for (const Band& one : bands) {
      drawing.add(band(one, axis_, top, facts_.job));
      top += lane_height;
    }
    inner.add(drawing);
  }

  /// Form stripping, the saws and a wash-off, which are for the zone as a whole.
  std::vector<Band> zone_bands(std::size_t zone) const {
    const ZonePlan& plan = facts_.plan.zones[zone];
    const std::string json = pointer("/zones", zone);
    std::vector<Band> bands;
    for (std::size_t i = 0; i < plan.faces.size(); ++i) {
      const ShownWindow strip{&plan.faces[i].strip, pointer(json + "/faces", i, "windows/0")};
      auto band = window_band(strip, fmt::format("strip {}", plan.faces[i].name), "op-strip");
      if (band) bands.push_back(std::move(*band));
    }
    for (std::size_t i = 0; i < plan.saws.size(); ++i) {
      auto band = saw_band(plan.saws[i], pointer(json + "/saw_windows", i));
      if (band) bands.push_back(std::move(*band));
    }
    const ShownWindow expose = late_window_of(facts_, zone, Operation::expose);
    if (expose.window != nullptr && expose.window->opens && axis_.holds(*expose.window->opens)) {
      auto band = window_band(expose, late_work_words(plan, Operation::expose), "op-expose");
      if (band) bands.push_back(std::move(*band));
    }
    return bands;
  }

  std::optional<Band> saw_band(const SawPlan& saw, const std::string& json) const {
    const bool counts = saw.on_hand || facts_.job.pour.saws.empty();
    if (!counts || !saw.opens || saw.too_late || !axis_.holds(*saw.opens)) return std::nullopt;
    Band band;
    band.name = saw_words(saw.kind);
    band.style = "op-saw";
    band.from = {*saw.opens, json + "/opens"};
    band.all_over = saw.open_all_over;
    if (saw.latest) band.until = PointedTime{*saw.latest, json + "/latest"};
    return band;
  }

  void add_trucks(Element& inner) const {
    const std::vector<Load>& loads = facts_.run.order.loads;
    std::vector<Band> bands;
    for (std::size_t i = 0; i < loads.size(); ++i) {
      Band band;
      band.name = fmt::format("load {}", loads[i].number);
      band.style = "op-truck";
      band.from = {loads[i].arrives, pointer("/trucks", i, "arrives")};
      band.until = PointedTime{loads[i].empty, pointer("/trucks", i, "empty")};
      bands.push_back(std::move(band));
    }
    add_heading(inner, "Trucks", "on site until empty");
    add_lanes(inner, "trucks", bands, {}, {});
  }

  void add_crew(Element& inner) const {
    const CrewPlan& crew = facts_.plan.crew;
    if (crew.people.empty()) return;
    add_heading(inner, "Crew", "on site, and at work");
    inner.add(crew_key());
    for (const CrewMember& member : crew.people) {
      if (!member.visits.empty()) add_member(inner, member);
    }
  }

  /// What the blocks' colours mean: each kind of task there is, once.
  Element crew_key() const {
    const CrewPlan& crew = facts_.plan.crew;
    std::vector<TaskKind> kinds;
    for (const auto& task : crew.tasks) {
      if (std::find(kinds.begin(), kinds.end(), task.kind) == kinds.end()) {
        kinds.push_back(task.kind);
      }
    }
    Element list("ul");
    list.set("class", "crew-key").set("aria-label", "Key to the crew's blocks");
    for (const TaskKind kind : kinds) {
      Element swatch("svg");
      swatch.set("viewBox", "0 0 20 14").set("aria-hidden", "true");
      swatch.add(Element("rect")
                     .set("class", fmt::format("block op-{}", task_kind_id(kind)))
                     .set("width", 20.0)
                     .set("height", 14.0));
      list.add(Element("li").add(swatch).text(" ").text(task_kind_words(kind)));
    }
    return list;
  }

  void add_member(Element& inner, const CrewMember& member) const {
    const CrewPlan& crew = facts_.plan.crew;
    const CrewVisit& first = member.visits.front();
    inner.add(Element("p").set("class", "part-name").text(member.name));
    Element drawing = lane_drawing(lane_height, fmt::format("{}: on site {} to {}", member.name,
                                                            day_clock(first.arrives, facts_.job),
                                                            day_clock(first.leaves, facts_.job)));
    for (const CrewVisit& visit : member.visits) {
      if (!axis_.holds(visit.arrives)) continue;
      drawing.add(block("stay", visit.arrives, visit.leaves, {}, axis_, 0.0));
      for (const std::size_t task : visit.tasks) {
        const TaskKind kind = crew.tasks[task].kind;
        drawing.add(block(fmt::format("op-{}", task_kind_id(kind)), crew.starts[task],
                          crew.ends[task], std::string(task_kind_words(kind)), axis_, 0.0));
      }
    }
    inner.add(drawing);
  }

  const PlannedPour& facts_;
  DayAxis axis_;
};

}  // namespace

std::string page_bands(const PlannedPour& facts) { return Bands(facts).markup(); }

}  // namespace slabtide
