#pragma once

#include <string>
#include <string_view>
#include <vector>

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

/// A document with only these styles and no script.
std::string plain_page(const std::string& title, const std::string& body);

}  // namespace slabtide
