#include "rules/cable/such_as.hpp"

namespace linewright {

namespace {

const Line* smallest(const Catalogue& catalogue, const std::function<bool(const Line&)>& serves) {
  const Line* found = nullptr;
  for (const Line& line : catalogue.lines)
    if (line.kind == LineKind::cable && serves(line) &&
        (!found || line.outside_diameter_in < found->outside_diameter_in))
      found = &line;
  return found;
}

}  // namespace

std::string such_as(const Catalogue& catalogue, const Line& like,
                    const std::function<bool(const Line&)>& serves) {
  const auto same_metal = [&](const Line& line) {
    return line.material == like.material && serves(line);
  };
  const Line* found = smallest(catalogue, [&](const Line& line) {
    return line.construction == like.construction && same_metal(line);
  });
  if (!found) found = smallest(catalogue, same_metal);
  return found ? " such as " + found->name : std::string();
}

}  // namespace linewright
