#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace slabtide {

/// The values for a template's tags, by name: a text, or views for a section (the section is
/// repeated for each view, and absent if there are none).
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
  /// A section without values of its own, shown or not.
  View& flag(std::string name, bool on);

  const std::map<std::string, Value>& values() const { return values_; }

 private:
  std::map<std::string, Value> values_;
};

/// Fills in a Mustache template: `{{name}}` inserts text, escaped for HTML text and quoted
/// attributes; `{{{name}}}` inserts markup unchanged; `{{#name}}` and `{{^name}}` are sections;
/// `{{>page_name}}` includes other templates. Nothing else of Mustache is used, so a user's text
/// always appears as text.
/// Error: std::logic_error for a template that cannot be parsed (a broken build).
std::string fill(std::string_view page_template, const View& view);

}  // namespace slabtide
