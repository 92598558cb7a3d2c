#include "slabtide/job/reading/read_job.h"

#include <doctest/doctest.h>

#include <string>
#include <variant>

#include "job/geometry/zone_geometry.h"
#include "slabtide/core/embedded.h"
#include "slabtide/core/units.h"
#include "support/run_program.h"

namespace slabtide::test {
namespace {

Job read_file_of_job(const std::string& name) {
  const auto reading = read_job(read_text(std::string(SLABTIDE_SOURCE_DIR) + "/data/" + name));
  REQUIRE(reading.ok());
  CHECK(reading.diagnostics.empty());
  return *reading.value;
}

}  // namespace

TEST_CASE("the demo's spring day reads as it is written") {
  const Job job = read_file_of_job("demo/spring.toml");
  CHECK(job.units == UnitSystem::us);
  CHECK(job.site.latitude_deg == 45.1);
  CHECK(job.site.longitude_deg == -91.6);
  CHECK(job.site.elevation_m == doctest::Approx(320.04));
  CHECK(job.site.time_zone.name() == "America/Chicago");
  CHECK(iso8601_minute(job.pour.start, job.site.time_zone) == "2026-05-14T08:00:00-05:00");
  CHECK(job.pour.saws == std::vector{SawKind::early_entry, SawKind::wet});
  const auto& day = std::get<TypedWeather>(job.weather);
  CHECK(day.high_c == doctest::Approx(18.8889));
  CHECK(day.low_c == doctest::Approx(5.0));
  CHECK(*day.next_low_c == doctest::Approx(6.1111));
  CHECK_FALSE(day.next_high_c);
  CHECK(day.wind_10m_m_s == doctest::Approx(3.12928));
  CHECK(day.cloud.afternoon == doctest::Approx(0.2));
  CHECK(job.mix.cementitious_kg_m3 == doctest::Approx(334.61).epsilon(1e-4));
  CHECK(job.mix.air_fraction == doctest::Approx(0.06));
  CHECK(std::get<double>(job.mix.temperature) == doctest::Approx(16.6667));
  REQUIRE(job.zones.size() == 3);
  CHECK(ft2_from_m2(area_m2(job.zones[0].outline)) == doctest::Approx(168.0));
  CHECK(job.zones[0].border->width_m == doctest::Approx(0.3048));
  CHECK(job.zones[0].faces.at(0).facing_deg == 180.0);
  CHECK(job.zones[0].faces.at(0).height_m == doctest::Approx(0.1778));
  CHECK(job.zones[0].placed_toward_deg == 270.0);
  CHECK(ft2_from_m2(area_m2(job.zones[1].outline)) == doctest::Approx(160.0).epsilon(0.005));
  CHECK(job.zones[1].path->line.size() == 21);
  CHECK(job.obstacles[1].kind == ObstacleKind::tree);
  CHECK(job.obstacles[1].light_through == doctest::Approx(0.15));
  CHECK(job.practice_overrides_toml.empty());
}

// The forms are those people type: common practice, no source.
TEST_CASE("what is typed without quotation marks and with its unit reads alike") {
  struct Typed {
    const char* toml;
    const char* typed;
  };
  for (const Typed& row : {
           Typed{"date = 2026-05-14", "date = 5/14/2026"},
           Typed{"date = 2026-05-14", "date = Thu, May 14, 2026"},
           Typed{"start = \"8:00 AM\"", "start = 8 AM"},
           Typed{"start = \"8:00 AM\"", "start = 8:00"},
           Typed{"start = \"8:00 AM\"", "start = 5/14/2026 8 AM"},
           Typed{"start = \"8:00 AM\"", "start = 8"},
           Typed{"start = \"8:00 AM\"", "start = 800"},
           Typed{"start = \"8:00 AM\"", "start = 0800"},
           Typed{"start = \"8:00 AM\"", "start = 5/14/2026 at 8"},
           Typed{"start = \"8:00 AM\"", "start = 8.5  # refused"},
           Typed{"latitude = 45.0", "latitude = 45° N"},
           Typed{"longitude = -92.0", "longitude = 92° 0' W"},
           Typed{"thickness = 4", "thickness = 4 in"},
           Typed{"thickness = 4", "thickness = 4\""},
           Typed{"width = 4\n", "width = 4'\n"},
           Typed{"width = 4\n", "width = 3'12\"  # refused\n"},
           Typed{"[16, 0], [16, 12]", "[16', 0], [192 in, 12 ft]"},
           Typed{"high = 66", "high = 66 F"},
           Typed{"high = 66", "high = 66 degrees"},
           Typed{"high = 66", "high = 66 deg"},
           Typed{"thickness = 4", "thickness = 4-inch"},
           Typed{"air = 6", "air = 6%"},
           Typed{"w_cm = 0.45", "w_cm = .45"},
           Typed{"finish = \"stamp\"", "finish = stamp"},
           Typed{"finish = \"stamp\"", "finish = “stamp”"},
           Typed{"finish = \"stamp\"", "finish = Stamped"},
           Typed{"tied = true", "tied = yes"},
       }) {
    INFO(row.typed);
    const std::string plain(embedded::starter_toml());
    const std::size_t at = plain.find(row.toml);
    REQUIRE(at != std::string::npos);
    std::string text = plain;
    text.replace(at, std::string_view(row.toml).size(), row.typed);
    const Parsed<Job> typed = read_job(text);
    if (std::string_view(row.typed).find("refused") != std::string_view::npos) {
      CHECK(!typed.ok());
      continue;
    }
    INFO(render_all(typed.diagnostics, "job", text));
    REQUIRE(typed.ok());
    const Job job = *read_job(plain).value;
    CHECK(typed.value->pour.start == job.pour.start);
    CHECK(typed.value->site.latitude_deg == job.site.latitude_deg);
    CHECK(typed.value->site.longitude_deg == job.site.longitude_deg);
    CHECK(typed.value->zones[0].thickness_m == job.zones[0].thickness_m);
    CHECK(typed.value->zones[0].outline == job.zones[0].outline);
    CHECK(typed.value->zones[0].tied == job.zones[0].tied);
    CHECK(typed.value->zones[0].finish == job.zones[0].finish);
    CHECK(typed.value->zones[1].path->width_m == job.zones[1].path->width_m);
    CHECK(std::get<TypedWeather>(typed.value->weather).high_c ==
          std::get<TypedWeather>(job.weather).high_c);
    CHECK(typed.value->mix.air_fraction == job.mix.air_fraction);
    CHECK(typed.value->mix.w_cm == job.mix.w_cm);
  }
}

TEST_CASE("a zone is placed after those it names, wherever they are listed") {
  const std::string porch =
      "\n[[zone]]\nname = \"porch\"\noutline = [[0, 20], [8, 20], [8, 26], "
      "[0, 26]]\nthickness = 4\nfinish = \"stamp\"\nreached_over = \"pad\"\n";
  const auto with = [&porch](const std::string& line) {
    return read(replaced(plain_job(), "finish = \"broom\"", "finish = \"broom\"\n" + line) + porch);
  };
  CHECK(with("").pour.placing_sequence == std::vector<std::string>{"pad", "porch"});
  CHECK(with("after = \"porch\"").pour.placing_sequence ==
        std::vector<std::string>{"porch", "pad"});
  CHECK(with("").zones[1].reached_over == std::vector<std::string>{"pad"});
}

TEST_CASE(
    "tied edges are counted along the outline as it is written, and say that the zone is tied") {
  const auto with = [](const std::string& lines) {
    return job_with("finish = \"broom\"", "finish = \"broom\"\n" + lines);
  };
  const std::string square = "[[0, 0], [12, 0], [12, 10], [0, 10]]";
  const Zone pad = read(with("tied_edges = [2, 4]")).zones[0];
  CHECK(pad.tied);
  REQUIRE(pad.tied_edges.size() == 2);
  CHECK(pad.tied_edges[0].from == pad.outline[1]);
  CHECK(pad.tied_edges[0].to == pad.outline[2]);
  CHECK(pad.tied_edges[1].to == pad.outline[0]);
  // The other way round, and from a corner that is not the drawing's origin.
  const Zone turned =
      read(replaced(with("tied_edges = 1"), square, "[[3.1, 2.7], [3.1, 13], [15, 13], [15, 2.7]]"))
          .zones[0];
  REQUIRE(turned.tied_edges.size() == 1);
  CHECK(turned.tied_edges[0].from == turned.outline[0]);
  CHECK(turned.tied_edges[0].to == turned.outline[3]);
  CHECK(read(with("tied = true")).zones[0].tied_edges.empty());
  for (const char* wrong : {"tied_edges = [5]", "tied_edges = [0]", "tied_edges = [1.5]",
                            "tied_edges = [north]", "tied = false\ntied_edges = [1]"}) {
    INFO(wrong);
    const auto reading = read_job(with(wrong));
    REQUIRE(!reading.ok());
    CHECK(reading.diagnostics.front().key == "zone[1].tied_edges");
  }
  const auto walk = read_job(replaced(with("tied_edges = [1]"), "outline = " + square,
                                      "path = [[0, 0], [12, 0]]\nwidth = 4"));
  REQUIRE(!walk.ok());
  CHECK(walk.diagnostics.front().message == "the edges of a walk have no numbers");
}

TEST_CASE("a pour may be pumped, from a line or a boom") {
  for (const char* pump : {"pump", "line pump", "boom pump", "Line-Pump", "pump truck"}) {
    INFO(pump);
    CHECK(read(job_with("start = \"08:00\"", std::string("start = \"08:00\"\nhauling = ") + pump))
              .pour.hauling == Hauling::pump);
  }
}

// What crews say: common practice, no source.
TEST_CASE("a finish is read by what a crew calls it") {
  const auto finish = [](const std::string& word) {
    return read(job_with("finish = \"broom\"", "finish = " + word)).zones.front().finish;
  };
  for (const char* broom : {"light broom", "Heavy Broom", "medium-broom", "broomed", "broom finish",
                            "light broom finish"}) {
    INFO(broom);
    CHECK(finish(broom) == Finish::broom);
  }
  CHECK(finish("stamped") == Finish::stamp);
  CHECK(finish("steel trowel") == Finish::trowel);
  CHECK(finish("salt finish") == Finish::salt);
  CHECK(!read_job(job_with("finish = \"broom\"", "finish = light")).ok());
}

TEST_CASE("noon and midnight are times") {
  const auto start = [](const std::string& time) {
    const Job job = read(job_with("start = \"08:00\"", "start = " + time));
    return job.site.time_zone.local_from_utc(job.pour.start);
  };
  CHECK(start("noon") == LocalTime(Date(2026, 5, 14), boost::posix_time::hours(12)));
  CHECK(start("2026-05-14 noon") == start("noon"));
  CHECK(start("12 noon") == start("12 PM"));
  CHECK(start("midnight") == start("12 AM"));
}

TEST_CASE("a zone without daylight saving time is warned of") {
  const auto reading = read_job(job_with("\"America/Chicago\"", "EST"));
  REQUIRE(reading.ok());
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(reading.diagnostics.front().message ==
        "EST is standard time all year, without daylight saving time");
  CHECK(reading.diagnostics.front().next_step == "Name its city: \"America/New_York\"");
}

TEST_CASE("the demo's hot day has a retarder in its last zone alone") {
  const Job job = read_file_of_job("demo/hot.toml");
  CHECK(job.mix.ash_fraction == doctest::Approx(0.2));
  CHECK(job.mix.admixtures.empty());
  CHECK_FALSE(job.zones[0].admixtures);
  REQUIRE(job.zones[2].admixtures);
  CHECK(job.zones[2].admixtures->at(0).kind == AdmixtureKind::retarder);
  // 2 fl oz/cwt; 65.2 mL/100 kg to the ounce.
  CHECK(*job.zones[2].admixtures->at(0).dose_ml_100kg == doctest::Approx(130.4).epsilon(1e-3));
}

TEST_CASE("the starting job file plans as it stands") {
  const auto reading = read_job(embedded::starter_toml());
  CHECK(reading.ok());
  CHECK(reading.diagnostics.empty());
}

}  // namespace slabtide::test
