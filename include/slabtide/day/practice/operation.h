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
  retard,  ///< surface retarder sprayed on, for exposed aggregate
  salt,    ///< rock salt pressed in
  detail_edge,
  tooled_joint,
  saw_dry,
  saw_wet,
  walk,
  expose,  ///< the retarded paste washed off the aggregate
  wash,
  seal
};

/// The number of operations.
inline constexpr std::size_t operation_count = 18;

/// The id used in files and in the JSON: "first_edge".
std::string_view operation_id(Operation operation);
/// The words used in sentences: "first edge".
std::string_view operation_words(Operation operation);
/// What one does, as after "to": "stamp", "spray the retarder".
std::string_view operation_verb(Operation operation);

/// The operations on plastic concrete that a finish needs, in working order.
std::vector<Operation> operations_of(Finish finish);
/// Whether the finish is made with release agent: it is washed where that is a powder, and sealed.
bool takes_release(Finish finish);
/// Whether field or border is stamped, textured, exposed or salted: a sealer goes onto those.
bool is_decorative(const Zone& zone);
/// The operation that the finish is named for, whose window matters most.
Operation main_operation(Finish finish);

}  // namespace slabtide
