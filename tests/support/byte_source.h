#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>

namespace slabtide::test {

/// Makes choices from the bytes of a fuzzer or of a seed. Once the bytes are used up every choice
/// is the first or smallest one, which the users of this class make the plain one.
class ByteSource {
 public:
  explicit ByteSource(std::string bytes) : bytes_(std::move(bytes)) {}

  std::uint8_t next() {
    return at_ < bytes_.size() ? static_cast<std::uint8_t>(bytes_[at_++]) : std::uint8_t{0};
  }
  /// 0 to `count` - 1, for counts up to 256.
  std::size_t below(std::size_t count) { return next() * count / 256; }
  /// True about once in `n` calls.
  bool one_in(std::size_t n) { return below(n) == n - 1; }
  /// 0 to 1, with all values equally likely.
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

/// Enough bytes for any user of this class; the same bytes for the same seed.
inline ByteSource bytes_of_seed(std::uint64_t seed) {
  constexpr std::size_t count = 4096;
  std::mt19937_64 random(seed);
  std::string bytes(count, '\0');
  for (char& byte : bytes) byte = static_cast<char>(random() & 0xFFU);
  return ByteSource(std::move(bytes));
}

}  // namespace slabtide::test
