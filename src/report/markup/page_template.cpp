#include "page_template.h"

#include <array>
#include <stdexcept>

#include <kainjow/mustache.hpp>

#include "embedded_pages.h"
#include "svg.h"

namespace slabtide {

namespace {

using kainjow::mustache::data;
using kainjow::mustache::partial;

/// A template that others may include, and the name they include it by.
struct Partial {
  std::string_view name;
  std::string_view (*text)();
};

constexpr std::array<Partial, 9> partials{{{"page_agenda", embedded::page_agenda_html},
                                           {"page_band", embedded::page_band_html},
                                           {"page_cautions", embedded::page_cautions_html},
                                           {"page_crew", embedded::page_crew_html},
                                           {"page_figure", embedded::page_figure_html},
                                           {"page_headline", embedded::page_headline_html},
                                           {"page_order", embedded::page_order_html},
                                           {"page_time", embedded::page_time_html},
                                           {"page_zones", embedded::page_zones_html}}};

data data_of(const View& view);

data data_of(const View::Value& value) {
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  data list(data::type::list);
  for (const View& view : std::get<std::vector<View>>(value)) list << data_of(view);
  return list;
}

data data_of(const View& view) {
  data object;
  for (const auto& [name, value] : view.values()) object.set(name, data_of(value));
  return object;
}

/// Files end with a line break, which must not be included in the middle of a line.
std::string without_last_newline(std::string_view text) {
  if (text.ends_with('\n')) text.remove_suffix(1);
  return std::string(text);
}

}  // namespace

View& View::put(std::string name, View view) {
  std::vector<View> one;
  one.push_back(std::move(view));
  return put(std::move(name), std::move(one));
}

View& View::flag(std::string name, bool on) {
  return put(std::move(name), std::vector<View>(on ? 1 : 0));
}

std::string fill(std::string_view page_template, const View& view) {
  data root = data_of(view);
  for (const Partial& called : partials) {
    root.set(std::string(called.name),
             partial([&called] { return without_last_newline(called.text()); }));
  }
  kainjow::mustache::mustache mustache{std::string(page_template)};
  mustache.set_custom_escape([](const std::string& text) { return escape_markup(text); });
  std::string filled = mustache.render(root);
  if (!mustache.is_valid()) throw std::logic_error(mustache.error_message());
  return filled;
}

}  // namespace slabtide
