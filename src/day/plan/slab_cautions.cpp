#include "slab_cautions.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "day/pour/load_dose.h"
#include "day/windows/part_columns.h"
#include "job/model/wording.h"
#include "shelter.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// A load that is emptied later than so many times the limit agreed is taken to be lost (ours).
constexpr double lost_load_limits = 2.0;

/// True if any concrete of the zone has such an admixture; a load's own may reach any zone.
bool has_admixture(const Job& job, const Zone& zone, AdmixtureKind kind) {
  const auto of_kind = [kind](const Admixture& one) { return one.kind == kind; };
  const auto& own = zone.admixtures ? *zone.admixtures : job.mix.admixtures;
  return std::any_of(own.begin(), own.end(), of_kind) ||
         std::any_of(job.order.loads.begin(), job.order.loads.end(), [&](const LoadNote& load) {
           return std::any_of(load.admixtures.begin(), load.admixtures.end(), of_kind);
         });
}

bool is_accelerated(const Job& job, const Zone& zone) {
  return has_admixture(job, zone, AdmixtureKind::accelerator_chloride) ||
         has_admixture(job, zone, AdmixtureKind::accelerator_non_chloride);
}

/// Whether the finish itself is lost without this work; an edge or a joint can be cut or ground.
bool makes_the_finish(Operation operation) {
  return operation != Operation::first_edge && operation != Operation::detail_edge &&
         operation != Operation::tooled_joint;
}

/// Why there is no time for the work, and what would make one.
std::string no_window_words(const Watch& watch, std::size_t zone_index, const PartPlan& part,
                            const OperationWindow& window) {
  const ZoneRun& zone = watch.run.zones[zone_index];
  const std::string_view slower =
      is_accelerated(watch.job, watch.job.zones[zone_index]) ? "no accelerator" : "a retarder";
  const ResistanceWindow& takes = watch.practice.window(window.operation);
  const auto columns = columns_of(zone, part.cells);
  if (stiff_when_placed(columns, watch.run, takes, watch.practice.cells)) {
    return fmt::format(
        "no good time for the {}: too stiff for it by the time it is placed, at {}. "
        "A shorter haul from the plant, cooler concrete, or {}",
        operation_words(window.operation), watch.pour_clock(*window.opens), slower);
  }
  return fmt::format(
      "no good time for the {}: stiff by {}, and still bleeding until {}. Less bleed water "
      "in the mix, {}, or a warmer and drier hour",
      operation_words(window.operation), watch.pour_clock(window.stiff_by.value_or(*window.closes)),
      watch.pour_clock(*window.opens), slower);
}

/// What the caution is about, so that it can be told with others of its kind.
void call_it(Watch& watch, Operation operation) {
  watch.found.back().what = operation_words(operation);
}

/// What slows the set of a zone: no accelerator where it has one, shade where that makes sense.
std::string slowed_with(const Watch& watch, std::size_t zone_index) {
  const bool faster = is_accelerated(watch.job, watch.job.zones[zone_index]);
  const bool shade =
      why_no_shade(watch.zones[zone_index], watch.run, watch.practice.shelter, watch.job.units)
          .empty();
  return fmt::format("{}{}", faster ? "less accelerator" : "a retarder", shade ? " or shade" : "");
}

void watch_windows_of(Watch& watch, std::size_t zone_index, const PartPlan& part) {
  const ZonePlan& zone = watch.zones[zone_index];
  const std::string where = part.name.empty() ? zone.name : zone.name + ", " + part.name;
  for (const OperationWindow& window : part.windows) {
    if (window.operation >= Operation::saw_dry || !window.opens || !window.closes) continue;
    const double minutes = *window.minutes();
    if (window.is_never()) {
      watch.add("no_window", "no good time",
                makes_the_finish(window.operation) ? CautionLevel::stop : CautionLevel::caution,
                where, window.opens, no_window_words(watch, zone_index, part, window),
                "worked out from this plan");
      call_it(watch, window.operation);
    } else if (minutes < watch.practice.limits.short_window_min) {
      watch.add("short_window", "short window", CautionLevel::caution, where, window.opens,
                fmt::format("only {:.0f} min for the {} from {}: have everybody there, work in "
                            "small areas, or slow it with {}",
                            std::round(minutes), operation_words(window.operation),
                            watch.pour_clock(*window.opens), slowed_with(watch, zone_index)),
                "worked out from this plan");
      call_it(watch, window.operation);
      watch.found.back().window_min = minutes;
    }
  }
}

