#include "validate.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string>

#include "check_currency.h"
#include "check_zones.h"
#include "field_checks.h"
#include "job/geometry/placing_sequence.h"
#include "job/geometry/zone_geometry.h"

namespace slabtide {

namespace {

using limits::fractions;

/// Places are measured from a point of the plan, so at most from one end of it to the other.
constexpr Range places_m{limits::plan_m.low - limits::plan_m.high,
                         limits::plan_m.high - limits::plan_m.low};
/// How far, as a fraction, a value that the reader accepted at a limit may exceed it once places
/// are rounded to the grid of `canonical`: a micrometre of the smallest width.
constexpr double snapped = 4e-5;
/// The outline of a walkway extends half its width beyond its line.
constexpr Range outlines_m{places_m.low - limits::walkway_widths_m.high,
                           places_m.high + limits::walkway_widths_m.high};
/// A direction may be off by a whole turn, but not by more.
constexpr Range turns_deg{-360.0, 360.0};

void check_point(const FieldPath& path, Point point, const Range& range) {
  path.at("x_m").in_range(point.x_m, range);
  path.at("y_m").in_range(point.y_m, range);
}

void check_admixture(const FieldPath& path, const Admixture& one) {
  path.at("kind").one_of(one.kind, AdmixtureKind::accelerator_non_chloride);
  const bool chloride = one.kind == AdmixtureKind::accelerator_chloride;
  const bool later = one.kind == AdmixtureKind::retarder || one.kind == AdmixtureKind::stabiliser;
  const std::array given{one.dose_ml_100kg.has_value(), one.dose_percent.has_value(),
                         one.shift_h.has_value()};
  path.require(std::count(given.begin(), given.end(), true) == 1,
               "expected one of dose_ml_100kg, dose_percent and shift_h");
  path.at("dose_percent").require(!one.dose_percent || chloride, "is for calcium chloride only");
  path.at("dose_ml_100kg").require(!one.dose_ml_100kg || !chloride, "is not for calcium chloride");
  path.at("dose_ml_100kg")
      .in_range(one.dose_ml_100kg,
                later ? limits::retarder_doses_ml_100kg : limits::accelerator_doses_ml_100kg);
  path.at("dose_percent").in_range(one.dose_percent, limits::chlorides_percent);
  path.at("shift_h").in_range(one.shift_h, later ? limits::later_h : limits::sooner_h);
}

void check_admixtures(const FieldPath& path, const std::vector<Admixture>& admixtures) {
  for (std::size_t i = 0; i < admixtures.size(); ++i) {
    check_admixture(path.at("admixture", i), admixtures[i]);
  }
}

void check_ingredients(const FieldPath& path, const IngredientTemperatures& parts,
                       double water_kg_m3) {
  path.at("cement_c").in_range(parts.cement_c, limits::cements_c);
  path.at("aggregate_c").in_range(parts.aggregate_c, limits::ingredients_c);
  path.at("water_c").in_range(parts.water_c, limits::waters_c);
  path.at("aggregate_kg_m3").in_range(parts.aggregate_kg_m3, limits::aggregates_kg_m3);
  path.at("aggregate_moisture_kg_m3")
      .in_range(parts.aggregate_moisture_kg_m3, limits::moistures_kg_m3);
  path.at("ice_kg_m3").in_range(parts.ice_kg_m3, limits::moistures_kg_m3);
  path.at("ice_kg_m3")
      .require(parts.ice_kg_m3 + parts.aggregate_moisture_kg_m3 <= water_kg_m3,
               "is more, with the aggregate's moisture, than the mix water");
}

void check_temperature(const FieldPath& path, const Mix& mix) {
  if (const auto* measured = std::get_if<double>(&mix.temperature)) {
    path.in_range(*measured, limits::discharges_c);
    return;
  }
  check_ingredients(path, std::get<IngredientTemperatures>(mix.temperature),
                    mix.w_cm * mix.cementitious_kg_m3);
}

void check_supplier_sets(const FieldPath& path, const Mix& mix) {
  path.at("supplier_final_set_h")
      .require(mix.supplier_initial_set_h.has_value() == mix.supplier_final_set_h.has_value(),
               "the supplier's set times come as a pair");
  path.at("supplier_initial_set_h").in_range(mix.supplier_initial_set_h, limits::initial_sets_h);
  path.at("supplier_final_set_h").in_range(mix.supplier_final_set_h, limits::final_sets_h);
  if (!mix.supplier_initial_set_h) return;
  path.at("supplier_final_set_h")
      .require(*mix.supplier_initial_set_h < *mix.supplier_final_set_h,
               "does not come after supplier_initial_set_h");
}

void check_mix(const FieldPath& path, const Mix& mix) {
  path.at("name").is_text(mix.name);
  path.at("cement").one_of(mix.cement, CementType::type_iii);
  path.at("ash_class").one_of(mix.ash_class, AshClass::c);
  path.at("aggregate").one_of(mix.aggregate, Aggregate::basalt);
  path.at("cementitious_kg_m3").in_range(mix.cementitious_kg_m3, limits::contents_kg_m3);
  path.at("w_cm").in_range(mix.w_cm, limits::w_cms);
  path.at("slump_m").in_range(mix.slump_m, limits::slumps_m);
  path.at("water_source").one_of(mix.water_source, WaterSource::strength);
  path.at("ash_share").in_range(mix.ash_fraction, limits::ash_fractions);
  path.at("slag_share").in_range(mix.slag_fraction, limits::slag_fractions);
  path.at("silica_fume_share").in_range(mix.silica_fume_fraction, limits::fume_fractions);
  path.require(
      mix.ash_fraction + mix.slag_fraction + mix.silica_fume_fraction <= limits::max_replaced,
      "ash_share, slag_share and silica_fume_share leave too little cement");
  path.at("air_share").in_range(mix.air_fraction, limits::air_fractions);
  path.at("specified_strength_psi").in_range(mix.specified_strength_psi, limits::strengths_psi);
  path.at("strength_margin_psi").in_range(mix.strength_margin_psi, limits::strength_margins_psi);
  check_temperature(path.at("temperature"), mix);
  check_supplier_sets(path, mix);
  check_admixtures(path, mix.admixtures);
  if (!mix.learned) return;
  path.at("learned.set_factor").in_range(mix.learned->set_factor, limits::learned_factors);
  path.at("learned.log_deviation").in_range(mix.learned->log_deviation, limits::learned_deviations);
}

void check_site(const FieldPath& path, const Site& site) {
  path.at("name").is_text(site.name);
  path.at("latitude_deg").in_range(site.latitude_deg, limits::latitudes_deg);
  path.at("longitude_deg").in_range(site.longitude_deg, limits::longitudes_deg);
  path.at("elevation_m").in_range(site.elevation_m, limits::elevations_m);
  path.at("wind_setting").one_of(site.wind_setting, WindSetting::sheltered_court);
  path.at("measured_wind_ratio").in_range(site.measured_wind_ratio, limits::wind_ratios);
  path.at("ground_c").in_range(site.ground_c, limits::ground_c);
}

void check_names(const FieldPath& path, const std::vector<std::string>& names,
                 const std::vector<std::string>& zones) {
  for (const std::string& name : names) {
    path.is_text(name);
    path.require(std::find(zones.begin(), zones.end(), name) != zones.end(),
                 "names a zone that is not there");
  }
}

/// The sequence must name every zone once.
void check_placing_sequence(const FieldPath& path, const std::vector<std::string>& order,
                            const std::vector<std::string>& zones) {
  check_names(path, order, zones);
  const std::vector<ZoneNameFault> faults = zone_name_faults(order, zones);
  if (!faults.empty()) path.refuse(faults.front().message);
  path.require(zones_left_out(order, zones).empty(), "leaves out a zone");
}

void check_saws(const FieldPath& path, const std::vector<SawKind>& saws) {
  for (const SawKind saw : saws) path.one_of(saw, SawKind::wet);
}

void check_cover(const FieldPath& path, const Cover& cover, const std::vector<std::string>& zones) {
  path.at("kind").require(cover.kind == CuringKind::plastic || cover.kind == CuringKind::blanket,
                          "is nothing to cover with");
  path.at("resistance_m2k_w")
      .in_range(cover.resistance_m2k_w, {0.0, limits::resistances_m2k_w.high});
  path.at("from").is_time(cover.from);
  path.at("to").is_time(cover.to);
  path.at("to").require(cover.from < cover.to, "does not come after `from`");
  check_names(path.at("zones"), cover.zones, zones);
}

void check_pour(const FieldPath& path, const Pour& pour, const std::vector<std::string>& zones) {
  path.at("date").require(!pour.date.is_special(), "is not a date");
  path.at("date").in_range(static_cast<double>(pour.date.year()), limits::years);
  path.at("start").is_time(pour.start);
  path.at("transit_min").in_range(pour.transit_min, limits::transits_min);
  path.at("hauling").one_of(pour.hauling, Hauling::pump);
  path.at("haul_distance_m").in_range(pour.haul_distance_m, limits::hauls_m);
  path.at("placing_rate_m3_h").in_range(pour.placing_rate_m3_h, limits::placing_rates_m3_h);
  path.at("placing_crew").in_range(pour.placing_crew, limits::crew_sizes);
  check_placing_sequence(path.at("zone_order"), pour.placing_sequence, zones);
  check_saws(path.at("saws"), pour.saws);
  path.at("curing").one_of(pour.curing, CuringKind::blanket);
  for (std::size_t i = 0; i < pour.covers.size(); ++i) {
    check_cover(path.at("cover", i), pour.covers[i], zones);
  }
}

void check_finish_work(const FieldPath& path, const FinishWork& work) {
  path.at("release").one_of(work.release, ReleaseKind::liquid);
  path.at("sealer").one_of(work.sealer, SealerKind::none);
  path.at("wash_after_h").in_range(work.wash_after_h, limits::wash_waits_h);
  path.at("wash_off_after_h").in_range(work.wash_off_after_h, limits::wash_off_waits_h);
  path.at("wash_off_before_h").in_range(work.wash_off_before_h, limits::wash_off_waits_h);
  path.at("seal_after_days").in_range(work.seal_after_days, limits::seal_waits_days);
}

void check_typed(const FieldPath& path, const TypedWeather& day) {
  path.at("high_c").in_range(day.high_c, limits::typed_air_c);
  path.at("low_c").in_range(day.low_c, limits::typed_air_c);
  path.at("next_high_c").in_range(day.next_high_c, limits::typed_air_c);
  path.at("next_low_c").in_range(day.next_low_c, limits::typed_air_c);
  path.at("dew_point_c").in_range(day.dew_point_c, limits::typed_air_c);
  path.at("humidity_at_high").in_range(day.humidity_at_high, limits::humidities);
  path.at("wind_10m_m_s").in_range(day.wind_10m_m_s, limits::typed_winds_m_s);
  path.at("cloud.night").in_range(day.cloud.night, fractions);
  path.at("cloud.morning").in_range(day.cloud.morning, fractions);
  path.at("cloud.afternoon").in_range(day.cloud.afternoon, fractions);
  path.at("cloud.evening").in_range(day.cloud.evening, fractions);
  path.at("low_c").require(day.low_c <= day.high_c, "is above high_c");
  path.at("next_low_c")
      .require(day.next_low_c.value_or(day.low_c) <= day.next_high_c.value_or(day.high_c),
               "is above next_high_c");
  path.at("dew_point_c")
      .require(!day.dew_point_c || *day.dew_point_c <= day.high_c, "is above high_c");
  path.at("humidity_at_high")
      .require(!day.dew_point_c || !day.humidity_at_high, "is given beside dew_point_c");
}

void check_weather(const FieldPath& path, const WeatherChoice& weather) {
  if (const auto* typed = std::get_if<TypedWeather>(&weather)) check_typed(path, *typed);
}

void check_order(const FieldPath& path, const Order& order) {
  path.at("allowance_share").in_range(order.allowance_fraction, limits::allowances);
  path.at("low_base_m").in_range(order.low_base_m, limits::low_bases_m);
  path.at("load_size_m3").in_range(order.load_size_m3, limits::loads_m3);
  path.at("short_load_m3").in_range(order.short_load_m3, limits::short_loads_m3);
  path.at("discharge_limit_min").in_range(order.discharge_limit_min, limits::discharge_limits_min);
  path.at("truck_spacing_min").in_range(order.truck_spacing_min, limits::spacings_min);
  for (std::size_t i = 0; i < order.loads.size(); ++i) {
    const FieldPath load = path.at("load", i);
    load.at("number").in_range(order.loads[i].number, limits::load_numbers);
    check_admixtures(load, order.loads[i].admixtures);
  }
}

void check_hand(const FieldPath& path, const Hand& hand) {
  path.at("name").is_text(hand.name);
  path.at("name").require(!hand.name.empty(), "is empty");
  path.at("pace").in_range(hand.pace, limits::paces);
  if (hand.from_min) path.at("from_min").in_range(*hand.from_min, limits::minutes_of_day);
  if (hand.to_min) path.at("to_min").in_range(*hand.to_min, limits::minutes_of_day);
  path.at("to_min").require(!hand.from_min || hand.from_min != hand.to_min, "is from_min");
}

void check_crew(const FieldPath& path, const Crew& crew) {
  path.at("finishers").in_range(crew.finishers, limits::crew_sizes);
  path.at("arrive_before_min").in_range(crew.arrive_before_min, limits::arrivals_min);
  path.at("hand").require(crew.hands.size() <= static_cast<std::size_t>(crew.finishers),
                          "there are more than finishers");
  std::set<std::string> names;
  bool helpers_alone = crew.hands.size() == static_cast<std::size_t>(crew.finishers);
  for (std::size_t i = 0; i < crew.hands.size(); ++i) {
    const FieldPath hand = path.at("hand", i);
    check_hand(hand, crew.hands[i]);
    hand.at("name").require(names.insert(crew.hands[i].name).second, "is another hand's too");
    helpers_alone = helpers_alone && crew.hands[i].simple_work;
  }
  path.at("hand").require(!helpers_alone, "nobody is left to finish");
}

void check_prices(const FieldPath& path, const Prices& prices) {
  if (const auto fault = currency_fault(prices.currency)) path.at("currency").refuse(*fault);
  const auto check = [&path](std::string_view field, const std::optional<double>& price) {
    path.at(field).in_range(price, limits::prices);
  };
  check("hand_per_h", prices.hand_per_h);
  check("concrete_per_m3", prices.concrete_per_m3);
  check("short_load", prices.short_load);
  check("retarder_per_l", prices.retarder_per_l);
  check("accelerator_per_l", prices.accelerator_per_l);
  check("chloride_per_kg", prices.chloride_per_kg);
  check("ice_per_kg", prices.ice_per_kg);
  check("hot_water_per_m3", prices.hot_water_per_m3);
  check("chilled_water_per_m3", prices.chilled_water_per_m3);
  check("plastic_per_m2", prices.plastic_per_m2);
  check("blankets_per_m2", prices.blankets_per_m2);
  check("film_per_m2", prices.film_per_m2);
  check("redo_per_m2", prices.redo_per_m2);
  check("repair_per_m", prices.repair_per_m);
}

/// What an option asks of zones and crew may be impossible; it is then left out of the comparison
/// with the reason, so it is no error here.
void check_option(const FieldPath& path, const OptionNote& option) {
  path.at("name").is_text(option.name);
  path.at("start_shift_min").in_range(option.start_shift_min, limits::start_shifts_min);
  if (option.admixtures) check_admixtures(path, *option.admixtures);
  for (const auto* names :
       {&option.admixture_zones, &option.placing_sequence, &option.shaded_zones}) {
    for (const std::string& name : *names) path.is_text(name);
  }
  path.at("wind_ratio").in_range(option.wind_ratio, limits::wind_ratios);
  check_saws(path.at("saws"), option.saws);
}

void check_walkway(const FieldPath& path, const Walkway& walk) {
  path.at("width_m").in_range(walk.width_m, limits::walkway_widths_m);
  path.at("line").require(walk.line.size() >= 2, "has fewer than two points");
  for (std::size_t i = 0; i < walk.line.size(); ++i) {
    check_point(path.at("line", i), walk.line[i], places_m);
    path.at("line", i).require(i == 0 || !(walk.line[i] == walk.line[i - 1]),
                               "is the point before it again");
  }
  path.at("line").require(line_length_m(walk) <= limits::longest_m * (1.0 + snapped),
                          "is longer than any walk");
}

void check_outline(const FieldPath& path, const Outline& outline) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    check_point(path.at(std::string(), i), outline[i], outlines_m);
  }
  if (const auto fault = outline_fault(outline)) path.refuse(*fault);
  path.require(area_m2(outline) <= largest_pour_m2 * (1.0 + snapped),
               "encloses more than a day takes");
  path.require(area_m2(outline) >= limits::min_pour_m2 * (1.0 - snapped) &&
                   mean_width_m(outline) >= limits::min_width_m * (1.0 - snapped),
               "is less than anybody forms and pours");
  path.require(reach_m(outline) <= limits::longest_m * (1.0 + snapped),
               "reaches further than any zone");
}

