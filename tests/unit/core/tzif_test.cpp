#include "core/tzif.h"

#include <cstdint>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace slabtide;

namespace {

std::string big_endian(std::int64_t value, int bytes) {
  std::string result;
  for (int i = bytes - 1; i >= 0; --i) {
    result += static_cast<char>((static_cast<std::uint64_t>(value) >> (8 * i)) & 0xFFU);
  }
  return result;
}

/// The parts of a time-zone file, laid out as in RFC 8536, section 3.
struct File {
  char version = '2';
  std::int64_t leaps = 0;
  std::vector<std::int64_t> changes_s;
  std::vector<int> types;
  std::vector<std::int64_t> offsets_s{0};
  std::string rule = "CST6CDT,M3.2.0,M11.1.0";
  std::string magic = "TZif";

  [[nodiscard]] std::string header() const {
    return magic + version + std::string(15, '\0') + big_endian(0, 4) + big_endian(0, 4) +
           big_endian(leaps, 4) + big_endian(static_cast<std::int64_t>(changes_s.size()), 4) +
           big_endian(static_cast<std::int64_t>(offsets_s.size()), 4) + big_endian(4, 4);
  }
  [[nodiscard]] std::string block(int time_bytes) const {
    std::string result;
    for (const std::int64_t at : changes_s) {
      result += big_endian(at, time_bytes);
    }
    for (const int type : types) {
      result += static_cast<char>(type);
    }
    for (const std::int64_t offset : offsets_s) {
      result += big_endian(offset, 4) + std::string(2, '\0');
    }
    return result + std::string("ABC\0", 4) +
           std::string(static_cast<std::size_t>(leaps * (time_bytes + 4)), '\0');
  }
  [[nodiscard]] std::string bytes() const {
    return header() + block(4) + header() + block(8) + "\n" + rule + "\n";
  }
};

// Three changes; the rule after them has its own times.
File example() {
  File file;
  file.changes_s = {-5000000000, 1000, 1700000000};
  file.types = {1, 0, 2};
  file.offsets_s = {-100, 7200, -21600};
  return file;
}

std::string problem_of(const File& file) {
  const ParsedTzif reading = parse_tzif(file.bytes());
  CHECK_FALSE(reading.history);
  return reading.problem;
}

}  // namespace

TEST_CASE("listed changes hold up to the last, the rule after it") {
  const OffsetHistory history = *parse_tzif(example().bytes()).history;
  CHECK(history.offset_s(-5000000001) == -100);
  CHECK(history.offset_s(-5000000000) == 7200);
  CHECK(history.offset_s(999) == 7200);
  CHECK(history.offset_s(1000) == -100);
  CHECK(history.offset_s(1699999999) == -100);
  CHECK(history.offset_s(1700000000) == -21600);
  CHECK(history.offset_s(1784116800) == -18000);  // July 2026, daylight time by the rule
}

TEST_CASE("a file without changes is its rule") {
  const OffsetHistory history = *parse_tzif(File{}.bytes()).history;
  CHECK(history.offset_s(0) == -21600);
  CHECK(history.offset_s(1784116800) == -18000);
}

TEST_CASE("a file cut short anywhere is refused") {
  const std::string whole = example().bytes();
  REQUIRE(parse_tzif(whole).history);
  for (std::size_t bytes = 0; bytes < whole.size(); ++bytes) {
    CAPTURE(bytes);
    CHECK_FALSE(parse_tzif(whole.substr(0, bytes)).history);
  }
}

TEST_CASE("a changed byte is refused or read, never a crash") {
  const std::string whole = example().bytes();
  int refused = 0;
  for (std::size_t i = 0; i < whole.size(); ++i) {
    for (const int value : {0x00, 0x01, 0x7F, 0x80, 0xFF}) {
      std::string changed = whole;
      changed[i] = static_cast<char>(value);
      const ParsedTzif reading = parse_tzif(changed);
      CHECK(reading.history.has_value() == reading.problem.empty());
      refused += reading.history ? 0 : 1;
    }
  }
  CHECK(refused > 0);
}

TEST_CASE("why a file is refused") {
  File file = example();
  file.magic = "TZxf";
  CHECK(problem_of(file) == "it is not a time-zone file");
  file = example();
  file.version = '\0';
  CHECK(problem_of(file) ==
        "it is a time-zone file of version 1, which holds no rule for the future");
  file = example();
  file.leaps = 2;
  CHECK(problem_of(file) == "it counts leap seconds, which civil time does not");
  file = example();
  file.rule.clear();
  CHECK(problem_of(file) == "it holds no rule for the future");
  file.rule = "CST6CDT";
  CHECK(problem_of(file) ==
        "its rule \"CST6CDT\" is not understood: it does not say when daylight time begins");
  file = example();
  file.types[1] = 3;
  CHECK(problem_of(file) == "it is a damaged time-zone file");
  file = example();
  file.changes_s[1] = file.changes_s[0];
  CHECK(problem_of(file) == "it is a damaged time-zone file");
  file = example();
  file.offsets_s.clear();
  CHECK(problem_of(file) == "it is a damaged time-zone file");
}
