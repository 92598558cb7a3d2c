#pragma once

#include <string>
#include <string_view>
#include <vector>

// What must hold of every plan that is printed or written, whatever the job. Each gives its
// faults in words, none where all is well.

namespace slabtide::test {

/// A number that is none (nan, inf), a zero with a sign (in the lines of a picture too) or a span
/// of minutes under zero, in a text, a table, JSON or a page's markup. Styles and scripts are left
/// out.
std::vector<std::string> number_faults(std::string_view text);

/// Times of the plan's JSON that contradict each other: a window that opens before the sheen is
/// gone or closes before it opens, set times the wrong way round, a band whose late comes first,
/// feet, water or sealer on a slab that has not set, a truck or a task that ends before it starts,
/// work before its window or in time on what can be walked on, washing and sealing before field and
/// border have set. (A thick slab may set in its middle while its top is still worked.)
std::vector<std::string> order_faults(std::string_view plan_json);

/// Times, figures and texts of the page that are not those of the JSON they point to.
std::vector<std::string> page_faults(std::string_view page, std::string_view plan_json);

}  // namespace slabtide::test
