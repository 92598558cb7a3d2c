#include "slabtide/day/practice/task_kind.h"

#include <array>
#include <stdexcept>
#include <string>

namespace slabtide {

namespace {

struct Kind {
  std::string_view id;
  std::string_view words;
  WorkMeasure measure;
};

constexpr std::array<Kind, task_kind_count> kinds{
    {{"screed", "screed and bull float", WorkMeasure::area},
     {"first_edge", "first edge", WorkMeasure::length},
     {"float", "float", WorkMeasure::area},
     {"tooled_joint", "tool the joints", WorkMeasure::length},
     {"release", "release agent", WorkMeasure::area},
     {"texture", "texture", WorkMeasure::area},
     {"stamp", "stamp", WorkMeasure::area},
     {"broom", "broom", WorkMeasure::area},
     {"trowel", "trowel", WorkMeasure::area},
     {"retard", "surface retarder", WorkMeasure::area},
     {"salt", "rock salt", WorkMeasure::area},
     {"detail_edge", "detail edge", WorkMeasure::length},
     {"strip_face", "strip and face the step", WorkMeasure::length},
     {"cure", "curing compound", WorkMeasure::area},
     {"cure_and_seal", "cure-and-seal", WorkMeasure::area},
     {"cover", "cover", WorkMeasure::area},
     {"saw", "saw", WorkMeasure::length},
     {"expose", "wash-off", WorkMeasure::area},
     {"wash", "wash", WorkMeasure::area},
     {"seal", "seal", WorkMeasure::area},
     {"clean_up", "clean up", WorkMeasure::job}}};

const Kind& entry(TaskKind kind) { return kinds[static_cast<std::size_t>(kind)]; }

}  // namespace

std::string_view task_kind_id(TaskKind kind) { return entry(kind).id; }

std::string_view task_kind_words(TaskKind kind) { return entry(kind).words; }

WorkMeasure work_measure(TaskKind kind) { return entry(kind).measure; }

bool makes_the_finish(TaskKind kind) {
  return kind == TaskKind::float_work || kind == TaskKind::texture || kind == TaskKind::stamp ||
         kind == TaskKind::broom || kind == TaskKind::trowel || kind == TaskKind::retard ||
         kind == TaskKind::salt || kind == TaskKind::expose;
}

bool takes_skill(TaskKind kind) {
  switch (kind) {
    case TaskKind::screed:
    case TaskKind::release:
    case TaskKind::cure:
    case TaskKind::cure_and_seal:
    case TaskKind::cover:
    case TaskKind::wash:
    case TaskKind::clean_up:
      return false;
    default:
      return true;
  }
}

TaskKind task_kind_of(Operation operation) {
  switch (operation) {
    case Operation::strip:
      return TaskKind::strip_face;
    case Operation::first_edge:
      return TaskKind::first_edge;
    case Operation::float_work:
      return TaskKind::float_work;
    case Operation::release:
      return TaskKind::release;
    case Operation::texture:
      return TaskKind::texture;
    case Operation::stamp:
      return TaskKind::stamp;
    case Operation::broom:
      return TaskKind::broom;
    case Operation::trowel:
      return TaskKind::trowel;
    case Operation::retard:
      return TaskKind::retard;
    case Operation::salt:
      return TaskKind::salt;
    case Operation::detail_edge:
      return TaskKind::detail_edge;
    case Operation::tooled_joint:
      return TaskKind::tooled_joint;
    default:
      throw std::invalid_argument("not work on plastic concrete: " +
                                  std::string(operation_id(operation)));
  }
}

}  // namespace slabtide
