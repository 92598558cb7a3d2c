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

/// How many there are.
inline constexpr std::size_t operation_count = 15;

/// The id used in files and in the JSON: "first_edge".
std::string_view operation_id(Operation operation);
/// As it stands in a sentence: "first edge".
std::string_view operation_words(Operation operation);

/// The plastic operations a finish calls for, in working order.
std::vector<Operation> operations_of(Finish finish);
/// The one of them that the finish is named for: the window the day turns on.
Operation main_operation(Finish finish);

}  // namespace slabtide
