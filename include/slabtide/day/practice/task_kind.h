#pragma once

#include <cstddef>
#include <string_view>

#include "slabtide/day/practice/operation.h"

namespace slabtide {

/// What a finishing crew does, in the order of a day.
enum class TaskKind {
  screed,  ///< and bull float, behind the placing
  first_edge,
  float_work,
  tooled_joint,
  release,
  texture,
  stamp,
  broom,
  trowel,
  detail_edge,
  strip_face,  ///< the form off a step, and its face finished
  remedy,      ///< curing compound sprayed
  cover,       ///< plastic or blankets laid
  saw,
  wash,
  seal,
  clean_up
};

/// How many there are.
inline constexpr std::size_t task_kind_count = 17;

/// What the work of a kind goes by.
enum class WorkMeasure { area, length, job };

/// The id used in files and in the JSON: "first_edge".
std::string_view task_kind_id(TaskKind kind);
/// As it stands in a list: "first edge".
std::string_view task_kind_words(TaskKind kind);
WorkMeasure work_measure(TaskKind kind);
/// The work that an operation on the plastic concrete asks for.
TaskKind task_kind_of(Operation operation);

}  // namespace slabtide
