#include "fetch/fetch_fixture.h"

#include <sstream>
#include <utility>

#include <fmt/format.h>

#include "support/forecast_documents.h"

namespace slabtide::test {
namespace {

constexpr const char* job_text = R"(name = "Test pad"
[site]
latitude = 44.90004
longitude = -91.9
time_zone = "America/Chicago"
[pour]
date = 2026-05-14
start = "08:00"
[weather]
{}
[mix]
w_cm = 0.45
concrete_temperature = 62
[[zone]]
name = "pad"
outline = [[0, 0], [10, 0], [10, 10], [0, 10]]
thickness = 4
finish = "broom"
)";

auto four_days() { return spring_hours(Date{2026, 5, 13}, 96); }

UtcTime fixed_now() {
  return UtcTime{Date{2026, 5, 13}, boost::posix_time::time_duration{21, 40, 0}};
}

}  // namespace

const std::string old_forecast = as_open_meteo(spring_hours(Date{2026, 5, 8}, 72)) + "\r\n \t";

FetchFixture::FetchFixture() {
  write_job("forecast = \"tomorrow.json\"");
  write_text(forecast_path(), old_forecast);
  server.will_answer(points_path, answer(200, points_document(server.base_url())));
}

void FetchFixture::write_job(const std::string& weather) {
  write_text(job_path(), fmt::format(fmt::runtime(job_text), weather));
}

FetchOutcome FetchFixture::fetch(std::optional<ForecastService> from) {
  FetchOrder order;
  order.from = from;
  order.contact = "pours@contractor.example";
  return fetch_as(std::move(order));
}

FetchOutcome FetchFixture::fetch_as(FetchOrder order) {
  if (order.job_path.empty()) order.job_path = job_path().string();
  if (!order.base_url) order.base_url = server.base_url();
  FetchOutcome outcome;
  FetchWorld world;
  world.now = fixed_now;
  world.sleep = [&](double seconds) { outcome.pauses_s.push_back(seconds); };
  world.limits = limits;
  world.on_terminal = on_terminal;
  std::ostringstream out;
  std::ostringstream err;
  outcome.code = slabtide::fetch(order, world, out, err);
  outcome.out = out.str();
  outcome.err = err.str();
  return outcome;
}

std::string points_document(const std::string& base_url) {
  return fmt::format(R"({{"type":"Feature","properties":{{"gridId":"XYZ","gridX":62,"gridY":41,)"
                     R"("forecastGridData":"{0}{1}","forecastHourly":"{0}{2}"}}}})",
                     base_url, grid_path, hourly_path);
}

std::string problem_document(int status, const std::string& title, const std::string& detail) {
  return fmt::format(R"({{"type":"https://forecasts.example/problems/X","title":"{}",)"
                     R"("status":{},"detail":"{}"}})",
                     title, status, detail);
}

std::string grid_document() { return as_nws_grid(four_days()); }
std::string hourly_document() { return as_nws_hourly(four_days()); }
std::string open_meteo_document() { return as_open_meteo(four_days()); }

bool holds(const std::filesystem::path& path, const std::string& text) {
  return read_text(path) == text;
}

std::string line_of(const std::string& text, std::size_t number) {
  std::size_t start = 0;
  for (std::size_t line = 1; line < number; ++line) start = text.find('\n', start) + 1;
  return text.substr(start, text.find('\n', start) - start);
}

std::string without_folder(std::string text, const FetchFixture& fixture) {
  const std::string folder = fixture.folder.path().string() + "/";
  for (std::size_t at = text.find(folder); at != std::string::npos; at = text.find(folder))
    text.erase(at, folder.size());
  return text;
}

std::string unwrapped(const std::string& text) {
  std::string result;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text.compare(at, 3, "\n  ") == 0) {
      result += ' ';
      at += 2;
    } else {
      result += text[at];
    }
  }
  return result;
}

}  // namespace slabtide::test
