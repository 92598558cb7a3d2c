#include "asked.h"

#include <stdexcept>

#include <nlohmann/json.hpp>

#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {
namespace {

using Json = nlohmann::ordered_json;

Json finding_of(const Diagnostic& diagnostic) {
  Json finding{{"severity", diagnostic.severity == Severity::error ? "error" : "warning"},
               {"key", diagnostic.key},
               {"message", diagnostic.message},
               {"next", diagnostic.next_step}};
  if (diagnostic.where) {
    finding["line"] = diagnostic.where->line;
    finding["column"] = diagnostic.where->column;
  }
  return finding;
}

}  // namespace

std::string Asked::text(const char* key) const { return json.at(key).get<std::string>(); }

std::string Asked::text_or_empty(const char* key) const { return json.value(key, std::string()); }

std::map<std::string, std::string> Asked::texts() const {
  return json.at("texts").get<std::map<std::string, std::string>>();
}

std::string Asked::job_text() const { return texts().at(text("job")); }

std::string Asked::text_of(const std::string& name) const {
  const auto all = texts();
  const auto found = all.find(name);
  return found == all.end() ? std::string() : found->second;
}

JobRequest Asked::request() const {
  JobRequest request{.path = text("job"), .now = text("now")};
  if (json.contains("units")) request.units = text("units");
  return request;
}

Sources Asked::sources() const { return sources_in_memory(texts(), time_zones, UtcTime()); }

std::size_t Asked::draws(std::size_t usual) const {
  if (!json.contains("draws")) return usual;
  const auto draws = json.at("draws").get<double>();
  if (!(draws >= 0.0 && draws <= static_cast<double>(max_samples)))
    throw std::invalid_argument("draws: not from 0 to " + std::to_string(max_samples));
  return static_cast<std::size_t>(draws);
}

Json findings_of(const std::vector<Diagnostic>& diagnostics) {
  Json findings = Json::array();
  for (const Diagnostic& diagnostic : diagnostics) findings.push_back(finding_of(diagnostic));
  return findings;
}

Json refused(const std::vector<Diagnostic>& diagnostics) {
  return {{"ok", false}, {"findings", findings_of(diagnostics)}};
}

Json refused(const std::string& message, const std::string& next, const std::string& key) {
  Diagnostic fault;
  fault.key = key;
  fault.message = message;
  fault.next_step = next;
  return refused(std::vector<Diagnostic>{fault});
}

}  // namespace slabtide
