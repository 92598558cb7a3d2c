#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "cli/fetch/fetch.h"
#include "fetch/loopback_server.h"
#include "support/run_program.h"

namespace slabtide::test {

/// What a run of `fetch` left behind.
struct FetchOutcome {
  int code = 0;
  std::string out;
  std::string err;
  std::vector<double> pauses_s;
};

/// A job and its forecast in a folder of their own, a server on loopback that knows the way to
/// the forecast, and a clock that stands at 2026-05-13T21:40Z.
class FetchFixture {
 public:
  FetchFixture();

  FetchOutcome fetch(std::optional<ForecastService> from = ForecastService::nws);
  /// As above, with an order of its own; its job path and base URL are filled in where empty.
  FetchOutcome fetch_as(FetchOrder order);

  std::string forecast_text() const { return read_text(forecast_path()); }
  std::filesystem::path forecast_path() const { return folder.path() / "tomorrow.json"; }
  std::filesystem::path job_path() const { return folder.path() / "job.toml"; }
  /// Rewrites the job with this [weather].
  void write_job(const std::string& weather);

  TempFolder folder;
  LoopbackServer server;
  HttpOptions limits;
  bool on_terminal = false;
};

/// What the forecast file holds before: of other days and with odd blanks behind it, so that it
/// cannot be mistaken.
extern const std::string old_forecast;

inline constexpr const char* points_path = "/points/44.9,-91.9";
inline constexpr const char* grid_path = "/gridpoints/XYZ/62,41";
inline constexpr const char* hourly_path = "/gridpoints/XYZ/62,41/forecast/hourly";
inline constexpr const char* open_meteo_path = "/v1/forecast";

/// The document that names the addresses of grid and hourly forecast.
std::string points_document(const std::string& base_url);
std::string problem_document(int status, const std::string& title, const std::string& detail);

/// Four days of hours about the pour, as each service would write them.
std::string grid_document();
std::string hourly_document();
std::string open_meteo_document();

/// Not a comparison in the check itself, whose message would print both.
bool holds(const std::filesystem::path& path, const std::string& text);
/// A line of a text, from 1.
std::string line_of(const std::string& text, std::size_t number);
/// Takes the folder's own name out of a text.
std::string without_folder(std::string text, const FetchFixture& fixture);
/// All of a text on one line, as before it was wrapped.
std::string unwrapped(const std::string& text);

}  // namespace slabtide::test
