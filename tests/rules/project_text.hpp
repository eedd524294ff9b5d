#pragma once
// Projects written as YAML in a test, loaded with the built-in catalogue and judged by one rule.

#include <gtest/gtest.h>

#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "input/load_project.hpp"
#include "input/project_folder.hpp"
#include "lines/motion/line_motion.hpp"
#include "lines/prepare.hpp"
#include "rules/judge.hpp"

namespace linewright {

/// The sections of a project file. What a test does not set is as plain as can be: no tolerance,
/// one temperature, one g.
struct ProjectSections {
  std::string units = "in";
  std::string build_tolerance = "0";
  std::string temperature = "{min: 70 degF, rigged: 70 degF, max: 70 degF}";
  std::string load_factor = "{positive: 1, negative: -1}";
  std::string structure;  ///< the lines under `structure:`, two spaces in
  std::string nodes;      ///< list items, two spaces in
  std::string routes;     ///< list items, two spaces in
  std::string rest;       ///< whole sections

  std::string text() const {
    std::string all = "linewright: 1\nname: test\nunits: " + units +
                      "\nbuild_tolerance: " + build_tolerance + "\ntemperature: " + temperature +
                      "\nload_factor: " + load_factor + "\n";
    if (!structure.empty()) all += "structure:\n" + structure;
    return all + "nodes:\n" + nodes + "routes:\n" + routes + rest;
  }
};

/// A project ready to judge. Throws when the text does not load, with what the loader says.
class ProjectText {
 public:
  explicit ProjectText(const ProjectSections& sections) : ProjectText(sections.text()) {}
  explicit ProjectText(const std::string& text)
      : project_(loaded(text)), prepared_(prepare(*project_)) {}

  const Project& project() const { return *project_; }
  const PreparedProject& prepared() const { return prepared_; }
  const PreparedRoute& route(const std::string& name) const {
    const PreparedRoute* found = prepared_.find_route(name);
    if (!found) throw std::runtime_error("no route " + name);
    return *found;
  }
  std::vector<SpanReach> reaches(const std::string& name) const {
    const auto index = static_cast<std::size_t>(&route(name) - prepared_.routes.data());
    return motion_of(prepared_).reaches[index];
  }
  std::vector<Judgement> judged(const std::string& rule, LengthUnit unit = LengthUnit::inch) const {
    return judge(prepared_, Phrasing{unit}, rule);
  }

 private:
  static std::unique_ptr<Project> loaded(const std::string& text) {
    const ProjectFolder folder;
    folder.write("project.yaml", text);
    LoadResult result = load_project(folder.path() / "project.yaml", built_in_catalogue());
    if (!result.project) throw std::runtime_error(shown(result.errors) + "in\n" + text);
    // That sums are made with little load is not what is tested.
    result.project->load_factor.where.reset();
    return std::make_unique<Project>(std::move(*result.project));
  }

  std::unique_ptr<Project> project_;
  PreparedProject prepared_;
};

inline std::vector<Judgement> judged(const ProjectSections& sections, const std::string& rule) {
  return ProjectText(sections).judged(rule);
}

/// Those about one other thing.
inline std::vector<Judgement> with(const std::vector<Judgement>& judgements,
                                   const std::string& other) {
  std::vector<Judgement> found;
  for (const Judgement& judgement : judgements)
    if (judgement.with == other) found.push_back(judgement);
  return found;
}

/// The one judgement there must be; an empty one, and a failed test, where there is none or more.
inline Judgement only(const std::vector<Judgement>& judgements) {
  EXPECT_EQ(judgements.size(), 1u);
  for (const Judgement& judgement : judgements)
    if (judgements.size() != 1) ADD_FAILURE() << judgement.rule << ": " << judgement.message;
  return judgements.size() == 1 ? judgements.front() : Judgement{};
}

/// A section with a cable as thick as 1/8 7x19 steel that weighs next to nothing: at any tension it
/// hangs where it is drawn.
inline const std::string weightless_cable_lines =
    "lines:\n  - {name: cable-weightless, kind: cable, construction: 7x19, outside: 0.125, "
    "plus_tolerance: 0.014, weight: 1e-12 lb/in, axial_stiffness: 1e5 lbf, expansion: 6.5e-6, "
    "source: invented}\n";

/// A node that structure holds, far enough from other things to stand alone.
inline std::string held_node(const std::string& name, const std::string& at) {
  return "  - {name: " + name + ", kind: bulkhead, at: [" + at + "]}\n";
}

/// The line, counted from one, on which `wanted` first stands.
inline int line_number(const std::string& text, const std::string& wanted) {
  const std::size_t at = text.find(wanted);
  if (at == std::string::npos) return 0;
  int line = 1;
  for (std::size_t i = 0; i < at; ++i) line += text[i] == '\n' ? 1 : 0;
  return line;
}

}  // namespace linewright
