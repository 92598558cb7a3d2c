#include "check_currency.h"

#include <cstddef>

#include <fmt/format.h>

#include "core/text.h"
#include "core/utf8.h"
#include "job/model/limits.h"

namespace slabtide {

std::optional<std::string> currency_fault(std::string_view currency) {
  std::size_t characters = 0;
  while (!currency.empty()) {
    const Utf8Char character = first_utf8(currency);
    const char c = currency.front();
    if (!character.valid || !is_printable(character) || terminal_columns(character) == 0) {
      return "holds a character that cannot be shown";
    }
    if (c == ' ' || is_digit(c) || c == '-' || c == ',') return "holds a space, a digit, or a sign";
    currency.remove_prefix(character.bytes);
    ++characters;
  }
  if (characters <= limits::max_currency_characters) return std::nullopt;
  return fmt::format("has {} characters, which is more than {}", characters,
                     limits::max_currency_characters);
}

}  // namespace slabtide
