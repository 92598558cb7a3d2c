#include "quantity_words.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/text.h"

namespace slabtide {

namespace {

/// A way to write a unit, and its suffix.
struct UnitWord {
  std::string_view word;  ///< as `plain_unit` leaves it
  std::string_view suffix;
};

constexpr auto unit_words = std::to_array<UnitWord>({
    {"'", "ft"},
    {"′", "ft"},
    {"’", "ft"},
    {"foot", "ft"},
    {"feet", "ft"},
    {"\"", "in"},
    {"″", "in"},
    {"”", "in"},
    {"''", "in"},
    {"inch", "in"},
    {"inches", "in"},
    {"meter", "m"},
    {"meters", "m"},
    {"metre", "m"},
    {"metres", "m"},
    {"fahrenheit", "f"},
    {"degf", "f"},
    {"degreesf", "f"},
    {"degreesfahrenheit", "f"},
    {"celsius", "c"},
    {"degc", "c"},
    {"degreesc", "c"},
    {"degreescelsius", "c"},
    {"kmh", "km_h"},
    {"kph", "km_h"},
    {"knot", "knots"},
    {"kn", "knots"},
    {"kt", "knots"},
    {"kts", "knots"},
    {"lb", "lb_yd3"},
    {"lbs", "lb_yd3"},
    {"lb/cy", "lb_yd3"},
    {"pcy", "lb_yd3"},
    {"yd", "yd3"},
    {"yds", "yd3"},
    {"yard", "yd3"},
    {"yards", "yd3"},
    {"cy", "yd3"},
    {"cuyd", "yd3"},
    {"cubicyard", "yd3"},
    {"cubicyards", "yd3"},
    {"yd/h", "yd3_h"},
    {"yd/hr", "yd3_h"},
    {"cy/h", "yd3_h"},
    {"cy/hr", "yd3_h"},
    {"yards/hour", "yd3_h"},
    {"oz", "floz_cwt"},
    {"floz", "floz_cwt"},
    {"oz/cwt", "floz_cwt"},
    {"/yd", "per_yd3"},
    {"/yd3", "per_yd3"},
    {"/cy", "per_yd3"},
    {"/m3", "per_m3"},
    {"/oz", "per_floz"},
    {"/floz", "per_floz"},
    {"/gal", "per_gal"},
    {"/l", "per_l"},
    {"/ml", "per_ml"},
    {"/lb", "per_lb"},
    {"/kg", "per_kg"},
    {"/ft2", "per_ft2"},
    {"/ft²", "per_ft2"},
    {"/sqft", "per_ft2"},
    {"/m2", "per_m2"},
    {"/m²", "per_m2"},
    {"/ft", "per_ft"},
    {"/m", "per_m"},
    {"pct", "percent"},
    {"mins", "min"},
    {"minute", "min"},
    {"minutes", "min"},
    {"hr", "h"},
    {"hrs", "h"},
    {"hour", "h"},
    {"hours", "h"},
});

/// A unit and the smaller one that is written behind it: 4'6", 1 h 30 min.
struct UnitPair {
  std::string_view large;
  std::string_view small;
  double small_per_large;
};
constexpr auto unit_pairs = std::to_array<UnitPair>({{"ft", "in", 12.0}, {"h", "min", 60.0}});

struct FractionSign {
  std::string_view sign;
  double value;
};
constexpr auto fraction_signs = std::to_array<FractionSign>(
    {{"½", 0.5}, {"¼", 0.25}, {"¾", 0.75}, {"⅛", 0.125}, {"⅜", 0.375}, {"⅝", 0.625}, {"⅞", 0.875}});

/// Small numbers in words: common practice, no source.
constexpr auto number_words =
    std::to_array<std::string_view>({"zero", "one", "two", "three", "four", "five", "six", "seven",
                                     "eight", "nine", "ten", "eleven", "twelve"});

/// Lower case, without blanks, points and signs of degrees; ³ becomes 3.
std::string plain_unit(std::string_view written) {
  std::string result;
  while (!written.empty()) {
    const char c = written.front();
    std::size_t bytes = 1;
    if (written.starts_with("³")) {
      result += '3';
      bytes = std::string_view("³").size();
    } else if (written.starts_with("°")) {
      bytes = std::string_view("°").size();
    } else if (c != ' ' && c != '.' && c != '^') {
      result += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    written.remove_prefix(bytes);
  }
  return result;
}

}  // namespace

bool is_degrees(std::string_view word) {
  const std::string plain = plain_unit(word);
  return plain == "deg" || plain == "degree" || plain == "degrees";
}

const Unit* unit_named(std::string_view word, const Quantity& kind) {
  const std::string plain = plain_unit(word);
  for (const Unit& unit : kind.units) {
    if (plain == unit.suffix || plain == plain_unit(unit.shown)) return &unit;
    for (const UnitWord& each : unit_words) {
      if (each.word == plain && each.suffix == unit.suffix) return &unit;
    }
  }
  return nullptr;
}

namespace {

std::string_view after_blanks(std::string_view text) {
  text.remove_prefix(std::min(text.find_first_not_of(' '), text.size()));
  return text;
}

/// Digits taken off the front of the text.
std::string_view take_digits(std::string_view& text) {
  const std::string_view digits =
      text.substr(0, std::min(text.find_first_not_of("0123456789"), text.size()));
  text.remove_prefix(digits.size());
  return digits;
}

/// "1/2", "½" behind a whole number, after a blank or a hyphen; the text is moved on behind it.
std::optional<double> take_fraction(std::string_view& text) {
  std::string_view rest = after_blanks(text);
  if (rest.starts_with('-')) rest = after_blanks(rest.substr(1));
  for (const FractionSign& each : fraction_signs) {
    if (!rest.starts_with(each.sign)) continue;
    text = rest.substr(each.sign.size());
    return each.value;
  }
  const auto over = parse_number(take_digits(rest));
  if (!over || !rest.starts_with('/')) return std::nullopt;
  rest.remove_prefix(1);
  const auto under = parse_number(take_digits(rest));
  if (!under || *under <= 0.0) return std::nullopt;
  text = rest;
  return *over / *under;
}

/// "1,200": the digits without their commas, which stand before each three of them.
std::optional<std::string> without_commas(std::string_view text) {
  constexpr std::size_t group = 3;
  std::string digits;
  std::size_t since_comma = 0;
  bool has_comma = false;
  const std::string_view whole = text.substr(0, std::min(text.find('.'), text.size()));
  for (const char c : whole) {
    if (c == ',') {
      if (has_comma ? since_comma != group : since_comma == 0 || since_comma > group) return {};
      has_comma = true;
      since_comma = 0;
    } else {
      digits += c;
      ++since_comma;
    }
  }
  if (has_comma && since_comma != group) return {};
  return digits + std::string(text.substr(whole.size()));
}

/// "six" at the front of the text, which is moved on behind it.
std::optional<double> take_number_word(std::string_view& text) {
  std::string word;
  for (const char c : text) {
    const char lower = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    if (lower < 'a' || lower > 'z') break;
    word += lower;
  }
  const auto found = std::find(number_words.begin(), number_words.end(), word);
  if (found == number_words.end()) return std::nullopt;
  text.remove_prefix(word.size());
  return static_cast<double>(found - number_words.begin());
}

/// The number at the front of the text, which is moved on behind it.
std::optional<double> take_number(std::string_view& text, UnitSystem system) {
  text = after_blanks(text);
  if (const auto word = take_number_word(text)) return word;
  std::string_view rest = text;
  const bool negative = rest.starts_with('-') || rest.starts_with("−");
  if (negative) rest.remove_prefix(rest.starts_with('-') ? 1 : std::string_view("−").size());
  const std::string_view allowed = system == UnitSystem::us ? "0123456789.," : "0123456789.";
  const std::string_view figures =
      rest.substr(0, std::min(rest.find_first_not_of(allowed), rest.size()));
  std::string_view lone = rest;
  std::optional<double> value;
  if (const auto part = take_fraction(lone); part && !rest.starts_with('-')) {
    value = *part;  // "1/2" or "½" alone
    rest = lone;
  } else {
    const auto plain = without_commas(figures);
    value = plain ? parse_number(*plain) : std::nullopt;
    if (!value) return std::nullopt;
    rest.remove_prefix(figures.size());
    if (figures.find('.') == std::string_view::npos) {
      *value += take_fraction(rest).value_or(0.0);
    }
  }
  text = rest;
  return negative ? -*value : *value;
}

/// The unit's word at the front of the text, which is moved on behind it.
std::string take_unit(std::string_view& text) {
  const std::size_t end = std::min(text.find_first_of("0123456789-"), text.size());
  std::string word = plain_unit(text.substr(0, end));
  text.remove_prefix(end);
  return word;
}

/// "6 in" behind "4 ft": what is left of the text in the larger unit. Empty if it is no such thing.
std::optional<double> small_part(std::string_view rest, const Unit& large, const Quantity& kind,
                                 UnitSystem system) {
  rest = after_blanks(rest);
  if (rest.starts_with('-')) rest.remove_prefix(1);
  for (const UnitPair& pair : unit_pairs) {
    if (pair.large != large.suffix) continue;
    const auto value = take_number(rest, system);
    const std::string word = plain_unit(rest);
    const Unit* const small = unit_named(word, kind);
    const bool is_small = word.empty() || (small != nullptr && small->suffix == pair.small);
    if (!value || !is_small || *value < 0.0 || *value >= pair.small_per_large) return std::nullopt;
    return *value / pair.small_per_large;
  }
  return std::nullopt;
}

/// "inch slab" of "4-inch slab": without the hyphen between a number and a word.
std::string_view after_hyphen(std::string_view text) {
  const bool joins = text.size() > 1 && text.front() == '-' &&
                     ((text[1] >= 'a' && text[1] <= 'z') || (text[1] >= 'A' && text[1] <= 'Z'));
  return joins ? text.substr(1) : text;
}

}  // namespace

std::optional<double> parse_count(std::string_view text, std::string_view noun, UnitSystem system) {
  const auto value = take_number(text, system);
  text = after_blanks(text);
  if (!value || text.empty()) return value;
  std::string word = plain_unit(after_hyphen(text));
  for (const std::string_view last : {"mix", "/yd3", "/yd", "/cy", "peryard", "ayard"}) {
    if (word.ends_with(last)) word.erase(word.size() - last.size());
  }
  for (const std::string_view sack : {"bags", "bag", "sks", "sk"}) {
    if (word == sack) word = "sack";
  }
  if (!word.ends_with('s')) word += 's';
  return word == noun ? value : std::nullopt;
}

std::string_view without_noun(std::string_view text, std::string_view key) {
  for (const std::string_view noun : {std::string_view("mix"), key.substr(0, key.find('_'))}) {
    const std::size_t at = text.size() - std::min(noun.size(), text.size());
    if (at > 0 && text[at - 1] == ' ' && text.substr(at) == noun) return text.substr(0, at - 1);
  }
  return text;
}

std::optional<double> parse_sacks(std::string_view text, UnitSystem system) {
  const auto sacks = parse_count(text, "sacks", system);
  return take_number(text, system) && !after_blanks(text).empty() ? sacks : std::nullopt;
}

std::optional<WrittenQuantity> parse_quantity(std::string_view text, const Quantity& kind,
                                              UnitSystem system) {
  const auto value = take_number(text, system);
  if (!value) return std::nullopt;
  text = after_hyphen(text);
  const std::string whole = plain_unit(text);
  if (whole.empty() || (kind.counts_degrees && is_degrees(whole)))
    return WrittenQuantity{*value, nullptr};
  if (const Unit* const unit = unit_named(whole, kind)) return WrittenQuantity{*value, unit};
  std::string_view rest = text;
  const Unit* const large = unit_named(take_unit(rest), kind);
  if (large == nullptr || *value < 0.0) return std::nullopt;
  const auto small = small_part(rest, *large, kind, system);
  if (!small) return std::nullopt;
  return WrittenQuantity{*value + *small, large};
}

std::string as_typed(std::string_view text, const WrittenQuantity& taken, const Quantity& kind,
                     UnitSystem system) {
  constexpr std::size_t longest = 40;
  if (text.size() > longest) return shown(taken.value, *taken.unit);
  const auto said = parse_quantity(text, kind, system);
  const bool names_unit = said && said->unit != nullptr;
  return names_unit ? std::string(text) : with_unit(text, *taken.unit);
}

}  // namespace slabtide
