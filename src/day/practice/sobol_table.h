#pragma once

#include <array>
#include <cstddef>

namespace slabtide {

/// The primitive polynomials and starting values of a Sobol sequence in as many dimensions as there
/// are uncertain inputs, in the form that Boost.Random's `sobol_engine` asks for; its own table has
/// 3667 dimensions in 120 kB, a twelfth of the planner's engine as it is packed. Source (published,
/// by way of Boost.Random): S. Joe and F. Y. Kuo, SIAM J. Sci. Comput. 30, 2635 (2008), data
/// new-joe-kuo-6.
struct SobolTable {
  using value_type = unsigned short;
  static constexpr unsigned max_dimension = 25;

  struct Row {
    value_type polynomial;
    std::array<value_type, 7> start;
  };
  static constexpr std::array<Row, max_dimension - 1> rows{{{3, {1}},
                                                            {7, {1, 3}},
                                                            {11, {1, 3, 1}},
                                                            {13, {1, 1, 1}},
                                                            {19, {1, 1, 3, 3}},
                                                            {25, {1, 3, 5, 13}},
                                                            {37, {1, 1, 5, 5, 17}},
                                                            {41, {1, 1, 5, 5, 5}},
                                                            {47, {1, 1, 7, 11, 19}},
                                                            {55, {1, 1, 5, 1, 1}},
                                                            {59, {1, 1, 1, 3, 11}},
                                                            {61, {1, 3, 5, 5, 31}},
                                                            {67, {1, 3, 3, 9, 7, 49}},
                                                            {91, {1, 1, 1, 15, 21, 21}},
                                                            {97, {1, 3, 1, 13, 27, 49}},
                                                            {103, {1, 1, 1, 15, 7, 5}},
                                                            {109, {1, 3, 1, 15, 13, 25}},
                                                            {115, {1, 1, 5, 5, 19, 61}},
                                                            {131, {1, 3, 7, 11, 23, 15, 103}},
                                                            {137, {1, 3, 7, 13, 13, 15, 69}},
                                                            {143, {1, 1, 3, 13, 7, 35, 63}},
                                                            {145, {1, 3, 5, 9, 1, 25, 53}},
                                                            {157, {1, 3, 1, 13, 9, 35, 107}},
                                                            {167, {1, 3, 1, 5, 27, 61, 31}}}};

  static value_type polynomial(std::size_t n) { return rows.at(n).polynomial; }
  static value_type minit(std::size_t n, std::size_t degree) { return rows.at(n).start.at(degree); }
};

}  // namespace slabtide
