#include <string>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "weather/readers/json_value.h"

namespace slabtide {
namespace {

using Kind = JsonValue::Kind;

std::string first_line(const std::string& text) {
  const auto told = render_all(parse_json(text).diagnostics, "", text);
  return told.substr(0, told.find('\n'));
}

std::string times(std::size_t count, const std::string& text) {
  std::string result;
  for (std::size_t i = 0; i < count; ++i) result += text;
  return result;
}

}  // namespace

TEST_CASE("every value knows its kind and place") {
  const auto root = parse_json(
                        "\xEF\xBB\xBF{\"a\" : [1, -2.5e1,\n  \"two\\n\", true, null],\n"
                        "\"é\":{\"b\":[]}}")
                        .value.value();
  CHECK(root.is(Kind::object));
  CHECK(root.where == SourcePosition{1, 1});
  const JsonValue& list = *root.find("a");
  CHECK(list.where == SourcePosition{1, 8});
  REQUIRE(list.items.size() == 5);
  CHECK(list.items[0].number == 1.0);
  CHECK(list.items[0].where == SourcePosition{1, 9});
  CHECK(list.items[1].number == -25.0);
  CHECK(list.items[1].where == SourcePosition{1, 12});
  CHECK(list.items[2].text == "two\n");
  CHECK(list.items[2].where == SourcePosition{2, 3});
  CHECK(list.items[3].boolean);
  CHECK(list.items[3].where == SourcePosition{2, 12});
  CHECK(list.items[4].is(Kind::null));
  CHECK(list.items[4].where == SourcePosition{2, 18});
  CHECK(root.find("é")->where == SourcePosition{3, 5});
  CHECK(root.find("é")->find("b")->where == SourcePosition{3, 10});
  CHECK(root.find("c") == nullptr);
  CHECK(list.find("a") == nullptr);
}

TEST_CASE("nesting is bounded") {
  CHECK(parse_json(times(32, "[") + times(32, "]")).ok());
  CHECK(first_line(times(33, "[") + times(33, "]")) == "1:33: nested over 32 levels deep");
  CHECK(first_line(times(100'000, "[")) == "1:33: nested over 32 levels deep");
  CHECK(first_line(times(100'000, "{\"a\":")) == "1:161: nested over 32 levels deep");
}

TEST_CASE("counts are bounded") {
  CHECK(parse_json(fmt::format("[{}0]", times(199'998, "0,"))).ok());
  CHECK(first_line(fmt::format("[{}0]", times(199'999, "0,"))) ==
        "1:400000: more than 200000 values");
  std::string many = "{";
  for (int i = 0; i < 501; ++i) many += fmt::format("{}\"{}\":0", i == 0 ? "" : ",", i);
  CHECK(first_line(many + "}").ends_with(": an object with over 500 keys"));
}

TEST_CASE("what is no JSON is told with its place") {
  CHECK(first_line("{\"a\": 1,\n \"b\": }") ==
        "2:7: this is not valid JSON: unexpected '}'; expected '[', '{', or a literal");
  CHECK(first_line("[1, 2") ==
        "1:6: this is not valid JSON: unexpected end of input; expected ']'");
  CHECK(first_line("") ==
        "1:1: this is not valid JSON: unexpected end of input; expected '[', '{', or a literal");
  CHECK(first_line("{\"a\":1,\"a\":2}") == "1:8: the key 'a' is there twice");
  CHECK(first_line("[-1e400]") == "1:7: this is not valid JSON: a number is too large");
}

}  // namespace slabtide
