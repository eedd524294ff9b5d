#include "planning/leak_sections.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "planning/air_sections.hpp"

namespace linewright {

namespace {

/// Doubts that differ by less are equal: what differs is rounding.
constexpr double same_doubt = 1e-9;
/// A larger side that is larger by no more costs hardly a step: the joint that is less trouble is
/// opened.
constexpr double about_as_even = 1.1;

/// Sections that may hold the leak, from the test set outward, and what a test of them includes.
struct Suspects {
  std::vector<int> sections;  ///< each after the one nearer the test set
  double proven_in3 = 0;      ///< found tight and joined to them toward the test set
  int asked_by = -1;          ///< the step that leads here …
  bool by_losing = false;     ///< … and which of its outcomes
};

struct Weight {
  double doubt = 0;
  int sections = 0;
};

/// For each suspect: itself with all suspects beyond it.
std::vector<Weight> weights_beyond(const SectionTree& tree, const std::vector<int>& suspects) {
  std::vector<Weight> beyond(tree.sections.size());
  for (const int section : suspects)
    beyond[static_cast<std::size_t>(section)] = {
        tree.sections[static_cast<std::size_t>(section)].doubt, 1};
  for (std::size_t i = suspects.size(); i-- > 1;) {
    const auto section = static_cast<std::size_t>(suspects[i]);
    const auto toward = static_cast<std::size_t>(tree.sections[section].parent);
    beyond[toward].doubt += beyond[section].doubt;
    beyond[toward].sections += beyond[section].sections;
  }
  return beyond;
}

/// The suspect whose joint toward the test set is the best to open. Precondition: there are two or
/// more.
int best_cut(const SectionTree& tree, const std::vector<int>& suspects) {
  const std::vector<Weight> beyond = weights_beyond(tree, suspects);
  const Weight all = beyond[static_cast<std::size_t>(suspects.front())];
  const auto larger_side = [&](int section) {
    const double far = beyond[static_cast<std::size_t>(section)].doubt;
    return std::max(far, all.doubt - far);
  };
  const auto more_sections = [&](int section) {
    const int far = beyond[static_cast<std::size_t>(section)].sections;
    return std::max(far, all.sections - far);
  };
  const auto trouble = [&](int section) {
    return tree.sections[static_cast<std::size_t>(section)].trouble;
  };
  double least = larger_side(suspects[1]);
  for (std::size_t i = 2; i < suspects.size(); ++i)
    least = std::min(least, larger_side(suspects[i]));
  int best = -1;
  for (std::size_t i = 1; i < suspects.size(); ++i) {
    const int section = suspects[i];
    if (larger_side(section) > about_as_even * least) continue;
    if (best < 0 || trouble(section) < trouble(best)) {
      best = section;
      continue;
    }
    if (trouble(section) > trouble(best)) continue;
    const double difference = larger_side(section) - larger_side(best);
    const bool equal = std::abs(difference) <= same_doubt;
    if (equal ? more_sections(section) < more_sections(best) : difference < 0) best = section;
  }
  return best;
}

/// `suspects` as the side of the test set and the side beyond the joint of `cut`.
std::pair<std::vector<int>, std::vector<int>> parted(const SectionTree& tree,
                                                     const std::vector<int>& suspects, int cut) {
  std::vector<int> near, far;
  std::vector<bool> is_far(tree.sections.size());
  for (const int section : suspects) {
    const int parent = tree.sections[static_cast<std::size_t>(section)].parent;
    const bool beyond = section == cut || (parent >= 0 && is_far[static_cast<std::size_t>(parent)]);
    is_far[static_cast<std::size_t>(section)] = beyond;
    (beyond ? far : near).push_back(section);
  }
  return {near, far};
}

double volume_of(const SectionTree& tree, const std::vector<int>& sections) {
  double volume_in3 = 0;
  for (const int section : sections)
    volume_in3 += tree.sections[static_cast<std::size_t>(section)].volume_in3;
  return volume_in3;
}

std::vector<std::string> names_of(const SectionTree& tree, const std::vector<int>& sections) {
  std::vector<std::string> names;
  for (const int section : sections)
    names.push_back(tree.sections[static_cast<std::size_t>(section)].name);
  return names;
}

/// The tree with each cap taken into the line that it closes.
SectionTree without_caps(SectionTree tree, const std::vector<bool>& is_cap) {
  if (is_cap.empty()) return tree;
  SectionTree kept;
  std::vector<int> moved(tree.sections.size(), -1);
  for (std::size_t i = 0; i < tree.sections.size(); ++i) {
    Section section = std::move(tree.sections[i]);
    if (section.parent >= 0) section.parent = moved[static_cast<std::size_t>(section.parent)];
    if (section.node >= 0 && section.parent >= 0 &&
        is_cap[static_cast<std::size_t>(section.node)]) {
      kept.sections[static_cast<std::size_t>(section.parent)].doubt += section.doubt;
      continue;
    }
    moved[i] = static_cast<int>(kept.sections.size());
    kept.sections.push_back(std::move(section));
  }
  return kept;
}

}  // namespace

std::vector<SplitStep> split_order(const AirSystem& system, int connected,
                                   const std::vector<bool>& is_cap) {
  const SectionTree tree = without_caps(section_tree(system, connected), is_cap);
  std::vector<SplitStep> steps;
  Suspects all;
  for (int i = 0; i < static_cast<int>(tree.sections.size()); ++i) all.sections.push_back(i);
  std::vector<Suspects> open{all};
  while (!open.empty()) {
    const Suspects suspects = std::move(open.back());
    open.pop_back();
    if (suspects.sections.size() < 2) continue;
    const int number = static_cast<int>(steps.size()) + 1;
    if (suspects.asked_by >= 0) {
      SplitStep& asked = steps[static_cast<std::size_t>(suspects.asked_by)];
      (suspects.by_losing ? asked.step_if_loses : asked.step_if_holds) = number;
    }
    const int cut = best_cut(tree, suspects.sections);
    const auto [near, far] = parted(tree, suspects.sections, cut);
    const Section& beyond = tree.sections[static_cast<std::size_t>(cut)];
    SplitStep step;
    step.route = beyond.joint_route;
    step.node = beyond.joint_node;
    step.node_side = beyond.is_route;
    step.if_loses = names_of(tree, near);
    step.if_holds = names_of(tree, far);
    step.loses_in3 = volume_of(tree, near);
    step.holds_in3 = volume_of(tree, far);
    step.suspect_in3 = step.loses_in3 + step.holds_in3;
    step.tested_in3 = suspects.proven_in3 + step.loses_in3;
    steps.push_back(step);
    // The last put in is the first taken out: what follows a loss comes first.
    open.push_back({far, step.tested_in3, number - 1, false});
    open.push_back({near, suspects.proven_in3, number - 1, true});
  }
  return steps;
}

}  // namespace linewright
