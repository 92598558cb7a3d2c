#include "slabtide/day/compare/choice.h"

#include <fmt/format.h>
#include <boost/date_time/posix_time/time_formatters.hpp>

namespace slabtide {

namespace {

/// Doses are compared to the millilitre, so that a dose converted from fluid ounces is the same.
std::string list_signature(const std::vector<Admixture>& list) {
  std::string text = "(";
  for (const Admixture& a : list) {
    text += fmt::format("{}:{:.0f}:{:.2f}:{:.2f} ", static_cast<int>(a.kind),
                        a.dose_ml_100kg.value_or(-1.0), a.dose_percent.value_or(-1.0),
                        a.shift_h.value_or(0.0));
  }
  return text + ")";
}

}  // namespace

std::string_view choice_kind_id(ChoiceKind kind) {
  switch (kind) {
    case ChoiceKind::as_ordered:
      return "as_ordered";
    case ChoiceKind::admixture:
      return "admixture";
    case ChoiceKind::concrete:
      return "concrete";
    case ChoiceKind::loads:
      return "loads";
    case ChoiceKind::start:
      return "start";
    case ChoiceKind::order:
      return "order";
    case ChoiceKind::crew:
      return "crew";
    case ChoiceKind::shelter:
      return "shelter";
    case ChoiceKind::cover:
      return "cover";
    case ChoiceKind::saw:
      return "saw";
    case ChoiceKind::several:
      return "several";
    case ChoiceKind::own:
      return "own";
  }
  return "own";
}

std::string pour_signature(const Job& job) {
  const auto seconds = [](UtcTime time) { return boost::posix_time::to_iso_string(time); };
  std::string text = seconds(job.pour.start) + " " + list_signature(job.mix.admixtures);
  for (const std::string& name : job.pour.placing_sequence) text += name + "|";
  for (const Zone& zone : job.zones) {
    text += fmt::format("{}{}{}", zone.shaded ? "s" : "o",
                        zone.placed_at ? seconds(*zone.placed_at) : std::string(),
                        zone.admixtures ? list_signature(*zone.admixtures) : std::string());
  }
  text += fmt::format(
      " {} {} {} {} {} {}", job.order.load_size_m3, job.order.truck_spacing_min.value_or(-1.0),
      job.site.measured_wind_ratio.value_or(-1.0), static_cast<int>(job.pour.curing),
      job.pour.curing_blanket_m2k_w.value_or(-1.0), job.pour.evaporation_film);
  if (const auto* given_c = std::get_if<double>(&job.mix.temperature)) {
    text += fmt::format(" {:.2f}", *given_c);
  }
  for (const Cover& cover : job.pour.covers) text += fmt::format(" {}", cover.resistance_m2k_w);
  for (const LoadNote& note : job.order.loads) {
    text += fmt::format(" {}{}", note.number, list_signature(note.admixtures));
  }
  return text;
}

}  // namespace slabtide
