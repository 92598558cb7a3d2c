#include "slabtide/cli/run.h"

#include <ostream>

namespace slabtide {

int run(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  (void)args;
  (void)out;
  err << "slabtide: no commands yet\n";
  return 2;
}

}  // namespace slabtide
