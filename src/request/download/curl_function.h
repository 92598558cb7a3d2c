#pragma once

namespace slabtide {

/// Whether this machine has libcurl. It is loaded when something is first asked of it: it and what
/// it brings along took half of the time in which the program starts, and only fetching needs it.
bool curl_is_there();

/// A function of libcurl by its name. Error: std::runtime_error if it is not there.
void* curl_function(const char* name);

template <class Function>
Function* curl_function(const char* name) {
  return reinterpret_cast<Function*>(curl_function(name));
}

}  // namespace slabtide
