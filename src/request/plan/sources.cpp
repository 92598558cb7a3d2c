#include "slabtide/request/plan/sources.h"

#include <memory>
#include <utility>

namespace slabtide {

Sources sources_in_memory(std::map<std::string, std::string> texts, TimeZoneLoader time_zone,
                          UtcTime now) {
  const auto held = std::make_shared<const std::map<std::string, std::string>>(std::move(texts));
  const auto read = [held](const std::string& path) -> FileText {
    const auto found = held->find(path);
    if (found != held->end()) return {found->second, {}};
    return {std::nullopt, {"this text is missing", "Add it, or take its name out of the job"}};
  };
  return {[held](const std::string& path) { return !held->contains(path); }, read,
          std::move(time_zone), [now] { return now; }};
}

}  // namespace slabtide
