#include "cli/command/starter_command.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <variant>
#include <vector>

#include "cli/starter/starter_job.h"
#include "cli/starter/starter_questions.h"
#include "job/geometry/zone_geometry.h"
#include "slabtide/cli/command/run.h"
#include "slabtide/core/embedded.h"
#include "slabtide/core/units.h"
#include "slabtide/job/reading/read_job.h"

namespace slabtide {

namespace {

std::string starter(const std::vector<std::string>& options) {
  std::vector<std::string> args{"starter"};
  args.insert(args.end(), options.begin(), options.end());
  std::ostringstream out;
  std::ostringstream err;
  CHECK(run(args, out, err) == 0);
  CHECK(err.str().empty());
  return out.str();
}

int lines_that_differ(const std::string& one, const std::string& other) {
  std::istringstream a(one);
  std::istringstream b(other);
  std::string first;
  std::string second;
  int count = 0;
  while (std::getline(a, first) && std::getline(b, second)) count += first == second ? 0 : 1;
  CHECK(!std::getline(b, second));
  return count;
}

}  // namespace

TEST_CASE("the starting job takes the place and the day, and keeps the rest") {
  const std::string text = starter({"--place", "-33.87, 151.21", "--date", "2027-02-03"});
  const Parsed<Job> reading = read_job(text);
  REQUIRE(reading.ok());
  CHECK(reading.value->site.latitude_deg == -33.87);
  CHECK(reading.value->site.longitude_deg == 151.21);
  CHECK(reading.value->site.elevation_m == 0.0);
  CHECK(reading.value->site.time_zone.name() == "Australia/Sydney");
  CHECK(reading.value->pour.date == Date(2027, 2, 3));
  CHECK(lines_that_differ(text, std::string(embedded::starter_toml())) == 5);
}

TEST_CASE("without options it is the starting job itself") {
  CHECK(starter({}) == embedded::starter_toml());
}

TEST_CASE("the place and the day are taken as people write them") {
  const auto date = [](const std::string& words) {
    const Parsed<Job> reading = read_job(
        starter({"--place", "29.95° N, 90.07° W", "--date", words, "--now", "2026-05-13 6:00 PM"}));
    REQUIRE(reading.ok());
    CHECK(reading.value->site.longitude_deg == -90.07);
    return reading.value->pour.date;
  };
  CHECK(date("tomorrow") == Date(2026, 5, 14));
  CHECK(date("Fri") == Date(2026, 5, 15));
  CHECK(date("8/3/2026") == Date(2026, 8, 3));
}

TEST_CASE("tomorrow is counted on the clock of the place") {
  // 18:00 UTC is 4:00 on the 14th in Sydney.
  const Parsed<Job> reading = read_job(
      starter({"--place", "-33.87, 151.21", "--date", "tomorrow", "--now", "2026-05-13T18:00Z"}));
  REQUIRE(reading.ok());
  CHECK(reading.value->pour.date == Date(2026, 5, 15));
}

TEST_CASE("the short job is some forty lines that plan") {
  const std::string text = starter({"--short"});
  CHECK(std::count(text.begin(), text.end(), '\n') <= 42);
  CHECK(text == embedded::starter_short_toml());
  CHECK(read_job(text).ok());
}

TEST_CASE("a figure longer than the one it replaces stays apart from its comment") {
  const std::string text = starter({"--size", "18x12'6"});
  CHECK(text.find("outline = [[0, 0], [18, 0], [18, 12.5], [0, 12.5]]  # ft") != std::string::npos);
  const Parsed<Job> reading = read_job(text);
  REQUIRE(reading.ok());
  CHECK(starter({"--finish", "light broom"}) == starter({"--finish", "broom"}));
}

TEST_CASE("the slab is drawn with the house across from the sun") {
  struct Drawn {
    const char* side;
    double width_ft;
    double depth_ft;
    Point from_ft;
    Point to_ft;
  };
  for (const Drawn& drawn : {Drawn{"south", 20.0, 10.0, {0.0, 10.0}, {20.0, 10.0}},
                             Drawn{"north", 20.0, 10.0, {0.0, 0.0}, {20.0, 0.0}},
                             Drawn{"west", 10.0, 20.0, {10.0, 0.0}, {10.0, 20.0}},
                             Drawn{"east", 10.0, 20.0, {0.0, 0.0}, {0.0, 20.0}}}) {
    INFO(drawn.side);
    const Parsed<Job> reading =
        read_job(starter({"--finish", "broom", "--size", "20' x 10'", "--sun-side", drawn.side}));
    REQUIRE(reading.ok());
    const Job& job = *reading.value;
    CHECK(job.zones.front().finish == Finish::broom);
    REQUIRE(job.obstacles.size() == 1);
    // Places are moved to the middle of the drawing; only their distances are told.
    const Point from = job.obstacles.front().from;
    const Point to = job.obstacles.front().to;
    const auto on_drawing_ft = [&job](Point point) {
      return Point{ft_from_m(point.x_m + job.drawing_origin.x_m),
                   ft_from_m(point.y_m + job.drawing_origin.y_m)};
    };
    CHECK(on_drawing_ft(from).x_m == doctest::Approx(drawn.from_ft.x_m));
    CHECK(on_drawing_ft(from).y_m == doctest::Approx(drawn.from_ft.y_m));
    CHECK(on_drawing_ft(to).x_m == doctest::Approx(drawn.to_ft.x_m));
    CHECK(on_drawing_ft(to).y_m == doctest::Approx(drawn.to_ft.y_m));
    CHECK(ft2_from_m2(area_m2(job.zones.front().outline)) == doctest::Approx(200.0));
  }
  CHECK(read_job(starter({"--sun-side", "open"})).value.value().obstacles.empty());
}

TEST_CASE("a forecast takes the place of the example's weather") {
  for (const char* kind : {"--short", "--now"}) {
    std::vector<std::string> options{"--forecast", "mine.json", kind};
    if (std::string(kind) == "--now") options.emplace_back("2026-05-13 6:00 PM");
    const Parsed<Job> reading = read_job(starter(options));
    REQUIRE(reading.ok());
    REQUIRE(std::holds_alternative<ForecastFile>(reading.value->weather));
    CHECK(std::get<ForecastFile>(reading.value->weather).path == "mine.json");
  }
}

TEST_CASE("questions are asked until their answers can be") {
  const ParsedCommandLine line = read_line(starter_command.line(), {"--now", "2026-05-13 6:00 PM"});
  StarterJob job(*line.line);
  std::istringstream in("nowhere\n44.9, -91.9\n\nbrick\nbroom\n20 x 10\nwest\nno\nmine.toml\n");
  std::ostringstream out;
  const auto wish = ask_for_starter(job, in, out);
  REQUIRE(wish);
  CHECK(wish->path == "mine.toml");
  CHECK(!wish->wants_forecast);
  const Parsed<Job> reading = read_job(job.text());
  REQUIRE(reading.ok());
  CHECK(reading.value->pour.date == Date(2026, 5, 14));
  CHECK(reading.value->zones.front().finish == Finish::broom);
  CHECK(out.str().find("'nowhere', expected a place") != std::string::npos);
  CHECK(out.str().find("'brick', expected stamp") != std::string::npos);
  std::istringstream cut_short("44.9, -91.9\n");
  StarterJob other(*line.line);
  CHECK(!ask_for_starter(other, cut_short, out));
}

}  // namespace slabtide
