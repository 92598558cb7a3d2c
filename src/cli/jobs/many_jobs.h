#pragma once

#include <cstddef>
#include <functional>
#include <iosfwd>
#include <string>
#include <vector>

namespace slabtide {

/// The work for one of several jobs, given its index among the paths. It writes to its own streams
/// and returns the exit code.
using JobWork = std::function<int(std::size_t job, std::ostream& out, std::ostream& err)>;

/// Does the work for each job, running as many at once as the machine has threads. The output of
/// each job goes to `out` and `err` in one piece, under its path and in the order of the paths, as
/// soon as the jobs before it are done. An error thrown inside one job is reported for that job and
/// does not affect the others. The last line says how many succeeded. Returns the highest exit
/// code.
int for_each_job(const std::vector<std::string>& paths, const JobWork& work, std::ostream& out,
                 std::ostream& err);

/// The files that --write gives for each of several jobs: an ending alone (".html") means a file
/// beside the job with the job's name.
struct WriteTargets {
  std::vector<std::vector<std::string>> of_job;  ///< in the order of the jobs
  std::vector<std::string> all() const;
  std::string fault;  ///< in words, if several jobs would write the same file
};
WriteTargets write_targets(const std::vector<std::string>& written,
                           const std::vector<std::string>& paths);

}  // namespace slabtide
