#include "json_value.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <optional>
#include <utility>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "findings.h"

#include "core/utf8.h"

namespace slabtide {
namespace {

using Json = nlohmann::json;
using Kind = JsonValue::Kind;

/// Characters between two values that belong to neither.
constexpr std::string_view separators = " \t\r\n,:";
/// The deepest forecast document has seven levels.
constexpr std::size_t max_levels = 32;
/// A month of hours times every quantity that a service offers.
constexpr std::size_t max_values = 200'000;
/// The grid document has about seventy; finding duplicate keys goes through all of them.
constexpr std::size_t max_members = 500;

/// Iterates over the text and records how far the parser has read.
class CountingIterator {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  CountingIterator(const char* at, std::size_t* taken) : at_(at), taken_(taken) {}
  reference operator*() const { return *at_; }
  CountingIterator& operator++() {
    ++at_;
    ++*taken_;
    return *this;
  }
  CountingIterator operator++(int) {
    const CountingIterator before = *this;
    ++*this;
    return before;
  }
  friend bool operator==(const CountingIterator& a, const CountingIterator& b) {
    return a.at_ == b.at_;
  }
  friend bool operator!=(const CountingIterator& a, const CountingIterator& b) { return !(a == b); }

 private:
  const char* at_;
  std::size_t* taken_;
};

/// Converts increasing offsets into lines and columns, counted in characters.
class PositionCounter {
 public:
  explicit PositionCounter(std::string_view text) : text_(text) {}

  SourcePosition at(std::size_t offset) {
    for (; at_ < std::min(offset, text_.size()); ++at_) {
      const auto byte = static_cast<unsigned char>(text_[at_]);
      if (byte == '\n') {
        where_ = {where_.line + 1, 1};
      } else if ((byte & 0xC0U) != 0x80U) {
        ++where_.column;
      }
    }
    return where_;
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
  SourcePosition where_;
};

/// Builds the tree from the parser's events. The overridden functions are those of
/// nlohmann::json_sax.
class TreeBuilder : public nlohmann::json_sax<Json> {
 public:
  TreeBuilder(std::string_view text, const std::size_t& taken)
      : text_(text), taken_(taken), positions_(text) {}

  bool null() override { return add(Kind::null) != nullptr; }
  bool boolean(bool value) override {
    JsonValue* const added = add(Kind::boolean);
    if (added != nullptr) added->boolean = value;
    return added != nullptr;
  }
  bool number_integer(std::int64_t value) override { return number(static_cast<double>(value)); }
  bool number_unsigned(std::uint64_t value) override { return number(static_cast<double>(value)); }
  bool number_float(double value, const std::string& /*digits*/) override { return number(value); }
  bool string(std::string& value) override {
    JsonValue* const added = add(Kind::text);
    if (added != nullptr) added->text = std::move(value);
    return added != nullptr;
  }
  bool binary(Json::binary_t& /*value*/) override { return false; }  // not in JSON text
  bool start_object(std::size_t /*count*/) override { return open(Kind::object); }
  bool start_array(std::size_t /*count*/) override { return open(Kind::array); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(std::string& name) override {
    const SourcePosition where = token();
    if (open_.back()->find(name) != nullptr)
      return refuse(where, fmt::format("the key {} is there twice", in_quotes(name)));
    if (open_.back()->members.size() == max_members)
      return refuse(where, fmt::format("an object with over {} keys", max_members));
    open_.back()->members.push_back({std::move(name), {}});
    return true;
  }

  bool parse_error(std::size_t byte, const std::string& /*last*/,
                   const nlohmann::detail::exception& problem) override {
    // "[json.exception...] parse error at ...: syntax error while ... - what is wrong"
    const std::string_view whole = problem.what();
    const std::size_t dash = whole.find(" - ");
    const std::string_view what =
        dash == std::string_view::npos ? "a number is too large" : whole.substr(dash + 3);
    return refuse(positions_.at(byte > 0 ? byte - 1 : 0),
                  fmt::format("this is not valid JSON: {}", what),
                  "the document may be cut off or damaged: fetch it again");
  }

  Parsed<JsonValue> take() {
    if (findings_.has_error()) return {std::nullopt, findings_.take()};
    return {std::move(root_), {}};
  }

 private:
  bool number(double value) {
    JsonValue* const added = add(Kind::number);
    if (added != nullptr) added->number = value;
    return added != nullptr;
  }

  /// The position of the token that the parser has just read.
  SourcePosition token() {
    const std::size_t start = text_.find_first_not_of(separators, before_);
    before_ = taken_;
    return positions_.at(std::min(start, text_.size()));
  }

  /// Adds a value to the innermost container; null if the document is over a limit.
  JsonValue* add(Kind kind) {
    const SourcePosition where = token();
    if (++values_ > max_values) {
      refuse(where, fmt::format("more than {} values", max_values), "ask for fewer days");
      return nullptr;
    }
    JsonValue& slot = next_slot();
    slot.kind = kind;
    slot.where = where;
    return &slot;
  }

  JsonValue& next_slot() {
    if (open_.empty()) return root_;
    JsonValue& parent = *open_.back();
    return parent.is(Kind::object) ? parent.members.back().value : parent.items.emplace_back();
  }

  bool open(Kind kind) {
    JsonValue* const added = add(kind);
    if (added == nullptr) return false;
    if (open_.size() == max_levels)
      return refuse(added->where, fmt::format("nested over {} levels deep", max_levels));
    open_.push_back(added);
    return true;
  }

  bool close() {
    before_ = taken_;
    open_.pop_back();
    return true;
  }

  bool refuse(SourcePosition where, std::string message, std::string next_step = {}) {
    findings_.error(where, "", std::move(message), std::move(next_step));
    return false;
  }

  std::string_view text_;
  const std::size_t& taken_;
  std::size_t before_ = 0;  ///< taken_ after the last token was read
  PositionCounter positions_;
  JsonValue root_;
  /// From the root to the innermost open array or object. Only the innermost one grows, so the
  /// pointers stay valid.
  std::vector<JsonValue*> open_;
  std::size_t values_ = 0;
  Findings findings_;
};

}  // namespace

const JsonValue* JsonValue::find(std::string_view key) const {
  const auto found = std::find_if(members.begin(), members.end(),
                                  [&](const JsonMember& member) { return member.key == key; });
  return found == members.end() ? nullptr : &found->value;
}

std::string_view kind_name(JsonValue::Kind kind) {
  constexpr std::array<std::string_view, 6> names{"null", "true or false", "a number",
                                                  "text", "a list",        "an object"};
  return names.at(static_cast<std::size_t>(kind));
}

Parsed<JsonValue> parse_json(std::string_view text) {
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  std::size_t taken = 0;
  TreeBuilder builder{text, taken};
  Json::sax_parse(CountingIterator{text.data(), &taken},
                  CountingIterator{text.data() + text.size(), &taken}, &builder);
  return builder.take();
}

}  // namespace slabtide
