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
  std::optional<ForecastService> from;  ///< else the site decides
  std::optional<std::string> to;        ///< else the job's forecast file, or one beside the job
  std::optional<std::string> contact;   ///< goes into the User-Agent
  bool force = false;                   ///< over a file that is no forecast, too
  std::optional<std::string> base_url;  ///< another server in place of the service's own
};

/// The world outside, so that tests need neither wait nor a terminal.
struct FetchWorld {
  std::function<UtcTime()> now;
  std::function<void(double seconds)> sleep;
  HttpOptions limits;  ///< the User-Agent and the progress are filled in
  bool on_terminal = false;
};

/// Downloads the forecast of the job's site, checks it and puts it in place of the old file in
/// one rename; whatever fails, the old file stays as it is. Returns the exit code.
int fetch(const FetchOrder& order, const FetchWorld& world, std::ostream& out, std::ostream& err);

}  // namespace slabtide
