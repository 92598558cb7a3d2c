#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// What is done to a slab, in the order of a day.
enum class Operation {
  strip,
  first_edge,
  float_work,
  release,
  texture,
  stamp,
  broom,
  trowel,
  detail_edge,
  tooled_joint,
  saw_dry,
  saw_wet,
  walk,
  wash,
  seal
};

/// The number of operations.
inline constexpr std::size_t operation_count = 15;

/// The id used in files and in the JSON: "first_edge".
std::string_view operation_id(Operation operation);
/// The words used in sentences: "first edge".
std::string_view operation_words(Operation operation);

/// The operations on plastic concrete that a finish needs, in working order.
std::vector<Operation> operations_of(Finish finish);
/// Whether the finish is made with release agent: it is washed where that is a powder, and sealed.
bool takes_release(Finish finish);
/// Whether its field or its border is.
bool is_decorative(const Zone& zone);
/// The operation that the finish is named for, whose window matters most.
Operation main_operation(Finish finish);

}  // namespace slabtide
