#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "quantity.h"
#include "quantity_words.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/core/geometry.h"
#include "toml_tree.h"

namespace slabtide {

/// A word of the job file and its value.
template <class T>
struct Word {
  std::string_view word;
  T meaning;
};

enum class Presence { optional, required };
/// Tables of one kind; more than any job has (our choice).
inline constexpr std::size_t max_tables = 200;

/// Sets the field if something was read; else it keeps its default.
template <class Field, class T>
void set(Field& field, std::optional<T> read) {
  if (read) field = std::move(*read);
}

/// Reads one table of the job file, key by key.
///
/// Every getter returns the value, or empty if the key is absent or faulty; a fault has then been
/// reported. The keys that were asked for are the known keys; `refuse_the_rest` refuses whatever
/// else the table holds: ask for every key on every path.
class TableReader {
 public:
  TableReader(const TomlTable& table, std::string path, UnitSystem units,
              std::vector<Diagnostic>& findings, const TomlKind& kind = job_toml);

  std::optional<std::string> text(std::string_view key, Presence presence = Presence::optional);
  std::optional<bool> yes_no(std::string_view key);
  /// A plain number; `what` says in messages what it counts, such as "degrees".
  std::optional<double> number(std::string_view key, const Range& range, std::string_view what,
                               Presence presence = Presence::optional);
  /// A number, or a text as `parse_angle_deg` takes it.
  std::optional<double> angle(std::string_view key, const Range& range, std::string_view what,
                              std::string_view sides);
  std::optional<int> whole_number(std::string_view key, const Range& range);
  /// A number in the file's usual unit at `key`, or in a given unit at `key_<suffix>`, not both; or
  /// a text with its own unit (`quantity_words.h`).
  std::optional<double> quantity(std::string_view key, const Quantity& kind, const Range& range,
                                 Presence presence = Presence::optional);
  template <class T, std::size_t N>
  std::optional<T> word(std::string_view key, const std::array<Word<T>, N>& words,
                        Presence presence = Presence::optional) {
    return meaning_of(find_word(key, spellings(words), presence), words);
  }
  /// A single word, or a list of them.
  template <class T, std::size_t N>
  std::vector<T> words(std::string_view key, const std::array<Word<T>, N>& words) {
    std::vector<T> result;
    for (const std::size_t index : find_words(key, spellings(words))) {
      result.push_back(words[index].meaning);
    }
    return result;
  }
  /// Texts with their positions.
  std::vector<std::pair<std::string, SourcePosition>> texts(std::string_view key);
  /// [x, y] and [[x, y], ...] in the file's unit of the plan, or `key_ft`, `key_m`.
  std::optional<Point> point(std::string_view key, Presence presence = Presence::optional);
  /// Absent if not given or faulty; an empty list counts as given.
  std::optional<std::vector<Point>> points(std::string_view key);
  /// A compass word such as "southwest", or degrees clockwise from north.
  std::optional<double> direction_deg(std::string_view key);
  /// The raw value, for getters of other files.
  const TomlEntry* entry(std::string_view key, Presence presence = Presence::optional);

  /// Reads the table at `key` with `read(TableReader&)`. False if there is none.
  template <class Read>
  bool in_table(std::string_view key, Read read, Presence presence = Presence::optional) {
    auto child = open_table(key, presence);
    if (!child) return false;
    read(*child);
    child->refuse_the_rest();
    return true;
  }
  /// Reads each [[key]] in turn; none of them if there are more than `max`.
  template <class Read>
  void in_each(std::string_view key, Read read, Presence presence = Presence::optional,
               std::size_t max = max_tables) {
    for (auto& child : open_tables(key, presence, max)) {
      read(child);
      child.refuse_the_rest();
    }
  }

  /// For tables [[key]], or `none_key = []` for none: true if either is present. Reports it if both
  /// are, and any other value at `none_key`.
  bool none_or_listed(std::string_view key, std::string_view none_key);

