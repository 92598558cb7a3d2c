#include "curl_function.h"

#include <dlfcn.h>

#include <stdexcept>
#include <string>

namespace slabtide {
namespace {

/// Null if it is not there.
void* library() {
  // The name under which each version since 2006 is found.
  static void* const loaded = dlopen("libcurl.so.4", RTLD_NOW | RTLD_LOCAL);
  return loaded;
}

}  // namespace

bool curl_is_there() { return library() != nullptr; }

void* curl_function(const char* name) {
  void* const function = curl_is_there() ? dlsym(library(), name) : nullptr;
  if (function == nullptr) throw std::runtime_error{std::string{"libcurl has no "} + name};
  return function;
}

}  // namespace slabtide
