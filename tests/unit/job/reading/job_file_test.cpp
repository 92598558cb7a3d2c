#include <doctest/doctest.h>

#include <cctype>
#include <cmath>
#include <sstream>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "job/geometry/zone_geometry.h"
#include "job_text.h"
#include "slabtide/core/embedded.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"
#include "slabtide/job/reading/read_job.h"

// What read_job makes of each table. Messages about wrong files are tested in tests/bad_input.

namespace slabtide::test {
namespace {

const TypedWeather& typed(const Job& job) { return std::get<TypedWeather>(job.weather); }

std::string iso(const Job& job, UtcTime time) { return iso8601_minute(time, job.site.time_zone); }

bool begins_with_key(const std::string& line) {
  return line.size() > 1 && line[0] == '#' && (std::isalpha(line[1]) != 0 || line[1] == '[');
}

/// Variants of the starter job in each of which one line is uncommented, together with the header
/// above it if that is a comment too.
std::vector<std::string> starter_variants() {
  std::vector<std::string> lines;
  std::istringstream text{std::string(embedded::starter_toml())};
  for (std::string line; std::getline(text, line);) lines.push_back(line);
  std::vector<std::string> variants;
  std::size_t header = lines.size();  // the end: no header above
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (!begins_with_key(lines[i])) {
      header = lines.size();
      continue;
    }
    if (lines[i][1] == '[') header = i;
    std::string variant;
    for (std::size_t j = 0; j < lines.size(); ++j) {
      variant += lines[j].substr(j == i || j == header ? 1 : 0) + "\n";
    }
    variants.push_back(std::move(variant));
  }
  return variants;
}

}  // namespace

TEST_CASE("every unit a key may say is read as that unit") {
  const auto high_c = [](const char* line) {
    return typed(read(job_with("high = 68", line))).high_c;
  };
  CHECK(high_c("high_f = 68") == doctest::Approx(20.0));
  CHECK(high_c("high_c = 20") == doctest::Approx(20.0));
  const auto wind = [](const char* line) {
    return typed(read(job_with("wind = 10", line))).wind_10m_m_s;
  };
  CHECK(wind("wind_mph = 10") == doctest::Approx(4.4704));
  CHECK(wind("wind_m_s = 4") == doctest::Approx(4.0));
  CHECK(wind("wind_km_h = 36") == doctest::Approx(10.0));
  CHECK(wind("wind_knots = 10") == doctest::Approx(5.14444).epsilon(1e-5));
  const auto thickness = [](const char* line) {
    return read(job_with("thickness = 4", line)).zones[0].thickness_m;
  };
  CHECK(thickness("thickness_in = 5") == doctest::Approx(0.127));
  CHECK(thickness("thickness_mm = 100") == doctest::Approx(0.1));
  CHECK(thickness("thickness_cm = 12") == doctest::Approx(0.12));
  CHECK(thickness("thickness_m = 0.2") == doctest::Approx(0.2));
  CHECK(thickness("thickness_ft = 0.5") == doctest::Approx(0.1524));
  const auto content = [](const char* line) {
    return read(job_with("cementitious = 564", line)).mix.cementitious_kg_m3;
  };
  CHECK(content("cementitious_lb_yd3 = 564") == doctest::Approx(334.61).epsilon(1e-4));
  CHECK(content("cementitious_kg_m3 = 335") == doctest::Approx(335.0));
  const auto strength = [](const char* line) {
    return read(job_with("strength = 4000", line)).mix.specified_strength_psi;
  };
  CHECK(strength("strength_mpa = 27.58") == doctest::Approx(4000.0).epsilon(1e-4));
  const auto margin = [](const char* line) {
    return read(job_with("strength = 4000", line)).mix.strength_margin_psi;
  };
  CHECK(!margin("strength = 4000").has_value());
  CHECK(margin("strength_margin = 0") == 0.0);
  CHECK(margin("strength_margin = -500") == -500.0);
  CHECK(margin("strength_margin_mpa = 8").value() == doctest::Approx(1160.3).epsilon(1e-4));
  CHECK(read(job_with("elevation = 1000", "elevation_m = 305")).site.elevation_m ==
        doctest::Approx(305.0));
  CHECK(read(job_with("[[0, 0], [12, 0], [12, 10], [0, 10]]", "[[0, 0], [2, 0], [2, 2]]"))
            .zones[0]
            .outline[1]
            .x_m == doctest::Approx(0.6096));
  const auto metres = read(job_with("outline = [[0, 0], [12, 0], [12, 10], [0, 10]]",
                                    "outline_m = [[0, 0], [4, 0], [4, 3], [0, 3]]"));
  CHECK(area_m2(metres.zones[0].outline) == doctest::Approx(12.0));
}