/// A wash-off that comes too late, or out of hours.
void watch_wash_off_hours(Watch& watch, const ZonePlan& zone) {
  const OperationWindow* window = zone.late_window(Operation::expose);
  if (window == nullptr || !window->opens || window->note.empty()) return;
  const bool never = window->is_never();
  watch.add(never ? "no_window" : "wash_off_hours", never ? "no good time" : "wash-off after hours",
            never ? CautionLevel::stop : CautionLevel::caution, zone.name, window->opens,
            fmt::format("{}{}", never ? "no good time for the wash-off, " : "the wash-off ",
                        window->note),
            "worked out from this plan");
}

/// The plan gives each zone what it asks for, which no truck can.
void watch_load_dose(Watch& watch, const Load& load) {
  if (!is_dosed_in_part(watch.job, load)) return;
  watch.add("mixed_load", "two doses in one truck", CautionLevel::caution, {}, load.arrives,
            dosed_in_part_words(watch.job, load), "common practice, no source");
}

void watch_truck_wait(Watch& watch, const Load& load) {
  if (!load.waits()) return;
  watch.add(
      "truck_waits", "truck waits on site", CautionLevel::note, {}, load.arrives,
      fmt::format("load {} waits {} until the one before is empty at {}: space the trucks "
                  "further apart, or place with more hands; most plants charge for waiting",
                  load.number, duration_words(load.waits_min()), watch.pour_clock(load.starts)),
      "common practice, no source");
}

/// The first work of a part that water stands in the way of, and that which it still rises under.
void watch_bleed_water_on(Watch& watch, const ZonePlan& zone, const PartPlan& part) {
  const std::string where = part.name.empty() ? zone.name : zone.name + ", " + part.name;
  const OperationWindow* first = nullptr;
  const OperationWindow* wet =
      nullptr;  // the last of the finish that water stands on until it is too stiff
  for (const OperationWindow& window : part.windows) {
    // Of a part that hardly opens before the forecast ends, no hour can be told.
    const bool opens = window.opens && !window.is_never();
    if (window.operation >= Operation::saw_dry || !window.water_stands || !opens) continue;
    if (window.still_bleeds) {
      watch.add("bleed_water", "it bleeds while it stiffens", CautionLevel::caution, where,
                window.opens,
                fmt::format("a little water still rises when it is ready for the {} at {}: drag it "
                            "off and do it at once, with no float or trowel after, which would "
                            "trap the rest",
                            operation_words(window.operation), watch.pour_clock(*window.opens)),
                "common practice, no source");
      return;
    }
    if (window.wet_until && makes_the_finish(window.operation)) wet = &window;
    if (first == nullptr || *window.opens < *first->opens) first = &window;
  }
  if (wet != nullptr) {
    watch.add("bleed_water", "water stands until it is too stiff", CautionLevel::caution, where,
              wet->opens,
              fmt::format("water stands on it until {}, and for the {} it is too stiff by {}: drag "
                          "the water off as it rises, or the finish is lost; less of it in the "
                          "mix, or a warmer and drier hour",
                          watch.pour_clock(*wet->wet_until), operation_words(wet->operation),
                          watch.pour_clock(*wet->closes)),
              "ACI 302.1R, from memory");
    return;
  }
  if (first == nullptr) return;
  watch.add("bleed_water", "bleed water", CautionLevel::note, where, first->opens,
            fmt::format("bleed water still stands when it is ready for the {} at {}: drag it off "
                        "first, never work it in or dust it dry with cement",
                        operation_words(first->operation), watch.pour_clock(*first->opens)),
            "ACI 302.1R, from memory");
}

/// The film that is sprayed is the precaution that the lower flag asks for.
bool is_answered(const Watch& watch, bool high) { return watch.job.pour.evaporation_film && !high; }

std::string drying_words(const Watch& watch, const ZonePlan& zone, bool high) {
  const std::string reached =
      fmt::format("evaporation reaches {} about {}",
                  evaporation_words(zone.whole.peak_evaporation_kg_m2_h, watch.job.units),
                  watch.clock(zone.whole.peak_evaporation_at));
  if (high) {
    return fmt::format(
        "{}: take precautions, or the top cracks while plastic. Have {} on hand, finish in small "
        "areas",
        reached, drying_shelter_words(zone, watch.run, watch.practice, watch.job.units));
  }
  if (is_answered(watch, high)) {
    return fmt::format("{}: watch the sheen, and renew the film after each pass", reached);
  }
  return fmt::format("{}: watch the sheen, keep {}an evaporation film on hand", reached,
                     fog_makes_sense(zone, watch.run, watch.practice.limits) ? "a fogger or " : "");
}

}  // namespace