  /// Whether the key holds a table; does not mark it as known.
  bool holds_table(std::string_view key) const;
  /// Whether a key that was asked for is present; where its value, or else the table, stands.
  bool has(std::string_view key) const;
  SourcePosition where(std::string_view key) const;
  /// That the value at a key, or its first point, was written in; null if it is not given.
  const Unit* unit_of(std::string_view key) const;
  SourcePosition where() const { return table_.where; }
  UnitSystem units() const { return units_; }

  /// Reports a fault of an entry, or of the table if `key` is empty.
  void error(std::string_view key, std::string message, std::string next_step = {},
             std::optional<SourcePosition> also_where = std::nullopt);
  /// The same at a place within the entry's value.
  void error_at(SourcePosition place, std::string_view key, std::string message,
                std::string next_step = {});
  void warning(std::string_view key, std::string message, std::string next_step = {});
  /// Reports it if two keys that exclude each other are both given; true if they are.
  bool refuse_both(std::string_view key, std::string_view other, std::string why = {});
  /// Reports it if keys of a table [[below]] stand here without its header.
  void refuse_without_header(std::string_view below, std::span<const std::string_view> keys);
  /// Reports unknown keys and missing keys. Call once, at the end.
  void refuse_the_rest();

 private:
  /// One spelling of a key, with or without a unit suffix.
  struct Spelling {
    std::string text;
    std::string key;
  };
  /// A value and the unit it is in, if it is a quantity.
  struct Written {
    const TomlEntry* entry = nullptr;
    const Unit* unit = nullptr;
  };
  struct Asked {
    std::string key;
    Written found;
  };

  const Written* asked_for(std::string_view key) const;
  const TomlEntry* look_up(std::string_view key);
  Written look_up(std::string_view key, const Quantity& kind);
  const TomlEntry* spelled(std::string_view text, std::string_view key);
  Written required(Written found, std::string_view key, const Quantity& kind, Presence presence);
  void report(Severity severity, std::string_view key, std::string message, SourcePosition place,
              std::string next_step, std::optional<SourcePosition> also_where = std::nullopt);
  void wrong(const TomlEntry& entry, const TomlValue& value, std::string_view expected,
             std::string next_step = {});
  void miss(std::string_view key, std::string next_step = {});
  std::optional<double> finite(const TomlEntry& entry, const TomlValue& value,
                               std::string_view expected, std::string_view what = {});
  std::optional<WrittenQuantity> measured(const Written& written, const TomlValue& value,
                                          const Quantity& kind, std::string_view expected);
  std::optional<Point> point_of(const Written& written, const TomlValue& value);
  std::optional<std::size_t> find_word(std::string_view key,
                                       const std::vector<std::string_view>& words,
                                       Presence presence);
  std::vector<std::size_t> find_words(std::string_view key,
                                      const std::vector<std::string_view>& words);
  std::optional<std::size_t> index_of(const TomlEntry& entry, const TomlValue& value,
                                      const std::vector<std::string_view>& words);
  std::optional<TableReader> open_table(std::string_view key, Presence presence);
  std::vector<TableReader> open_tables(std::string_view key, Presence presence, std::size_t max);
  std::string path_of(std::string_view key) const;
  void forget_missing(std::string_view spelling);
  std::string list_of_keys() const;

  template <class T, std::size_t N>
  static std::vector<std::string_view> spellings(const std::array<Word<T>, N>& words) {
    std::vector<std::string_view> result;
    for (const auto& each : words) result.push_back(each.word);
    return result;
  }
  template <class T, std::size_t N>
  static std::optional<T> meaning_of(std::optional<std::size_t> index,
                                     const std::array<Word<T>, N>& words) {
    if (!index) return std::nullopt;
    return words[*index].meaning;
  }

  const TomlTable& table_;
  std::string path_;
  UnitSystem units_;
  std::vector<Diagnostic>& findings_;
  const TomlKind& kind_;
  std::vector<Asked> asked_;
  std::vector<Spelling> spellings_;
  std::vector<std::pair<std::string, Diagnostic>> missing_;  ///< by key
};

}  // namespace slabtide
