#include "table_markup.h"

namespace slabtide {

Element table_head(const std::vector<std::string>& names) {
  Element row("tr");
  for (const std::string& name : names) row.add(Element("th").set("scope", "col").text(name));
  return Element("thead").add(row);
}

Element row_head(std::string_view name) { return Element("th").set("scope", "row").text(name); }

Element name_head(std::string_view name) {
  return Element("th").set("scope", "row").add(Element("bdi").text(name));
}

Element markup_cell(std::string_view markup) { return Element("td").add_markup(markup); }

}  // namespace slabtide
