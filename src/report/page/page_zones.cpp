#include "page_zones.h"

#include <fmt/format.h>

#include "job/geometry/placing_sequence.h"
#include "job/model/wording.h"
#include "report/markup/page_parts.h"
#include "report/markup/page_views.h"
#include "report/words/part_table.h"
#include "report/words/window_notes.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

View window_view(const ShownWindow& shown, std::string_view words, const Job& job) {
  View view;
  view.put("words", words);
  if (shown.window->is_never()) return view.flag("never", true).flag("comes", false);
  View times;
  times.put("opens", time_view(shown.at("opens"), shown.window->opens, job))
      .put("all_over", time_view(shown.at("open_all_over"), shown.window->open_all_over, job))
      .put("closes", time_view(shown.at("closes"), shown.window->closes, job));
  return view.flag("never", false).put("comes", std::move(times));
}

/// When the window opens and closes on eight days out of ten; nothing if that is not known.
std::vector<View> sure_views(const ShownWindow& shown, const Job& job) {
  if (!shown.window->opens_band || shown.window->is_never()) return {};
  View view;
  view.put("opens_band", band_views(shown.at("opens_band"), shown.window->opens_band, job))
      .put("closes_band", band_views(shown.at("closes_band"), shown.window->closes_band, job));
  return {view};
}

std::vector<View> window_views(const ShownPart& part, const Job& job) {
  std::vector<View> views;
  for (const Operation operation : operations_of(part.finish)) {
    const ShownWindow shown = window_of(part, operation);
    if (shown.window == nullptr) continue;
    View view = window_view(shown, operation_words(operation), job);
    const bool main = operation == main_operation(part.finish);
    view.flag("main", main);
    if (main) view.put("sure", sure_views(shown, job));
    views.push_back(std::move(view));
  }
  return views;
}

std::vector<View> set_views(const ShownPart& part, const Job& job) {
  const PartPlan& plan = *part.plan;
  const auto row = [&](std::string_view words, const char* key, const std::optional<UtcTime>& at) {
    return time_view(part.json + "/" + key, at, job).put("row", words);
  };
  return {row("sheen off", "sheen_gone", plan.sheen_gone),
          row("initial set", "initial_set", plan.initial_set),
          row("final set", "final_set", plan.final_set)};
}

std::vector<View> note_views(const ShownPart& part) {
  std::vector<View> views;
  for (const std::string& note : window_notes(*part.plan))
    views.push_back(View().put("note", note));
  return views;
}

View part_view(const ShownPart& part, const Job& job) {
  const PartPlan& plan = *part.plan;
  View view;
  view.put("title", part.title)
      .put("windows", window_views(part, job))
      .put("sets", set_views(part, job))
      .put("notes", note_views(part))
      .put("sunlit", figure_view(part.json + "/sunlit_share", plan.sunlit_fraction,
                                 percent_words(plan.sunlit_fraction)))
      .put("drying",
           figure_view(part.json + "/peak_evaporation_kg_m2_h", plan.peak_evaporation_kg_m2_h,
                       evaporation_words(plan.peak_evaporation_kg_m2_h, job.units)))
      .put("drying_at",
           time_view(part.json + "/peak_evaporation_at", plan.peak_evaporation_at, job))
      .put("hottest", figure_view(part.json + "/surface_peak_c", plan.surface_peak_c,
                                  temperature_words(plan.surface_peak_c, job.units)))
      .put("hottest_at", time_view(part.json + "/surface_peak_at", plan.surface_peak_at, job));
  return view;
}

std::vector<View> face_views(const ZonePlan& plan, const std::string& json, const Job& job) {
  std::vector<View> views;
  for (std::size_t i = 0; i < plan.faces.size(); ++i) {
    const FacePlan& face = plan.faces[i];
    const ShownWindow strip{&face.strip, pointer(json + "/faces", i, "windows/0")};
    const std::string looks =
        face.facing_deg ? fmt::format(", facing {}", compass_words(*face.facing_deg)) : "";
    View view = window_view(strip, face.name + looks, job);
    views.push_back(
        view.put("opens_band", band_views(strip.at("opens_band"), face.strip.opens_band, job)));
  }
  return views;
}

std::vector<View> saw_views(const ZonePlan& plan, const std::string& json, const Job& job) {
  std::vector<View> views;
  for (std::size_t i = 0; i < plan.saws.size(); ++i) {
    const SawPlan& saw = plan.saws[i];
    if (!saw.on_hand && !job.pour.saws.empty()) continue;
    const std::string at = pointer(json + "/saw_windows", i) + "/";
    View view;
    view.put("words", saw_words(saw.kind))
        .put("opens", time_view(at + "opens", saw.opens, job))
        .put("all_over", time_view(at + "open_all_over", saw.open_all_over, job))
        .put("latest", time_view(at + "latest", saw.latest, job))
        .put("depth", exact_figure_view(at + "depth_m", saw.depth_m,
                                        thickness_words(saw.depth_m, job.units)))
        .put("opens_band", band_views(at + "opens_band", saw.opens_band, job))
        .put("latest_band", band_views(at + "latest_band", saw.latest_band, job))
        .flag("too_late", saw.too_late)
        .flag("not_on_hand", !saw.on_hand);
    views.push_back(std::move(view));
  }
  return views;
}

