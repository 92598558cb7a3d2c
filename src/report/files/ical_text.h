#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/civil_time.h"

// The letters of an iCalendar file. Source: RFC 5545 (2009), Internet Calendaring and Scheduling
// Core Object Specification, published.

namespace slabtide {

/// `text` as the value of a TEXT property: backslash, semicolon and comma behind a backslash, a
/// line break as "\n"; other control characters, which the value may not hold, left out.
/// Source: section 3.3.11.
std::string ical_escaped(std::string_view text);

/// A content line with its CRLF, broken so that no line is over 75 octets (the break not
/// counted) and no UTF-8 character is torn. Source: section 3.1.
std::string ical_folded(std::string_view line);

/// The content lines of a file, put together again; those that end without CR as well.
std::vector<std::string> ical_lines(std::string_view text);

/// "20260514T133000Z", to the second. Source: section 3.3.5, form 2.
std::string ical_utc(UtcTime time);

/// An identifier made from a name: the same name gives the same, another name another, whatever
/// the machine and the day. Version 5 (SHA-1) in a name space of Slabtide's own.
/// Source: RFC 9562 (2024), section 5.5, published; RFC 7986 (2016), section 5.3 asks for UUIDs
/// in place of a host's name, which would tell where the file was made.
std::string uuid_of_name(std::string_view name);

}  // namespace slabtide
