#include "verdict_sign.h"

#include <array>

#include <fmt/format.h>

namespace slabtide {

std::string_view verdict_sign(Verdict verdict) {
  constexpr std::array<std::string_view, 3> signs{"✓", "!", "✕"};
  return signs[static_cast<std::size_t>(verdict)];
}

std::string reasons_words(const Judgement& judged) {
  std::string words;
  for (const std::string& reason : judged.reasons) {
    words += fmt::format("{}{}", words.empty() ? "" : ", ", reason);
  }
  return words;
}

}  // namespace slabtide
