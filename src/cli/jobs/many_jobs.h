#pragma once

#include <cstddef>
#include <functional>
#include <iosfwd>
#include <string>
#include <vector>

namespace slabtide {

/// One job of many, by its place among the paths: writes to streams of its own and returns the
/// exit code.
using JobWork = std::function<int(std::size_t job, std::ostream& out, std::ostream& err)>;

/// Does the work for each job, as many at once as the machine has threads. What each writes goes
/// to `out` and `err` whole and in the order of the paths, as soon as those before it are done,
/// and under its path; an error thrown inside one is told as its own fault and spoils no other.
/// Ends with how many went well. Returns the highest exit code.
int for_each_job(const std::vector<std::string>& paths, const JobWork& work, std::ostream& out,
                 std::ostream& err);

/// What --write gives for each of several jobs: an ending alone (".html") stands for a file beside
/// the job, with its name.
struct WriteTargets {
  std::vector<std::vector<std::string>> of_job;  ///< in the order of the jobs
  std::vector<std::string> all() const;
  std::string fault;  ///< in words, where one file would be written for several jobs
};
WriteTargets write_targets(const std::vector<std::string>& written,
                           const std::vector<std::string>& paths);

}  // namespace slabtide
