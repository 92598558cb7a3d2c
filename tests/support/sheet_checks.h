#pragma once

#include <string>
#include <string_view>
#include <vector>

// What must hold for every plan that is printed or written, whatever the job. Each function returns
// its findings in words, none if all is well.

namespace slabtide::test {

/// Values that are not numbers (nan, inf), negative zeros (also in the data of pictures) and
/// negative spans of minutes, in a text, a table, JSON or a page's markup. Styles and scripts are
/// skipped.
std::vector<std::string> number_faults(std::string_view text);

/// Times in the plan's JSON that contradict each other: a window that opens before the sheen is
/// gone or closes before it opens, initial set after final set, a band whose `late` is first,
/// people, water or sealer on a slab that has not set, a truck or task that ends before it starts,
/// a zone's saw that starts or is due at another time than its cuts are,
/// work before its window or in time on what can be walked on, washing and sealing before field and
/// border have set. (The middle of a thick slab may set while its top is still being worked.)
std::vector<std::string> order_faults(std::string_view plan_json);

/// Times, figures and texts of the page that differ from the JSON they point to.
std::vector<std::string> page_faults(std::string_view page, std::string_view plan_json);

}  // namespace slabtide::test
