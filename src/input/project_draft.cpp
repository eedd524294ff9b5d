#include "input/project_draft.hpp"

#include <fmt/format.h>

#include <system_error>
#include <utility>

#include "input/utf8.hpp"
#include "system/true_path.hpp"

namespace linewright {

void ProjectDraft::add_error(const SourceLocation& where, std::string message,
                             std::string suggestion) {
  errors.add({where, std::move(message), std::move(suggestion), {}});
}

void ProjectDraft::note_file(const std::filesystem::path& path) {
  namespace fs = std::filesystem;
  std::error_code failure;
  const fs::path whole = fs::absolute(path, failure);
  const fs::path folder = true_path(whole.parent_path(), failure);
  const fs::path named = failure ? whole : folder / whole.filename();
  files.push_back(named);
  const fs::path linked = true_path(whole, failure);
  if (!failure && linked != named) files.push_back(linked);
}

std::string place_words(const SourceLocation& where) {
  return fmt::format("{}:{}:{}", where.file, where.line, where.column);
}

std::string quoted_text(std::string_view text) {
  constexpr std::size_t most_characters = 60;
  return fmt::format("'{}'", printable(text, most_characters));
}

}  // namespace linewright
