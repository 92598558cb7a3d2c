#include "cell_words.h"

#include "slabtide/job/geometry/cells.h"

namespace slabtide {

std::string larger_cells_words(const Job& job) {
  if (!(cell_size_for(job, max_cells_of_many) > cell_size_for(job))) return {};
  return "a pour this large is worked out in coarser patches here than in its plan: times may be a "
         "few minutes off the plan's";
}

}  // namespace slabtide
