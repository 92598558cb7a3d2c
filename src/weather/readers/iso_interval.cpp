#include "iso_interval.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "forecast_time.h"

namespace slabtide {
namespace {

constexpr long day_s = 86'400;
constexpr long longest_s = 366 * day_s;

struct DurationPart {
  char letter;
  bool after_t;
  long seconds;
};

/// In the order in which the parts must appear.
constexpr std::array<DurationPart, 5> parts{{{'W', false, 7 * day_s},
                                             {'D', false, day_s},
                                             {'H', true, 3600},
                                             {'M', true, 60},
                                             {'S', true, 1}}};

/// Removes digits from the start of `text` and returns the number; empty if there are none or too
/// many.
std::optional<long> take_count(std::string_view& text) {
  long count = 0;
  if (text.empty() || text.front() < '0' || text.front() > '9') return std::nullopt;
  const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), count);
  if (problem != std::errc{} || count > longest_s) return std::nullopt;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  return count;
}

}  // namespace

std::optional<Duration> parse_duration(std::string_view text) {
  if (!text.starts_with('P')) return std::nullopt;
  text.remove_prefix(1);
  long total_s = 0;
  bool after_t = false;
  const auto* next = parts.begin();
  while (!text.empty()) {
    if (text.front() == 'T' && !after_t) {
      after_t = true;
      text.remove_prefix(1);
    }
    const std::optional<long> count = take_count(text);
    if (!count || text.empty()) return std::nullopt;
    const auto* const part = std::find_if(next, parts.end(), [&](const DurationPart& candidate) {
      return candidate.letter == text.front() && candidate.after_t == after_t;
    });
    if (part == parts.end()) return std::nullopt;
    total_s += *count * part->seconds;
    next = part + 1;
    text.remove_prefix(1);
  }
  if (total_s <= 0 || total_s > longest_s) return std::nullopt;
  return boost::posix_time::seconds(total_s);
}

std::optional<IsoInterval> parse_interval(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const std::optional<UtcTime> start = instant_with_offset(text.substr(0, slash));
  const std::optional<Duration> length = parse_duration(text.substr(slash + 1));
  if (!start || !length) return std::nullopt;
  return IsoInterval{*start, *length};
}

}  // namespace slabtide
