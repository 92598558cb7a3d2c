#include "quick_command.h"

#include <algorithm>
#include <ostream>

#include <fmt/format.h>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
#include "cli/jobs/text_files.h"
#include "cli/starter/day_option.h"
#include "cli/starter/place_option.h"
#include "core/zone_at.h"
#include "job/checks/site_clock.h"
#include "job/model/limits.h"
#include "job/model/usual_weather.h"
#include "job/model/wording.h"
#include "job/toml/job_words.h"
#include "job/toml/quantity_words.h"
#include "report/text/text_quick.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

constexpr double default_thickness_m = 4.0 * metres_per_inch;
/// The panel that represents the slab: small, so that it is placed within minutes.
constexpr double panel_m = 3.0;

CommandLine quick_line() {
  CommandLine line;
  line.name = "quick";
  line.summary = "the same slab in the sun and in the shade, without a job file";
  line.options = {
      place_option(),
      day_option(),
      {"start", "TIME", "when placing starts: 7:30 AM or 07:30; else at 8", false},
      {"high", "T", "the day's high, °F", false},
      {"low", "T", "the morning's low, °F", false},
      {"dew-point", "T", "dew point, °F; else the low", false},
      {"wind", "V", "average wind at 10 m, mph; else 7", false},
      {"cloud", "PERCENT", "cloud cover; else 0", false},
      {"thickness", "D", "slab thickness, in; else 4", false},
      {"concrete-temp", "T", "concrete at the chute, °F; else the day's mean, 60 at least", false},
      {"finish", "WORD", finish_list() + "; else stamp", false},
      {"time-zone", "NAME", "such as America/Chicago; else that of the place", false},
      {"units", "us|si", "units of all these options and of the output; else us", false},
      {"clock", "12|24", "12- or 24-hour clock: 7:30 AM or 07:30; else by the units", false},
      {"practice", "FILE", "thresholds and rates of your own (see practice.toml)", false},
      now_option()};
  add_write_options(line, "the plan", endings_of(plan_formats()));
  line.details =
      "With --units si: temperatures in °C, wind in m/s, thickness in mm. A figure may\n"
      "name its unit: --thickness 5in, --high 22C. --date Fri is the next one, today\n"
      "included.\n"
      "Example: slabtide quick --place 44.9,-91.9 --date 2026-05-14 --high 71 --low 48\n";
  return line;
}

/// The job and what was assumed for it, or what is wrong with an option.
struct QuickJob {
  Job job;
  std::vector<std::string> assumed;
  std::string warning;  ///< for a place that is probably mistyped
  std::string fault;
};

/// Reads the options one by one into the job; after the first fault it skips the rest.
class QuickReader {
 public:
  explicit QuickReader(const ParsedLine& line) : line_(line) {}

  QuickJob read() {
    read_units();
    read_place();
    read_when();
    read_weather();
    read_slab();
    return std::move(quick_);
  }

 private:
  void fail(std::string fault) {
    if (quick_.fault.empty()) quick_.fault = std::move(fault);
  }

  void assume(std::string what) { quick_.assumed.push_back(std::move(what)); }

  /// A number in the usual unit of its kind, converted as in a job file.
  std::optional<double> quantity(const std::string& option, const Quantity& kind,
                                 const Range& range) {
    const auto text = line_.text(option);
    if (!text) return std::nullopt;
    const auto said = parse_quantity(*text, kind, quick_.job.units);
    const Unit& unit = said && said->unit != nullptr ? *said->unit : kind.usual(quick_.job.units);
    if (said && range.holds(unit.to_si(said->value)) && !kind.is_slip(said->value, unit))
      return unit.to_si(said->value);
    fail(fmt::format("--{}: got '{}', expected {}", option, *text,
                     expected_words(said ? said->value : 0.0, unit, kind, range)));
    return std::nullopt;
  }

  std::optional<double> air(const std::string& option) {
    return quantity(option, temperature_quantity, limits::typed_air_c);
  }

  void read_units() {
    const std::string units = line_.text("units").value_or("us");
    if (units != "us" && units != "si")
      fail(fmt::format("--units: got '{}', expected us or si", units));
    quick_.job.units = units == "si" ? UnitSystem::si : UnitSystem::us;
    const auto hours = line_.text("clock");
    if (!hours) return;
    quick_.job.hours = parse_hour_count(*hours);
    if (!quick_.job.hours) fail(fmt::format("--clock: got '{}', expected 12 or 24", *hours));
  }

  void read_place() {
    const auto text = line_.text("place");
    if (!text) return fail("--place LAT,LON is missing");
    const auto place = parse_place(*text);
    if (!place) return fail(place_fault(*text));
    Site& site = quick_.job.site;
    site.name = fmt::format("{:g}, {:g}", place->latitude_deg, place->longitude_deg);
    site.latitude_deg = place->latitude_deg;
    site.longitude_deg = place->longitude_deg;
    read_time_zone();
  }

  void read_time_zone() {
    Site& site = quick_.job.site;
    auto name = line_.text("time-zone");
    if (!name) {
      name = zone_name_at(site.latitude_deg, site.longitude_deg);
      assume(fmt::format("time zone {}, from the place: --time-zone if that is wrong", *name));
      if (quick_.job.units == UnitSystem::us)
        quick_.warning = sign_doubt({site.latitude_deg, site.longitude_deg});
    }
    TimeZone::Loaded loaded = TimeZone::load(*name);
    if (!loaded.zone)
      return fail(fmt::format("--time-zone: {}. {}", loaded.error.message, loaded.error.next_step));
    site.time_zone = *loaded.zone;
    if (quick_.warning.empty()) quick_.warning = clock_off_sun(site);
    if (std::string said = clock_without_summer(site); !said.empty()) assume(std::move(said));
  }

