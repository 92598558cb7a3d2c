#include "slabtide/core/utf8.h"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace slabtide {
namespace {

struct Range {
  char32_t first;
  char32_t last;
};

template <std::size_t N>
bool in_ranges(char32_t code, const std::array<Range, N>& ranges) {
  return std::any_of(ranges.begin(), ranges.end(),
                     [code](Range r) { return code >= r.first && code <= r.last; });
}

// Combining marks and joiners: no column of their own.
constexpr std::array<Range, 15> zero_width{{{0x0300, 0x036F},
                                            {0x0483, 0x0489},
                                            {0x0591, 0x05BD},
                                            {0x0610, 0x061A},
                                            {0x064B, 0x065F},
                                            {0x0E34, 0x0E3A},
                                            {0x0E47, 0x0E4E},
                                            {0x1AB0, 0x1AFF},
                                            {0x1DC0, 0x1DFF},
                                            {0x200B, 0x200F},
                                            {0x20D0, 0x20FF},
                                            {0x302A, 0x302D},
                                            {0x3099, 0x309A},
                                            {0xFE00, 0xFE0F},
                                            {0xFE20, 0xFE2F}}};

// East Asian wide and fullwidth blocks, and the emoji planes.
constexpr std::array<Range, 12> wide{{{0x1100, 0x115F},
                                      {0x2E80, 0x303E},
                                      {0x3041, 0x33FF},
                                      {0x3400, 0x4DBF},
                                      {0x4E00, 0x9FFF},
                                      {0xA000, 0xA4CF},
                                      {0xAC00, 0xD7A3},
                                      {0xF900, 0xFAFF},
                                      {0xFE30, 0xFE6F},
                                      {0xFF00, 0xFF60},
                                      {0xFFE0, 0xFFE6},
                                      {0x1F300, 0x1FAFF}}};
constexpr Range supplementary_ideographs{0x20000, 0x3FFFD};

// C0 and C1 controls, line and paragraph separators, marks that turn the text's direction,
// joiners, private use, byte order mark.
constexpr std::array<Range, 9> unprintable{{{0x0000, 0x001F},
                                            {0x007F, 0x009F},
                                            {0x200B, 0x200F},
                                            {0x2028, 0x202E},
                                            {0x2060, 0x206F},
                                            {0xE000, 0xF8FF},
                                            {0xFEFF, 0xFEFF},
                                            {0xFFF0, 0xFFFB},
                                            {0xE0000, 0x10FFFF}}};

// Sequence lengths by their lead byte, and the least code point that needs them.
struct Form {
  unsigned char mask;
  unsigned char lead;
  std::size_t bytes;
  char32_t least;
};
constexpr std::array<Form, 4> forms{{{0x80, 0x00, 1, 0x0},
                                     {0xE0, 0xC0, 2, 0x80},
                                     {0xF0, 0xE0, 3, 0x800},
                                     {0xF8, 0xF0, 4, 0x10000}}};
constexpr char32_t last_code_point = 0x10FFFF;
constexpr Range surrogates{0xD800, 0xDFFF};

Utf8Char decode(std::string_view text, const Form& form, Utf8Char invalid) {
  if (text.size() < form.bytes) {
    return invalid;
  }
  char32_t code = invalid.code & static_cast<unsigned char>(~form.mask);
  for (std::size_t i = 1; i < form.bytes; ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if ((byte & 0xC0U) != 0x80U) {
      return invalid;
    }
    code = (code << 6U) | (byte & 0x3FU);
  }
  const bool surrogate = code >= surrogates.first && code <= surrogates.last;
  if (code < form.least || code > last_code_point || surrogate) {
    return invalid;
  }
  return {.code = code, .bytes = form.bytes, .valid = true};
}

}  // namespace

Utf8Char first_utf8(std::string_view text) {
  if (text.empty()) {
    throw std::invalid_argument("first_utf8: empty text");
  }
  const auto lead = static_cast<unsigned char>(text.front());
  const Utf8Char invalid{.code = lead, .bytes = 1, .valid = false};
  const auto* const form = std::find_if(
      forms.begin(), forms.end(), [lead](const Form& f) { return (lead & f.mask) == f.lead; });
  return form == forms.end() ? invalid : decode(text, *form, invalid);
}

std::size_t terminal_columns(Utf8Char character) {
  const char32_t code = character.code;
  if (!character.valid) {
    return 1;
  }
  if (code < 0x20 || (code >= 0x7F && code < 0xA0) || in_ranges(code, zero_width)) {
    return 0;
  }
  const bool ideograph =
      code >= supplementary_ideographs.first && code <= supplementary_ideographs.last;
  return ideograph || in_ranges(code, wide) ? 2 : 1;
}

bool is_printable(Utf8Char character) {
  return character.valid && !in_ranges(character.code, unprintable);
}

std::string printable(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  while (!text.empty()) {
    const Utf8Char c = first_utf8(text);
    if (is_printable(c)) {
      result += text.substr(0, c.bytes);
    } else {
      result += c.valid && c.code == U'\t' ? ' ' : '?';
    }
    text.remove_prefix(c.bytes);
  }
  return result;
}

}  // namespace slabtide
