#include "findings.h"

#include <utility>

#include <fmt/format.h>

namespace slabtide {
namespace {

constexpr std::size_t max_quoted = 40;

bool continues_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; }

}  // namespace

std::string in_quotes(std::string_view text) {
  if (text.size() <= max_quoted) return fmt::format("'{}'", text);
  std::size_t end = max_quoted;
  while (end > 0 && continues_character(text[end])) --end;
  return fmt::format("'{}...'", text.substr(0, end));
}

void Findings::error(SourcePosition where, std::string key, std::string message,
                     std::string next_step) {
  add({.severity = Severity::error,
       .key = std::move(key),
       .message = std::move(message),
       .where = where,
       .also_where = {},
       .next_step = std::move(next_step)});
}

void Findings::warning(SourcePosition where, std::string key, std::string message,
                       std::string next_step) {
  add({.severity = Severity::warning,
       .key = std::move(key),
       .message = std::move(message),
       .where = where,
       .also_where = {},
       .next_step = std::move(next_step)});
}

void Findings::add(Diagnostic diagnostic) {
  if (diagnostic.severity == Severity::error) ++errors_;
  diagnostics_.push_back(std::move(diagnostic));
}

}  // namespace slabtide
