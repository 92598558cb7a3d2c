#pragma once

#include <chrono>
#include <cstddef>
#include <iosfwd>
#include <string>

namespace slabtide {

/// A line on the terminal that counts while something takes longer than a second, and disappears
/// afterwards. Silent unless `err` is the program's own standard error and a terminal.
class Progress {
 public:
  Progress(std::string what, std::ostream& err);
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void tell(std::size_t done);

 private:
  std::string what_;
  std::ostream& err_;
  bool on_terminal_ = false;
  bool shown_ = false;
  std::chrono::steady_clock::time_point start_;
};

}  // namespace slabtide
