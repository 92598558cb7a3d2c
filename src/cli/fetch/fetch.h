#pragma once

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>

#include "http_client.h"
#include "request/download/forecast_download.h"
#include "slabtide/core/civil_time.h"

namespace slabtide {

/// What the user asked `slabtide fetch` to do.
struct FetchOrder {
  std::string job_path;
  std::optional<ForecastService> from;  ///< else chosen by the site
  std::optional<std::string> to;        ///< else the job's forecast file, or one beside the job
  std::optional<std::string> contact;   ///< added to the User-Agent
  bool force = false;                   ///< also overwrite a file that is not a forecast
  std::optional<std::string> base_url;  ///< used instead of the service's own server
};

/// The outside world, replaceable so that tests need neither wait nor a terminal.
struct FetchWorld {
  std::function<UtcTime()> now;
  std::function<void(double seconds)> sleep;
  HttpOptions limits;  ///< the User-Agent and the progress callback are filled in
  bool on_terminal = false;
};

/// Downloads the forecast of the job's site, checks it and replaces the old file by a rename. If
/// anything fails, the old file is unchanged. Returns the exit code.
int fetch(const FetchOrder& order, const FetchWorld& world, std::ostream& out, std::ostream& err);

}  // namespace slabtide
