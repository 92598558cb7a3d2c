#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace slabtide {

/// What fills a template's holes, by name: a text, or views for a section (shown once a view,
/// not at all where there is none).
class View {
 public:
  using Value = std::variant<std::string, std::vector<View>>;

  View& put(std::string name, std::string_view text) {
    values_.insert_or_assign(std::move(name), std::string(text));
    return *this;
  }
  View& put(std::string name, std::vector<View> views) {
    values_.insert_or_assign(std::move(name), std::move(views));
    return *this;
  }
  View& put(std::string name, View view);
  /// A section without holes of its own, shown or not.
  View& flag(std::string name, bool on);

  const std::map<std::string, Value>& values() const { return values_; }

 private:
  std::map<std::string, Value> values_;
};

/// Fills the holes of a Mustache template: `{{name}}` with the text escaped, fit for HTML text
/// and for quoted attributes; `{{{name}}}` with markup as it stands; `{{#name}}` and
/// `{{^name}}` sections; `{{>page_name}}` other templates. Only these are ever used, so
/// a user's text shows as text wherever it stands.
/// Error: std::logic_error for a template that does not read (a broken build).
std::string fill(std::string_view page_template, const View& view);

}  // namespace slabtide
