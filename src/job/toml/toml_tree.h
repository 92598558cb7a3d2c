#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "slabtide/core/diagnostic.h"

// A TOML document as plain data, each piece with its place. Keeps the parser's headers in one
// source and everything after it free of them.

namespace slabtide {

struct TomlEntry;
struct TomlValue;

/// A list, of whatever it holds.
using TomlArray = std::vector<TomlValue>;

/// A table.
struct TomlTable {
  std::vector<TomlEntry> entries;  ///< in the order of the file
  SourcePosition where;            ///< its header, opening brace or first dotted key
  bool has_header = false;         ///< opened by a line such as [site]
};

/// A date, a time or both, as TOML writes them without quotation marks.
struct TomlMoment {
  std::string text;
};

/// A value.
struct TomlValue {
  /// Whole numbers are numbers.
  std::variant<bool, double, std::string, TomlMoment, TomlArray, TomlTable> held;
  SourcePosition where;
};

/// A key and its value.
struct TomlEntry {
  std::string key;
  SourcePosition where;  ///< of the key
  TomlValue value;
};

/// What a file in TOML holds, as its messages say it.
struct TomlKind {
  std::string_view name;    ///< "job file"
  std::string_view advice;  ///< where to see how one is written
};
inline constexpr TomlKind job_toml{"job file", "`slabtide starter` shows how it is written"};

/// Reads TOML 1.0. Refuses, before it is parsed, what no such file is and what could exhaust
/// memory or the stack: texts over 1 MiB, lines over 4096 bytes, bytes that are not text; and,
/// parsed, what nests deeper than any file here.
Parsed<TomlTable> read_toml(std::string_view text, const TomlKind& kind = job_toml);

/// The entry of that key; null where there is none.
const TomlEntry* find(const TomlTable& table, std::string_view key);

/// The value as a message shows it: `"four"`, `4.5`, `a list`.
std::string shown(const TomlValue& value);

/// The table `[name]` and those below it as a document of its own: the same text with all other
/// lines emptied and `name` blanked out of the headers, so that every place in it is one of
/// `text`. Empty where the table is absent. It must have been written with headers.
std::string cut_out(std::string_view name, const TomlTable& root, std::string_view text);

}  // namespace slabtide
