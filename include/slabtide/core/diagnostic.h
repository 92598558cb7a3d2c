#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace slabtide {

/// An error keeps a file from being used, a warning does not.
enum class Severity { error, warning };

/// A place in a text file; both counts start at 1. Columns count characters (Unicode code
/// points), not bytes.
struct SourcePosition {
  std::size_t line = 1;
  std::size_t column = 1;

  friend bool operator==(const SourcePosition&, const SourcePosition&) = default;
};

/// One finding about a file the user wrote. Pure readers make these; only the
/// caller knows the path, so the path is added when the finding is rendered.
struct Diagnostic {
  Severity severity = Severity::error;
  /// Dotted path of the entry, such as `zone[2].thickness_in`; empty where there is none.
  std::string key;
  /// What is wrong, what was found, what was expected. No full stop at the end.
  std::string message;
  std::optional<SourcePosition> where;
  /// The second place, where two entries conflict.
  std::optional<SourcePosition> also_where;
  /// What the user should do next; empty where the message says it all.
  std::string next_step;
};

/// What a reader gives back: the value, or the errors that prevented it; warnings
/// may accompany a value.
template <class T>
struct Parsed {
  std::optional<T> value;
  std::vector<Diagnostic> diagnostics;

  [[nodiscard]] bool ok() const { return value.has_value(); }
};

/// True where at least one of the findings is an error.
bool has_error(const std::vector<Diagnostic>& diagnostics);

/// The finding as the user sees it, ending in a newline:
///
///     path:line:column: key: message
///         the line of the file
///             ^
///       also here: path:line
///       next step
///
/// Parts that are absent are left out. All parts are shown as `printable` shows them, in the
/// quoted line too, and a long line is cut around the caret so that the quotation stays within
/// 80 columns. A blank line is not quoted. A warning starts its message with "warning: ".
std::string render(const Diagnostic& diagnostic, std::string_view path, std::string_view text);

/// All findings, errors first, in the order of their position, those without one last; after
/// twenty the rest are counted.
std::string render_all(const std::vector<Diagnostic>& diagnostics, std::string_view path,
                       std::string_view text);

}  // namespace slabtide
