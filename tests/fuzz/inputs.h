#pragma once

#include <string_view>

// What each fuzz target does with an input: it reads it, and aborts if the reader breaks a promise
// of its header. The fuzzer itself detects crashes and hangs.

namespace slabtide::fuzz {

void try_forecast_csv(std::string_view text);
void try_nws_hourly(std::string_view text);
void try_nws_grid(std::string_view text);
void try_open_meteo(std::string_view text);
/// Any forecast format, recognised by its content, and the series that a plan makes of it.
void try_forecast(std::string_view text);
void try_job(std::string_view text);
/// For a job of two zones; the observations are written and read again.
void try_journal(std::string_view text);
/// As thresholds that replace the program's own.
void try_practice(std::string_view text);
/// The book is written and read again, and what a mix has shown is computed.
void try_mix_book(std::string_view text);
/// The bytes choose a complete job (support/random_job.h), which is then planned (whole_job.h).
void try_whole_job(std::string_view bytes);

}  // namespace slabtide::fuzz
