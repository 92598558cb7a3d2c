#include "cli/command/starter_command.h"

#include <doctest/doctest.h>

#include <sstream>
#include <string>
#include <vector>

#include "slabtide/cli/command/run.h"
#include "slabtide/core/embedded.h"
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

}  // namespace slabtide
