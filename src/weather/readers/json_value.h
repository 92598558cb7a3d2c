#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/diagnostic.h"

namespace slabtide {

struct JsonMember;

/// A JSON value that knows its position in the text. Read-only once parsed.
struct JsonValue {
  enum class Kind { null, boolean, number, text, array, object };

  Kind kind = Kind::null;
  bool boolean = false;
  double number = 0.0;
  std::string text;
  std::vector<JsonValue> items;
  std::vector<JsonMember> members;  ///< in the order of the text
  SourcePosition where;

  bool is(Kind wanted) const { return kind == wanted; }
  /// The member's value; null if there is none or this is not an object.
  const JsonValue* find(std::string_view key) const;
};

/// A key of an object and its value.
struct JsonMember {
  std::string key;
  JsonValue value;
};

/// In words for the user: "a number", "an object".
std::string_view kind_name(JsonValue::Kind kind);

/// Parses a complete text (RFC 8259; a byte order mark is skipped). Refused, besides text that is
/// not JSON: a repeated key in an object, more than 500 keys, nesting more than 32 deep, more than
/// 200,000 values.
Parsed<JsonValue> parse_json(std::string_view text);

}  // namespace slabtide
