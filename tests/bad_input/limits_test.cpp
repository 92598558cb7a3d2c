#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "support/run_program.h"

// Inputs made to exhaust resources: each is refused within ten seconds of processor time and a
// gigabyte, which the shell's limits enforce, and with the expected message.

namespace slabtide::test {
namespace {

namespace fs = std::filesystem;

#if defined(__SANITIZE_ADDRESS__)
constexpr bool sanitized = true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
constexpr bool sanitized = true;
#else
constexpr bool sanitized = false;
#endif
#else
constexpr bool sanitized = false;
#endif

std::string repeated(std::string_view piece, std::size_t times) {
  std::string text;
  text.reserve(piece.size() * times);
  for (std::size_t i = 0; i < times; ++i) text += piece;
  return text;
}

/// Runs the program within the limits; under the address sanitizer, which reserves terabytes of
/// addresses, within the time limit only.
Outcome run_within(const std::vector<std::string>& words, const fs::path& folder) {
  const std::string limits = sanitized ? "ulimit -t 100" : "ulimit -t 10; ulimit -v 1000000";
  std::vector<std::string> all{"/bin/sh", "-c", limits + "; exec \"$0\" \"$@\"", SLABTIDE_PROGRAM};
  all.insert(all.end(), words.begin(), words.end());
  return run_program(all, folder);
}

/// The first line that a refused run prints.
std::string refusal(const std::vector<std::string>& words, const fs::path& folder) {
  const Outcome outcome = run_within(words, folder);
  CHECK(outcome.code == 2);
  return outcome.err.substr(0, outcome.err.find('\n'));
}

const std::string spring = read_text(fs::path(SLABTIDE_SOURCE_DIR) / "data/demo/spring.toml");

/// The demo job without its zones and without what refers to them.
std::string job_without_zones() {
  std::string text = spring.substr(0, spring.find("# 14 x 12 ft against"));
  const std::size_t order = text.find("zone_order");
  return text.erase(order, text.find('\n', order) - order);
}

std::string zone(std::size_t number, std::string_view shape) {
  return fmt::format(
      "[[zone]]\nname = \"zone {}\"\n{}\nthickness = 4\nbase = \"gravel\"\nfinish = \"broom\"\n",
      number, shape);
}

std::string rectangle(std::size_t x, std::size_t y, std::size_t width, std::size_t height) {
  return fmt::format("outline = [[{0}, {1}], [{2}, {1}], [{2}, {3}], [{0}, {3}]]", x, y, x + width,
                     y + height);
}

/// A saw-tooth outline with this many corners.
std::string many_corners(std::size_t corners, double at_ft) {
  std::string list = fmt::format("[{}, 0]", at_ft);
  for (std::size_t i = 1; i + 1 < corners; ++i) {
    list += fmt::format(",\n[{:.2f}, {}]", at_ft + 0.05 * static_cast<double>(i), 10 + i % 2);
  }
  list += fmt::format(",\n[{:.2f}, 0]", at_ft + 0.05 * static_cast<double>(corners));
  return fmt::format("outline = [{}]", list);
}

std::string job_refusal(const std::string& text) {
  const TempFolder folder;
  write_text(folder.path() / "job.toml", text);
  return refusal({"plan", "job.toml", "--draws", "0"}, folder.path());
}

std::string forecast_refusal(const std::string& text) {
  const TempFolder folder;
  write_text(folder.path() / "job.toml", spring);
  write_text(folder.path() / "day", text);
  return refusal({"plan", "job.toml", "--draws", "0", "--forecast", "day"}, folder.path());
}

std::string practice_refusal(const std::string& text) {
  const TempFolder folder;
  write_text(folder.path() / "job.toml", spring);
  write_text(folder.path() / "mine", text);
  return refusal({"plan", "job.toml", "--draws", "0", "--practice", "mine"}, folder.path());
}

std::string book_refusal(const std::string& text) {
  const TempFolder folder;
  write_text(folder.path() / "book", text);
  return refusal({"mixes", "book"}, folder.path());
}

}  // namespace

TEST_CASE("a file of a gigabyte is not read, in any place") {
  const TempFolder folder;
  write_text(folder.path() / "job.toml", spring);
  write_text(folder.path() / "huge", "");
  fs::resize_file(folder.path() / "huge", std::uintmax_t{1} << 30U);  // sparse: takes no disk space
  const std::string message = "huge: cannot read \"huge\": it is over the limit of 8388608 bytes";
  CHECK(refusal({"plan", "huge"}, folder.path()) == message);
  CHECK(refusal({"plan", "job.toml", "--forecast", "huge"}, folder.path()) == message);
  CHECK(refusal({"plan", "job.toml", "--practice", "huge"}, folder.path()) == message);
  CHECK(refusal({"mixes", "huge"}, folder.path()) == message);
  fs::rename(folder.path() / "huge", folder.path() / "job.journal");
  CHECK(refusal({"plan", "job.toml"}, folder.path()) ==
        "job.journal: cannot read \"job.journal\": it is over the limit of 8388608 bytes");
}

TEST_CASE("what never ends is not read") {
  const TempFolder folder;
  const std::string kind = "it is a pipe, socket or device, not a file";
  for (const std::string path : {"/dev/zero", "/dev/stdin", "/dev/full"}) {
    CHECK(refusal({"plan", path}, folder.path()) ==
          fmt::format("{0}: cannot read \"{0}\": {1}", path, kind));
  }
  CHECK(run_program({"/usr/bin/mkfifo", "pipe"}, folder.path()).code == 0);
  CHECK(refusal({"plan", "pipe"}, folder.path()) ==
        fmt::format("pipe: cannot read \"pipe\": {}", kind));
  CHECK(refusal({"plan", "."}, folder.path()) == ".: cannot read \".\": it is a folder");
}

TEST_CASE("TOML made to exhaust stack, memory or time") {
  const std::string dotted = fmt::format("a{}", repeated(".b", 2000));
  std::string headers;
  for (int i = 0; i < 240; ++i) headers += fmt::format("[a{}{}]\n", i, repeated(".b", 2000));
  CHECK(job_refusal(headers) == "job.toml:1:1: tables or lists are nested over 16 levels deep");
  CHECK(practice_refusal(dotted + " = 1\n") ==
        "mine:1:33: tables or lists are nested over 16 levels deep");
  CHECK(book_refusal(dotted + " = 1\n") ==
        "book:1:33: tables or lists are nested over 16 levels deep");
  CHECK(job_refusal(fmt::format("x = {}", repeated("[", 9000))) ==
        "job.toml:1:1: this line is 9004 bytes long, the longest a job file may have is 4096");
  CHECK(job_refusal(fmt::format("x = {}", repeated(repeated("[", 4000) + "\n", 200))) ==
        "job.toml:1:261: lists or braces are nested too deep");
  CHECK(job_refusal(fmt::format("x = {}", repeated("{a=", 300))) ==
        "job.toml:1:773: lists or braces are nested too deep");
  CHECK(job_refusal(repeated("# a long story\n", 100000)) ==
        "job.toml:1:1: the text is 1500000 bytes long, the most a job file may have is 1048576");
  CHECK(practice_refusal(repeated("# a long story\n", 100000)) ==
        "mine:1:1: the text is 1500000 bytes long, the most a practice file may have is 1048576");
  std::string keys;
  for (int i = 0; i < 100000; ++i) keys += fmt::format("k{}=1\n", i);
  CHECK(job_refusal(keys) == "job.toml:1:1: k0: unknown key");
  CHECK(practice_refusal(keys) == "mine:1:1: k0: unknown entry");
  CHECK(book_refusal(keys) == "book:1:1: k0: unknown key");
}

TEST_CASE("too many of anything in a job") {
  CHECK(job_refusal(repeated("[[zone]]\n", 110000)) ==
        "job.toml:1:1: zone: got 110000 tables [[zone]], expected at most 100");
  const std::string one = job_without_zones() + zone(1, rectangle(0, 0, 20, 20));
  const std::string header = fmt::format("job.toml:{}:1: ", std::ranges::count(one, '\n') + 1);
  CHECK(job_refusal(one + repeated("[[zone.face]]\nlength = 14\nheight = 7\n", 20000)) ==
        header + "zone[1].face: got 20000 tables [[zone.face]], expected at most 200");
  CHECK(job_refusal(one + repeated("[[zone.joint]]\nfrom = [0, 1]\nto = [20, 1]\n", 9000)) ==
        header + "zone[1].joint: got 9000 tables [[zone.joint]], expected at most 200");
  CHECK(job_refusal(one + repeated("[[obstacle]]\nkind = \"tree\"\n", 20000)) ==
        header + "obstacle: got 20000 tables [[obstacle]], expected at most 200");
  CHECK(job_refusal(one + repeated("[[option]]\nfinishers = 3\n", 20000)) ==
        header + "option: got 20000 tables [[option]], expected at most 200");
}

TEST_CASE("zones too large, and too many cells") {
  const std::string head = job_without_zones();
  const std::string place = fmt::format("job.toml:{}:11: ", std::ranges::count(head, '\n') + 3);
  CHECK(job_refusal(head + zone(1, rectangle(0, 0, 3280, 3280))) ==
        place + "zone[1].outline: reaches over 3280 ft, expected at most 1000 ft");
  CHECK(job_refusal(head + zone(1, rectangle(0, 0, 3280, 1))) ==
        place + "zone[1].outline: reaches over 3280 ft, expected at most 1000 ft");
  CHECK(job_refusal(head + zone(1, rectangle(0, 0, 990, 990))) ==
        place + "zone[1].outline: encloses 980100 ft², expected at most 54000 ft²");
  std::string back_and_forth = "path = [[0, 0]";
  for (int i = 1; i < 60; ++i) back_and_forth += fmt::format(",\n[{}, {}]", 4 * i, i % 2 * 900);
  CHECK(job_refusal(head + zone(1, back_and_forth + "]\nwidth = 0.5")) ==
        fmt::format("job.toml:{}:8: zone[1].path: is 53101 ft long, expected at most 1000 ft",
                    std::ranges::count(head, '\n') + 3));
  CHECK(job_refusal(head + zone(1, many_corners(30000, 0.0))) ==
        place +
            "zone[1].outline: got a list, expected a list of at most 400 points: [[x, y], "
            "[x, y], ...]");
  std::string corners = head;
  for (std::size_t i = 0; i < 100; ++i) {
    corners += zone(i, many_corners(390, 20.0 * static_cast<double>(i)));
  }
  CHECK(job_refusal(corners).ends_with(
      "zone: the zones have 39000 corners in all, expected at most 4000"));
  std::string steps = head;
  for (std::size_t i = 0; i < 5; ++i) {
    steps += zone(i, rectangle(20 * i, 0, 20, 20));
    for (int face = 0; face < 81; ++face) steps += "[[zone.face]]\nlength = 4\nheight = 6\n";
  }
  CHECK(job_refusal(steps).ends_with(
      "zone: the zones have 405 step faces in all, expected at most 400"));
  std::string cuts = head;
  for (std::size_t i = 0; i < 6; ++i) {
    cuts += zone(i, rectangle(20 * i, 0, 20, 20));
    for (int joint = 1; joint <= 180; ++joint) {
      cuts += fmt::format("[[zone.joint]]\nfrom = [{0}, {2}]\nto = [{1}, {2}]\n", 20 * i,
                          20 * i + 20, 0.1 * joint);
    }
  }
  CHECK(job_refusal(cuts).ends_with(
      "zone: the zones have 1080 joints drawn in all, expected at most 1000"));
  std::string floor = head;
  for (std::size_t i = 0; i < 16; ++i) {
    floor += zone(i, rectangle(i % 4 * 200, i / 4 * 200, 200, 200));
  }
  CHECK(job_refusal(floor).ends_with(
      "zone: the zones cover 640000 ft² in all, expected at most 54000 ft²"));
}

TEST_CASE("placing that goes on for days") {
  const std::string head = job_without_zones();
  CHECK(job_refusal(head + zone(1, rectangle(0, 0, 200, 200))) ==
        "job.toml: pour: the last concrete is placed Sat, May 16, 2026, 5:34 PM, 58 h after the "
        "start; "
        "expected at most 24 h");
}

TEST_CASE("forecasts made to exhaust") {
  const std::string head = "time,air_f,dew_point_f,wind_mph,cloud_percent\n";
  CHECK(forecast_refusal(head + repeated("2026-05-14T08:00,60,40,5,10\n", 1000000)) ==
        "day: cannot read \"day\": it is over the limit of 8388608 bytes");
  CHECK(forecast_refusal(head + repeated("2026-05-14T08:00,60,40,5,10\n", 250000)) ==
        "day:10001:1: more than 10000 rows");
  CHECK(forecast_refusal(fmt::format("time,{}", repeated(",", 8000000))) ==
        "day:1:69: more than 64 fields on a line");
  CHECK(forecast_refusal(repeated("[", 8000000)) == "day:1:33: nested over 32 levels deep");
  CHECK(forecast_refusal(repeated("{\"a\":", 1600000)) == "day:1:161: nested over 32 levels deep");
  CHECK(forecast_refusal(fmt::format("[{}1]", repeated("1,", 4000000))) ==
        "day:1:400000: more than 200000 values");
  CHECK(forecast_refusal(fmt::format("{{\"properties\": {}}}", repeated("9", 8000000))) ==
        "day:1:8000015: this is not valid JSON: a number is too large");
}

TEST_CASE("a book without end, and a billion days to draw") {
  CHECK(book_refusal(repeated("[[mix]]\nname = \"six sack\"\n", 40000)) ==
        "book:1:1: mix: got 40000 tables [[mix]], expected at most 2000");
  const TempFolder folder;
  write_text(folder.path() / "job.toml", spring);
  CHECK(refusal({"plan", "job.toml", "--draws", "1000000000"}, folder.path()) ==
        "slabtide: --draws: got '1000000000', expected a whole number from 0 to 10000");
}

}  // namespace slabtide::test
