#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>

namespace slabtide::test {

/// Choices made by the bytes of a fuzzer, or of a seed. Once they are used up every choice is the
/// first or the least one, which the users of this class make the plain one.
class ByteSource {
 public:
  explicit ByteSource(std::string bytes) : bytes_(std::move(bytes)) {}

  std::uint8_t next() {
    return at_ < bytes_.size() ? static_cast<std::uint8_t>(bytes_[at_++]) : std::uint8_t{0};
  }
  /// 0 to `count` - 1, for counts up to 256.
  std::size_t below(std::size_t count) { return next() * count / 256; }
  /// True about once in `n` times.
  bool one_in(std::size_t n) { return below(n) == n - 1; }
  /// 0 to 1, neither more often than what lies between.
  double fraction() { return (next() * 256.0 + next()) / 65535.0; }
  double between(double low, double high) { return low + (high - low) * fraction(); }
  template <class T, std::size_t N>
  const T& one_of(const std::array<T, N>& choices) {
    return choices.at(below(N));
  }

 private:
  std::string bytes_;
  std::size_t at_ = 0;
};

/// As many bytes as any user of this takes, the same for the same seed.
inline ByteSource bytes_of_seed(std::uint64_t seed) {
  constexpr std::size_t count = 4096;
  std::mt19937_64 random(seed);
  std::string bytes(count, '\0');
  for (char& byte : bytes) byte = static_cast<char>(random() & 0xFFU);
  return ByteSource(std::move(bytes));
}

}  // namespace slabtide::test