/// Walking, washing and sealing: from when all of the zone is ready for them.
std::vector<View> later_views(const PlannedPour& facts, std::size_t zone) {
  const Job& job = facts.job;
  std::vector<View> views;
  for (const Operation operation :
       {Operation::walk, Operation::expose, Operation::wash, Operation::seal}) {
    const ShownWindow shown = late_window_of(facts, zone, operation);
    if (shown.window == nullptr) continue;
    View view = time_view(shown.at("open_all_over"), shown.window->open_all_over, job);
    const bool never = shown.window->is_never();
    if (shown.window->closes && !never) {
      view.put("by", time_view(shown.at("closes"), shown.window->closes, job));
    }
    views.push_back(view.put("later", late_work_words(facts.plan.zones[zone], operation))
                        .put("why_beyond", later_words(*shown.window, job))
                        .flag("beyond", never || !shown.window->open_all_over));
  }
  return views;
}

/// A window of a part as a span of times, with the part's name if the zone has several.
View part_span_view(const ShownWindow& shown, const std::string& part, const Job& job) {
  View view = window_view(shown, part, job);
  view.flag("apart", !part.empty());
  if (shown.window->opens && shown.window->closes) {
    SpanViews span = span_views({*shown.window->opens, shown.at("opens")},
                                {*shown.window->closes, shown.at("closes")}, job);
    view.put("comes", View().put("opens", std::move(span.from)).put("closes", std::move(span.to)));
  }
  return view;
}

/// The work the zone's finish is named for, on each part of the zone: one that opens after another
/// has closed must not be missed.
std::vector<View> main_work_views(const PlannedPour& facts, std::size_t zone) {
  const Operation main = main_operation(facts.job.zones[zone].finish);
  std::vector<View> spans;
  for (const ShownPart& part : parts_of(facts, zone)) {
    const ShownWindow shown = window_of(part, main);
    if (shown.window == nullptr) continue;
    const bool more = !spans.empty();
    spans.push_back(part_span_view(shown, part.plan->name, facts.job).flag("more", more));
  }
  if (spans.empty()) return {};
  View view;
  return {view.put("work", operation_words(main)).put("spans", std::move(spans))};
}

View placed_view(const ZonePlan& plan, const std::string& json, const Job& job) {
  SpanViews span = span_views({plan.placed.start, json + "/placed/start"},
                              {plan.placed.end, json + "/placed/end"}, job);
  View view;
  return view.put("start", std::move(span.from)).put("end", std::move(span.to));
}

View zone_view(const PlannedPour& facts, std::size_t zone) {
  const ZonePlan& plan = facts.plan.zones[zone];
  const Zone& described = facts.job.zones[zone];
  const Job& job = facts.job;
  const std::string json = pointer("/zones", zone);
  std::vector<View> parts;
  for (const ShownPart& part : parts_of(facts, zone)) parts.push_back(part_view(part, job));
  const ShownPart whole = whole_of(facts, zone);
  View view;
  view.put("name", plan.name)
      .put("number", fmt::format("{}", zone))
      .put("finish", finish_words(described.finish))
      .put("area",
           figure_view(json + "/area_m2", plan.area_m2, area_words(plan.area_m2, job.units)))
      .put("volume", figure_view(json + "/volume_m3", plan.volume_m3,
                                 volume_words(plan.volume_m3, job.units)))
      .put("thick", exact_figure_view(json + "/thickness_m", described.thickness_m,
                                      thickness_words(described.thickness_m, job.units)))
      .put("placed", placed_view(plan, json, job))
      .put("parts", std::move(parts))
      .put("main_work", main_work_views(facts, zone))
      .put("faces", face_views(plan, json, job))
      .put("saws", saw_views(plan, json, job))
      .put("later_works", later_views(facts, zone));
  if (!plan.working_order.empty()) {
    view.put("working_order",
             View().put("order", plan.working_order).put("json", json + "/working_order"));
  }
  return view;
}

}  // namespace

View zones_view(const PlannedPour& facts) {
  std::vector<View> zones;
  for (const std::size_t zone : zones_in_order(facts.job)) zones.push_back(zone_view(facts, zone));
  View view;
  return view.put("zones", std::move(zones));
}

}  // namespace slabtide
