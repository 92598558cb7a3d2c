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

/// The results of a run of `fetch`.
struct FetchOutcome {
  int code = 0;
  std::string out;
  std::string err;
  std::vector<double> pauses_s;
};

/// A job and its forecast in their own folder, a server on loopback that gives the addresses of the
/// forecast, and a clock fixed at 2026-05-13T21:40Z.
class FetchFixture {
 public:
  FetchFixture();

  FetchOutcome fetch(std::optional<ForecastService> from = ForecastService::nws);
  /// The same for a given order; its job path and base URL are filled in if empty.
  FetchOutcome fetch_as(FetchOrder order);

  std::string forecast_text() const { return read_text(forecast_path()); }
  std::filesystem::path forecast_path() const { return folder.path() / "tomorrow.json"; }
  std::filesystem::path job_path() const { return folder.path() / "job.toml"; }
  /// Rewrites the job with this [weather] table.
  void write_job(const std::string& weather);

  TempFolder folder;
  LoopbackServer server;
  HttpOptions limits;
  bool on_terminal = false;
};

/// The old content of the forecast file: for other days and with odd trailing blanks, so that it
/// cannot be confused with new content.
extern const std::string old_forecast;

inline constexpr const char* points_path = "/points/44.9,-91.9";
inline constexpr const char* grid_path = "/gridpoints/XYZ/62,41";
inline constexpr const char* hourly_path = "/gridpoints/XYZ/62,41/forecast/hourly";
inline constexpr const char* open_meteo_path = "/v1/forecast";

/// The document with the addresses of the grid and the hourly forecast.
std::string points_document(const std::string& base_url);
std::string problem_document(int status, const std::string& title, const std::string& detail);

/// Four days of hours around the pour, as each service would write them.
std::string grid_document();
std::string hourly_document();
std::string open_meteo_document();

/// Separate from the check, whose message would otherwise print both texts.
bool holds(const std::filesystem::path& path, const std::string& text);
/// Line `number` of a text, from 1.
std::string line_of(const std::string& text, std::size_t number);
/// Removes the folder's own name from a text.
std::string without_folder(std::string text, const FetchFixture& fixture);
/// The text on one line, as before wrapping.
std::string unwrapped(const std::string& text);

}  // namespace slabtide::test
