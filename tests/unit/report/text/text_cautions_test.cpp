#include "report/text/text_cautions.h"

#include <string>

#include <doctest/doctest.h>

#include "report/words/told_cautions.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

Caution about(const std::string& title, CautionLevel level, Loss loss) {
  Caution caution;
  caution.code = title;
  caution.title = title;
  caution.level = level;
  caution.loss = loss;
  caution.text = "the whole sentence on " + title;
  return caution;
}

/// Ten things that want care, the stop among them last, and three notes.
std::vector<Caution> many() {
  std::vector<Caution> all;
  for (int i = 0; i < 9; ++i) {
    all.push_back(about("care " + std::to_string(i), CautionLevel::caution, Loss::finish));
  }
  all.push_back(about("stop", CautionLevel::stop, Loss::slab));
  all.push_back(about("wet cement", CautionLevel::note, Loss::people));
  all.push_back(about("saw slurry", CautionLevel::note, Loss::money));
  return all;
}

bool tells(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("as many cautions are told as a person reads, the worst first, and the rest by name") {
  const std::string text = text_cautions(many(), test::sample_job({}), {});
  CAPTURE(text);
  CHECK(text.find("whole sentence on stop") < text.find("whole sentence on care 0"));
  for (int i = 0; i < 9; ++i) {
    const bool is_read = i < static_cast<int>(max_told_cautions) - 1;
    CHECK(tells(text, "sentence on care " + std::to_string(i)) == is_read);
    CHECK(tells(text, "care " + std::to_string(i)));
  }
  // What can hurt someone is always told in full, what only costs money by its name.
  CHECK(tells(text, "whole sentence on wet cement"));
  CHECK(!tells(text, "whole sentence on saw slurry"));
  CHECK(tells(text, "saw slurry"));
}

TEST_CASE("a sheet that asks for all of them has them in full, and so has one left over") {
  const Job job = test::sample_job({});
  const std::string text = text_cautions(many(), job, {}, true);
  CHECK(tells(text, "whole sentence on care 8"));
  CHECK(tells(text, "whole sentence on saw slurry"));
  const std::vector<Caution> one{about("saw slurry", CautionLevel::note, Loss::money)};
  CHECK(tells(text_cautions(one, job, {}), "whole sentence on saw slurry"));
}

}  // namespace slabtide