TEST_CASE("a metric file's plain keys are metric") {
  std::string text = plain_job();
  text = replaced(text, "name = \"Side yard\"", "name = \"Side yard\"\nunits = \"si\"");
  text = replaced(text, "high = 68", "high = 20");
  text = replaced(text, "low = 41", "low = 5");
  text = replaced(text, "wind = 10", "wind = 4");
  text = replaced(text, "cementitious = 564", "cementitious = 335");
  text = replaced(text, "strength = 4000", "strength = 28");
  text = replaced(text, "concrete_temperature = 59", "concrete_temperature = 15");
  text = replaced(text, "[[0, 0], [12, 0], [12, 10], [0, 10]]", "[[0, 0], [4, 0], [4, 3], [0, 3]]");
  text = replaced(text, "thickness = 4", "thickness = 100");
  const Job job = read(text);
  CHECK(job.units == UnitSystem::si);
  CHECK(typed(job).high_c == 20.0);
  CHECK(typed(job).wind_10m_m_s == 4.0);
  CHECK(job.site.elevation_m == 1000.0);
  CHECK(job.mix.cementitious_kg_m3 == 335.0);
  CHECK(job.mix.specified_strength_psi == doctest::Approx(4061.06).epsilon(1e-5));
  CHECK(std::get<double>(job.mix.temperature) == 15.0);
  CHECK(area_m2(job.zones[0].outline) == doctest::Approx(12.0));
  CHECK(job.zones[0].thickness_m == doctest::Approx(0.1));
}

TEST_CASE("a longitude without its minus is warned of, and no country's own clock is") {
  const auto warnings = [](const std::string& longitude, const std::string& zone) {
    std::string text = job_with("longitude = -92", "longitude = " + longitude);
    const Parsed<Job> reading = read_job(replaced(text, "America/Chicago", zone));
    REQUIRE(reading.ok());
    return render_all(reading.diagnostics, "job.toml", text);
  };
  CHECK(warnings("92", "America/Chicago") ==
        "job.toml:5:13: site.longitude: warning: the clock of America/Chicago is 12 h off the sun "
        "at this longitude\n"
        "    longitude = 92\n"
        "                ^\n"
        "  Longitudes west of Greenwich are negative\n");
  // Kashgar, Kiritimati beyond the date line, the west of Spain, Samoa.
  CHECK(warnings("75.9", "Asia/Shanghai").empty());
  CHECK(warnings("-157.4", "Pacific/Kiritimati").empty());
  CHECK(warnings("-8.7", "Europe/Madrid").empty());
  CHECK(warnings("-171.8", "Pacific/Apia").empty());
}

TEST_CASE("a job without a time zone takes its place's, and says so") {
  const Parsed<Job> reading = read_job(job_with("time_zone = \"America/Chicago\"\n", ""));
  REQUIRE(reading.ok());
  CHECK(reading.value->site.time_zone.name() == "America/Chicago");
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(reading.diagnostics.front().severity == Severity::warning);
  CHECK(reading.diagnostics.front().message == "missing: America/Chicago is used, from the place");
}

TEST_CASE("what is left out has its default") {
  const Job job = read(plain_job());
  CHECK(job.site.name == "Side yard");
  CHECK(job.site.wind_setting == WindSetting::yard);
  CHECK_FALSE(job.site.ground_c);
  CHECK(job.pour.transit_min == 35.0);
  CHECK(job.pour.hauling == Hauling::chute);
  CHECK(job.pour.placing_sequence == std::vector<std::string>{"pad"});
  CHECK_FALSE(typed(job).dew_point_c);
  CHECK(job.mix.admixtures.empty());
  CHECK_FALSE(job.mix.supplier_initial_set_h);
  CHECK_FALSE(job.zones[0].admixtures);
  CHECK_FALSE(job.zones[0].tied);
  // If the content is not given: 564 lb/yd3.
  CHECK(read(job_with("cementitious = 564\n", "")).mix.cementitious_kg_m3 ==
        doctest::Approx(kg_m3_from_lb_yd3(564.0)));
}

