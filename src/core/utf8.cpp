#include "utf8.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <vector>

namespace slabtide {
namespace {

struct Range {
  char32_t first;
  char32_t last;
};

bool holds(Range range, char32_t code) { return code >= range.first && code <= range.last; }

template <std::size_t N>
bool in_ranges(char32_t code, const std::array<Range, N>& ranges) {
  return std::any_of(ranges.begin(), ranges.end(), [code](Range r) { return holds(r, code); });
}

// Combining marks, joiners, selectors and isolates: they take no column.
constexpr std::array<Range, 20> zero_width{{{0x0300, 0x036F},
                                            {0x0483, 0x0489},
                                            {0x0591, 0x05BD},
                                            {0x0610, 0x061A},
                                            {0x061C, 0x061C},
                                            {0x064B, 0x065F},
                                            {0x0E34, 0x0E3A},
                                            {0x0E47, 0x0E4E},
                                            {0x1AB0, 0x1AFF},
                                            {0x1DC0, 0x1DFF},
                                            {0x180B, 0x180F},
                                            {0x200C, 0x200F},
                                            {0x2066, 0x2069},
                                            {0x20D0, 0x20FF},
                                            {0x302A, 0x302D},
                                            {0x3099, 0x309A},
                                            {0xFE00, 0xFE0F},
                                            {0xFE20, 0xFE2F},
                                            {0xE0100, 0xE01EF}}};

// East Asian wide and fullwidth blocks, and the emoji planes.
constexpr std::array<Range, 12> wide{{{0x1100, 0x115F},
                                      {0x2E80, 0x303E},
                                      {0x3041, 0x33FF},
                                      {0x3400, 0x4DBF},
                                      {0x4E00, 0x9FFF},
                                      {0xA000, 0xA4CF},
                                      {0xAC00, 0xD7A3},
                                      {0xF900, 0xFAFF},
                                      {0xFE30, 0xFE6F},
                                      {0xFF00, 0xFF60},
                                      {0xFFE0, 0xFFE6},
                                      {0x1F300, 0x1FAFF}}};
constexpr Range supplementary_ideographs{0x20000, 0x3FFFD};

// C0 and C1 controls, line and paragraph separators, direction marks, joiners, selectors, fillers
// and other invisible characters, tags, private use, noncharacters.
constexpr std::array<Range, 22> unprintable{
    {{0x0000, 0x001F},   {0x007F, 0x009F},   {0x00AD, 0x00AD}, {0x034F, 0x034F}, {0x061C, 0x061C},
     {0x115F, 0x1160},   {0x17B4, 0x17B5},   {0x180B, 0x180F}, {0x200B, 0x200F}, {0x2028, 0x202E},
     {0x2060, 0x206F},   {0x2800, 0x2800},   {0x3164, 0x3164}, {0xE000, 0xF8FF}, {0xFDD0, 0xFDEF},
     {0xFE00, 0xFE0F},   {0xFEFF, 0xFEFF},   {0xFFA0, 0xFFA0}, {0xFFF0, 0xFFFB}, {0xFFFE, 0xFFFF},
     {0x1BCA0, 0x1BCA3}, {0xE0000, 0x10FFFF}}};
constexpr Range musical_controls{0x1D173, 0x1D17A};

// Sequence lengths by lead byte, and the smallest code point that needs each.
struct Form {
  unsigned char mask;
  unsigned char lead;
  std::size_t bytes;
  char32_t min;
};
constexpr std::array<Form, 4> forms{{{0x80, 0x00, 1, 0x0},
                                     {0xE0, 0xC0, 2, 0x80},
                                     {0xF0, 0xE0, 3, 0x800},
                                     {0xF8, 0xF0, 4, 0x10000}}};
constexpr char32_t last_code_point = 0x10FFFF;
constexpr Range surrogates{0xD800, 0xDFFF};

Utf8Char decode(std::string_view text, const Form& form, Utf8Char invalid) {
  if (text.size() < form.bytes) {
    return invalid;
  }
  char32_t code = invalid.code & static_cast<unsigned char>(~form.mask);
  for (std::size_t i = 1; i < form.bytes; ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if ((byte & 0xC0U) != 0x80U) {
      return invalid;
    }
    code = (code << 6U) | (byte & 0x3FU);
  }
  const bool surrogate = code >= surrogates.first && code <= surrogates.last;
  if (code < form.min || code > last_code_point || surrogate) {
    return invalid;
  }
  return {.code = code, .bytes = form.bytes, .valid = true};
}

// How text from outside is shown.

constexpr std::string_view end_mark = "...";
constexpr std::string_view isolate_open = "\u2068";
constexpr std::string_view isolate_close = "\u2069";
constexpr std::string_view replacement = "\uFFFD";

/// Blocks of Hebrew, Arabic, Syriac, Thaana, N'Ko and the other right-to-left scripts.
constexpr std::array<Range, 5> right_to_left{
    {{0x0590, 0x08FF}, {0xFB1D, 0xFDFF}, {0xFE70, 0xFEFE}, {0x10800, 0x10FFF}, {0x1E800, 0x1EFFF}}};
/// Characters that take their direction from the letters around them: marks, punctuation, symbols,
/// emoji.
constexpr std::array<Range, 9> neutral{{{0x0000, 0x0040},
                                        {0x005B, 0x0060},
                                        {0x007B, 0x00BF},
                                        {0x0300, 0x036F},
                                        {0x2000, 0x2BFF},
                                        {0x3000, 0x3003},
                                        {0xFE00, 0xFE2F},
                                        {0xFFFD, 0xFFFD},
                                        {0x1F000, 0x1FAFF}}};
constexpr char32_t zero_width_non_joiner = 0x200C;
constexpr char32_t zero_width_joiner = 0x200D;
constexpr std::array<Range, 2> direction_marks{{{0x061C, 0x061C}, {0x200E, 0x200F}}};
constexpr std::array<Range, 3> selectors{{{0x180B, 0x180F}, {0xFE00, 0xFE0F}, {0xE0100, 0xE01EF}}};
/// Scripts whose letters join, and emoji, start here; below this a joiner has no use.
constexpr char32_t first_joining = 0x0590;
constexpr char32_t copyright = 0xA9;
constexpr char32_t registered = 0xAE;
constexpr char32_t keycap = 0x20E3;
constexpr char32_t isolate_open_code = 0x2068;
constexpr char32_t isolate_close_code = 0x2069;

bool is_mark(char32_t code) { return in_ranges(code, direction_marks); }
bool is_selector(char32_t code) { return in_ranges(code, selectors); }
bool is_joiner(char32_t code) { return code == zero_width_joiner || code == zero_width_non_joiner; }
bool is_right_to_left(const Utf8Char& c) {
  return is_printable(c) && in_ranges(c.code, right_to_left);
}

/// The first character of `character`, made visible.
std::string visible(std::string_view character) {
  constexpr char32_t space = 0x20;
  constexpr char32_t del = 0x7F;
  const Utf8Char c = first_utf8(character);
  if (is_printable(c)) return std::string(character.substr(0, c.bytes));
  if (!c.valid) return std::string(replacement);
  if (c.code == U'\t') return " ";
  // The control pictures come in the same order as the control characters.
  constexpr std::string_view first_pictures = "\xE2\x90";
  constexpr char32_t first_tail = 0x80;
  if (c.code < space) return std::string(first_pictures) + static_cast<char>(first_tail + c.code);
  if (c.code == del) return "\u2421";
  return std::string(replacement);
}

/// Printable ASCII, the usual case: shown unchanged.
bool is_plain(char c) { return c >= ' ' && c <= '~'; }

/// A character and the bytes that show it.
struct Shown {
  Utf8Char character;
  std::string bytes;
  bool begins_isolate = false;
  bool ends_isolate = false;
};

/// The characters of a text, and which of them are shown.
class Line {
 public:
  /// Takes the whole text.
  explicit Line(std::string_view text) {
    while (!text.empty()) add(text);
    make_visible();
  }

