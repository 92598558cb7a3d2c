#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace slabtide {

/// Why a text cannot be shown as the sign or the code of a currency; empty if it can. None at all
/// can: amounts then stand alone.
std::optional<std::string> currency_fault(std::string_view currency);

}  // namespace slabtide
