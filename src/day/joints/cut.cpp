#include "slabtide/day/joints/cut.h"

namespace slabtide {

std::string_view cut_reason_id(CutReason reason) {
  switch (reason) {
    case CutReason::corner:
      return "inside_corner";
    case CutReason::tied_edge:
      return "tied_edge";
    case CutReason::longest_run:
      return "longest_run";
    case CutReason::next_along:
      return "next_along";
  }
  return "next_along";
}

std::string_view cut_reason_words(CutReason reason) {
  switch (reason) {
    case CutReason::corner:
      return "inside corner";
    case CutReason::tied_edge:
      return "tied edge";
    case CutReason::longest_run:
      return "mid-run";
    case CutReason::next_along:
      return "next along";
  }
  return "next along";
}

}  // namespace slabtide
