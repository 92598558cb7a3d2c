#include <cstddef>
#include <cstdint>
#include <string_view>

#include "fuzz/inputs.h"

// One fuzz target: FUZZ_ENTRY is the function to call with an input.

// The name is required by libFuzzer.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  slabtide::fuzz::FUZZ_ENTRY({reinterpret_cast<const char*>(data), size});
  return 0;
}
