#include "page_plan.h"

#include "page_agenda.h"
#include "page_bands.h"
#include "page_cautions.h"
#include "page_charts.h"
#include "page_crew.h"
#include "page_document.h"
#include "page_headline.h"
#include "page_order.h"
#include "page_saw.h"
#include "page_zones.h"
#include "report/map/page_map.h"
#include "report/markup/embedded_pages.h"
#include "report/markup/page_views.h"
#include "report/words/made_words.h"
#include "report/words/validate_facts.h"

namespace slabtide {

namespace {

/// What was seen so far, and how the plan moved by it.
std::vector<View> seen_views(const PlannedPour& facts) {
  std::vector<View> views;
  for (std::size_t i = 0; i < facts.plan.seen.size(); ++i) {
    views.push_back(View().put("text_json", pointer("/seen", i)).put("text", facts.plan.seen[i]));
  }
  return views;
}

std::string body_of(const PlannedPour& facts) {
  const Job& job = facts.job;
  View view = opening_view(job);
  view.put("made", made_words(facts))
      .put("seen", seen_views(facts))
      .put("headline", headline_view(facts))
      .put("bands", page_bands(facts))
      .put("agenda", agenda_view(facts))
      .put("times", zones_view(facts))
      .put("map", page_map(facts))
      .put("charts", page_charts(facts))
      .put("saw", page_saw(facts))
      .put("on_paper", page_plan_on_paper(facts))
      .put("cuts", page_cuts(facts))
      .flag("sawing", !facts.plan.cuts.cuts.empty())
      .put("cautions_list", cautions_view(facts))
      .put("order", order_view(facts))
      .put("sources", fill(embedded::page_sources_html(), sources_view(facts)));
  if (!facts.plan.crew.people.empty()) view.put("crew", crew_view(facts));
  const bool says_site = !job.name.empty() && !job.site.name.empty() && job.site.name != job.name;
  if (says_site) view.put("site", View().put("name", job.site.name));
  return fill(embedded::page_plan_html(), view);
}

}  // namespace

std::string page_plan(const PlannedPour& facts) {
  validate(facts);
  PageDocument document;
  document.title = page_title(facts.job);
  document.body = body_of(facts);
  document.styles = shared_styles();
  document.styles.push_back({embedded::page_figures_css(), embedded::page_figures_css_sha256()});
  document.scripts = {{embedded::page_sheet_js(), embedded::page_sheet_js_sha256()},
                      {embedded::page_figures_js(), embedded::page_figures_js_sha256()}};
  return page_document(document);
}

}  // namespace slabtide
