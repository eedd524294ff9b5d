#include "input/sleeve_lines.hpp"

#include <fmt/format.h>

#include <string_view>
#include <unordered_map>

namespace linewright {

namespace {

bool has_a_bore(const Line& line) {
  return line.kind == LineKind::rigid_tube || line.kind == LineKind::plastic_tube ||
         line.kind == LineKind::hose;
}

void take_line(Sleeve& sleeve, const Line& line, ProjectDraft& draft) {
  if (!has_a_bore(line)) {
    const std::string_view kind = line.kind == LineKind::cable     ? "cable"
                                  : line.kind == LineKind::wire    ? "wire"
                                  : line.kind == LineKind::conduit ? "conduit"
                                                                   : "rod";
    draft.add_error(sleeve.where, fmt::format("a sleeve is cut from a tube or a hose: {} is a {}",
                                              quoted_text(line.name), kind));
    return;
  }
  sleeve.bore_in = line.inside_diameter_in;
  sleeve.outside_in = line.outside_diameter_in;
  sleeve.minimum_bend_radius_in = line.minimum_bend_radius_in;
}

}  // namespace

void take_sleeve_lines(ProjectDraft& draft) {
  std::unordered_map<std::string_view, const Line*> lines;
  for (const Line& line : draft.project.catalogue.lines) lines.try_emplace(line.name, &line);
  for (Route& route : draft.project.routes)
    for (Sleeve& sleeve : route.sleeves)
      if (const auto line = lines.find(sleeve.line); line != lines.end())
        take_line(sleeve, *line->second, draft);
}

}  // namespace linewright
