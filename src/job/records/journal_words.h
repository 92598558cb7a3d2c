#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/core/diagnostic.h"

namespace slabtide {

/// A word of a journal line, without its quotation marks.
struct JournalWord {
  std::string text;
  SourcePosition where;
};

/// The words of a line up to a number sign, or what is wrong with it.
struct JournalLine {
  std::vector<JournalWord> words;
  std::optional<Diagnostic> fault;
};

JournalLine cut_journal_line(std::string_view line, std::size_t number);

/// The text as a word of a line: unchanged if that reads back the same, else in quotation marks.
std::string journal_word(std::string_view text);

/// A part of a zone as it was called when noted, and what the plan knows it by (PlaceId); empty
/// where that is not known.
struct NotedPart {
  std::string name;
  std::string id;
};

/// "last 20 ft (along-2-of-2)"; the name alone without an id, or where that is its name too.
std::string noted_part_text(const NotedPart& part);
NotedPart parse_noted_part(const std::string& text);

}  // namespace slabtide
