#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string_view>

#include "slabtide/day/practice/operation.h"

namespace slabtide {

TEST_CASE("every operation has an id of its own, and words") {
  std::set<std::string_view> ids;
  for (std::size_t i = 0; i < operation_count; ++i) {
    const auto operation = static_cast<Operation>(i);
    CHECK(ids.insert(operation_id(operation)).second);
    CHECK(!operation_words(operation).empty());
  }
}

TEST_CASE("a finish's main operation is one of its operations") {
  for (const Finish finish :
       {Finish::stamp, Finish::texture_roll, Finish::broom, Finish::float_finish, Finish::trowel,
        Finish::exposed_aggregate, Finish::salt}) {
    const auto operations = operations_of(finish);
    CHECK(std::count(operations.begin(), operations.end(), main_operation(finish)) == 1);
    CHECK(std::is_sorted(operations.begin(), operations.end(), [](Operation a, Operation b) {
      // Joints are tooled between float and broom; all other operations are in the order of the
      // day.
      const auto place = [](Operation o) {
        return o == Operation::tooled_joint ? Operation::float_work : o;
      };
      return place(a) < place(b);
    }));
  }
}

TEST_CASE("what is troweled, salted, exposed or floated is floated; what is broomed is not") {
  // Common practice, no source: a broomed slab is bull-floated behind the screed and broomed once
  // its sheen is gone.
  const auto is_floated = [](Finish finish) {
    const auto operations = operations_of(finish);
    return std::count(operations.begin(), operations.end(), Operation::float_work) == 1;
  };
  CHECK(!is_floated(Finish::broom));
  CHECK(is_floated(Finish::trowel));
  CHECK(is_floated(Finish::float_finish));
  CHECK(is_floated(Finish::exposed_aggregate));
  CHECK(is_floated(Finish::salt));
}

}  // namespace slabtide
