#include "mixes_command.h"

#include <ostream>

#include <fmt/format.h>

#include "cli/jobs/job_line.h"
#include "cli/jobs/output.h"
#include "cli/jobs/text_files.h"
#include "core/utf8.h"
#include "report/text/text_mixes.h"

namespace slabtide {

namespace {

CommandLine mixes_line() {
  CommandLine line;
  line.name = "mixes";
  line.summary = "the mix book: what pours have shown, and how far plans were off";
  line.operand = "BOOK";
  line.operand_needed = false;
  line.details = "Without BOOK, mix-book.toml in this folder.\n";
  return line;
}

int run_mixes(const ParsedLine& line, std::ostream& out, std::ostream& err) {
  const std::string path =
      line.operands().empty() ? book_path(request_of(line, "job.toml")) : line.operands().front();
  const auto book = load_book(path, text_files(), err);
  if (!book) return exit_input_wrong;
  if (book->mixes.empty()) {
    out << fmt::format("{} holds no mix yet; slabtide learn JOB puts finished pours in.\n",
                       printable(path));
    return exit_done;
  }
  out << text_mixes(*book, style_for(out));
  return exit_done;
}

}  // namespace

const Command mixes_command{mixes_line, run_mixes};

}  // namespace slabtide
