#pragma once

#include <cstddef>
#include <string_view>

#include "slabtide/day/practice/operation.h"

namespace slabtide {

/// The work of a finishing crew, in the order of a day.
enum class TaskKind {
  screed,  ///< with bull float, right behind the placing
  first_edge,
  float_work,
  tooled_joint,
  release,
  texture,
  stamp,
  broom,
  trowel,
  retard,
  salt,
  detail_edge,
  strip_face,  ///< strip the form from a step and finish its face
  cure,        ///< spray curing compound
  cure_and_seal,
  cover,  ///< lay plastic or blankets
  saw,
  expose,  ///< wash the retarded paste off
  wash,
  seal,
  clean_up
};

/// The number of kinds.
inline constexpr std::size_t task_kind_count = 21;

/// The quantity that determines the amount of work.
enum class WorkMeasure { area, length, job };

/// The id used in files and in the JSON: "first_edge".
std::string_view task_kind_id(TaskKind kind);
/// The words used in lists: "first edge".
std::string_view task_kind_words(TaskKind kind);
WorkMeasure work_measure(TaskKind kind);
/// Whether the work gives the surface its look: done late, the finish is lost.
bool makes_the_finish(TaskKind kind);
/// Whether only a finisher can do it; what is left, such as to screed, cover and wash, a helper
/// does too (common practice, no source).
bool takes_skill(TaskKind kind);
/// The kind of task for an operation on plastic concrete.
TaskKind task_kind_of(Operation operation);

}  // namespace slabtide
