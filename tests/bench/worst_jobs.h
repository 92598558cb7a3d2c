#pragma once

#include <string>
#include <vector>

// Jobs at the limits of what is read, each made to be slow in its own way.

namespace slabtide::bench {

struct WorstJob {
  std::string name;
  std::string toml;
};

std::vector<WorstJob> worst_jobs();

}  // namespace slabtide::bench
