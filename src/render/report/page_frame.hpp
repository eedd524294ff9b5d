#pragma once
// What surrounds the sections of a page: its head with style and policy, and its script.

#include <string>
#include <string_view>
#include <vector>

namespace linewright {

/// A file of the page that the build embeds, with the SHA-256 of its text as hexadecimal digits.
struct EmbeddedPageFile {
  std::string_view name;  ///< "page.css"
  std::string_view text;
  std::string_view sha256;
};

const std::vector<EmbeddedPageFile>& embedded_page_files();

/// A whole document. `title` is escaped, `body` and `data` are not. `data` is JSON for the script,
/// with every "<" written as an escape; where it is empty there is no script.
std::string page_document(std::string_view title, std::string_view body, std::string_view data);

}  // namespace linewright