void check_border(const FieldPath& path, const Border& border, const Outline& outline) {
  path.at("width_m").in_range(border.width_m, limits::border_widths_m);
  path.at("finish").one_of(border.finish, Finish::salt);
  path.at("width_m").require(border_fits(outline, border.width_m), "leaves no field inside");
}

void check_face(const FieldPath& path, const FormedFace& face) {
  path.at("length_m").in_range(face.length_m, limits::face_lengths_m);
  path.at("height_m").in_range(face.height_m, limits::face_heights_m);
  path.at("tread_m").in_range(face.tread_m, limits::treads_m);
  path.at("facing_deg").in_range(face.facing_deg, turns_deg);
  if (face.at) check_point(path.at("at"), *face.at, places_m);
}

void check_joint(const FieldPath& path, const Joint& joint) {
  check_point(path.at("from"), joint.from, places_m);
  check_point(path.at("to"), joint.to, places_m);
  path.at("to").require(!(joint.from == joint.to), "is where the joint begins");
}

void check_surface(const FieldPath& path, const Zone& zone) {
  path.at("finish").one_of(zone.finish, Finish::salt);
  path.at("colour").one_of(zone.colour, Colour::brown_or_charcoal);
  path.at("absorptance").in_range(zone.absorptance, limits::absorptances);
  path.at("extra_volume_m3").in_range(zone.extra_volume_m3, limits::extra_volumes_m3);
  if (zone.border) check_border(path.at("border"), *zone.border, zone.outline);
  for (std::size_t i = 0; i < zone.faces.size(); ++i) check_face(path.at("face", i), zone.faces[i]);
  if (!zone.joints) return;
  for (std::size_t i = 0; i < zone.joints->size(); ++i) {
    check_joint(path.at("joint", i), (*zone.joints)[i]);
  }
}

