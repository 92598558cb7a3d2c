#include "job/records/mix_book_edit.h"

#include <cmath>

#include <doctest/doctest.h>

namespace slabtide::test {
namespace {

MixBook small_book() {
  MixBook book;
  book.put("six sack", {"landing", "cabin", Date(2026, 5, 14), 1.25, 4, 0.5, {12.0, -5.0}});
  book.put("six sack", {"walk", "cabin", Date(2026, 5, 20), 1.05, 3, {}, {}});
  book.put("a \"b\" \\ 東", {"pad", "mill", Date(2026, 6, 1), 0.9, 0, -1.0, {}});
  return book;
}

std::string fault_of(const std::string& text) {
  const Parsed<MixBook> reading = read_mix_book(text);
  CAPTURE(text);
  REQUIRE_FALSE(reading.ok());
  return reading.diagnostics.at(0).message;
}

}  // namespace

TEST_CASE("a book is written as it is read") {
  const std::string text = mix_book_text(small_book());
  const Parsed<MixBook> reading = read_mix_book(text);
  INFO(render_all(reading.diagnostics, "book", text));
  REQUIRE(reading.ok());
  CHECK(mix_book_text(*reading.value) == text);
  REQUIRE(reading.value->mixes.size() == 2);
  CHECK(reading.value->mixes[1].name == "a \"b\" \\ 東");
  const BookedPour& pour = reading.value->mixes[0].pours[0];
  CHECK(pour.set_factor == doctest::Approx(1.25));
  CHECK(pour.late_min == std::vector<double>{12.0, -5.0});
  CHECK(pour.air_k.value() == doctest::Approx(0.5));
}

TEST_CASE("the same pour again takes the place of the old") {
  MixBook book = small_book();
  book.put("six sack", {"landing", "cabin", Date(2026, 5, 14), 1.10, 5, {}, {}});
  REQUIRE(book.mixes[0].pours.size() == 2);
  CHECK(book.mixes[0].pours[0].set_factor == doctest::Approx(1.10));
  book.put("six sack", {"landing", "cabin", Date(2026, 5, 15), 1.10, 5, {}, {}});
  CHECK(book.mixes[0].pours.size() == 3);
}

TEST_CASE("few pours are drawn toward the description, many are believed") {
  MixBook book;
  double before = 1.0;
  for (unsigned short i = 1; i <= 20; ++i) {
    book.put("mix", {"job", "site", Date(2026, 5, i), 1.2, 3, {}, {}});
    const double now = learned_set(book.mixes[0])->set_factor;
    CHECK(now > before);
    CHECK(now < 1.2);
    before = now;
  }
  CHECK(before > 1.19);
  // One pour: s^2 / (s^2 + e^2) of its logarithm, s 0.14 and e 0.10, worked by hand: 0.662.
  MixBook one;
  one.put("mix", {"job", "site", Date(2026, 5, 1), 1.2, 3, {}, {}});
  CHECK(std::log(learned_set(one.mixes[0])->set_factor) / std::log(1.2) ==
        doctest::Approx(0.6622).epsilon(1e-3));
}

TEST_CASE("a pour without a reading of the setting does not count for the factor") {
  const MixBook book = small_book();
  CHECK_FALSE(learned_set(book.mixes[1]));
  CHECK_FALSE(set_factor_spread(book.mixes[1]));
}

TEST_CASE("what is left open of the factor shrinks with every pour") {
  MixBook book;
  double before = 0.14;
  for (unsigned short i = 1; i <= 20; ++i) {
    book.put("mix", {"job", "site", Date(2026, 5, i), 1.2, 3, {}, {}});
    const double now = learned_set(book.mixes[0])->log_deviation;
    CHECK(now < before);
    before = now;
    // s e / sqrt(n s^2 + e^2), the variance of a normal mean known by n draws.
    CHECK(now == doctest::Approx(0.14 * 0.10 / std::sqrt(i * 0.14 * 0.14 + 0.10 * 0.10)));
  }
}

TEST_CASE("a site's air is pooled over its mixes and drawn toward its forecasts") {
  MixBook book = small_book();
  book.put("other", {"drive", "mill", Date(2026, 6, 8), 1.0, 0, -2.0, {}});
  const LearnedAir mill = learned_air(book, "mill").value();
  CHECK(mill.pours == 2);
  CHECK(mill.mean_k == doctest::Approx(-1.5));
  // 2 s^2 / (2 s^2 + e^2), s 0.7 and e 1.1 K, worked by hand: 0.98 / 2.19 = 0.4475.
  CHECK(mill.air_k == doctest::Approx(-1.5 * 0.4475).epsilon(1e-3));
  CHECK(learned_air(book, "cabin")->pours == 1);
  CHECK_FALSE(learned_air(book, "elsewhere"));
  CHECK_FALSE(learned_air(book, ""));
}

TEST_CASE("what cannot be in a book is refused") {
  const std::string pour =
      "[[mix]]\nname = \"m\"\n[[mix.pour]]\njob = \"j\"\nsite = \"s\"\ndate = 2026-05-14\n";
  CHECK(fault_of(pour) == "missing");
  CHECK(fault_of(pour + "set_factor = 3\n").find("expected") != std::string::npos);
  CHECK(fault_of(pour + "set_factor = 1\nlate_min = [\"a\"]\n").find("minutes") !=
        std::string::npos);
  CHECK(fault_of("[[mix]]\nname = \"m\"\n[[mix]]\nname = \"m\"\n") ==
        "the mix \"m\" is already there");
  CHECK(fault_of("[[mixture]]\n").find("mixture") == std::string::npos);
}

}  // namespace slabtide::test
