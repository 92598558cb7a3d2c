#include "table_words.h"

#include <cctype>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "trade_words.h"

namespace slabtide {

std::string plain_word(std::string_view word) {
  std::string result;
  for (const char c : word) {
    const bool joins = c == '-' || c == '_';
    result += joins ? ' ' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return result;
}

std::optional<std::size_t> index_of_word(std::string_view text,
                                         const std::vector<std::string_view>& words) {
  const std::string said = plain_word(text);
  for (const std::string& word : {said, usual_word(said)}) {
    for (std::size_t i = 0; i < words.size(); ++i) {
      if (word == plain_word(words[i])) return i;
    }
  }
  return std::nullopt;
}

std::string choice(const std::vector<std::string_view>& words) {
  if (words.size() < 2) return fmt::format("{}", fmt::join(words, ""));
  return fmt::format("{} or {}", fmt::join(words.begin(), words.end() - 1, ", "), words.back());
}

std::string header_of(std::string_view path) {
  std::string header;
  bool index = false;
  for (const char c : path) {
    if (c == '[') index = true;
    if (!index) header += c;
    if (c == ']') index = false;
  }
  return header;
}

std::string table_advice(std::string_view header, const TomlKind& kind) {
  return fmt::format("add a table headed {}; {}", header, kind.advice);
}

std::span<const TomlValue> as_list(const TomlValue& value) {
  const auto* const list = std::get_if<TomlArray>(&value.held);
  return list == nullptr ? std::span(&value, 1) : std::span<const TomlValue>(*list);
}

bool holds_control(std::string_view text) {
  constexpr unsigned char space = 0x20;
  constexpr unsigned char del = 0x7f;
  constexpr unsigned char c1_lead = 0xc2;
  constexpr unsigned char c1_end = 0xa0;
  unsigned char before = 0;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < space || byte == del || (before == c1_lead && byte < c1_end)) return true;
    before = byte;
  }
  return false;
}

}  // namespace slabtide
