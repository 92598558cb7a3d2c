#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "toml_tree.h"

// Words of a table's reader: what it takes alike, and how it names things in messages.

namespace slabtide {

/// Case, hyphens and underscores in words are ignored.
std::string plain_word(std::string_view word);

/// Which of the words the text is, or what a crew calls it; empty if it is none of them.
std::optional<std::size_t> index_of_word(std::string_view text,
                                         const std::vector<std::string_view>& words);

/// "a, b or c".
std::string choice(const std::vector<std::string_view>& words);

/// The header of the table `zone[2].face` is [[zone.face]].
std::string header_of(std::string_view path);

/// What to do where such a table is missing.
std::string table_advice(std::string_view header, const TomlKind& kind);

/// A list's elements, or a single value as a list of one.
std::span<const TomlValue> as_list(const TomlValue& value);

/// True if the text has a control character: C0, DEL or, in UTF-8, C1.
bool holds_control(std::string_view text);

}  // namespace slabtide