TEST_CASE("a zero with a minus is a zero") {
  const auto mix = read(job_with("concrete_temperature = 59", R"(concrete_temperature = 59
[[mix.admixture]]
kind = "stabilizer"
shift = -0.0
[[mix.admixture]]
kind = "retarder"
dose = -0.0)"))
                       .mix;
  CHECK_FALSE(std::signbit(*mix.admixtures[0].shift_h));
  CHECK_FALSE(std::signbit(*mix.admixtures[1].dose_ml_100kg));
}

TEST_CASE("typed weather: cloud by the parts of the day, humidity in place of the dew point") {
  const Job job = read(replaced(
      job_with("cloud = 20", "cloud = { night = 0, morning = 10, afternoon = 30, evening = 20 }"),
      "wind = 10", "wind = 10\nhumidity = 45\nnext_high = 70\nnext_low = 44"));
  CHECK(typed(job).cloud.morning == doctest::Approx(0.1));
  CHECK(typed(job).cloud.evening == doctest::Approx(0.2));
  CHECK(*typed(job).humidity_at_high == doctest::Approx(0.45));
  CHECK(*typed(job).next_high_c == doctest::Approx(21.1111));
  CHECK(*typed(job).next_low_c == doctest::Approx(6.6667));
}

TEST_CASE("a forecast's file keeps its name and place") {
  const Job job =
      read(job_with("high = 68\nlow = 41\nwind = 10\ncloud = 20", "forecast = \"may.csv\""));
  const auto& file = std::get<ForecastFile>(job.weather);
  CHECK(file.path == "may.csv");
  CHECK(file.where.line == 14);
}

TEST_CASE("outlines run counter-clockwise once read, from the same first point") {
  const Job job = read(
      job_with("[[0, 0], [12, 0], [12, 10], [0, 10]]", "[[0, 0], [0, 10], [12, 10], [12, 0]]"));
  CHECK(job.zones[0].outline == read(plain_job()).zones[0].outline);
}

TEST_CASE("a walk's outline comes from its line") {
  const Job job = read(job_with("outline = [[0, 0], [12, 0], [12, 10], [0, 10]]",
                                "path = [[0, 0], [10, 0]]\nwidth = 4"));
  REQUIRE(job.zones[0].path);
  CHECK(ft2_from_m2(area_m2(job.zones[0].outline)) == doctest::Approx(40.0));
}

TEST_CASE("directions by word and by degrees") {
  const auto toward = [](const char* value) {
    return *read(job_with("thickness = 4", std::string("thickness = 4\nplaced_toward = ") + value))
                .zones[0]
                .placed_toward_deg;
  };
  CHECK(toward("\"north\"") == 0.0);
  CHECK(toward("\"Southwest\"") == 225.0);
  CHECK(toward("\"north-west\"") == 315.0);
  CHECK(toward("\"SE\"") == 135.0);
  CHECK(toward("100") == 100.0);
  CHECK(toward("360") == 0.0);
}

TEST_CASE("times: of the pour's date, dated, with an offset, as TOML's own") {
  const auto start = [](const char* value) {
    const Job job = read(job_with("start = \"08:00\"", std::string("start = ") + value));
    return iso(job, job.pour.start);
  };
  CHECK(start("\"8:00\"") == "2026-05-14T08:00:00-05:00");
  CHECK(start("08:00:00") == "2026-05-14T08:00:00-05:00");
  CHECK(start("\"2026-05-14T00:30\"") == "2026-05-14T00:30:00-05:00");
  CHECK(start("2026-05-14T00:30:00") == "2026-05-14T00:30:00-05:00");
  CHECK(start("\"2026-05-14T13:00Z\"") == "2026-05-14T08:00:00-05:00");
  CHECK(start("\"7:30 AM\"") == "2026-05-14T07:30:00-05:00");
  CHECK(start("\"1 pm\"") == "2026-05-14T13:00:00-05:00");
  CHECK(start("\"2026-05-14 12:15 AM\"") == "2026-05-14T00:15:00-05:00");
}

TEST_CASE("the clock has the hours that the job says, else those of its units") {
  const auto hours = [](const char* line) {
    return clock_of(read(job_with("[site]", std::string(line) + "\n[site]"))).style.hours;
  };
  CHECK(hours("") == HourCount::twelve);
  CHECK(hours("clock = 24") == HourCount::twenty_four);
  CHECK(hours("clock = 12") == HourCount::twelve);
  Job job = read(job_with("[site]", "[site]"));
  job.units = UnitSystem::si;
  CHECK(clock_style(job).hours == HourCount::twenty_four);
  CHECK_FALSE(clock_style(job).month_first);
}

TEST_CASE("a colour's key and the gray in it may be spelled either way") {
  const auto colour = [](const char* line) {
    return read(job_with("finish = \"broom\"", std::string("finish = \"broom\"\n") + line))
        .zones.back()
        .colour;
  };
  CHECK(colour("colour = \"tan\"") == Colour::red_or_tan);
  CHECK(colour("color = \"tan\"") == Colour::red_or_tan);
  CHECK(colour("color = \"gray\"") == Colour::grey);
  CHECK(colour("colour = \"grey\"") == Colour::grey);
}

TEST_CASE("a cover's hours run into the next morning") {
  const Job job = read(job_with("[weather]", R"([[pour.cover]]
kind = "blanket"
r_value = 5
from = "19:00"
to = "07:00"
zones = ["pad"]

[weather])"));
  REQUIRE(job.pour.covers.size() == 1);
  const auto& cover = job.pour.covers[0];
  CHECK(iso(job, cover.from) == "2026-05-14T19:00:00-05:00");
  CHECK(iso(job, cover.to) == "2026-05-15T07:00:00-05:00");
  CHECK(cover.resistance_m2k_w == doctest::Approx(0.8805));
  CHECK(cover.zones == std::vector<std::string>{"pad"});
}

TEST_CASE("joints as drawn, none, and left to be proposed") {
  const auto joints = [](const char* more) {
    return read(job_with("finish = \"broom\"", std::string("finish = \"broom\"\n") + more))
        .zones[0]
        .joints;
  };
  CHECK_FALSE(joints(""));
  REQUIRE(joints("joints = []"));
  CHECK(joints("joints = []")->empty());
  const auto drawn = joints("[[zone.joint]]\nfrom = [6, 0]\nto = [6, 10]");
  REQUIRE(drawn->size() == 1);
  CHECK(drawn->at(0).to.y_m == doctest::Approx(3.048));
}

TEST_CASE("the order, its loads, and the crew") {
  const Job job = read(plain_job() + R"(
[order]
allowance = 10
low_base = 0.5
load_size = 1.5
short_load_m3 = 2
discharge_limit = 120
truck_spacing_h = 0.5
[[order.load]]
number = 2
[[order.load.admixture]]
kind = "retarder"
dose = 3
[crew]
finishers = 3
arrive_before = 30
)");
  CHECK(job.order.allowance_fraction == doctest::Approx(0.1));
  CHECK(job.order.low_base_m == doctest::Approx(0.0127));
  CHECK(job.order.load_size_m3 == doctest::Approx(1.146832));
  CHECK(job.order.short_load_m3 == 2.0);
  CHECK(job.order.discharge_limit_min == 120.0);
  CHECK(*job.order.truck_spacing_min == 30.0);
  REQUIRE(job.order.loads.size() == 1);
  CHECK(job.order.loads[0].number == 2);
  CHECK(job.order.loads[0].admixtures.at(0).kind == AdmixtureKind::retarder);
  CHECK(job.crew.finishers == 3);
  CHECK(job.crew.arrive_before_min == 30.0);
}

TEST_CASE("an option holds what it changes and nothing else") {
  const Job job = read(plain_job() + R"(
[[option]]
name = "earlier"
start_shift_h = -1
finishers = 5
[[option]]
name = "retard it"
last_loads = 1
wind_ratio = 0.3
saws = ["wet"]
shaded_zones = ["pad"]
zone_order = ["pad"]
[[option.admixture]]
kind = "retarder"
shift = 1.5
)");
  REQUIRE(job.options.size() == 2);
  CHECK(*job.options[0].start_shift_min == -60.0);
  CHECK(job.options[0].finishers == 5);
  CHECK_FALSE(job.options[0].admixtures);
  CHECK(job.options[0].placing_sequence.empty());
  CHECK(*job.options[1].admixtures->at(0).shift_h == 1.5);
  CHECK(job.options[1].last_loads == 1);
  CHECK(*job.options[1].wind_ratio == 0.3);
  CHECK(job.options[1].saws == std::vector{SawKind::wet});
  CHECK(job.options[1].shaded_zones == std::vector<std::string>{"pad"});
}

TEST_CASE("an option changes trucks, concrete, curing and single loads") {
  const Job job = read(plain_job() + R"(
[[option]]
name = "by load"
load_size = 5
truck_spacing = 45
concrete_temperature = 76
curing = "blanket"
r_value = 6
evaporation_film = true
[[option.load]]
number = 2
[[option.load.admixture]]
kind = "retarder"
dose = 1
[[option]]
name = "its own"
own_truck = "pad"
truck_wait = 90
)");
  REQUIRE(job.options.size() == 2);
  const OptionNote& by_load = job.options[0];
  CHECK(*by_load.load_size_m3 == doctest::Approx(m3_from_yd3(5.0)));
  CHECK(by_load.truck_spacing_min == 45.0);
  CHECK(*by_load.concrete_c == doctest::Approx(celsius_from_fahrenheit(76.0)));
  CHECK(by_load.curing == CuringKind::blanket);
  CHECK(*by_load.curing_blanket_m2k_w == doctest::Approx(m2k_w_from_r_us(6.0)));
  CHECK(by_load.evaporation_film == true);
  REQUIRE(by_load.loads.size() == 1);
  CHECK(by_load.loads[0].number == 2);
  CHECK(by_load.loads[0].admixtures.size() == 1);
  REQUIRE(job.options[1].own_truck);
  CHECK(job.options[1].own_truck->zone == "pad");
  CHECK(job.options[1].own_truck->wait_min == 90.0);
}

TEST_CASE("release agent, sealer and their labels") {
  const Job usual = read(plain_job());
  CHECK(usual.finish_work.release == ReleaseKind::powder);
  CHECK(usual.finish_work.sealer == SealerKind::sealer);
  const Job labelled = read(plain_job() + R"(
[finish_work]
release = "liquid"
wash_after_h = 36
seal_after_days = 7
)");
  CHECK(labelled.finish_work.release == ReleaseKind::liquid);
  CHECK(labelled.finish_work.wash_after_h == 36.0);
  CHECK(labelled.finish_work.seal_after_days == 7.0);
  const Job cured = read(plain_job() + R"(
[finish_work]
release = "liquid"
sealer = "cure and seal"
)");
  CHECK(cured.pour.curing == CuringKind::film);
}

TEST_CASE("walls and trees") {
  const Job job = read(plain_job() + R"(
[[obstacle]]
kind = "wall"
from = [0, 10]
to = [12, 10]
height = 10
[[obstacle]]
kind = "tree"
at = [20, 0]
radius = 10
height_m = 9
light_through = 25
)");
  REQUIRE(job.obstacles.size() == 2);
  CHECK(job.obstacles[0].to.y_m == doctest::Approx(3.048));
  CHECK(job.obstacles[0].light_through == 0.0);
  CHECK(job.obstacles[1].from.x_m == doctest::Approx(6.096));
  CHECK(job.obstacles[1].radius_m == doctest::Approx(3.048));
  CHECK(job.obstacles[1].height_m == 9.0);
  CHECK(job.obstacles[1].light_through == doctest::Approx(0.25));
}

TEST_CASE("the practice table is kept line for line, its name blanked out of the headers") {
  const std::string text = replaced(plain_job(), "[mix]", R"([practice]
a = 1
[ practice . stamp ]  # softer
opens_psi = 35
[mix])");
  const Job job = read(text);
  CHECK(job.practice_where == SourcePosition{19, 1});
  CHECK(job.practice_overrides_toml.starts_with(std::string(19, '\n') + "a = 1\n"));
  CHECK(job.practice_overrides_toml.find("\n[            stamp ]  # softer\nopens_psi = 35\n\n") !=
        std::string::npos);
  CHECK(job.practice_overrides_toml.find("w_cm") == std::string::npos);
}

TEST_CASE("every key that the starting job file keeps in a comment is known") {
  const auto variants = starter_variants();
  CHECK(variants.size() >= 40);
  for (const auto& text : variants) {
    const auto reading = read_job(text);
    for (const auto& finding : reading.diagnostics) {
      CHECK_MESSAGE(!finding.message.starts_with("unknown"), render(finding, "starter", text));
    }
  }
}

TEST_CASE("a text too large, or made to exhaust the stack, is refused quickly") {
  constexpr std::size_t fifty_mb = std::size_t{50} * 1024 * 1024;
  const auto message = [](const std::string& text) {
    const auto reading = read_job(text);
    REQUIRE_FALSE(reading.ok());
    REQUIRE(reading.diagnostics.size() == 1);
    return reading.diagnostics[0].message;
  };
  CHECK(message(std::string(fifty_mb, 'a')) ==
        "the text is 52428800 bytes long, the most a job file may have is 1048576");
  // A header and a key nested as deeply as two lines allow.
  std::string deep = "[a";
  for (int i = 0; i < 2000; ++i) deep += ".a";
  deep += "]\nb";
  for (int i = 0; i < 2000; ++i) deep += ".b";
  CHECK(message(deep + " = 1\n") == "tables or lists are nested over 16 levels deep");
}

}  // namespace slabtide::test
