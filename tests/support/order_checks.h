#pragma once

#include <string>
#include <string_view>
#include <vector>

// What must hold between the times of every plan, whatever the job. Findings in words, none if all
// is well.

namespace slabtide::test {

/// Times in the plan's JSON that contradict each other: a window that opens before the sheen is
/// gone or closes before it opens, initial set after final set, a band whose `late` is first,
/// people, water or sealer on a slab that has not set, a truck or task that ends before it starts,
/// a zone's saw that starts or is due at another time than its cuts are,
/// work before its window or in time on what can be walked on, washing and sealing before field and
/// border have set. (The middle of a thick slab may set while its top is still being worked.)
std::vector<std::string> order_faults(std::string_view plan_json);

}  // namespace slabtide::test
