#include <doctest/doctest.h>

#include "report/words/window_notes.h"

namespace slabtide {

namespace {

OperationWindow noted(Operation operation, const char* note) {
  OperationWindow window;
  window.operation = operation;
  window.note = note;
  return window;
}

}  // namespace

TEST_CASE("a note stands once, with every operation it holds for, in the order of the windows") {
  PartPlan part;
  part.windows = {noted(Operation::first_edge, "drag the water off"), noted(Operation::release, ""),
                  noted(Operation::stamp, "too late"),
                  noted(Operation::detail_edge, "drag the water off"),
                  noted(Operation::saw_dry, "drag the water off")};
  CHECK(window_notes(part) ==
        std::vector<std::string>{"first edge, detail edge: drag the water off", "stamp: too late"});
  CHECK(window_notes(PartPlan{}).empty());
}

}  // namespace slabtide
