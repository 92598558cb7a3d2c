#include "page_map.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "job/model/wording.h"
#include "map_choices.h"
#include "map_ground.h"
#include "map_hour.h"
#include "map_layer.h"
#include "plan_view.h"
#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"
#include "report/markup/svg.h"
#include "report/markup/table_markup.h"

namespace slabtide {

namespace {

std::string capital(std::string words) {
  words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
  return words;
}

std::string heading_of(const MapChoice& choice) { return capital(choice.words); }

class PageMap {
 public:
  explicit PageMap(const PlannedPour& facts)
      : facts_(facts),
        view_(facts.job),
        ground_(facts.job, view_),
        zones_(render_zones(facts, view_)),
        choices_(map_choices(facts)),
        hours_(quarter_hours(choices_, facts)) {}

  std::string section() const {
    Element section("section");
    section.set("class", "figures map").set("id", "map").set("aria-labelledby", "map-title");
    section.add(Element("h2").set("id", "map-title").text("Where it is ready first"));
    section.add_markup(ground_.definitions()).add(controls());
    return section.add(figure()).str();
  }

 private:
  /// Selects the operation and the hour; hidden until the script runs.
  Element controls() const {
    Element set("fieldset");
    set.set("class", "map-choice").add(Element("legend").text("Show the map for"));
    for (const MapChoice& choice : choices_) {
      Element input("input");
      input.set("type", "radio").set("name", "map-choice").set("value", choice.id);
      if (&choice == &choices_.front()) input.mark("checked");
      Element label("label");
      set.add(label.add(input).add(Element("span").text(choice.words)));
    }
    Element controls("div");
    return controls.set("class", "map-controls").mark("hidden").add(set);
  }

  Element figure() const {
    const StillHour still{choices_.front(), shown_first()};
    std::vector<TimeLayer> layers;
    for (const MapChoice& choice : choices_) {
      const bool shown = &choice == &choices_.front();
      layers.push_back(time_layer(choice, shown, zones_, ground_, view_, facts_));
    }
    Element picture("div");
    picture.set("class", "map-picture")
        .add(hour_picture(hours_, still, layers, zones_, view_, facts_))
        .add(ground_.key());
    picture.add(steps()).add(slider()).add(key());
    Element says("p");
    says.set("id", "map-says").set("aria-live", "polite").text(hour_words(hours_, still, facts_));
    Element caption("figcaption");
    caption.add(says);
    for (const MapChoice& choice : choices_) caption.add(times(choice));
    Element figure("figure");
    return figure.set("class", "map-figure").add(picture).add(caption);
  }

  /// What the map tells of a choice whatever the hour.
  Element times(const MapChoice& choice) const {
    Element all("div");
    all.set("class", "map-times").set("data-choice", choice.id);
    all.set("data-words", choice.words).set("data-times", times_for_script(choice, hours_));
    all.add(Element("h3").text(heading_of(choice)));
    all.add(Element("p").text(caption(choice, TimeScale(choice, facts_))));
    return all.add(table(choice));
  }

  std::string caption(const MapChoice& choice, const TimeScale& scale) const {
    if (scale.empty()) return "Not ready anywhere before the forecast ends.";
    const Job& job = facts_.job;
    std::string words =
        fmt::format("First ready {}, last {}.", day_clock(facts_.run.at(scale.first_s()), job),
                    day_clock(facts_.run.at(scale.last_s()), job));
    if (!scale.levels_s().empty()) {
      words +=
          fmt::format(" On the map a dashed line every {:.0f} minutes.", scale.level_step_min());
    }
    words += never_words(choice);
    words += " Arrows: the way to work.";
    if (choice.operation) return words;
    for (const ZonePlan& zone : facts_.plan.zones) {
      if (!zone.working_order.empty()) {
        words += fmt::format(" {}: {}.", capital(zone.name), zone.working_order);
      }
    }
    return words;
  }

  /// How much of the concrete that the choice is for is never ready; empty for nothing.
  std::string never_words(const MapChoice& choice) const {
    double all_m2 = 0.0;
    double never_m2 = 0.0;
    for (std::size_t zone = 0; zone < choice.zones.size(); ++zone) {
      for (std::size_t i = 0; i < choice.zones[zone].size(); ++i) {
        const MapCell& cell = choice.zones[zone][i];
        const double area_m2 = facts_.run.zones[zone].cells[i].cell.area_m2;
        if (cell.works) all_m2 += area_m2;
        if (cell.works && !cell.opens_s) never_m2 += area_m2;
      }
    }
    if (never_m2 == 0.0) return {};
    return fmt::format(" {} of it is not ready before the forecast ends.",
                       percent_words(never_m2 / all_m2));
  }

  /// The times in the picture, part by part.
  Element table(const MapChoice& choice) const {
    Element body("tbody");
    for (const ShownPart& part : all_parts(facts_)) {
      if (const auto row = table_row(choice, part)) body.add(*row);
    }
    Element table("table");
    table.add(table_head({"where", "first ready", "all over", "until"})).add(body);
    Element scroller("div");
    scroller.set("class", "scroller").set("tabindex", "0").set("role", "group");
    scroller.set("aria-label", fmt::format("Times: {}", choice.words)).add(table);
    Element details("details");
    details.add(Element("summary").text(fmt::format("The times as a table: {}", choice.words)));
    return details.add(scroller);
  }

