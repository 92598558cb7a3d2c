#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace slabtide {

/// A file with an error is not used; one with only warnings is.
enum class Severity { error, warning };

/// A place in a text file. Line and column start at 1; columns count characters (Unicode code
/// points), not bytes.
struct SourcePosition {
  std::size_t line = 1;
  std::size_t column = 1;

  friend bool operator==(const SourcePosition&, const SourcePosition&) = default;
};

/// One finding about a file the user wrote. The readers do no I/O and do not know the path; the
/// caller adds it when the finding is rendered.
struct Diagnostic {
  Severity severity = Severity::error;
  /// Dotted path of the entry, such as `zone[2].thickness_in`; empty if the finding is not about
  /// one entry.
  std::string key;
  /// What is wrong, what was found, what was expected. No full stop at the end.
  std::string message;
  std::optional<SourcePosition> where;
  /// The second place, when two entries conflict.
  std::optional<SourcePosition> also_where;
  /// What the user should do next; empty when the message already says it.
  std::string next_step;
};

/// What a reader returns: the value, or the errors that prevented it. Warnings may accompany a
/// value.
template <class T>
struct Parsed {
  std::optional<T> value;
  std::vector<Diagnostic> diagnostics;

  [[nodiscard]] bool ok() const { return value.has_value(); }
};

/// True if at least one of the findings is an error.
bool has_error(const std::vector<Diagnostic>& diagnostics);

/// The finding as the user sees it, ending in a newline:
///
///     path:line:column: key: message
///         the line of the file
///             ^
///       also here: path:line
///       next step
///
/// Absent parts are left out. Every part, including the quoted line, is shown as `printable` shows
/// it, and a long line is cut around the caret so that the quotation stays within 80 columns. A
/// blank line is not quoted. The message of a warning starts with "warning: ".
std::string render(const Diagnostic& diagnostic, std::string_view path, std::string_view text);

/// All findings: errors first, each kind in order of position, with those that have no position
/// last. Only the first twenty are shown; the rest are counted.
std::string render_all(const std::vector<Diagnostic>& diagnostics, std::string_view path,
                       std::string_view text);

}  // namespace slabtide