void check_zone(const FieldPath& path, const Zone& zone, UtcTime start) {
  if (zone.path) check_walkway(path.at("path"), *zone.path);
  check_outline(path.at("outline"), zone.outline);
  path.at("thickness_m").in_range(zone.thickness_m, limits::thicknesses_m);
  path.at("base.kind").one_of(zone.base.kind, BaseKind::insulation);
  path.at("base.kept").one_of(zone.base.kept, BaseKept::covered);
  path.at("base.depth_m").in_range(zone.base.depth_m, limits::base_depths_m);
  check_surface(path, zone);
  path.at("placed_toward_deg").in_range(zone.placed_toward_deg, turns_deg);
  if (zone.admixtures) check_admixtures(path, *zone.admixtures);
  if (!zone.placed_at) return;
  path.at("placed_at").is_time(*zone.placed_at);
  path.at("placed_at").require(start <= *zone.placed_at, "is before pour.start");
}

void check_obstacle(const FieldPath& path, const Obstacle& obstacle) {
  path.at("name").is_text(obstacle.name);
  path.at("kind").one_of(obstacle.kind, ObstacleKind::tree);
  check_point(path.at("from"), obstacle.from, places_m);
  path.at("height_m").in_range(obstacle.height_m, limits::heights_m);
  path.at("light_through").in_range(obstacle.light_through, fractions);
  path.at("albedo").in_range(obstacle.albedo, fractions);
  if (obstacle.kind == ObstacleKind::tree) {
    path.at("radius_m").in_range(obstacle.radius_m, limits::radii_m);
    return;
  }
  check_point(path.at("to"), obstacle.to, places_m);
  path.at("to").require(!(obstacle.from == obstacle.to), "is where the wall begins");
}

