#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

namespace slabtide {

/// Colours that can be told apart with any kind of colour vision. Source: Okabe & Ito 2008, Color
/// Universal Design. Status: published, values from memory. data/page/palette.css has them as
/// custom properties, each with a variant for light and for dark pages.
namespace palette {

// sRGB.
inline constexpr std::string_view black = "#000000";
inline constexpr std::string_view orange = "#e69f00";
inline constexpr std::string_view sky = "#56b4e9";
inline constexpr std::string_view green = "#009e73";
inline constexpr std::string_view yellow = "#f0e442";
inline constexpr std::string_view blue = "#0072b2";
inline constexpr std::string_view vermilion = "#d55e00";
inline constexpr std::string_view purple = "#cc79a7";

}  // namespace palette

/// The number of lines in a chart that differ in colour and dash: classes "line-1" to "line-6".
inline constexpr std::size_t line_class_count = 6;

/// The class of the nth line (from 0) of a chart; after the last class they repeat.
std::string line_class(std::size_t index);

}  // namespace slabtide