  void read_when() {
    if (!line_.has("date")) return fail("--date is missing");
    if (!quick_.fault.empty()) return;  // the day is that of the place's clock
    const bool us = quick_.job.units == UnitSystem::us;
    const AskedDay day = asked_day(line_, quick_.job.site.time_zone, us);
    if (!day.date) return fail(day.fault);
    const std::string start_text = line_.text("start").value_or("08:00");
    const auto start = parse_clock(start_text);
    if (!start) {
      return fail(
          fmt::format("--start: got '{}', expected a time such as 7:30 AM or 07:30", start_text));
    }
    if (!line_.has("start"))
      assume("placing starts " + shown_time(*start, clock_style(quick_.job).hours));
    Pour& pour = quick_.job.pour;
    pour.date = *day.date;
    pour.start = quick_.job.site.time_zone.utc_from_local(LocalTime(*day.date, *start)).utc;
  }

  void read_weather() {
    TypedWeather weather;
    for (const char* option : {"high", "low"}) {
      if (!line_.has(option)) return fail(fmt::format("--{} is missing", option));
    }
    weather.high_c = air("high").value_or(0.0);
    weather.low_c = air("low").value_or(0.0);
    if (weather.low_c > weather.high_c) {
      return fail(
          fmt::format("--low {} is over --high {}", *line_.text("low"), *line_.text("high")));
    }
    weather.dew_point_c = air("dew-point");
    if (weather.dew_point_c && *weather.dew_point_c > weather.high_c) {
      return fail("--dew-point is over --high: the air cannot hold that");
    }
    read_wind(weather);
    const double cloud = quantity("cloud", fraction_quantity, limits::fractions).value_or(0.0);
    weather.cloud_is_assumed = !line_.has("cloud");
    weather.cloud = {cloud, cloud, cloud, cloud};
    quick_.job.weather = weather;
  }

  void read_wind(TypedWeather& weather) {
    const auto wind = quantity("wind", wind_quantity, limits::typed_winds_m_s);
    weather.wind_10m_m_s = wind.value_or(usual_wind_10m_m_s);
    weather.wind_is_assumed = !wind;
  }

  void read_slab() {
    Job& job = quick_.job;
    job.name = "Quick look";
    const auto thickness = quantity("thickness", thickness_quantity, limits::thicknesses_m);
    const double thickness_m = thickness.value_or(default_thickness_m);
    if (!thickness) assume("a slab " + thickness_words(thickness_m, job.units) + " thick");
    read_concrete_temperature();
    const Finish finish = read_finish();
    for (const bool shaded : {false, true}) {
      Zone zone;
      zone.name = shaded ? "in the shade" : "in the sun";
      const double x_m = shaded ? 2.0 * panel_m : 0.0;
      zone.outline = {{x_m, 0.0}, {x_m + panel_m, 0.0}, {x_m + panel_m, panel_m}, {x_m, panel_m}};
      zone.thickness_m = thickness_m;
      zone.finish = finish;
      zone.shaded = shaded;
      zone.placed_at = job.pour.start;
      job.pour.placing_sequence.push_back(zone.name);
      job.zones.push_back(std::move(zone));
    }
    job.order.short_load_m3 = 0.0;  // the panel represents a slab of any size
    assume(
        "a 10 ft (3 m) panel on 4 in of damp gravel, 6% air as in outdoor concrete, both saws on "
        "hand");
    job.pour.saws = {SawKind::early_entry, SawKind::wet};
  }

  void read_concrete_temperature() {
    const auto given = quantity("concrete-temp", temperature_quantity, limits::discharges_c);
    if (given) quick_.job.mix.temperature = *given;
    quick_.job.mix.temperature_is_assumed = !given;
  }

  Finish read_finish() {
    const std::string word = line_.text("finish").value_or("stamp");
    if (const auto finish = finish_named(word)) return *finish;
    fail(fmt::format("--finish: got '{}', expected {}", word, finish_list()));
    return Finish::stamp;
  }

  const ParsedLine& line_;
  QuickJob quick_;
};

int refuse(const std::string& fault, std::ostream& err) {
  err << refusal("quick", fault);
  return exit_input_wrong;
}

int run_quick(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const auto reports = asked_reports("quick", line, plan_formats(), err);
  if (!reports) return exit_input_wrong;
  QuickJob quick = QuickReader(line).read();
  if (!quick.fault.empty()) return refuse(quick.fault, err);
  if (!quick.warning.empty()) err << place_warning("quick", quick.warning);
  auto loaded = complete_job(std::move(quick.job), request_of(line, ""), text_files(), err);
  if (!loaded) return exit_input_wrong;
  auto pour = plan_loaded(std::move(*loaded), err);
  if (!pour) return exit_input_wrong;
  // A panel made up for looking at the weather needs no crew and no supplies.
  pour->plan.crew = {};
  pour->plan.supplies = {};
  std::vector<std::string>& said = pour->plan.assumptions;
  said.insert(said.begin(), quick.assumed.begin(), quick.assumed.end());
  if (const int code = reports->write(*pour, pour->now, err); code != exit_done) return code;
  out << text_quick(*pour, style_for(out));
  return exit_done;
}

}  // namespace

const Command quick_command{quick_line, run_quick};

}  // namespace slabtide