/// Checks the zones' names, which other fields refer to.
std::vector<std::string> checked_names(const FieldPath& path, const std::vector<Zone>& zones) {
  path.at("zone").require(!zones.empty(), "there is none");
  path.at("zone").require(zones.size() <= limits::max_zones, "there are too many");
  std::vector<std::string> names;
  for (std::size_t i = 0; i < zones.size(); ++i) {
    const FieldPath name = path.at("zone", i).at("name");
    name.require(!zones[i].name.empty(), "is empty");
    name.is_text(zones[i].name);
    const bool again = std::find(names.begin(), names.end(), zones[i].name) != names.end();
    name.require(!again, "is another zone's too");
    names.push_back(zones[i].name);
  }
  return names;
}

/// Checks the limits on all zones together.
void check_all_zones(const FieldPath& path, const Job& job) {
  double sum_m2 = 0.0;
  std::size_t corners = 0;
  std::size_t faces = 0;
  std::size_t joints = 0;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    check_zone(path.at("zone", i), job.zones[i], job.pour.start);
    sum_m2 += area_m2(job.zones[i].outline);
    corners += job.zones[i].outline.size();
    faces += job.zones[i].faces.size();
    joints += job.zones[i].joints ? job.zones[i].joints->size() : 0;
    const bool again =
        std::any_of(job.zones.begin(), job.zones.begin() + static_cast<std::ptrdiff_t>(i),
                    [&](const Zone& earlier) { return earlier.name == job.zones[i].name; });
    path.at("zone", i).at("name").require(!again, "is another zone's too");
  }
  path.at("zone").require(sum_m2 <= largest_pour_m2 * (1.0 + snapped),
                          "they cover more than a day takes");
  path.at("zone").require(corners <= max_corners, "they have too many corners");
  path.at("zone").require(faces <= max_faces, "they have too many step faces");
  path.at("zone").require(joints <= max_drawn_joints, "they have too many joints drawn");
}

}  // namespace

