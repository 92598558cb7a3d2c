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

}  // namespace slabtide
