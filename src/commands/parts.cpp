#include "planning/parts.hpp"

#include "commands/commands.hpp"
#include "commands/open_project.hpp"
#include "lines/prepare.hpp"
#include "render/layout.hpp"
#include "render/parts_csv.hpp"
#include "render/parts_json.hpp"
#include "render/parts_text.hpp"
#include "system/decimal.hpp"

namespace linewright {

namespace {

constexpr double most_spares_percent = 1000;

/// "10%" or "10": a share of the quantity.
std::optional<double> share_of(std::string_view text) {
  if (text.ends_with('%')) text.remove_suffix(1);
  double percent = 0;
  const auto [end, error] = read_decimal(text, percent);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  if (!(percent >= 0 && percent <= most_spares_percent)) return std::nullopt;
  return percent / 100;
}

std::string parts_rendered(const PartsList& list, const ResultForm& form) {
  switch (form.format) {
    case Format::json:
      return parts_json(list);
    case Format::csv:
      return parts_csv(list, form.style.phrasing.unit);
    case Format::svg:
    case Format::sarif:  // not of this command
    case Format::text:
      break;
  }
  return parts_text(list, form.style);
}

}  // namespace

Outcome parts(const std::filesystem::path& project, const PartsWords& words,
              const ResultForm& form) {
  PartsOptions options;
  options.phrasing = form.phrasing();
  if (words.spares) {
    const auto share = share_of(*words.spares);
    if (!share)
      return refusal("--spares takes a percentage from 0 to 1000, such as 10%, not '" +
                     one_line(*words.spares) + "'");
    options.spares_share = *share;
  }
  if (words.by && *words.by != "closure")
    return refusal("--by takes closure, not '" + one_line(*words.by) + "'");
  options.by_closure = words.by.has_value();
  const auto opened = open_project(project);
  if (!opened) return opened.error();
  const PreparedProject prepared = prepare(*opened);
  return {ExitCode::nothing_failed, parts_rendered(parts_list(prepared, options), form), ""};
}

}  // namespace linewright
