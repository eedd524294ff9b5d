#include "render/rule_examples.hpp"

#include "render/embedded_examples.hpp"

namespace linewright {

namespace {

std::string_view example_text(std::string_view rule, std::string_view file) {
  const std::string name = std::string(rule) + "/" + std::string(file);
  for (const EmbeddedExample& example : embedded_examples())
    if (example.name == name) return example.text;
  return {};
}

/// What the comment in a project's first line says.
std::string_view first_comment(std::string_view project) {
  constexpr std::string_view mark = "# ";
  if (!project.starts_with(mark)) return {};
  project.remove_prefix(mark.size());
  return project.substr(0, project.find('\n'));
}

RuleExample example_of(std::string_view rule, const std::string& verdict) {
  return {first_comment(example_text(rule, verdict + ".yaml")),
          example_text(rule, verdict + ".txt")};
}

/// ":17:9: " of "fails.yaml:17:9: fail: ..."; empty where a message names no place in the file.
std::string_view place_in_file(std::string_view message) {
  const std::size_t begin = message.find(':');
  const std::size_t end = message.find(": ");
  if (begin == std::string_view::npos || end == std::string_view::npos) return {};
  return message.substr(begin, end + 2 - begin);
}

}  // namespace

RuleExamples examples_of(std::string_view rule) {
  return {example_of(rule, "fails"), example_of(rule, "passes")};
}

std::string passes_in_place(const RuleExamples& examples) {
  const std::string_view place = place_in_file(examples.fails.messages);
  std::string found;
  std::string_view rest = examples.passes.messages;
  while (!rest.empty()) {
    const std::size_t gap = rest.find("\n\n");
    const std::string_view message = rest.substr(0, gap == std::string_view::npos ? gap : gap + 1);
    rest.remove_prefix(gap == std::string_view::npos ? rest.size() : gap + 2);
    if (place_in_file(message) != place) continue;
    if (!found.empty()) found += '\n';
    found += message;
  }
  return found.empty() ? std::string(examples.passes.messages) : found;
}

}  // namespace linewright
