#pragma once

#include <string>
#include <string_view>

// What must hold of every plan that is printed or written, whatever the job. Each gives the first
// fault in words, nothing where there is none.

namespace slabtide::test {

/// A number that is none (nan, inf) or a zero with a sign, in a text, a table, JSON or a page's
/// markup. Styles and scripts are left out.
std::string number_fault(std::string_view text);

/// Times of the plan's JSON that contradict each other: a window that closes before it opens, set
/// times the wrong way round, finishing on a slab that has set, feet, water or sealer on one that
/// has not, a truck or a task that ends before it starts.
std::string order_fault(std::string_view plan_json);

/// Times, figures and texts of the page that are not those of the JSON they point to.
std::string page_fault(std::string_view page, std::string_view plan_json);

}  // namespace slabtide::test
