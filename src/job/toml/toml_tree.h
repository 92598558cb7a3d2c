#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "slabtide/core/diagnostic.h"

// A TOML document as plain data, with the position of each piece. Only one source file includes the
// parser's headers.

namespace slabtide {

struct TomlEntry;
struct TomlValue;

/// A list of values of any kind.
using TomlArray = std::vector<TomlValue>;

/// A table.
struct TomlTable {
  std::vector<TomlEntry> entries;  ///< in the order of the file
  SourcePosition where;            ///< its header, opening brace or first dotted key
  bool has_header = false;         ///< opened by a line such as [site]
};

/// A date, a time or both, which TOML writes without quotation marks.
struct TomlMoment {
  std::string text;
};

/// A value, with its position.
struct TomlValue {
  /// Whole numbers are held as double.
  std::variant<bool, double, std::string, TomlMoment, TomlArray, TomlTable> held;
  SourcePosition where;
};

/// A key and its value.
struct TomlEntry {
  std::string key;
  SourcePosition where;  ///< of the key
  TomlValue value;
};

/// The kind of TOML file, as messages name it.
struct TomlKind {
  std::string_view name;    ///< "job file"
  std::string_view advice;  ///< where to see an example
};
inline constexpr TomlKind job_toml{"job file", "`slabtide starter` shows how it is written"};

/// Reads TOML 1.0, and bare values as people type them (`loose_values.h`) as texts. Refuses before
/// parsing what could exhaust memory or the stack: texts over 1 MiB, lines over 4096 bytes, bytes
/// that are not text; and after parsing, nesting deeper than in any file used here.
Parsed<TomlTable> read_toml(std::string_view text, const TomlKind& kind = job_toml);

/// The entry with that key; null if there is none.
const TomlEntry* find(const TomlTable& table, std::string_view key);

/// The value as messages show it: `"four"`, `4.5`, `a list`.
std::string shown(const TomlValue& value);

/// The table `[name]` and the tables below it as a document of its own: the same text with all
/// other lines emptied and `name` blanked out of the headers, so that positions are the same as in
/// `text`. Empty if the table is absent. It must be written with headers.
std::string cut_out(std::string_view name, const TomlTable& root, std::string_view text);

}  // namespace slabtide
