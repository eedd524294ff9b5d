#include "catalogue/catalogue.hpp"

#include <algorithm>

#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
#include "render/catalogue_json.hpp"
#include "render/catalogue_text.hpp"

namespace linewright {

namespace {

std::vector<std::string> entry_names(const Catalogue& entries) {
  std::vector<std::string> names;
  for (const Line& line : entries.lines) names.push_back(line.name);
  for (const ClampSize& clamp : entries.clamps) names.push_back(clamp.name);
  for (const Fitting& fitting : entries.fittings) names.push_back(fitting.name);
  return names;
}

Catalogue only(const std::string& name, const Catalogue& entries) {
  Catalogue chosen = entries;
  std::erase_if(chosen.lines, [&](const Line& line) { return line.name != name; });
  std::erase_if(chosen.clamps, [&](const ClampSize& clamp) { return clamp.name != name; });
  std::erase_if(chosen.fittings, [&](const Fitting& fitting) { return fitting.name != name; });
  return chosen;
}

std::string catalogue_rendered(const Catalogue& entries, const CatalogueOptions& options) {
  if (options.form.format == Format::json) return catalogue_json(entries);
  return options.name ? catalogue_entries_text(entries, options.form.style)
                      : catalogue_text(entries, options.form.style);
}

}  // namespace

Outcome catalogue(const CatalogueOptions& options) {
  Catalogue entries = built_in_catalogue();
  if (options.project) {
    auto project = open_project(*options.project);
    if (!project) return project.error();
    entries = std::move(project->catalogue);
  }
  if (options.name) {
    const std::string wrong = unknown_name("catalogue entry", *options.name, entry_names(entries),
                                           "linewright catalogue lists them");
    if (!wrong.empty()) return refusal(wrong);
    entries = only(*options.name, entries);
  }
  return {ExitCode::nothing_failed, catalogue_rendered(entries, options), ""};
}

}  // namespace linewright
