#include "cover_choices.h"

#include <fmt/format.h>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// "R-6", or "1.06 m²K/W".
std::string insulation_words(double m2k_w, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("R-{:.0f}", m2k_w / m2k_w_from_r_us(1.0))
                                 : fmt::format("{:.2g} m²K/W", m2k_w);
}

void add_blankets(double m2k_w, const ChoiceContext& context, ChoiceList& list) {
  const std::string resistance = insulation_words(m2k_w, context.job.units);
  const std::string label = fmt::format("blankets {}", resistance);
  OfferedChoice offered{
      ChoiceKind::cover,
      label,
      label,
      fmt::format("lay {} blankets as soon as it is hard, and leave them on", resistance),
      {}};
  if (context.job.pour.covers.empty()) offered.change.curing = CuringKind::blanket;
  offered.change.curing_blanket_m2k_w = m2k_w;
  list.offer(std::move(offered));
}

}  // namespace

void add_cover_choices(const ChoiceContext& context, ChoiceList& list) {
  const bool cold = context.fears({"freezing", "frost_days", "cold_weather"});
  const bool saw = context.fears({"saw_too_late", "saw_not_enough"});
  if (cold || saw) {
    add_blankets(context.rules.blanket_m2k_w / 2.0, context, list);
    add_blankets(context.rules.blanket_m2k_w, context, list);
  }
  if (!saw || context.job.pour.curing != CuringKind::none) return;
  OfferedChoice plastic{ChoiceKind::cover,
                        "plastic",
                        "plastic",
                        "lay plastic as soon as it is hard, and leave it on",
                        {}};
  plastic.change.curing = CuringKind::plastic;
  list.offer(std::move(plastic));
}

}  // namespace slabtide
