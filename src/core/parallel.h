#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <thread>
#include <vector>

namespace slabtide {

/// Runs `work(i, workspace)` for every i below `count` on `threads` threads (0: as many as the
/// machine has), each with its own workspace. Results for one i do not depend on the others, so
/// they are the same for any number of threads. The first error stops the rest and is rethrown
/// here.
template <class Workspace, class Work>
void in_parallel_at(std::size_t count, int threads, const Work& work) {
  const std::size_t wanted = threads > 0 ? static_cast<std::size_t>(threads)
                                         : std::size_t{std::thread::hardware_concurrency()};
  const std::size_t used = std::clamp<std::size_t>(wanted, 1, std::max<std::size_t>(count, 1));
  std::atomic<std::size_t> next{0};
  std::vector<std::exception_ptr> errors(used);
  const auto run = [&](std::size_t thread) {
    try {
      Workspace workspace;
      for (std::size_t i = next++; i < count; i = next++) work(i, workspace);
    } catch (...) {
      errors[thread] = std::current_exception();
      next = count;
    }
  };
  std::vector<std::thread> helpers;
  for (std::size_t i = 1; i < used; ++i) helpers.emplace_back(run, i);
  run(0);
  for (std::thread& helper : helpers) helper.join();
  for (const std::exception_ptr& error : errors) {
    if (error) std::rethrow_exception(error);
  }
}

/// The same for work that needs no workspace.
template <class Work>
void in_parallel(std::size_t count, int threads, const Work& work) {
  struct Nothing {};
  in_parallel_at<Nothing>(count, threads, [&work](std::size_t i, Nothing&) { work(i); });
}

}  // namespace slabtide