  Line(std::string_view text, std::size_t max_characters) {
    while (!text.empty() && characters_.size() <= max_characters) take(text);
    const bool cut = !text.empty() || characters_.size() > max_characters;
    if (cut) characters_.resize(max_characters - std::min(end_mark.size(), max_characters));
    make_visible();
    end_ = cut ? end_mark : "";
  }

  const std::vector<Shown>& characters() const { return characters_; }

  /// The text, with every stretch of right-to-left letters isolated.
  std::string text() const {
    std::string result;
    for (std::size_t i = 0; i < characters_.size();) {
      const std::size_t end = right_to_left_end(i);
      if (end > i) result += isolate_open;
      for (const std::size_t stop = std::max(end, i + 1); i < stop; ++i) {
        result += characters_[i].bytes;
      }
      if (end > 0) result += isolate_close;
    }
    return result.append(end_);
  }

 private:
  void add(std::string_view& text) {
    const Utf8Char c = first_utf8(text);
    characters_.push_back({c, std::string(text.substr(0, c.bytes)), begins_, false});
    begins_ = false;
    text.remove_prefix(c.bytes);
  }

  /// Takes the next character. Isolates that an earlier pass added are dropped; `text` adds them
  /// again.
  void take(std::string_view& text) {
    const Utf8Char c = first_utf8(text);
    const bool opens =
        c.valid && c.code == isolate_open_code && begins_right_to_left(text.substr(c.bytes));
    const bool closes =
        c.valid && c.code == isolate_close_code && isolated_ && ends_right_to_left();
    if (!opens && !closes) return add(text);
    isolated_ = begins_ = opens;
    if (closes) characters_.back().ends_isolate = true;
    text.remove_prefix(c.bytes);
  }

