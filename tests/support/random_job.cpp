#include "support/random_job.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "support/random_zone.h"

namespace slabtide::test {

namespace {

std::uint64_t from_environment(const char* name, std::uint64_t otherwise) {
  const char* text = std::getenv(name);
  return text == nullptr ? otherwise : std::strtoull(text, nullptr, 10);
}

struct Place {
  double latitude_deg;
  double longitude_deg;
  std::string_view time_zone;
};
/// Includes half-hour time zones, the southern hemisphere, a midnight sun and zones without clock
/// changes.
constexpr std::array<Place, 14> places{{{45.1, -91.6, "America/Chicago"},
                                        {33.4, -112.1, "America/Phoenix"},
                                        {40.7, -74.0, "America/New_York"},
                                        {47.6, -122.3, "America/Los_Angeles"},
                                        {61.2, -149.9, "America/Anchorage"},
                                        {47.5, -52.7, "America/St_Johns"},
                                        {51.5, -0.1, "Europe/London"},
                                        {78.2, 15.6, "Arctic/Longyearbyen"},
                                        {27.7, 85.3, "Asia/Kathmandu"},
                                        {-36.8, 174.7, "Pacific/Auckland"},
                                        {-31.5, 159.1, "Australia/Lord_Howe"},
                                        {0.0, 0.0, "Africa/Abidjan"},
                                        {-77.8, 166.7, "Antarctica/McMurdo"},
                                        {21.3, -157.9, "Pacific/Honolulu"}}};
/// Includes days of clock changes and the days before their nights, and the first and last accepted
/// year.
constexpr std::array<std::string_view, 16> dates{
    "2026-05-14", "2026-07-21", "2026-10-02", "2026-03-08", "2026-11-01", "2026-03-29",
    "2026-03-07", "2026-10-31", "2026-10-24", "2026-10-03", "2026-09-27", "2026-04-05",
    "2028-02-29", "2026-12-31", "2007-01-01", "2099-12-31"};
constexpr std::array<std::string_view, 11> strange_names{
    "pad",
    "walk",
    "the \"west\" walk",
    "a, b; c",
    "=SUM(A1:A9)",
    "<b>Ünïcode</b> & co",
    "走道 ✓",
    "back\\slash 'quote' %s {}",
    "  spaces  ",
    "\xE2\x80\xAE turned",
    "a name that goes on and on and on and on and on and on and on and on and on and on and on"};
constexpr std::array<std::string_view, 3> haulings{"chute", "buggy", "wheelbarrow"};
constexpr std::array<std::string_view, 4> curings{"none", "film", "plastic", "blanket"};
constexpr std::array<std::string_view, 7> aggregates{"unknown",   "limestone", "granite", "gravel",
                                                     "quartzite", "sandstone", "basalt"};
constexpr std::array<std::string_view, 4> cements{"I/II", "I", "II", "III"};
constexpr std::array<std::string_view, 3> settings{"yard", "open lot", "sheltered court"};
constexpr std::array<std::string_view, 3> saws{R"(["early-entry", "wet"])", R"(["wet"])", "[]"};
constexpr std::array<std::string_view, 5> currencies{"$", "CAD", "€", "kr", "$ "};
constexpr std::array<std::string_view, 14> price_keys{
    "hand_per_hour", "concrete",    "short_load",    "retarder", "accelerator", "chloride",
    "ice",           "hot_water",   "chilled_water", "plastic",  "blankets",    "evaporation_film",
    "redo",          "crack_repair"};
/// Lines for a practice table, each with a table and a key.
constexpr std::array<std::string_view, 10> own_practices{
    "[practice.operation.stamp]\nopens_psi = 20\ncloses_psi = 35",
    "[practice.operation.broom]\nopens_psi = 5\ncloses_psi = 900",
    "[practice.cells]\nfirst_share = 0.5\nall_over_share = 0.5\npart_differs_min = 1",
    "[practice.set]\nwash_after_set_age_h = 1\ndry_after_wash_h = 0",
    "[practice.set]\nseal_surface_min_c = -10\nseal_surface_max_c = 60\nwalk_strength_psi = 1",
    "[practice.saw]\nearly_entry_opens_psi = 1\nspeed_m_h = 1\nset_up_min = 120",
    "[practice.sheen]\ngrace_min = 0\nfilm_gone_kg_m2 = 1",
    "[practice.joints]\nmost_m = 0.3\nmost_aspect = 1.1",
    "[practice.pieces]\narea_m2 = 1\nmost = 40",
    "[practice.rates]\nstamp_m2_h = 0.1\nclean_up_jobs_h = 0.1"};

/// What the tables of one job have in common.
struct Draft {
  RandomToml toml;
  std::vector<std::string> zones;
  std::string date;
  RandomJobKind kind;
  bool from_forecast = false;