  std::optional<Element> table_row(const MapChoice& choice, const ShownPart& part) const {
    const auto operation = operation_on(choice, part.finish);
    if (!operation) return std::nullopt;
    Element row("tr");
    row.add(name_head(name_of(choice, part, *operation)));
    if (*operation == Operation::saw_dry || *operation == Operation::saw_wet) {
      return add_saw(row, part, *operation);
    }
    const ShownWindow shown = window_of(part, *operation);
    if (shown.window == nullptr) return std::nullopt;
    const OperationWindow& window = *shown.window;
    row.add(markup_cell(page_time(shown.at("opens"), window.opens, facts_.job)));
    row.add(markup_cell(page_time(shown.at("open_all_over"), window.open_all_over, facts_.job)));
    return row.add(markup_cell(page_time(shown.at("closes"), window.closes, facts_.job)));
  }

  /// A saw's window is for the whole zone, so it is shown once, in the row of the first part.
  std::optional<Element> add_saw(Element& row, const ShownPart& part, Operation saw) const {
    const ZonePlan& zone = facts_.plan.zones[part.zone];
    const bool is_first = parts_of(facts_, part.zone).front().plan == part.plan;
    const std::size_t which = saw == Operation::saw_dry ? 0 : 1;
    if (!is_first || which >= zone.saws.size()) return std::nullopt;
    const SawPlan& plan = zone.saws[which];
    const std::string json = pointer(pointer("/zones", part.zone, "saw_windows"), which);
    row.add(markup_cell(page_time(json + "/opens", plan.opens, facts_.job)));
    row.add(markup_cell(page_time(json + "/open_all_over", plan.open_all_over, facts_.job)));
    return row.add(markup_cell(page_time(json + "/latest", plan.latest, facts_.job)));
  }

  std::string name_of(const MapChoice& choice, const ShownPart& part, Operation operation) const {
    const std::string& zone = facts_.job.zones[part.zone].name;
    const bool saw = operation == Operation::saw_dry || operation == Operation::saw_wet;
    std::string name = saw ? zone : place_words(part, facts_.job);
    const std::string label = ground_.label_of(part.zone);
    if (label != zone) name = fmt::format("{} {}", label, name);
    return choice.operation ? name : fmt::format("{} ({})", name, operation_words(operation));
  }

  Element slider() const {
    Element slider("input");
    slider.set("type", "range").set("id", "map-hour").set("min", "0").set("step", "1");
    slider.set("max", std::to_string(hours_.count - 1)).set("value", std::to_string(shown_first()));
    return slider.mark("hidden");
  }

  /// The hour, between two buttons that move it by a quarter hour once the script runs.
  Element steps() const {
    const auto button = [](const char* step, const char* words) {
      Element made("button");
      made.set("type", "button").set("data-step", step).mark("hidden").text(words);
      return made;
    };
    Element label("label");
    label.set("for", "map-hour").text("Hour ");
    Element clock("output");
    clock.set("id", "map-clock").set("for", "map-hour");
    label.add(clock.text(quarter_words(hours_, shown_first(), facts_)));
    Element steps("div");
    steps.set("class", "map-steps").add(button("-1", "− 15 min")).add(label);
    return steps.add(button("1", "+ 15 min"));
  }

  /// The quarter hour in the middle of what the map shows when the page opens.
  std::size_t shown_first() const {
    const TimeScale scale(choices_.front(), facts_);
    if (scale.empty()) return 0;
    const double middle_s = (scale.first_s() + scale.last_s()) / 2.0;
    const double quarters = (middle_s - hours_.start_s) / QuarterHours::step_s;
    const auto nearest = static_cast<std::size_t>(std::lround(std::max(0.0, quarters)));
    return std::min(hours_.count - 1, nearest);
  }

  static Element key() {
    struct Sign {
      const char* state;
      const char* words;
    };
    Element list("ul");
    list.set("class", "map-key");
    for (const Sign& sign :
         {Sign{"soon", "not yet"}, Sign{"ready", "ready"}, Sign{"stiff", "too late"},
          Sign{"wait", "not placed"}, Sign{"idle", "not done here"}, Sign{"in-shade", "shade"}}) {
      Element swatch("svg");
      swatch.set("viewBox", "0 0 32 32").set("aria-hidden", "true");
      swatch.add(Element("path").set("class", sign.state).set("d", "M1 1h30v30h-30z"));
      list.add(Element("li").add(swatch).text(sign.words));
    }
    return list;
  }

  const PlannedPour& facts_;
  PlanView view_;
  MapGround ground_;
  std::vector<ZoneDrawing> zones_;
  std::vector<MapChoice> choices_;
  QuarterHours hours_;
};

}  // namespace

std::string page_map(const PlannedPour& facts) { return PageMap(facts).section(); }

}  // namespace slabtide
