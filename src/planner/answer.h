#pragma once

#include <string>
#include <string_view>

#include "slabtide/core/time_zone.h"

namespace slabtide {

/// Answers what the planner's page asks, JSON in and out, with no file, network or clock:
///
///     {"ask": "plan", "job": "pad.toml", "texts": {"pad.toml": "...", "pad.journal": "..."},
///      "now": "2026-05-13T18:00Z", "draws": 200, "formats": [".json", ".html"]}
///         -> {"ok", "findings", "messages", "verdict", "watch": [{"level", "zone", "text"}],
///            "files": {".json": "..."}}, and with "words": true what the command line prints as
///            "text", "crew", "saw" and "order"; without "draws" as many days as the command line
///            draws. "watch" has the cautions as reports tell them: merged, the worst first
///     {"ask": "compare", ...} and {"ask": "outlook", ...}, asked the same
///         -> {"ok", "findings", "messages", "files"}
///     {"ask": "check-back", "job", "texts", "now"}
///         -> {"ok", "findings", "files"}: what was noted beside what was planned
///     {"ask": "learn", "job", "texts"}
///         -> {"ok", "findings", "book", "told"}: the mix book with this pour in it
///     {"ask": "mixes", "text": "..."}
///         -> {"ok", "findings", "mixes": [{"name", "pours"}], "text"}: what a mix book says
///     {"ask": "read", "job": "pad.toml", "texts": {...}}
///         -> {"ok", "findings", "document"}: the job file's tables (`json_of_toml`)
///     {"ask": "note", "job", "texts", "now", "at", "reading", "zone", "value"}
///         -> {"ok", "findings", "line", "sentence"}: what to put at the journal's end
///     {"ask": "forecast", "text": "...", "time_zone": "America/Chicago"}
///         -> {"ok", "findings", "source", "issued", "first", "last"}
///     {"ask": "sun", "latitude", "longitude", "time_zone", "date"}
///         -> {"ok", "positions": [{"minute", "elevation_deg", "azimuth_deg"}]}, by ten minutes
///
/// `ok` is false where it cannot be done; `findings` then say why, each with severity, line and
/// column (where it has a place in the text), key, message and what to do next. `messages` is all
/// that the command line would print. What is no such request gives an `error`.
std::string answer(std::string_view request, const TimeZoneLoader& time_zones);

}  // namespace slabtide
