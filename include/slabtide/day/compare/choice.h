#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// What a choice changes in the job; `several` things at once, or the user's `own` change.
enum class ChoiceKind {
  as_ordered,
  admixture,
  concrete,
  loads,
  start,
  order,
  crew,
  shelter,
  cover,
  saw,
  several,
  own
};

/// The id used in the JSON: "as_ordered".
std::string_view choice_kind_id(ChoiceKind kind);

/// Something a contractor can still do the day before, and the resulting job.
struct Choice {
  ChoiceKind kind = ChoiceKind::as_ordered;
  std::string label;  ///< for a table: "retarder 2, all loads"
  std::string words;  ///< as one would tell someone to do it: "put retarder at 2 fl oz/cwt in ..."
  Job job;
  std::string brief = {};  ///< its label where it is joined with another: "1 h sooner"
  /// What it changes; absent as ordered, and where no note tells of it.
  std::optional<OptionNote> change = std::nullopt;
};

/// A change that is not tried, and the reason.
struct LeftOutChoice {
  std::string label;
  std::string why;
};

/// The choices to compare.
struct Choices {
  std::vector<Choice> tried;  ///< as ordered first, then by kind, the user's own last
  std::vector<LeftOutChoice> left_out;
};

/// Equal for two jobs derived from the same job if their concrete has the same history; crew and
/// saws may differ.
std::string pour_signature(const Job& job);

}  // namespace slabtide