void watch_concrete_temperature(Watch& watch) {
  const WeatherLimits& limits = watch.practice.limits;
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const double discharge_c = watch.run.mix_of(watch.run.zones[i]).discharge_c;
    if (discharge_c <= limits.hot_concrete_c) continue;
    watch.add("hot_concrete", "concrete too hot", CautionLevel::stop, watch.zones[i].name,
              watch.zones[i].placed.start,
              fmt::format("concrete at {} is over the {} limit at discharge: order it cooler "
                          "(chilled water or ice, shaded aggregate) or pour at another hour",
                          watch.temperature(discharge_c), watch.temperature(limits.hot_concrete_c)),
              "ACI 305.1-14, published");
  }
}

void watch_chloride(Watch& watch) {
  for (const Zone& zone : watch.job.zones) {
    if (!has_admixture(watch.job, zone, AdmixtureKind::accelerator_chloride)) continue;
    if (zone.colour != Colour::grey) {
      watch.add("chloride_colour", "calcium chloride in color", CautionLevel::caution, zone.name,
                {},
                "calcium chloride darkens and blotches colored concrete: use a non-chloride "
                "accelerator, or warmer concrete",
                "ACI 212.3R and 302.1R, from memory");
    }
    watch.add("chloride_steel", "calcium chloride and steel",
              zone.tied ? CautionLevel::caution : CautionLevel::note, zone.name, {},
              "calcium chloride rusts mesh, bars and dowels: use a non-chloride accelerator "
              "where there is any steel",
              "ACI 212.3R and 318, from memory");
  }
}

void watch_evaporation(Watch& watch) {
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const PartPlan& part = watch.zones[i].whole;
    const EvaporationFlags& flags = watch.practice.evaporation;
    const double factor =
        watch.run.mix_of(watch.run.zones[i]).hardly_bleeds ? flags.hardly_bleeds_factor : 1.0;
    const double peak = part.peak_evaporation_kg_m2_h;
    if (peak < factor * flags.caution_kg_m2_h) continue;
    const bool high = peak >= factor * flags.precautions_kg_m2_h;
    watch.add(high ? "evaporation_precautions" : "evaporation_caution",
              high ? "very fast drying" : "fast drying",
              is_answered(watch, high) ? CautionLevel::note : CautionLevel::caution,
              watch.zones[i].name, part.peak_evaporation_at,
              drying_words(watch, watch.zones[i], high),
              "FHWA-HRT-05-038; ACI 305, published; the rate itself is good to about 40%");
  }
}

void watch_tops(Watch& watch) {
  for (const ZonePlan& zone : watch.zones) {
    if (zone.whole.early_sheen_at) {
      watch.add("early_sheen", "dry top over wet concrete", CautionLevel::caution, zone.name,
                zone.whole.early_sheen_at,
                fmt::format("the top looks dry from {} while water still rises: it is not ready. "
                            "Closing it now traps bleed water under a crust",
                            watch.clock(*zone.whole.early_sheen_at)),
                "Concrete Construction, published");
    }
    if (zone.whole.crust_at) {
      watch.add("crust", "crust", CautionLevel::caution, zone.name, zone.whole.crust_at,
                fmt::format("about {} the top is stiff over a soft body: stamps tear a crust. "
                            "Have {} on hand",
                            watch.clock(*zone.whole.crust_at),
                            drying_shelter_words(zone, watch.run, watch.practice, watch.job.units)),
                "ours; no published limit");
    }
  }
}

void watch_bleed_water(Watch& watch) {
  for (const ZonePlan& zone : watch.zones) {
    for (const PartPlan* part : {&zone.whole, zone.border ? &*zone.border : nullptr}) {
      if (part != nullptr) watch_bleed_water_on(watch, zone, *part);
    }
  }
}

void watch_windows(Watch& watch) {
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const ZonePlan& zone = watch.zones[i];
    if (zone.parts.empty()) watch_windows_of(watch, i, zone.whole);
    for (const PartPlan& part : zone.parts) watch_windows_of(watch, i, part);
    if (zone.border) watch_windows_of(watch, i, *zone.border);
  }
}

void watch_sealer(Watch& watch) {
  const FinishWork& work = watch.job.finish_work;
  if (watch.job.pour.curing != CuringKind::film || work.sealer != SealerKind::sealer) return;
  for (const Zone& zone : watch.job.zones) {
    if (!is_decorative(zone)) continue;
    watch.add("film_under_sealer", "curing compound under a sealer", CautionLevel::caution,
              zone.name, {},
              "a curing compound keeps a sealer from taking hold: use one whose label allows the "
              "sealer over it, strip it first, or use a cure-and-seal",
              "common practice, no source");
  }
}

