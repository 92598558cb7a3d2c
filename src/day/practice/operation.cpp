#include "slabtide/day/practice/operation.h"

#include <array>

namespace slabtide {

namespace {

struct Name {
  std::string_view id;
  std::string_view words;
};

constexpr std::array<Name, operation_count> names{{{"strip", "strip the form"},
                                                   {"first_edge", "first edge"},
                                                   {"float", "float"},
                                                   {"release", "release agent"},
                                                   {"texture", "texture"},
                                                   {"stamp", "stamp"},
                                                   {"broom", "broom"},
                                                   {"trowel", "trowel"},
                                                   {"retard", "surface retarder"},
                                                   {"salt", "rock salt"},
                                                   {"detail_edge", "detail edge"},
                                                   {"tooled_joint", "tooled joint"},
                                                   {"saw_dry", "early-entry saw"},
                                                   {"saw_wet", "wet saw"},
                                                   {"walk", "walk on it"},
                                                   {"expose", "wash-off"},
                                                   {"wash", "wash"},
                                                   {"seal", "seal"}}};

}  // namespace

std::string_view operation_id(Operation operation) {
  return names[static_cast<std::size_t>(operation)].id;
}

std::string_view operation_words(Operation operation) {
  return names[static_cast<std::size_t>(operation)].words;
}

std::string_view operation_verb(Operation operation) {
  if (operation == Operation::retard) return "spray the retarder";
  if (operation == Operation::salt) return "roll in the salt";
  return operation_words(operation);
}

std::vector<Operation> operations_of(Finish finish) {
  using enum Operation;
  switch (finish) {
    case Finish::stamp:
      return {first_edge, release, stamp, detail_edge};
    case Finish::texture_roll:
      return {first_edge, release, texture, detail_edge};
    case Finish::broom:
      // The bull float right behind the screed is all the floating that a broomed slab gets (common
      // practice, no source): a float after it closes what the broom opens.
      return {first_edge, tooled_joint, broom, detail_edge};
    case Finish::float_finish:
      return {first_edge, float_work, tooled_joint, detail_edge};
    case Finish::trowel:
      return {first_edge, float_work, tooled_joint, trowel, detail_edge};
    case Finish::exposed_aggregate:
      return {first_edge, float_work, tooled_joint, retard};
    case Finish::salt:
      return {first_edge, float_work, tooled_joint, salt, detail_edge};
  }
  return {};
}

bool takes_release(Finish finish) {
  return finish == Finish::stamp || finish == Finish::texture_roll;
}

bool is_decorative(const Zone& zone) {
  const auto decorates = [](Finish finish) {
    return takes_release(finish) || finish == Finish::exposed_aggregate || finish == Finish::salt;
  };
  return decorates(zone.finish) || (zone.border && decorates(zone.border->finish));
}

Operation main_operation(Finish finish) {
  switch (finish) {
    case Finish::stamp:
      return Operation::stamp;
    case Finish::texture_roll:
      return Operation::texture;
    case Finish::broom:
      return Operation::broom;
    case Finish::float_finish:
      return Operation::float_work;
    case Finish::trowel:
      return Operation::trowel;
    case Finish::exposed_aggregate:
      return Operation::retard;
    case Finish::salt:
      return Operation::salt;
  }
  return Operation::broom;
}

}  // namespace slabtide
