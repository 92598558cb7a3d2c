#pragma once

#include <string_view>

// What pages are made of: templates, styles and scripts, which the program carries inside
// (embedded_pages.cmake). `_sha256` is a file's hash in base64, as a page's
// Content-Security-Policy names it.

namespace slabtide::embedded {

std::string_view page_agenda_html();
std::string_view page_band_html();
std::string_view page_cautions_html();
std::string_view page_check_back_html();
std::string_view page_compare_html();
std::string_view page_crew_html();
std::string_view page_days_html();
std::string_view page_document_html();
std::string_view page_figure_html();
std::string_view page_figures_css();
std::string_view page_figures_css_sha256();
std::string_view page_figures_js();
std::string_view page_figures_js_sha256();
std::string_view page_headline_html();
std::string_view page_order_html();
std::string_view page_outlook_html();
std::string_view page_palette_css();
std::string_view page_palette_css_sha256();
std::string_view page_patterns_svg();
std::string_view page_plan_html();
std::string_view page_sheet_css();
std::string_view page_sheet_css_sha256();
std::string_view page_sheet_js();
std::string_view page_sheet_js_sha256();
std::string_view page_sources_html();
std::string_view page_time_html();
std::string_view page_zones_html();

}  // namespace slabtide::embedded
