#include "cli/jobs/many_jobs.h"

#include <sstream>
#include <stdexcept>

#include <doctest/doctest.h>

#include "cli/line/command_line.h"
#include "slabtide/cli/command/run.h"

namespace slabtide {
namespace {

struct Ran {
  int exit_code = 0;
  std::string out;
  std::string err;
};

Ran run_all(const std::vector<std::string>& paths, const JobWork& work) {
  std::ostringstream out;
  std::ostringstream err;
  Ran ran;
  ran.exit_code = for_each_job(paths, work, out, err);
  ran.out = out.str();
  ran.err = err.str();
  return ran;
}

TEST_CASE("jobs are told in the order given, one that fails or breaks spoils no other") {
  const std::vector<std::string> paths{"a", "b", "c", "d"};
  const Ran ran = run_all(paths, [](std::size_t job, std::ostream& out, std::ostream& err) {
    if (job == 1) throw std::runtime_error("no such luck");
    if (job == 2) {
      err << "c is wrong\n";
      return exit_input_wrong;
    }
    out << "plan " << job << "\n";
    return exit_done;
  });
  CHECK(ran.exit_code == exit_input_wrong);
  CHECK(ran.out == "a\n\nplan 0\n\nd\n\nplan 3\n\n4 jobs: 2 planned, not b, c\n");
  CHECK(ran.err ==
        "b: something went wrong inside the program: no such luck\n"
        "  this is a fault of the program, not of your file; nothing was written for it\n"
        "c is wrong\n");
}

TEST_CASE("many failures are counted, ten of them named") {
  const std::vector<std::string> paths(25, "x");
  const Ran ran = run_all(paths, [](std::size_t job, std::ostream&, std::ostream&) {
    return job < 5 ? exit_done : exit_could_not;
  });
  CHECK(ran.exit_code == exit_could_not);
  CHECK(ran.out == "25 jobs: 5 planned, not x, x, x, x, x, x, x, x, x, x and 10 more\n");
}

TEST_CASE("an ending alone writes beside each job") {
  const WriteTargets targets =
      write_targets({".html", ".json"}, {"a.toml", "yard/b.toml", "no_ending"});
  CHECK(targets.fault.empty());
  REQUIRE(targets.of_job.size() == 3);
  CHECK(targets.of_job[0] == std::vector<std::string>{"a.html", "a.json"});
  CHECK(targets.of_job[1] == std::vector<std::string>{"yard/b.html", "yard/b.json"});
  CHECK(targets.of_job[2] == std::vector<std::string>{"no_ending.html", "no_ending.json"});
}

TEST_CASE("one file for several jobs is refused, for one job it is as it stands") {
  CHECK(write_targets({"day.html", "day.html"}, {"a.toml"}).fault.empty());
  CHECK(write_targets({"./.html"}, {"a.toml"}).of_job[0][0] == "./.html");
  const std::string fault = write_targets({"day.html"}, {"a.toml", "b.toml"}).fault;
  CHECK(fault ==
        "--write: day.html would be written for more than one job; an ending alone, as in --write "
        ".html, writes beside each job");
  // Two jobs whose names differ only in the ending.
  CHECK(!write_targets({".html"}, {"a.toml", "a.job"}).fault.empty());
}

TEST_CASE("of many jobs no days are drawn unasked") {
  const std::string job = SLABTIDE_SOURCE_DIR "/tests/cli/plan_many/pad.toml";
  const auto has_bands = [&job](std::size_t jobs, const std::vector<std::string>& options) {
    std::vector<std::string> args{"plan"};
    args.insert(args.end(), jobs, job);
    args.insert(args.end(), options.begin(), options.end());
    std::ostringstream out;
    std::ostringstream err;
    REQUIRE(run(args, out, err) == exit_done);
    return out.str().find("8 in 10") != std::string::npos;
  };
  CHECK(has_bands(2, {}));
  CHECK(!has_bands(21, {}));
  CHECK(has_bands(21, {"--draws", "4"}));
}

}  // namespace
}  // namespace slabtide
