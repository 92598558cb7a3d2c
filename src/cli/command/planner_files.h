#pragma once

#include <filesystem>
#include <optional>
#include <vector>

namespace slabtide {

/// The planner as it was built: the page that is whole by itself, and the folder for a web host.
struct PlannerFiles {
  std::filesystem::path page;
  std::filesystem::path site;
};

/// Where the planner may stand for a program in `folder`, in the order looked at: as installed with
/// the program, then as built beside it.
std::vector<PlannerFiles> planner_places(const std::filesystem::path& folder);

/// The first of them whose page is there.
std::optional<PlannerFiles> find_planner(const std::vector<PlannerFiles>& places);

/// The folder of the running program; empty if the system does not say.
std::filesystem::path program_folder();

}  // namespace slabtide
