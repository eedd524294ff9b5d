#include "input/project_draft.hpp"

#include <fmt/format.h>

#include <utility>

#include "input/utf8.hpp"

namespace linewright {

std::string_view kind_word(Named kind) {
  switch (kind) {
    case Named::part:
      return "part";
    case Named::hole:
      return "hole";
    case Named::node:
      return "node";
    case Named::route:
      return "route";
    case Named::closure:
      return "closure";
    case Named::attitude:
      return "attitude";
    case Named::line:
      return "line";
  }
  return "name";
}

void ProjectDraft::add_error(const SourceLocation& where, std::string message,
                             std::string suggestion) {
  if (errors.size() >= most_errors) {
    errors_left_out = true;
    return;
  }
  errors.push_back({where, std::move(message), std::move(suggestion), {}});
}

std::string place_words(const SourceLocation& where) {
  return fmt::format("{}:{}:{}", where.file, where.line, where.column);
}

std::string quoted_text(std::string_view text) {
  constexpr std::size_t most_characters = 60;
  return fmt::format("'{}'", printable(text, most_characters));
}

}  // namespace linewright
