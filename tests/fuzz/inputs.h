#pragma once

#include <string_view>

// What each fuzz target does with an input: reads it, and aborts where the reader breaks a
// promise of its header. Crashes and hangs are the fuzzer's to see.

namespace slabtide::fuzz {

void try_forecast_csv(std::string_view text);
void try_nws_hourly(std::string_view text);
void try_nws_grid(std::string_view text);
void try_open_meteo(std::string_view text);
/// Any format by its content, and the series that a plan makes of it.
void try_forecast(std::string_view text);
void try_job(std::string_view text);
/// Beside a job of two zones; what it holds is written and read again.
void try_journal(std::string_view text);
/// In place of the program's own thresholds.
void try_practice(std::string_view text);
/// What it holds is written and read again, and what a mix has shown can be told.
void try_mix_book(std::string_view text);
/// The bytes choose a whole job (support/random_job.h), which is then planned (whole_job.h).
void try_whole_job(std::string_view bytes);

}  // namespace slabtide::fuzz