  static bool begins_right_to_left(std::string_view text) {
    while (!text.empty()) {
      const Utf8Char c = first_utf8(text);
      if (!c.valid || !is_mark(c.code)) return is_right_to_left(c);
      text.remove_prefix(c.bytes);
    }
    return false;
  }

  bool ends_right_to_left() const {
    std::size_t i = characters_.size();
    while (i > 0 && follows(characters_[i - 1].character)) --i;
    return i > 0 && is_right_to_left(characters_[i - 1].character);
  }

  /// Whether the character attaches to the one before it.
  static bool follows(const Utf8Char& c) {
    return c.valid && (is_mark(c.code) || (is_printable(c) && terminal_columns(c) == 0));
  }

  bool joins(std::size_t i) const {
    const Utf8Char& c = characters_[i].character;
    return c.valid && is_printable(c) && c.code >= first_joining;
  }

  /// Whether an invisible character is needed where it is.
  bool is_needed(std::size_t i) const {
    const char32_t code = characters_[i].character.code;
    const bool last = i + 1 == characters_.size();
    if (i == 0 || !characters_[i].character.valid) return false;
    if (is_mark(code)) return in_right_to_left(i);
    if (is_joiner(code)) {
      const bool after_selector = i > 1 && is_selector(characters_[i - 1].character.code);
      return !last && joins(i + 1) && joins(after_selector ? i - 2 : i - 1);
    }
    if (!is_selector(code)) return false;
    const char32_t before = characters_[i - 1].character.code;
    if (before == copyright || before == registered) return true;
    return joins(i - 1) || (!last && characters_[i + 1].character.code == keycap);
  }

  bool in_right_to_left(std::size_t i) const {
    std::size_t before = i;
    while (before > 0 && follows(characters_[before - 1].character)) --before;
    return before > 0 && is_right_to_left(characters_[before - 1].character);
  }

  void make_visible() {
    for (std::size_t i = 0; i < characters_.size(); ++i) {
      if (!is_needed(i)) characters_[i].bytes = visible(characters_[i].bytes);
    }
  }

  /// The end of the stretch of right-to-left letters that begins at `i`; 0 if none does. The
  /// stretch ends with such a letter and the marks attached to it.
  std::size_t right_to_left_end(std::size_t i) const {
    if (!is_right_to_left(characters_[i].character)) return 0;
    std::size_t end = i + 1;
    for (std::size_t next = i + 1; next < characters_.size(); ++next) {
      if (characters_[next - 1].ends_isolate || characters_[next].begins_isolate) break;
      const Utf8Char& c = characters_[next].character;
      if (is_right_to_left(c) || (next == end && follows(c))) {
        end = next + 1;
      } else if (is_printable(c) && terminal_columns(c) > 0 && !in_ranges(c.code, neutral)) {
        break;
      }
    }
    return end;
  }

  std::vector<Shown> characters_;
  bool isolated_ = false;  ///< inside an isolate that the text already had
  bool begins_ = false;    ///< the next character is the first inside one
  std::string_view end_;
};

}  // namespace

Utf8Char first_utf8(std::string_view text) {
  if (text.empty()) {
    throw std::invalid_argument("first_utf8: empty text");
  }
  const auto lead = static_cast<unsigned char>(text.front());
  const Utf8Char invalid{.code = lead, .bytes = 1, .valid = false};
  const auto* const form = std::find_if(
      forms.begin(), forms.end(), [lead](const Form& f) { return (lead & f.mask) == f.lead; });
  return form == forms.end() ? invalid : decode(text, *form, invalid);
}

std::size_t terminal_columns(Utf8Char character) {
  const char32_t code = character.code;
  if (!character.valid) {
    return 1;
  }
  if (code < 0x20 || (code >= 0x7F && code < 0xA0) || in_ranges(code, zero_width)) {
    return 0;
  }
  return holds(supplementary_ideographs, code) || in_ranges(code, wide) ? 2 : 1;
}

bool is_printable(Utf8Char character) {
  return character.valid && !in_ranges(character.code, unprintable) &&
         !holds(musical_controls, character.code);
}

std::vector<std::string> shown_characters(std::string_view text) {
  std::vector<std::string> result;
  const Line line(text);
  for (const Shown& shown : line.characters()) result.push_back(shown.bytes);
  return result;
}

std::string printable(std::string_view text, std::size_t max_characters) {
  if (text.size() <= max_characters && std::all_of(text.begin(), text.end(), is_plain))
    return std::string(text);
  return Line(text, max_characters).text();
}

std::string printable_lines(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (;;) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    result += printable(text.substr(0, end), text.size());
    if (end == text.size()) return result;
    result += '\n';
    text.remove_prefix(end + 1);
  }
}

}  // namespace slabtide