void watch_wash_off(Watch& watch) {
  for (std::size_t i = 0; i < watch.zones.size(); ++i) {
    const ZonePlan& zone = watch.zones[i];
    const Zone& drawn = watch.job.zones[i];
    if (zone.is_exposed()) {
      watch.add(
          "wash_water", "caustic wash water", CautionLevel::note, zone.name, {},
          "the wash-off water carries cement paste and burns skin and eyes: gloves, "
          "boots and eye protection; catch it, and keep it out of storm drains, as local codes "
          "say. Cure after the wash-off",
          "common practice, no source");
    }
    if (drawn.finish == Finish::salt || (drawn.border && drawn.border->finish == Finish::salt)) {
      watch.add(
          "wash_water", "salty wash water", CautionLevel::note, zone.name, {},
          "the water that washes out the salt carries salt and cement: keep it out of "
          "storm drains and plants, as local codes say. Where it freezes, a salt finish holds "
          "water and scales",
          "common practice, no source");
    }
    watch_wash_off_hours(watch, zone);
  }
}

void watch_after_plan(Watch& watch) {
  const UtcTime end = watch.run.at(watch.run.weather.grid.end_s());
  // In the order of the tasks, which no name decides.
  std::vector<std::pair<const Task*, std::string>> places;
  for (const Task& task : watch.crew.after_plan) {
    const auto same = [&task](const auto& place) { return place.first->place == task.place; };
    const auto found = std::find_if(places.begin(), places.end(), same);
    if (found == places.end()) {
      places.emplace_back(&task, task_kind_words(task.kind));
    } else {
      found->second += fmt::format(", {}", task_kind_words(task.kind));
    }
  }
  for (const auto& [first, work] : places) {
    watch.add("after_plan", "work after the plan's end", CautionLevel::stop,
              first->part.empty() ? first->zone : first->zone + ", " + first->part, end,
              fmt::format("not ready for this by the plan's end, {}, and so in nobody's day: {}. A "
                          "mix that sets sooner, less retarder, or a warmer day",
                          watch.day_and_clock(end), work),
              "worked out from this plan");
  }
}

void watch_crew(Watch& watch) {
  const CrewPlan& crew = watch.crew;
  if (crew.late.empty()) return;
  const auto late_min = [&](std::size_t task) { return crew.schedule.assignments[task].late_min; };
  const auto lost = std::find_if(crew.late.begin(), crew.late.end(), [&](std::size_t task) {
    return makes_the_finish(crew.tasks[task].kind) && late_min(task) > finish_lost_min;
  });
  const bool is_lost = lost != crew.late.end();
  const std::size_t told = is_lost ? *lost : crew.late.front();
  const Task& task = crew.tasks[told];
  const auto rescue =
      std::find_if(crew.rescues.begin(), crew.rescues.end(),
                   [&task](const ZoneRescue& one) { return one.zone == task.zone; });
  const std::string remedy = is_lost && rescue != crew.rescues.end() ? rescue_words(*rescue)
                             : crew.remedies.empty()
                                 ? std::string("more hands, or less poured in one day")
                                 : remedy_words(crew.remedies.front());
  const std::string text =
      fmt::format("too much for the crew of {}, {}; {}, runs {} late: {}", watch.job.crew.finishers,
                  crew_late_words(crew), task_words(task), duration_words(late_min(told)), remedy);
  watch.add("late_crew", is_lost ? "crew too late for the finish" : "crew too small",
            is_lost ? CautionLevel::stop : CautionLevel::caution, task.zone, crew.starts[told],
            text, "worked out from this plan");
}

void watch_loads(Watch& watch) {
  for (const Load& load : watch.run.order.loads) {
    watch_load_dose(watch, load);
    watch_truck_wait(watch, load);
    if (load.is_short) {
      watch.add("short_load", "short load", CautionLevel::note, {}, load.arrives,
                fmt::format("load {} is only {}: under {} most plants charge a short load",
                            load.number, sold_words(load.sold_m3, watch.job.units),
                            volume_words(watch.job.order.short_load_m3, watch.job.units)),
                "common practice");
      watch.found.back().what = fmt::format("load {}", load.number);
    }
    if (load.over_limit) {
      const double age_min = seconds_between(load.batched, load.empty) / seconds_per_minute;
      const double limit_min = watch.job.order.discharge_limit_min;
      watch.add(
          "discharge_limit", "truck too long on site",
          age_min > lost_load_limits * limit_min ? CautionLevel::stop : CautionLevel::caution, {},
          load.empty,
          fmt::format("load {} is empty {:.0f} min after batching, over the {:.0f} min agreed: "
                      "smaller loads, more hands, or agree on another limit",
                      load.number, age_min, limit_min),
          "ASTM C94 by habit; newer editions leave it to purchaser and producer, published");
      watch.found.back().what = fmt::format("load {}", load.number);
    }
  }
}

}  // namespace slabtide
