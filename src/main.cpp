#include <iostream>

#include "slabtide/cli/run.h"

int main(int argc, char** argv) {
  return slabtide::run({argv + 1, argv + argc}, std::cout, std::cerr);
}
