// The page's pictures as markup.
#include <algorithm>
#include <array>
#include <regex>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "report/map/page_map.h"
#include "report/page/page_charts.h"
#include "report/page/page_saw.h"
#include "support/page_facts.h"

namespace slabtide {
namespace {

std::size_t count_of(const std::string& text, const std::string& what) {
  std::size_t count = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) {
    ++count;
  }
  return count;
}

/// What is wrong with the nesting of tags; empty if nothing is.
std::string nesting_fault(const std::string& markup) {
  const std::set<std::string> without_end{"br", "col", "hr", "img", "input", "meta"};
  std::vector<std::string> open;
  for (std::size_t at = markup.find('<'); at != std::string::npos; at = markup.find('<', at + 1)) {
    const std::size_t end = markup.find('>', at);
    if (end == std::string::npos) return "a tag without an end";
    const bool closes = markup[at + 1] == '/';
    const std::size_t from = at + (closes ? 2 : 1);
    const std::string name = markup.substr(from, markup.find_first_of(" />", from) - from);
    if (closes) {
      if (open.empty() || open.back() != name) return "unexpected end of " + name;
      open.pop_back();
    } else if (markup[end - 1] != '/' && !without_end.contains(name)) {
      open.push_back(name);
    }
  }
  return open.empty() ? std::string() : "no end of " + open.back();
}

std::string all_figures(const PlannedPour& facts) {
  return page_map(facts) + page_charts(facts) + page_saw(facts) + page_cuts(facts);
}

TEST_CASE("the pictures are whole, with ids of their own and nothing a strict policy refuses") {
  const test::PageDay day(test::shaded_landing());
  const std::string markup = all_figures(day.facts());
  CHECK(nesting_fault(markup) == "");
  std::set<std::string> ids;
  const std::regex id(" id=\"([^\"]*)\"");
  for (std::sregex_iterator it(markup.begin(), markup.end(), id), none; it != none; ++it) {
    CAPTURE((*it)[1].str());
    CHECK(ids.insert((*it)[1].str()).second);
  }
  CHECK(count_of(markup, " style=") == 0);
  CHECK_FALSE(std::regex_search(markup, std::regex(" on[a-z]+=")));
  CHECK(count_of(markup, "http") == 0);
  CHECK(count_of(markup, "nan") == 0);
  // Everything referred to exists.
  const std::regex reference("(?:href=\"|url\\()#([a-z0-9-]+)");
  for (std::sregex_iterator it(markup.begin(), markup.end(), reference), none; it != none; ++it) {
    CAPTURE((*it)[1].str());
    CHECK(ids.contains((*it)[1].str()));
  }
}

TEST_CASE("a user's text stays text") {
  Job job = test::shaded_landing();
  job.zones[1].name = test::hostile_name;
  job.pour.placing_sequence[1] = test::hostile_name;
  job.obstacles[0].name = "</text><script>";
  const test::PageDay day(job);
  const std::string markup = all_figures(day.facts());
  CHECK(nesting_fault(markup) == "");
  CHECK(count_of(markup, "<script") == 0);
  CHECK(count_of(markup, "&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;west&quot; 東") > 8);
}

TEST_CASE("there is one map, with each choice's lines, times and table") {
  const test::PageDay day(test::shaded_landing());
  const std::string markup = page_map(day.facts());
  CHECK(count_of(markup, "<svg class=\"plan plan-hour\"") == 1);
  CHECK(count_of(markup, "type=\"radio\"") == 8);
  // Of each choice what lies under the zones' names on the map, what lies over them, and its words.
  CHECK(count_of(markup, "class=\"time-layer") == 16);
  CHECK(count_of(markup, "class=\"map-times\" data-choice=") == 8);
  CHECK(count_of(markup, "data-times=") == 8);
  CHECK(count_of(markup, " checked") == 1);
  CHECK(count_of(markup, "data-json=\"/zones/0/border/windows/") > 3);
  // Without the script the first choice is on the map, and what needs the script is not shown.
  CHECK(count_of(markup, "class=\"time-layer shown\" data-choice=\"finish\"") == 2);
  CHECK(count_of(markup, "class=\"time-layer shown\"") == 2);
  CHECK(count_of(markup, "class=\"map-controls\" hidden") == 1);
  CHECK(count_of(markup, " hidden>− 15 min") == 1);
  CHECK(count_of(markup, " hidden>+ 15 min") == 1);
  CHECK(count_of(markup, "id=\"map-hour\"") == 1);
  CHECK(count_of(markup, "class=\"map-figure\" hidden") == 0);
}

TEST_CASE("a zone that fills the plan has its name on it") {
  const test::PageDay day(test::open_pad());
  const std::string markup = page_map(day.facts());
  std::smatch name;
  REQUIRE(std::regex_search(markup, name,
                            std::regex("plan-zone-name\" x=\"([0-9]+)\" y=\"([0-9]+)\"")));
  std::smatch outline;
  REQUIRE(
      std::regex_search(markup, outline, std::regex("class=\"plan-zone\" d=\"M([0-9]+) ([0-9]+)")));
  // The outline begins at its south-west corner; the pad is square and centred.
  const int west = std::stoi(outline[1].str());
  const int south = std::stoi(outline[2].str());
  const int x = std::stoi(name[1].str());
  const int y = std::stoi(name[2].str());
  CHECK(x > west);
  CHECK(x < 1000 - west);
  CHECK(y < south);
  CHECK(y > south - (1000 - 2 * west));
}

TEST_CASE("a saw's page stands only where there is something to cut") {
  const test::PageDay small(test::open_pad());
  CHECK(small.facts().plan.cuts.cuts.empty());
  CHECK(page_saw(small.facts()).empty());
  const test::PageDay day(test::shaded_landing());
  const auto& shift = day.facts().plan.cuts.shift(SawKind::early_entry);
  const std::string markup = page_cuts(day.facts());
  CHECK(count_of(markup, "class=\"cut-number\"") == shift.cuts.size());
  CHECK(count_of(markup, "/depth_m\"") == shift.cuts.size());
  CHECK(count_of(markup, "Early-entry saw</h3>") == 1);
  CHECK(count_of(markup, "Wet saw</h3>") == 0);
}

TEST_CASE("many zones are numbered, stand in groups and make a page that still travels") {
  const test::PageDay day(test::many_pads());
  const std::string markup = all_figures(day.facts());
  CHECK(nesting_fault(markup) == "");
  CHECK(count_of(markup, "<details class=\"fold\"><summary>bay 1 to bay 6") == 1);
  CHECK(count_of(markup, "<summary>bay 13 to bay 15") == 1);
  CHECK(count_of(markup, ">15</text>") >= 1);
  // Observed: 33 kB per zone, with all its maps, curves and tables.
  CHECK(markup.size() < std::size_t{40000} * day.facts().job.zones.size());
}

TEST_CASE("metric jobs are drawn in metric units") {
  Job job = test::shaded_landing();
  job.units = UnitSystem::si;
  const test::PageDay day(job);
  const std::string markup = all_figures(day.facts());
  CHECK(count_of(markup, "°F") == 0);
  CHECK(count_of(markup, "psi") == 0);
  CHECK(count_of(markup, "MPa") > 0);
  CHECK(count_of(markup, ">0.01</text>") == 1);
  CHECK(count_of(markup, ">10</text>") >= 1);
  CHECK(count_of(markup, ">10.00</text>") == 0);
  CHECK(count_of(markup, " ft") == 0);
}

}  // namespace
}  // namespace slabtide
