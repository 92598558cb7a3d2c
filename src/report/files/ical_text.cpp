#include "ical_text.h"

#include <algorithm>

#include <boost/date_time/posix_time/time_formatters.hpp>
#include <boost/uuid/name_generator_sha1.hpp>
#include <boost/uuid/string_generator.hpp>
#include <boost/uuid/uuid_io.hpp>

#include "core/utf8.h"

namespace slabtide {

namespace {

constexpr std::size_t max_octets = 75;
constexpr std::string_view line_end = "\r\n";

/// Generated once at random, as RFC 9562 recommends for a name space of one's own.
constexpr const char* name_space = "7efbff3e-1533-49ca-830b-4a39e05e544a";

bool is_control(char c) {
  constexpr unsigned char first_printable = 0x20;
  constexpr unsigned char delete_character = 0x7F;
  const auto byte = static_cast<unsigned char>(c);
  return byte < first_printable || byte == delete_character;
}

}  // namespace

std::string ical_escaped(std::string_view text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool pair_follows = c == '\r' && i + 1 < text.size() && text[i + 1] == '\n';
    if (c == '\n' || (c == '\r' && !pair_follows)) {
      result += "\\n";
    } else if (c == '\\' || c == ';' || c == ',') {
      result += '\\';
      result += c;
    } else if (c == '\t' || !is_control(c)) {
      result += c;
    }
  }
  return result;
}

std::string ical_folded(std::string_view line) {
  std::string result;
  std::size_t octets = 0;
  while (!line.empty()) {
    const std::size_t bytes = first_utf8(line).bytes;
    if (octets + bytes > max_octets) {
      result += line_end;
      result += ' ';
      octets = 1;
    }
    result += line.substr(0, bytes);
    octets += bytes;
    line.remove_prefix(bytes);
  }
  result += line_end;
  return result;
}

std::vector<std::string> ical_lines(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.ends_with('\r')) line.remove_suffix(1);
    const bool goes_on = line.starts_with(' ') || line.starts_with('\t');
    if (goes_on && !lines.empty()) {
      lines.back() += line.substr(1);
    } else {
      lines.emplace_back(line);
    }
  }
  return lines;
}

std::string ical_utc(UtcTime time) { return boost::posix_time::to_iso_string(time) + "Z"; }

std::string uuid_of_name(std::string_view name) {
  const boost::uuids::name_generator_sha1 in_name_space(
      boost::uuids::string_generator{}(name_space));
  return to_string(in_name_space(name.data(), name.size()));
}

}  // namespace slabtide
