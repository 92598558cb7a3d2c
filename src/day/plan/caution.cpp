#include "slabtide/day/plan/caution.h"

namespace slabtide {

std::string_view caution_level_id(CautionLevel level) {
  switch (level) {
    case CautionLevel::note:
      return "note";
    case CautionLevel::caution:
      return "caution";
    case CautionLevel::stop:
      return "stop";
  }
  return "caution";
}

}  // namespace slabtide
