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
  std::string body;  ///< ready markup
  std::vector<PagePiece> styles;
  std::vector<PagePiece> scripts;
};

/// One HTML document that stands by itself. Its Content-Security-Policy allows these styles and
/// scripts, by their hashes, and nothing else: no request, no form, no other script.
std::string page_document(const PageDocument& document);

/// The styles that every page shares.
std::vector<PagePiece> shared_styles();

/// A document of these styles alone, without a script.
std::string plain_page(const std::string& title, const std::string& body);

}  // namespace slabtide
