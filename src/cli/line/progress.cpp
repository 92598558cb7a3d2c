#include "progress.h"

#include <unistd.h>

#include <iostream>

#include <fmt/format.h>

namespace slabtide {

namespace {

constexpr std::chrono::seconds patience{1};
/// Return to the start of the line and erase it (ECMA-48 erase in line).
constexpr const char* clear_line = "\r\x1b[K";

}  // namespace

Progress::Progress(std::string what, std::ostream& err)
    : what_(std::move(what)),
      err_(err),
      on_terminal_(&err == &std::cerr && isatty(STDERR_FILENO) == 1),
      start_(std::chrono::steady_clock::now()) {}

Progress::~Progress() {
  if (shown_) err_ << clear_line << std::flush;
}

void Progress::tell(std::size_t done) {
  if (!on_terminal_ || std::chrono::steady_clock::now() - start_ < patience) return;
  err_ << clear_line << fmt::format("{}: {}", what_, done) << std::flush;
  shown_ = true;
}

}  // namespace slabtide
