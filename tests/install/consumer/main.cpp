// A stranger's program: finds the installed library, and calls into it from end to end.
#include <iostream>
#include <string>
#include <vector>

#include <slabtide/cli/run.h>
#include <slabtide/core/units.h>

int main() {
  std::cout << "0.2 lb/ft2/h is " << slabtide::kg_m2_h_from_lb_ft2_h(0.2) << " kg/m2/h\n";
  // All of the library hangs on this one, so that it links only where every dependency is found.
  slabtide::run({"--version"}, std::cerr, std::cerr);
  return 0;
}