  ByteSource& bytes() { return toml.bytes(); }
};

std::string list_of(const std::vector<std::string>& texts) {
  std::vector<std::string> quoted;
  for (const std::string& text : texts) quoted.push_back(RandomToml::quoted(text));
  return fmt::format("[{}]", fmt::join(quoted, ", "));
}

std::vector<std::string> shuffled(ByteSource& bytes, std::vector<std::string> texts) {
  for (std::size_t i = texts.size(); i > 1; --i) std::swap(texts[i - 1], texts[bytes.below(i)]);
  return texts;
}

void write_site(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  const Place& place = places.at(bytes.below(2) == 0 ? 0 : bytes.below(places.size()));
  draft.toml.line("\n[site]");
  if (bytes.one_in(3)) draft.toml.word("name", bytes.one_of(strange_names));
  draft.toml.number("latitude", place.latitude_deg);
  draft.toml.number("longitude", place.longitude_deg);
  draft.toml.word("time_zone", place.time_zone);
  if (bytes.one_in(3)) draft.toml.length("elevation", bytes.between(-1000.0, 14000.0));
  if (bytes.one_in(3)) draft.toml.word("wind_setting", bytes.one_of(settings));
  if (bytes.one_in(8)) draft.toml.number("measured_wind_ratio", bytes.between(0.05, 1.2));
  if (bytes.one_in(8)) draft.toml.temperature("ground_temperature", bytes.between(33.0, 119.0));
}

void write_cover(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  const bool blanket = bytes.below(2) == 0;
  draft.toml.line("[[pour.cover]]");
  draft.toml.word("kind", blanket ? "blanket" : "plastic");
  if (blanket) draft.toml.insulation("r_value", bytes.between(0.2, 39.0));
  if (bytes.one_in(2)) draft.toml.word("from", random_clock(bytes, 0.0, 24.0));
  if (bytes.one_in(2)) draft.toml.word("to", random_clock(bytes, 0.0, 24.0));
  if (bytes.one_in(3)) draft.toml.raw("zones", list_of({draft.zones.front()}));
}

void write_pour(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  draft.toml.line("\n[pour]");
  draft.toml.raw("date", draft.date);
  const std::string usual = random_clock(bytes, 5.0, 15.0);
  const std::string any = random_clock(bytes, 0.0, 24.0);
  const std::size_t when = bytes.below(16);
  draft.toml.word("start", when < 10   ? usual
                           : when < 15 ? any
                                       : dated(draft.date, static_cast<int>(bytes.below(3)), any));
  if (bytes.one_in(2)) draft.toml.number("transit", std::round(bytes.between(0.0, 240.0)));
  if (bytes.one_in(3)) draft.toml.word("hauling", bytes.one_of(haulings));
  if (bytes.one_in(5)) draft.toml.length("haul_distance", bytes.between(0.0, 999.0));
  if (bytes.one_in(6)) draft.toml.number("placing_rate_yd3_h", bytes.between(0.5, 100.0));
  if (bytes.one_in(3)) draft.toml.whole("placing_crew", 1 + static_cast<int>(bytes.below(12)));
  if (bytes.one_in(4)) draft.toml.raw("zone_order", list_of(shuffled(bytes, draft.zones)));
  if (bytes.one_in(2)) draft.toml.raw("saws", bytes.one_of(saws));
  if (bytes.one_in(2)) draft.toml.word("curing", bytes.one_of(curings));
  const std::size_t covers = bytes.one_in(3) ? 1 + bytes.below(2) : 0;
  for (std::size_t i = 0; i < covers; ++i) write_cover(draft);
}

void write_typed_day(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  RandomToml& toml = draft.toml;
  const double high = bytes.one_in(6) ? bytes.between(-30.0, 125.0) : bytes.between(45.0, 100.0);
  const double low = std::max(-39.0, high - bytes.between(0.0, 40.0));
  toml.temperature("high", high);
  toml.temperature("low", low);
  if (bytes.one_in(4))
    toml.temperature("next_high", std::min(128.0, high + bytes.between(-15.0, 10.0)));
  if (bytes.one_in(4))
    toml.temperature("next_low", std::max(-39.0, low - bytes.between(0.0, 20.0)));
  const std::size_t damp = bytes.below(4);
  if (damp == 1) toml.temperature("dew_point", std::max(-39.0, low - bytes.between(0, 30)));
  if (damp == 2) toml.percent("humidity", bytes.between(2.0, 100.0));
  toml.wind("wind", bytes.between(0.0, bytes.one_in(4) ? 54.0 : 15.0));
  if (bytes.one_in(3)) {
    toml.line(fmt::format(
        "cloud = {{ night = {:.0f}, morning = {:.0f}, afternoon = {:.0f}, evening = {:.0f} }}",
        100 * bytes.fraction(), 100 * bytes.fraction(), 100 * bytes.fraction(),
        100 * bytes.fraction()));
  } else {
    toml.percent("cloud", std::round(100.0 * bytes.fraction()));
  }
}

void write_weather(Draft& draft) {
  draft.toml.line("\n[weather]");
  draft.from_forecast = !draft.kind.typed_weather && draft.bytes().one_in(3);
  if (draft.from_forecast) {
    draft.toml.word("forecast", random_forecast_name);
  } else {
    write_typed_day(draft);
  }
}

void write_cementitious(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  if (bytes.one_in(3)) draft.toml.word("cement_type", bytes.one_of(cements));
  if (bytes.one_in(3)) draft.toml.content("cementitious", bytes.between(210.0, 1190.0));
  if (bytes.one_in(4)) draft.toml.percent("fly_ash", bytes.between(0.0, 59.0));
  if (bytes.one_in(5)) draft.toml.percent("slag", bytes.between(0.0, 50.0));
  if (bytes.one_in(8)) draft.toml.percent("silica_fume", bytes.between(0.0, 14.9));
  draft.toml.number("w_cm", bytes.one_in(4) ? bytes.between(0.25, 0.8) : 0.45);
  if (bytes.one_in(2)) draft.toml.percent("air", bytes.between(0.0, 11.9));
  if (bytes.one_in(3)) draft.toml.strength("strength", bytes.between(1501.0, 11999.0));
}

void write_mix(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  draft.toml.line("\n[mix]");
  if (bytes.one_in(3)) draft.toml.word("name", bytes.one_of(strange_names));
  write_cementitious(draft);
  if (bytes.one_in(2)) draft.toml.word("aggregate", bytes.one_of(aggregates));
  const bool from_parts = bytes.one_in(8);
  if (!from_parts) {
    draft.toml.temperature("concrete_temperature",
                           bytes.one_in(3) ? bytes.between(35.5, 109.5) : 65.0);
  }
  if (bytes.one_in(5)) {
    const double initial = bytes.between(1.0, bytes.one_in(3) ? 24.0 : 8.0);
    draft.toml.number("initial_set", initial);
    draft.toml.number("final_set", std::clamp(initial * bytes.between(1.0, 3.5), 1.5, 36.0));
  }
  if (from_parts) {
    draft.toml.line("[mix.ingredients]");
    draft.toml.temperature("cement_temperature", bytes.between(11.0, 199.0));
    draft.toml.temperature("aggregate_temperature", bytes.between(34.0, 139.0));
    draft.toml.temperature("water_temperature", bytes.between(34.0, 179.0));
    draft.toml.content("aggregate", bytes.between(1501.0, 4400.0));
    if (bytes.one_in(2)) draft.toml.content("ice", bytes.between(0.0, 60.0));
  }
  if (bytes.one_in(3)) random_admixtures(draft.toml, "mix");
}

void write_order(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  RandomToml& toml = draft.toml;
  toml.line("\n[order]");
  if (bytes.one_in(2)) toml.percent("allowance", bytes.between(0.0, 30.0));
  if (bytes.one_in(3)) toml.thickness("low_base", bytes.between(0.0, 3.0));
  if (bytes.one_in(2)) toml.volume("load_size", bytes.between(0.51, 14.9));
  if (bytes.one_in(3)) toml.volume("short_load", bytes.between(0.0, 14.9));
  if (bytes.one_in(3)) toml.number("discharge_limit", std::round(bytes.between(30.0, 480.0)));
  if (bytes.one_in(3)) toml.number("truck_spacing", std::round(bytes.between(1.0, 240.0)));
  if (!bytes.one_in(4)) return;
  toml.line("[[order.load]]");
  toml.whole("number", 1 + static_cast<int>(bytes.below(4)));
  if (bytes.one_in(3)) {
    toml.line("admixtures = []");
  } else {
    random_admixtures(toml, "order.load");
  }
}

/// One of the crew who is told apart. The first is no helper, so that somebody can finish.
void write_hand(Draft& draft, std::size_t index) {
  ByteSource& bytes = draft.bytes();
  RandomToml& toml = draft.toml;
  toml.line("\n[[hand]]");
  if (bytes.one_in(2)) toml.word("name", fmt::format("{} {}", bytes.one_of(strange_names), index));
  if (bytes.one_in(2)) toml.number("pace", bytes.between(0.3, 2.0));
  if (bytes.one_in(3))
    toml.word("from", fmt::format("{:02}:{:02}", bytes.below(24), bytes.below(59)));
  if (bytes.one_in(3)) toml.word("to", fmt::format("{:02}:59", bytes.below(24)));
  if (index > 0 && bytes.one_in(4)) toml.yes_no("simple_work", true);
}

void write_crew(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  draft.toml.line("\n[crew]");
  const auto finishers = 1 + bytes.below(bytes.one_in(4) ? 60 : 8);
  draft.toml.whole("finishers", static_cast<int>(finishers));
  if (bytes.one_in(2)) {
    draft.toml.number("arrive_before", std::round(bytes.between(0.0, 480.0)));
  }
  if (!bytes.one_in(3)) return;
  const auto hands = std::min<std::size_t>(finishers, 1 + bytes.below(5));
  for (std::size_t i = 0; i < hands; ++i) write_hand(draft, i);
}

void write_option(Draft& draft, std::size_t number) {
  ByteSource& bytes = draft.bytes();
  RandomToml& toml = draft.toml;
  toml.line("\n[[option]]");
  toml.word("name", fmt::format("{} {}", bytes.one_of(strange_names), number));
  toml.number("start_shift", std::round(bytes.between(-720.0, 720.0)));
  if (bytes.one_in(3)) toml.whole("finishers", 1 + static_cast<int>(bytes.below(20)));
  if (bytes.one_in(4)) toml.raw("zone_order", list_of(shuffled(bytes, draft.zones)));
  if (bytes.one_in(4)) toml.raw("shaded_zones", list_of({draft.zones.back()}));
  if (bytes.one_in(4)) toml.number("wind_ratio", bytes.between(0.05, 1.2));
  if (bytes.one_in(4)) random_admixtures(toml, "option");
}

void write_prices(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  RandomToml& toml = draft.toml;
  toml.line("\n[prices]");
  if (bytes.one_in(3)) toml.word("currency", bytes.one_of(currencies));
  for (const std::string_view key : price_keys) {
    if (!bytes.one_in(3)) toml.number(key, bytes.between(0.0, bytes.one_in(8) ? 1.0e8 : 500.0));
  }
}

std::vector<std::string> zone_names(ByteSource& bytes) {
  std::vector<std::string> chosen;
  const std::size_t count = 1 + bytes.below(bytes.one_in(4) ? 6 : 3);
  for (std::size_t i = 0; i < count; ++i) {
    const std::string name(bytes.one_of(strange_names));
    const bool taken = std::find(chosen.begin(), chosen.end(), name) != chosen.end();
    chosen.push_back(taken ? fmt::format("{} {}", name, i + 1) : name);
  }
  return chosen;
}

void write_tables(Draft& draft) {
  ByteSource& bytes = draft.bytes();
  draft.toml.units();
  draft.toml.word("name", bytes.one_of(strange_names));
  write_site(draft);
  write_pour(draft);
  write_weather(draft);
  write_mix(draft);
  if (bytes.one_in(2)) write_order(draft);
  if (bytes.one_in(2)) write_crew(draft);
  random_zones(draft.toml, draft.zones, draft.date, draft.kind.near_valid);
  const std::size_t options = bytes.one_in(4) ? 1 + bytes.below(2) : 0;
  for (std::size_t i = 0; i < options; ++i) write_option(draft, i);
  if (bytes.one_in(6)) draft.toml.line(bytes.one_of(own_practices));
  if (bytes.one_in(3)) write_prices(draft);
}

}  // namespace

std::uint64_t job_count(std::uint64_t usual) { return from_environment("SLABTIDE_JOBS", usual); }
std::uint64_t first_job(std::uint64_t first) {
  return from_environment("SLABTIDE_FIRST_JOB", first);
}

RandomJob random_job(ByteSource& bytes, const RandomJobKind& kind) {
  Draft draft{{bytes, kind.near_valid}, zone_names(bytes), {}, kind};
  draft.date = bytes.below(2) == 0 ? dates.front() : bytes.one_of(dates);
  write_tables(draft);
  RandomJob job{draft.toml.take(), {}};
  if (draft.from_forecast) job.forecast_csv = random_forecast_csv(bytes, draft.date);
  return job;
}

RandomJob random_job(ByteSource& bytes) {
  constexpr std::size_t one_near_valid_in = 4;
  return random_job(bytes, {.near_valid = bytes.one_in(one_near_valid_in)});
}

std::string random_job_toml(ByteSource& bytes) {
  return random_job(bytes, {.typed_weather = true}).toml;
}

std::string random_job_toml(std::uint64_t seed) {
  ByteSource bytes = bytes_of_seed(seed);
  return random_job_toml(bytes);
}

}  // namespace slabtide::test
