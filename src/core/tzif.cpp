#include "tzif.h"

#include <algorithm>

#include <fmt/format.h>

namespace slabtide {
namespace {

constexpr std::string_view magic = "TZif";
constexpr std::size_t version_at = 4;
constexpr std::size_t counts_at = 20;
constexpr std::size_t header_bytes = 44;
constexpr std::size_t type_record_bytes = 6;
constexpr std::size_t name_index_at = 5;   // in a type record
constexpr std::size_t old_time_bytes = 4;  // version 1
constexpr std::size_t time_bytes = 8;      // version 2 and later
constexpr std::size_t leap_correction_bytes = 4;

/// Big-endian two's complement of `bytes` bytes; the caller has checked that they are there.
std::int64_t number_at(std::string_view text, std::size_t at, std::size_t bytes) {
  std::uint64_t value = (static_cast<unsigned char>(text[at]) & 0x80U) != 0 ? ~std::uint64_t{0} : 0;
  for (std::size_t i = 0; i < bytes; ++i) {
    value = (value << 8U) | static_cast<unsigned char>(text[at + i]);
  }
  return static_cast<std::int64_t>(value);
}

/// The counts of a header, in the file's order.
struct Header {
  std::size_t ut_flags = 0;
  std::size_t standard_flags = 0;
  std::size_t leaps = 0;
  std::size_t changes = 0;
  std::size_t types = 0;
  std::size_t name_bytes = 0;

  [[nodiscard]] std::size_t block_bytes(std::size_t bytes_per_time) const {
    return changes * (bytes_per_time + 1) + types * type_record_bytes + name_bytes +
           leaps * (bytes_per_time + leap_correction_bytes) + standard_flags + ut_flags;
  }
};

std::optional<Header> header_at(std::string_view bytes, std::size_t at) {
  if (at > bytes.size() || bytes.size() - at < header_bytes ||
      bytes.substr(at, magic.size()) != magic) {
    return std::nullopt;
  }
  const auto count = [&](std::size_t i) {
    return static_cast<std::size_t>(number_at(bytes, at + counts_at + 4 * i, 4) & 0xFFFFFFFF);
  };
  return Header{count(0), count(1), count(2), count(3), count(4), count(5)};
}

/// Reads the changes and types of a data block inside `bytes`; false if a change names a missing
/// type or the changes are out of order.
bool read_block(std::string_view bytes, std::size_t at, const Header& header,
                OffsetHistory& history) {
  const std::size_t indices_at = at + header.changes * time_bytes;
  const std::size_t types_at = indices_at + header.changes;
  const auto offset_of = [&](std::size_t type) {
    return number_at(bytes, types_at + type * type_record_bytes, 4);
  };
  const std::string_view names =
      bytes.substr(types_at + header.types * type_record_bytes, header.name_bytes);
  const auto name_of = [&](std::size_t type) {
    const auto at_byte =
        static_cast<unsigned char>(bytes[types_at + type * type_record_bytes + name_index_at]);
    const std::string_view rest = names.substr(std::min<std::size_t>(at_byte, names.size()));
    return std::string(rest.substr(0, rest.find('\0')));
  };
  history.first_offset_s = offset_of(0);
  history.first_name = name_of(0);
  for (std::size_t i = 0; i < header.changes; ++i) {
    const auto type = static_cast<unsigned char>(bytes[indices_at + i]);
    const std::int64_t time_s = number_at(bytes, at + i * time_bytes, time_bytes);
    if (type >= header.types || (i > 0 && time_s <= history.changes.back().at_s)) {
      return false;
    }
    history.changes.push_back({time_s, offset_of(type), name_of(type)});
  }
  return true;
}

/// The rule between the two line breaks at the end of the file.
std::string_view footer(std::string_view bytes, std::size_t at) {
  if (at >= bytes.size() || bytes[at] != '\n') {
    return {};
  }
  const std::size_t end = bytes.find('\n', at + 1);
  return end == std::string_view::npos ? std::string_view{} : bytes.substr(at + 1, end - at - 1);
}

ParsedTzif failed(std::string problem) { return {std::nullopt, std::move(problem)}; }

}  // namespace

namespace {

bool is_by_rule(const OffsetHistory& history, std::int64_t utc_s) {
  return history.changes.empty() || utc_s >= history.changes.back().at_s;
}

/// The last change until then; none before the first.
const OffsetChange* last_change(const std::vector<OffsetChange>& changes, std::int64_t utc_s) {
  const auto next =
      std::upper_bound(changes.begin(), changes.end(), utc_s,
                       [](std::int64_t t, const OffsetChange& change) { return t < change.at_s; });
  return next == changes.begin() ? nullptr : &*std::prev(next);
}

}  // namespace

std::int64_t OffsetHistory::offset_s(std::int64_t utc_s) const {
  if (is_by_rule(*this, utc_s)) {
    return posix_offset_s(rule, utc_s);
  }
  const OffsetChange* const change = last_change(changes, utc_s);
  return change == nullptr ? first_offset_s : change->offset_s;
}

const std::string& OffsetHistory::name(std::int64_t utc_s) const {
  if (is_by_rule(*this, utc_s)) {
    return posix_name(rule, utc_s);
  }
  const OffsetChange* const change = last_change(changes, utc_s);
  return change == nullptr ? first_name : change->name;
}

ParsedTzif parse_tzif(std::string_view bytes) {
  const std::optional<Header> old_header = header_at(bytes, 0);
  if (!old_header) {
    return failed("it is not a time-zone file");
  }
  if (bytes[version_at] < '2') {
    return failed("it is a time-zone file of version 1, which holds no rule for the future");
  }
  const std::size_t second_at = header_bytes + old_header->block_bytes(old_time_bytes);
  const std::optional<Header> header = header_at(bytes, second_at);
  if (!header || header->types == 0) {
    return failed("it is a damaged time-zone file");
  }
  if (header->leaps != 0) {
    return failed("it counts leap seconds, which civil time does not");
  }
  const std::size_t block_at = second_at + header_bytes;
  const std::size_t block_bytes = header->block_bytes(time_bytes);
  OffsetHistory history;
  if (bytes.size() - block_at < block_bytes || !read_block(bytes, block_at, *header, history)) {
    return failed("it is a damaged time-zone file");
  }
  const std::string_view rule_text = footer(bytes, block_at + block_bytes);
  ParsedPosixRule rule = parse_posix_rule(rule_text);
  if (!rule.rule) {
    return failed(rule_text.empty() ? "it holds no rule for the future"
                                    : fmt::format("its rule \"{}\" is not understood: {}",
                                                  rule_text, rule.problem));
  }
  history.rule = *rule.rule;
  return {std::move(history), {}};
}

}  // namespace slabtide
