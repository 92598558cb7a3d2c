#include "mix_book_edit.h"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "job/toml/toml_tree.h"
#include "mix_book_words.h"

namespace slabtide {

namespace {

bool is_same(const BookedPour& a, const BookedPour& b) {
  return a.job == b.job && a.site == b.site && a.date == b.date;
}

/// The lines of a pour, or of a mix without its pours, counted from 1.
struct Place {
  std::size_t header = 0;
  std::vector<std::pair<std::string, std::size_t>> entries;  ///< each key with its line

  std::size_t last() const { return entries.empty() ? header : entries.back().second; }
  std::size_t line_of(std::string_view key) const {
    const auto found = std::find_if(entries.begin(), entries.end(),
                                    [key](const auto& entry) { return entry.first == key; });
    return found == entries.end() ? 0 : found->second;
  }
};

struct MixPlace {
  Place own;
  std::vector<Place> pours;

  std::size_t last() const { return pours.empty() ? own.last() : pours.back().last(); }
};

Place place_of(const TomlTable& table) {
  Place place{table.where.line, {}};
  for (const TomlEntry& entry : table.entries) {
    if (entry.key != "pour") place.entries.emplace_back(entry.key, entry.where.line);
  }
  return place;
}

/// The tables under `key`; empty if one of them does not have a header.
std::optional<std::vector<const TomlTable*>> tables_under(const TomlTable& parent,
                                                          std::string_view key) {
  std::vector<const TomlTable*> tables;
  const TomlEntry* const entry = find(parent, key);
  if (entry == nullptr) return tables;
  const auto* const list = std::get_if<TomlArray>(&entry->value.held);
  if (list == nullptr) return std::nullopt;
  for (const TomlValue& value : *list) {
    const auto* const table = std::get_if<TomlTable>(&value.held);
    if (table == nullptr || !table->has_header) return std::nullopt;
    tables.push_back(table);
  }
  return tables;
}

/// The lines of every mix, in the order of the book.
std::optional<std::vector<MixPlace>> places_in(std::string_view text) {
  const auto tree = read_toml(text);
  if (!tree.ok()) return std::nullopt;
  const auto mixes = tables_under(*tree.value, "mix");
  if (!mixes) return std::nullopt;
  std::vector<MixPlace> places;
  for (const TomlTable* mix : *mixes) {
    const auto pours = tables_under(*mix, "pour");
    if (!pours) return std::nullopt;
    MixPlace& place = places.emplace_back(MixPlace{place_of(*mix), {}});
    for (const TomlTable* pour : *pours) place.pours.push_back(place_of(*pour));
  }
  return places;
}

/// The lines of a text with their line breaks. Edits keep the numbering until the text is put
/// together.
class Lines {
 public:
  explicit Lines(std::string_view text) {
    while (!text.empty()) {
      const std::size_t end = std::min(text.find('\n'), text.size() - 1) + 1;
      lines_.emplace_back(text.substr(0, end));
      text.remove_prefix(end);
    }
    if (!lines_.empty() && !lines_.back().ends_with('\n')) lines_.back() += '\n';
  }

  std::string& at(std::size_t line) { return lines_.at(line - 1); }
  void add_behind(std::size_t line, const std::string& text) { at(line) += text; }
  void add_at_end(const std::string& text) { lines_.push_back(text); }

  /// Removes a line, but keeps a comment on it.
  void take_out(std::size_t line) {
    std::string& text = at(line);
    const std::size_t remark = text.find('#');
    text = remark == std::string::npos
               ? std::string()
               : text.substr(0, text.find_first_not_of(" \t")) + text.substr(remark);
  }

  std::string text() const {
    std::string all;
    for (const std::string& line : lines_) all += line;
    return all;
  }

