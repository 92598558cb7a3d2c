#include "page_document.h"

#include "report/markup/embedded_pages.h"
#include "report/markup/page_views.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

std::vector<View> piece_views(const std::vector<PagePiece>& pieces) {
  std::vector<View> views;
  for (const PagePiece& piece : pieces) {
    views.push_back(View().put("text", piece.text).put("hash", piece.sha256));
  }
  return views;
}

}  // namespace

std::string page_document(const PageDocument& document) {
  View view;
  view.put("title", document.title)
      .put("body", document.body)
      .put("styles", piece_views(document.styles))
      .put("scripts", piece_views(document.scripts));
  return fill(embedded::page_document_html(), view);
}

std::vector<PagePiece> shared_styles() {
  return {{embedded::page_palette_css(), embedded::page_palette_css_sha256()},
          {embedded::page_sheet_css(), embedded::page_sheet_css_sha256()}};
}

View opening_view(const Job& job) {
  View view;
  view.put("title", page_title(job))
      .put("date", shown_date(job.pour.date, clock_style(job)))
      .put("start", time_view("/job/start", job.pour.start, job));
  return view;
}

std::string plain_page(const Job& job, std::string_view body_html, const View& view) {
  return page_document({.title = page_title(job),
                        .body = fill(body_html, view),
                        .styles = shared_styles(),
                        .scripts = {}});
}

}  // namespace slabtide
