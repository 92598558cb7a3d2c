#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "slabtide/job/model/order_notes.h"
#include "slabtide/job/model/zone.h"
#include "table_reader.h"
#include "table_words.h"
#include "trade_words.h"

// Words that several tables of the job file accept.

namespace slabtide {

inline constexpr auto saw_kinds =
    std::to_array<Word<SawKind>>({{"early-entry", SawKind::early_entry}, {"wet", SawKind::wet}});

inline constexpr auto finishes =
    std::to_array<Word<Finish>>({{"stamp", Finish::stamp},
                                 {"texture roll", Finish::texture_roll},
                                 {"broom", Finish::broom},
                                 {"float", Finish::float_finish},
                                 {"trowel", Finish::trowel},
                                 {"exposed aggregate", Finish::exposed_aggregate},
                                 {"salt", Finish::salt}});

/// "stamp, texture roll, broom, float, trowel, exposed aggregate or salt".
inline std::string finish_list() {
  std::string words(finishes.front().word);
  for (std::size_t i = 1; i < finishes.size(); ++i) {
    words += i + 1 < finishes.size() ? ", " : " or ";
    words += finishes[i].word;
  }
  return words;
}

/// The finish that a crew's word names: "broom", "Light Broom", "stamped".
inline std::optional<Finish> finish_named(std::string_view word) {
  const std::string plain = usual_word(plain_word(word));
  for (const auto& each : finishes) {
    if (each.word == plain) return each.meaning;
  }
  return std::nullopt;
}

/// The job file's word for a finish.
inline std::string_view word_of(Finish finish) {
  return std::find_if(finishes.begin(), finishes.end(),
                      [finish](const auto& each) { return each.meaning == finish; })
      ->word;
}

/// A colour's word, under either spelling of its key.
template <class T, std::size_t N>
std::optional<T> read_colour(TableReader& table, const std::array<Word<T>, N>& words) {
  const std::optional<T> colour = table.word("colour", words);
  const std::optional<T> color = table.word("color", words);
  if (table.refuse_both("color", "colour")) return {};
  return colour ? colour : color;
}

}  // namespace slabtide