 private:
  std::vector<std::string> lines_;
};

/// Replaces the value after the equals sign: a number, or a list on one line.
bool set_value(std::string& line, const std::string& value) {
  const std::size_t begin = line.find_first_not_of(" \t", line.find('=') + 1);
  const bool list = begin != std::string::npos && line[begin] == '[';
  const std::size_t end = list ? line.find(']', begin) : line.find_first_of(" \t#\r\n", begin);
  if (begin == std::string::npos || end == std::string::npos) return false;
  line.replace(begin, end - begin + (list ? 1 : 0), value);
  return true;
}

/// Changes the entries of `old` to those of `pour`, one by one; false if that cannot be done.
bool change(Lines& lines, const Place& place, const BookedPour& old, const BookedPour& pour) {
  const std::vector<BookEntry> wanted = measured_entries(pour);
  for (const BookEntry& was : measured_entries(old)) {
    const auto now = std::find_if(wanted.begin(), wanted.end(),
                                  [&was](const BookEntry& entry) { return entry.key == was.key; });
    const std::size_t line = place.line_of(was.key);
    if (now == wanted.end()) lines.take_out(line);
    if (now == wanted.end() || line == 0 || now->value == was.value) continue;  // nothing to change
    if (!set_value(lines.at(line), now->value)) return false;
  }
  for (const BookEntry& entry : wanted) {
    if (place.line_of(entry.key) != 0) continue;
    lines.add_behind(place.last(), entry_line(entry));
  }
  return true;
}

void take_out(Lines& lines, const Place& place) {
  lines.take_out(place.header);
  for (const auto& [key, line] : place.entries) lines.take_out(line);
}

/// The book that the text should contain afterwards.
MixBook book_with(MixBook book, const std::string& mix, const BookedPour& pour) {
  for (BookedMix& other : book.mixes) {
    if (other.name == mix) continue;
    std::erase_if(other.pours, [&pour](const BookedPour& old) { return is_same(old, pour); });
  }
  book.put(mix, pour);
  return book;
}

/// Changes every entry of the pour that is under `mix` and removes the others; true if one was
/// under `mix`, empty if the edit is not possible.
std::optional<bool> change_all(Lines& lines, const std::vector<MixPlace>& places,
                               const MixBook& book, const std::string& mix,
                               const BookedPour& pour) {
  bool there = false;
  for (std::size_t m = 0; m < places.size(); ++m) {
    const BookedMix& booked = book.mixes[m];
    for (std::size_t p = 0; p < places[m].pours.size(); ++p) {
      if (!is_same(booked.pours[p], pour)) continue;
      const Place& place = places[m].pours[p];
      if (booked.name != mix) {
        take_out(lines, place);
      } else if (!change(lines, place, booked.pours[p], pour)) {
        return std::nullopt;
      } else {
        there = true;
      }
    }
  }
  return there;
}

/// Adds the pour after the other pours of its mix, or with a new mix at the end.
void add(Lines& lines, const std::vector<MixPlace>& places, const MixBook& book,
         const std::string& mix, const BookedPour& pour) {
  for (std::size_t m = 0; m < places.size(); ++m) {
    if (book.mixes[m].name != mix) continue;
    lines.add_behind(places[m].last(), pour_text(pour));
    return;
  }
  lines.add_at_end(mix_text(mix) + pour_text(pour));
}

}  // namespace

std::string mix_book_text(const MixBook& book) {
  std::string text(mix_book_heading);
  for (const BookedMix& mix : book.mixes) {
    text += mix_text(mix.name);
    for (const BookedPour& pour : mix.pours) text += pour_text(pour);
  }
  return text;
}

std::optional<std::string> with_pour(std::string_view text, const std::string& mix,
                                     const BookedPour& pour) {
  const Parsed<MixBook> book = read_mix_book(text);
  const auto places = places_in(text);
  if (!book.ok() || !places) return std::nullopt;
  const MixBook wanted = book_with(*book.value, mix, pour);
  if (mix_book_text(*book.value) == mix_book_text(wanted)) return std::string(text);
  Lines lines(text.empty() ? mix_book_heading : text);
  const auto there = change_all(lines, *places, *book.value, mix, pour);
  if (!there) return std::nullopt;
  if (!*there) add(lines, *places, *book.value, mix, pour);
  std::string edited = lines.text();
  const Parsed<MixBook> again = read_mix_book(edited);
  if (!again.ok() || mix_book_text(*again.value) != mix_book_text(wanted)) return std::nullopt;
  return edited;
}

}  // namespace slabtide
