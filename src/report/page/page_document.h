#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "report/markup/page_template.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// A style or script of a page, and its SHA-256 in base64.
struct PagePiece {
  std::string_view text;
  std::string_view sha256;
};

struct PageDocument {
  std::string title;
  std::string body;  ///< markup
  std::vector<PagePiece> styles;
  std::vector<PagePiece> scripts;
};

/// A self-contained HTML document. Its Content-Security-Policy allows these styles and scripts, by
/// their hashes, and nothing else: no requests, no forms, no other scripts.
std::string page_document(const PageDocument& document);

/// The styles that every page shares.
std::vector<PagePiece> shared_styles();

/// What every page begins with: its title, the date, and when the pour starts.
View opening_view(const Job& job);

/// A document of the shared styles alone, without a script; its body is the template filled.
std::string plain_page(const Job& job, std::string_view body_html, const View& view);

}  // namespace slabtide
