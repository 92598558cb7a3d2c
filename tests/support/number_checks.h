#pragma once

#include <string>
#include <string_view>
#include <vector>

// What must hold for every text that is printed or written, whatever the job. Findings in words,
// none if all is well.

namespace slabtide::test {

/// Values that are not numbers (nan, inf), negative zeros (also in the data of pictures) and
/// negative spans of minutes, in a text, a table, JSON or a page's markup. Styles and scripts are
/// skipped.
std::vector<std::string> number_faults(std::string_view text);

}  // namespace slabtide::test
