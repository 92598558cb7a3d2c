#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

// Wrong inputs in a table (*.cases), each an edit of a base and the whole message it produces:
//
//     == two_lows.toml: side_yard      the name that the message shows, and base/side_yard.toml
//       low = 41                       a line of the base, to give the place
//     - dew_point = 40                 is removed
//     + low = 42                       is inserted
//     ...                              starts another edit of the same case, if there is one
//     =>
//     two_lows.toml:16:7: ...          the exact message, up to the next case
//
// A case without a base consists of "+" lines only. The lines of an edit that must be in the base
// ("- " or two spaces) must occur there together exactly once, or the table is refused.

namespace slabtide::test {

struct Case {
  std::string name;
  std::string base;               ///< "" for none
  std::vector<std::string> edit;  ///< as written
  std::string message;
};

/// `preamble` is the text before the first case.
struct CaseTable {
  std::string preamble;
  std::vector<Case> cases;
};

/// Error: std::runtime_error if the text is not a table or has a case twice.
CaseTable parse_cases(std::string_view text);

/// The table as text; parse_cases reads it back.
std::string case_table_text(const CaseTable& table);

/// The base's text after the edit. Error: std::runtime_error if a line is not an edit, or does not
/// occur in the base exactly once.
std::string edited(const std::string& base, const std::vector<std::string>& edit);

/// The input of a case, from the bases in a folder. Error: std::runtime_error.
std::string case_input(const Case& one, const std::filesystem::path& bases);

}  // namespace slabtide::test
