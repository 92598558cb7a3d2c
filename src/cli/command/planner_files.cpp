#include "planner_files.h"

#include <algorithm>
#include <system_error>

namespace slabtide {

std::vector<PlannerFiles> planner_places(const std::filesystem::path& folder) {
  const std::filesystem::path above = folder.parent_path();
  const std::filesystem::path shared = above / "share" / "slabtide";
  const std::filesystem::path built = above / "planner";
  return {{shared / "planner.html", shared / "planner"}, {built / "index.html", built / "site"}};
}

std::optional<PlannerFiles> find_planner(const std::vector<PlannerFiles>& places) {
  const auto there = [](const PlannerFiles& files) {
    std::error_code code;
    return std::filesystem::is_regular_file(files.page, code);
  };
  const auto found = std::find_if(places.begin(), places.end(), there);
  return found == places.end() ? std::nullopt : std::optional(*found);
}

std::filesystem::path program_folder() {
  std::error_code code;
  return std::filesystem::read_symlink("/proc/self/exe", code).parent_path();
}

}  // namespace slabtide
