#pragma once

#include <cstddef>

// What the planner's page calls in WebAssembly, over bytes of UTF-8; only engine.cmake compiles it.

extern "C" {

/// Room for a request of `size` bytes, until it is answered.
char* slabtide_request(std::size_t size);

/// Answers the request that stands there (slabtide::answer); how many bytes the answer has.
std::size_t slabtide_answer();

/// The answer, until the next one.
const char* slabtide_answer_text();
}
