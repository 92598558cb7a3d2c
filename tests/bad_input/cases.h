#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

// Wrong inputs in a table (*.cases), each an edit of a base and the whole message it earns:
//
//     == two_lows.toml: side_yard      the name that the message shows, and base/side_yard.toml
//       low = 41                       a line of the base, to say where
//     - dew_point = 40                 taken out
//     + low = 42                       put in
//     ...                              another edit of the same case, where it has one
//     =>
//     two_lows.toml:16:7: ...          the message, to the byte, up to the next case
//
// A case without a base is all "+" lines. The lines of an edit that the base has to hold, those
// with "- " or two spaces, stand there together once and no more, or the table is refused.

namespace slabtide::test {

struct Case {
  std::string name;
  std::string base;               ///< "" for none
  std::vector<std::string> edit;  ///< as written
  std::string message;
};

/// `preamble` is what stands before the first case.
struct CaseTable {
  std::string preamble;
  std::vector<Case> cases;
};

/// Error: std::runtime_error where it is no table, or names a case twice.
CaseTable parse_cases(std::string_view text);

/// The table's text; parse_cases reads it back.
std::string case_table_text(const CaseTable& table);

/// The base's text with the edit made.
/// Error: std::runtime_error where a line is no edit, or does not stand in the base exactly once.
std::string edited(const std::string& base, const std::vector<std::string>& edit);

/// The input of a case, from the bases in a folder. Error: std::runtime_error.
std::string case_input(const Case& one, const std::filesystem::path& bases);

}  // namespace slabtide::test
