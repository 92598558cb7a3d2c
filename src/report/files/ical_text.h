#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/civil_time.h"

// Text encoding of iCalendar files. Source: RFC 5545 (2009), Internet Calendaring and Scheduling
// Core Object Specification, published.

namespace slabtide {

/// `text` as the value of a TEXT property: backslash, semicolon and comma are escaped by a
/// backslash, a line break becomes "\n", and other control characters, which are not allowed, are
/// left out.
/// Source: section 3.3.11.
std::string ical_escaped(std::string_view text);

/// A content line with its CRLF, folded so that no line is over 75 octets (without the line break)
/// and no UTF-8 character is split. Source: section 3.1.
std::string ical_folded(std::string_view line);

/// The unfolded content lines of a file; lines that end without CR are accepted too.
std::vector<std::string> ical_lines(std::string_view text);

/// "20260514T133000Z", to the second. Source: section 3.3.5, form 2.
std::string ical_utc(UtcTime time);

/// An identifier made from a name: the same name always gives the same identifier, on any machine
/// and day, and different names give different ones. Version 5 (SHA-1) in Slabtide's own name
/// space. Source: RFC 9562 (2024), section 5.5, published; RFC 7986 (2016), section 5.3 recommends
/// UUIDs instead of a host name, which would reveal where the file was made.
std::string uuid_of_name(std::string_view name);

}  // namespace slabtide
