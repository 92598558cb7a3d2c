#include "slabtide/cli/request/book_file.h"

#include <filesystem>
#include <ostream>

#include <fmt/format.h>

#include "slabtide/core/files.h"
#include "slabtide/core/utf8.h"

namespace slabtide {

std::string book_path(const ParsedLine& line, const std::string& job_path) {
  if (const auto given = line.text("book")) return *given;
  return std::filesystem::path(job_path).replace_filename("mix-book.toml").string();
}

std::optional<MixBook> load_book(const std::string& path, std::ostream& err) {
  if (is_missing(path)) return MixBook{};
  const FileText file = read_file(path);
  if (!file.text) {
    err << fmt::format("{}: {}\n  {}\n", printable(path), file.error.message, file.error.next_step);
    return std::nullopt;
  }
  Parsed<MixBook> reading = read_mix_book(*file.text);
  err << render_all(reading.diagnostics, path, *file.text);
  return std::move(reading.value);
}

Option book_option() {
  return {"book", "FILE", "the mix book; else mix-book.toml beside the job", false};
}

}  // namespace slabtide