void validate(const Job& job) {
  const FieldPath path;
  path.at("name").is_text(job.name);
  path.at("units").one_of(job.units, UnitSystem::si);
  check_site(path.at("site"), job.site);
  const std::vector<std::string> zones = checked_names(path, job.zones);
  check_pour(path.at("pour"), job.pour, zones);
  check_finish_work(path.at("finish_work"), job.finish_work);
  check_weather(path.at("weather"), job.weather);
  check_mix(path.at("mix"), job.mix);
  check_all_zones(path, job);
  for (std::size_t i = 0; i < job.obstacles.size(); ++i) {
    check_obstacle(path.at("obstacle", i), job.obstacles[i]);
  }
  check_order(path.at("order"), job.order);
  check_crew(path.at("crew"), job.crew);
  if (job.prices) check_prices(path.at("prices"), *job.prices);
  for (std::size_t i = 0; i < job.options.size(); ++i) {
    check_option(path.at("option", i), job.options[i]);
  }
}

void validate(const Mix& mix) { check_mix(FieldPath("mix"), mix); }

void validate(const std::vector<Admixture>& admixtures) {
  check_admixtures(FieldPath(), admixtures);
}

void validate(const TypedWeather& weather) { check_typed(FieldPath("weather"), weather); }

void validate(const Site& site) { check_site(FieldPath("site"), site); }

}  // namespace slabtide
