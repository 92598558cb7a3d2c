#include "short_names.h"

#include <algorithm>

#include "core/text.h"
#include "core/utf8.h"

namespace slabtide {

namespace {

/// The bytes of the words that both begin with.
std::size_t shared_words(std::string_view a, std::string_view b) {
  const std::size_t size = std::min(a.size(), b.size());
  std::size_t words = 0;
  for (std::size_t i = 0; i < size && a[i] == b[i]; ++i) {
    if (a[i] == ' ') words = i + 1;
  }
  return words;
}

std::string short_name(std::string_view name, const Job& job) {
  std::string head = cut_to(name, max_short_name);
  std::size_t shared = name.size();
  bool alone = true;
  for (const Zone& other : job.zones) {
    if (other.name == name || cut_to(other.name, max_short_name) != head) continue;
    alone = false;
    shared = std::min(shared, shared_words(name, other.name));
  }
  if (alone || shared == 0) return head;
  return std::string(ellipsis) + cut_to(name.substr(shared), max_short_name - 1);
}

/// The longest name of a zone that stands at the beginning; empty if there is none.
std::string_view name_at(std::string_view text, const Job& job) {
  std::string_view found;
  for (const Zone& zone : job.zones) {
    if (text.starts_with(zone.name) && zone.name.size() > found.size()) found = zone.name;
  }
  return found;
}

}  // namespace

std::string cut_to(std::string_view text, std::size_t columns) {
  if (display_width(text) <= columns) return std::string(text);
  std::size_t kept = 0;
  std::size_t taken = 1;  // by the ellipsis
  while (kept < text.size()) {
    const Utf8Char next = first_utf8(text.substr(kept));
    taken += terminal_columns(next);
    if (taken > columns) break;
    kept += next.bytes;
  }
  while (kept > 0 && text[kept - 1] == ' ') --kept;
  return std::string(text.substr(0, kept)).append(ellipsis);
}

std::string short_names(std::string_view text, const Job& job) {
  std::string words;
  while (!text.empty()) {
    const std::string_view name = name_at(text, job);
    if (display_width(name) > max_short_name) {
      words += short_name(name, job);
      text.remove_prefix(name.size());
    } else {
      words += text.front();
      text.remove_prefix(1);
    }
  }
  return words;
}

}  // namespace slabtide
