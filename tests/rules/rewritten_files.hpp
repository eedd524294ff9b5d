#pragma once
// Project files written another way: in millimetres, all in one, or each thing in a file of its
// own. They know YAML as far as the demo and the random projects use it: lists of nodes, routes and
// structure begin at fixed columns, and no text holds a `#`.

#include <fmt/format.h>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "input/project_folder.hpp"

namespace linewright {

inline std::string file_text(const std::filesystem::path& file) {
  std::ostringstream text;
  text << std::ifstream(file, std::ios::binary).rdbuf();
  return text.str();
}

/// The lines of a text, without comments and empty lines.
inline std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) {
    line = line.substr(0, line.find('#'));
    line.erase(line.find_last_not_of(" \r") + 1);
    if (!line.empty()) lines.push_back(line);
  }
  return lines;
}

/// Every length of a text, or of a part of it, times 25.4. A number whose key is no length, or that
/// has a unit of its own, stays; a fraction, which is read in inches alone, gets its unit.
inline std::string lengths_in_mm(const std::string& text) {
  static const std::set<std::string> no_lengths{
      "linewright", "pitch",  "roll",   "positive",  "negative",    "propeller_rpm",
      "blades",     "axis",   "guards", "sweep",     "lever_ratio", "name",
      "line",       "normal", "again",  "direction", "branch",      "rod_end_angle"};
  static const std::regex token(
      R"(([a-z_]+):|[A-Za-z][\w/.-]*|(-?(?:\d+[ -])?\d+/\d+)|-?\d+(?:\.\d+)?( ?[A-Za-z][\w/]*)?)");
  const bool stretched = text.find("over: [") != std::string::npos;
  std::string key;
  std::string all;
  std::size_t done = 0;
  for (std::sregex_iterator each(text.begin(), text.end(), token), end; each != end; ++each) {
    const std::smatch& found = *each;
    all += text.substr(done, static_cast<std::size_t>(found.position()) - done);
    done = static_cast<std::size_t>(found.position() + found.length());
    if (found[1].matched) key = found[1];
    const bool number = !std::isalpha(static_cast<unsigned char>(found.str().front()));
    // Of a panel over frames, `corners` are counted.
    const bool length = !no_lengths.contains(key) && !(stretched && key == "corners");
    if (found[2].matched)
      all += found.str() + " in";
    else if (number && length && !found[3].matched)
      all += fmt::format("{:.9f}", std::stod(found.str()) * 25.4);
    else
      all += found.str();
  }
  return all + text.substr(done);
}

/// The same project file in millimetres.
inline std::string in_millimetres(const std::string& text) {
  std::string all;
  for (const std::string& line : lines_of(text))
    all += (line == "units: in" ? "units: mm" : lengths_in_mm(line)) + "\n";
  return all;
}

/// What a project's files hold, taken apart.
struct ProjectPieces {
  std::string settings;  ///< all sections but these three, and without `include`
  std::map<std::string, std::vector<std::string>> structure;  ///< by kind, one item each
  std::vector<std::string> nodes;
  std::vector<std::string> routes;

  /// Adds what a file holds; of files other than the first no settings but what any file may have.
  void add(const std::string& text, bool first) {
    std::string section;
    std::string kind;
    std::string* item = nullptr;
    const auto begin = [&](std::vector<std::string>& items) { item = &items.emplace_back(); };
    for (const std::string& line : lines_of(text)) {
      if (line.front() != ' ') {
        section = line.substr(0, line.find(':'));
        item = nullptr;
        if (is_list(section) || section == "include") continue;
      }
      if (!is_list(section)) {
        if (first || is_part(section)) settings += line + "\n";
        continue;
      }
      if (line.front() != ' ') continue;
      if (section == "structure" && line.rfind("    ", 0) != 0) {
        kind = line.substr(2, line.find(':') - 2);
        continue;
      }
      if (section == "structure" && line.rfind("    - ", 0) == 0) begin(structure[kind]);
      if (section == "nodes" && line.rfind("  - ", 0) == 0) begin(nodes);
      if (section == "routes" && line.rfind("  - ", 0) == 0) begin(routes);
      *item += line + "\n";
    }
  }

  std::string in_one() const {
    std::string all = settings + "structure:\n";
    for (const auto& [kind, items] : structure) all += "  " + kind + ":\n" + joined(items);
    return all + "nodes:\n" + joined(nodes) + "routes:\n" + joined(routes);
  }

  /// Each thing in a file of its own, from the last to the first; `project.yaml` includes them all.
  void write_apart(const ProjectFolder& folder) const {
    std::vector<std::string> files;
    const auto write = [&](const std::string& text) {
      files.push_back(fmt::format("parts/{}.yaml", files.size()));
      folder.write(files.back(), "linewright: 1\nunits: in\n" + text);
    };
    for (auto each = routes.rbegin(); each != routes.rend(); ++each) write("routes:\n" + *each);
    for (auto each = nodes.rbegin(); each != nodes.rend(); ++each) write("nodes:\n" + *each);
    for (const auto& [kind, items] : structure)
      for (const std::string& item : items) write("structure:\n  " + kind + ":\n" + item);
    std::string include;
    for (const std::string& file : files) include += (include.empty() ? "" : ", ") + file;
    folder.write("project.yaml", settings + "include: [" + include + "]\n");
  }

 private:
  static bool is_list(const std::string& section) {
    return section == "structure" || section == "nodes" || section == "routes";
  }
  /// What any file may have; in the demo and the random projects only one has it.
  static bool is_part(const std::string& section) {
    return section == "closures" || section == "tasks" || section == "bundles" ||
           section == "fittings" || section == "attitudes";
  }
  static std::string joined(const std::vector<std::string>& items) {
    std::string all;
    for (const std::string& item : items) all += item;
    return all;
  }
};

}  // namespace linewright
