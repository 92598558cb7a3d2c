#pragma once

#include <string>
#include <string_view>

// What crews call a thing that the job file calls by another word.

namespace slabtide {

/// The job file's word for a crew's, as `plain_word` gives it: "light broom" and "broom finish" are
/// "broom", "line pump" is "pump". A word that has no other name comes back as it is.
std::string usual_word(std::string word);

}  // namespace slabtide
