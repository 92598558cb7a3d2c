#include "typed_place.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string>
#include <vector>

#include "text.h"

namespace slabtide {
namespace {

constexpr double seconds_per_minute = 60.0;
constexpr double minutes_per_degree = 60.0;

/// A piece of a written angle: a number, a mark ('d', 'm' or 's'), a side ('N', 'S', 'E' or 'W')
/// or a comma.
struct Piece {
  char kind = '#';
  double number = 0.0;
};

/// Signs that maps write, and the one that stands for them here.
struct Sign {
  std::string_view text;
  char kind;
};
constexpr auto signs = std::to_array<Sign>({
    {"°", 'd'},  {"º", 'd'},  {"˚", 'd'},     {"″", 's'},       {"”", 's'},    {"“", 's'},
    {"''", 's'}, {"\"", 's'}, {"′", 'm'},     {"’", 'm'},       {"‘", 'm'},    {"'", 'm'},
    {",", ','},  {";", ','},  {"north", 'N'}, {"south", 'S'},   {"east", 'E'}, {"west", 'W'},
    {"n", 'N'},  {"s", 'S'},  {"e", 'E'},     {"w", 'W'},       {"−", '-'},    {" ", ' '},
    {"\t", ' '}, {"(", ' '},  {")", ' '},     {"degrees", 'd'}, {"deg", 'd'},  {"\u00a0", ' '},
});

const Sign* sign_at(std::string_view text) {
  const auto found = std::find_if(signs.begin(), signs.end(),
                                  [&](const Sign& sign) { return text.starts_with(sign.text); });
  return found == signs.end() ? nullptr : &*found;
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return result;
}

/// The pieces in order; empty if there is anything that belongs to no place.
std::vector<Piece> pieces_of(std::string_view written) {
  const std::string plain = lower(written);
  std::string_view text = plain;
  std::vector<Piece> pieces;
  bool negative = false;
  while (!text.empty()) {
    const std::size_t digits = std::min(text.find_first_not_of("0123456789."), text.size());
    const Sign* const sign = sign_at(text);
    if (digits > 0) {
      const auto number = parse_number(text.substr(0, digits));
      if (!number) return {};
      pieces.push_back({'#', negative ? -*number : *number});
      if (negative) pieces.back().kind = '-';
    } else if (text.front() == '-' || (sign != nullptr && sign->kind == '-')) {
      if (negative) return {};
      negative = true;
      text.remove_prefix(sign != nullptr ? sign->text.size() : 1);
      continue;
    } else if (sign == nullptr || negative) {
      return {};
    } else if (sign->kind != ' ') {
      pieces.push_back({sign->kind});
    }
    negative = false;
    text.remove_prefix(digits > 0 ? digits : sign->text.size());
  }
  return pieces;
}

bool is_side(const Piece& piece) {
  return std::string_view("NSEW").find(piece.kind) != std::string_view::npos;
}
bool is_number(const Piece& piece) { return piece.kind == '#' || piece.kind == '-'; }

/// An angle with the side that its text names, or with none.
struct SidedAngle {
  double deg = 0.0;
  std::optional<char> side;
};

/// Takes the side off the front or the end.
std::optional<char> take_side(std::span<const Piece>& pieces) {
  if (pieces.empty()) return std::nullopt;
  if (is_side(pieces.front())) {
    const char side = pieces.front().kind;
    pieces = pieces.subspan(1);
    return side;
  }
  if (!is_side(pieces.back())) return std::nullopt;
  const char side = pieces.back().kind;
  pieces = pieces.first(pieces.size() - 1);
  return side;
}

/// Degrees, minutes and seconds, each with its mark or without; minutes and seconds are under 60.
std::optional<double> size_deg(std::span<const Piece> pieces) {
  constexpr std::string_view marks = "dms";
  double deg = 0.0;
  double part = 1.0;
  std::size_t at = 0;
  for (std::size_t i = 0; i < pieces.size(); ++at) {
    if (at == marks.size() || !is_number(pieces[i])) return std::nullopt;
    const double number = std::abs(pieces[i].number);
    if (at > 0 && (pieces[i].kind == '-' || number >= minutes_per_degree)) return std::nullopt;
    deg += number / part;
    part *= at == 0 ? minutes_per_degree : seconds_per_minute;
    if (++i < pieces.size() && pieces[i].kind == marks[at]) ++i;
  }
  if (at == 0) return std::nullopt;
  return pieces.front().kind == '-' ? -deg : deg;
}

std::optional<SidedAngle> angle_of(std::span<const Piece> pieces) {
  const auto side = take_side(pieces);
  const auto deg = size_deg(pieces);
  if (!deg || (side && pieces.front().kind == '-')) return std::nullopt;
  return SidedAngle{*deg, side};
}

double signed_deg(const SidedAngle& angle) {
  const char side = angle.side.value_or('N');
  return side == 'S' || side == 'W' ? -angle.deg : angle.deg;
}

bool is_longitude(char side) { return side == 'E' || side == 'W'; }

/// Where the second angle begins; a comma between them is left out. 0 if that cannot be told.
std::size_t second_begins(std::span<const Piece> pieces) {
  const auto first_side = std::find_if(pieces.begin(), pieces.end(), is_side);
  if (first_side == pieces.begin() && first_side != pieces.end()) {
    const auto second_side = std::find_if(first_side + 1, pieces.end(), is_side);
    return second_side == pieces.end() ? 0 : static_cast<std::size_t>(second_side - pieces.begin());
  }
  if (first_side != pieces.end()) {
    return static_cast<std::size_t>(first_side - pieces.begin()) + 1;
  }
  const auto last = std::find_if(pieces.rbegin(), pieces.rend(), is_number);
  const auto numbers = std::count_if(pieces.begin(), pieces.end(), is_number);
  return numbers == 2 ? static_cast<std::size_t>(pieces.rend() - last) - 1 : 0;
}

}  // namespace

std::optional<double> parse_angle_deg(std::string_view text, std::string_view sides) {
  const std::vector<Piece> pieces = pieces_of(text);
  const auto angle = angle_of(pieces);
  if (!angle || (angle->side && sides.find(*angle->side) == std::string_view::npos)) {
    return std::nullopt;
  }
  return signed_deg(*angle);
}

std::optional<LatLon> parse_place(std::string_view text) {
  const std::vector<Piece> pieces = pieces_of(text);
  const std::span<const Piece> all = pieces;
  const auto comma = std::find_if(pieces.begin(), pieces.end(),
                                  [](const Piece& piece) { return piece.kind == ','; });
  const bool has_comma = comma != pieces.end();
  const std::size_t split =
      has_comma ? static_cast<std::size_t>(comma - pieces.begin()) : second_begins(all);
  const auto one = angle_of(all.first(split));
  const auto other = angle_of(all.subspan(std::min(split + (has_comma ? 1 : 0), all.size())));
  if (!one || !other || one->side.has_value() != other->side.has_value()) return std::nullopt;
  if (one->side && is_longitude(*one->side) == is_longitude(*other->side)) return std::nullopt;
  const bool swapped = one->side && is_longitude(*one->side);
  const LatLon place{signed_deg(swapped ? *other : *one), signed_deg(swapped ? *one : *other)};
  constexpr double pole_deg = 90.0;
  constexpr double date_line_deg = 180.0;
  if (std::abs(place.latitude_deg) > pole_deg || std::abs(place.longitude_deg) > date_line_deg) {
    return std::nullopt;
  }
  return place;
}

}  // namespace slabtide
