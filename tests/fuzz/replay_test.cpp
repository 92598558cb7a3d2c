#include <algorithm>
#include <array>
#include <cstddef>
#include <filesystem>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "fuzz/inputs.h"
#include "support/run_program.h"

// Runs the fuzz targets on their seeds and on damaged documents, the same every time; the fuzzer
// itself (tools/fuzz) does more.

namespace slabtide {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t damaged_places = 40;

struct Target {
  const char* name;
  void (*try_input)(std::string_view text);
  std::size_t places = damaged_places;
};

constexpr std::array<Target, 10> targets{
    {{"forecast_csv", fuzz::try_forecast_csv},
     {"nws_hourly", fuzz::try_nws_hourly},
     {"nws_grid", fuzz::try_nws_grid},
     {"open_meteo", fuzz::try_open_meteo},
     {"forecast", fuzz::try_forecast},
     {"job", fuzz::try_job},
     {"journal", fuzz::try_journal},
     {"practice", fuzz::try_practice},
     {"mix_book", fuzz::try_mix_book},
     // Damage gives another random job, which whole_jobs_test.cpp tests too, without the slow
     // comparisons.
     {"whole_job", fuzz::try_whole_job, 2}}};

std::vector<std::string> texts_below(const fs::path& folder) {
  std::vector<fs::path> paths;
  for (const auto& entry : fs::directory_iterator{SLABTIDE_SOURCE_DIR / folder})
    if (entry.is_regular_file()) paths.push_back(entry.path());
  std::sort(paths.begin(), paths.end());
  std::vector<std::string> texts;
  std::transform(paths.begin(), paths.end(), std::back_inserter(texts), test::read_text);
  return texts;
}

/// Documents elsewhere in the tree that serve as seeds of a target (shared_seeds: target, path).
std::vector<std::string> shared_seeds(const std::string& target) {
  std::istringstream list{
      test::read_text(fs::path{SLABTIDE_SOURCE_DIR} / "tests/fuzz/shared_seeds")};
  std::vector<std::string> texts;
  std::string name;
  for (std::string path; list >> name >> path;) {
    if (name != target) continue;
    texts.push_back(test::read_text(fs::path{SLABTIDE_SOURCE_DIR} / path));
    CHECK_MESSAGE(!texts.back().empty(), path);
  }
  return texts;
}

std::vector<std::string> seeds_of(const std::string& target) {
  std::vector<std::string> seeds = texts_below(fs::path{"tests/fuzz/corpus"} / target);
  std::ranges::move(shared_seeds(target), std::back_inserter(seeds));
  return seeds;
}

/// Cuts the text short in many places, and replaces the byte there by each of a few significant
/// ones.
void try_damaged(const Target& target, const std::string& text) {
  constexpr std::string_view telling = "\"{[,:-9\xFF\n";
  const std::size_t step = std::max<std::size_t>(text.size() / target.places, 1);
  for (std::size_t at = 0; at < text.size(); at += step) {
    target.try_input(std::string_view{text}.substr(0, at));
    std::string damaged = text;
    damaged[at] = telling[(at / step) % telling.size()];
    target.try_input(damaged);
  }
}

}  // namespace

TEST_CASE("every target takes its seeds, whole and damaged") {
  for (const Target& target : targets) {
    CAPTURE(target.name);
    const auto seeds = seeds_of(target.name);
    CHECK(seeds.size() >= 2);
    for (const std::string& seed : seeds) {
      target.try_input(seed);
      try_damaged(target, seed);
    }
  }
}

TEST_CASE("every target takes every document, whole") {
  for (const Target& target : targets)
    for (const std::string& text : texts_below("tests/forecasts")) target.try_input(text);
}

TEST_CASE("the forecasts' documents, damaged") {
  for (const std::string& text : texts_below("tests/forecasts"))
    if (text.size() < 4000) try_damaged(targets.at(4), text);
}

}  // namespace slabtide
