#include "hwy_allocator.h"

#include <cstdlib>

#include <hwy/aligned_allocator.h>

namespace hwy {

void* AllocateAlignedBytes(size_t payload_size, AllocPtr /*alloc_ptr*/, void* /*opaque_ptr*/) {
  const size_t whole = (payload_size + HWY_ALIGNMENT - 1) / HWY_ALIGNMENT * HWY_ALIGNMENT;
  return std::aligned_alloc(HWY_ALIGNMENT, whole);
}

void FreeAlignedBytes(const void* aligned_pointer, FreePtr /*free_ptr*/, void* /*opaque_ptr*/) {
  std::free(const_cast<void*>(aligned_pointer));  // NOLINT: as it was given out
}

}  // namespace hwy
