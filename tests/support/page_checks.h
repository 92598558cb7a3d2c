#pragma once

#include <string>
#include <string_view>
#include <vector>

// What a page shows against the JSON of the same plan. Findings in words, none if all is well.

namespace slabtide::test {

/// Times, figures and texts of the page that differ from the JSON they point to.
std::vector<std::string> page_faults(std::string_view page, std::string_view plan_json);

}  // namespace slabtide::test
