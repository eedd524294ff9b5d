// What a project does not say is never taken for good news: the demo with one thing after another
// left out. Each deletion is refused, or no verdict of the whole check is better for it unless the
// result has one more unknown, or says what it took instead.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "commands/open_project.hpp"
#include "input/derive/yaml_writer.hpp"
#include "input/project_folder.hpp"
#include "input/yaml_document.hpp"
#include "lines/prepare.hpp"
#include "one_case_in.hpp"
#include "rules/judge.hpp"

namespace linewright {
namespace {

namespace fs = std::filesystem;

/// Numbers that differ by less are one number, worked out in another order.
constexpr double same_number = 1e-6;

/// Keys that say that a thing is there: without it there is nothing to judge.
const std::set<std::string> things{"hold", "include", "mirror"};

std::string text_of(const fs::path& path) {
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

/// A datum of a file: the map that has it, and which of its entries it is.
struct Datum {
  std::string file;
  YamlNode* map = nullptr;
  std::size_t entry = 0;
  std::string words;  ///< "rudder.yaml:12: routes.points.bore fairlead"
};

/// What sort of thing a map describes: of two of one sort one is looked at.
std::string sort_of(const YamlNode& map) {
  std::string sort;
  for (const char* key : {"system", "kind", "hold", "edge"})
    if (const YamlNode* value = map.find(key)) sort += " " + value->text;
  return sort;
}

bool is_list_of_maps(const YamlNode& node) {
  return node.kind == YamlNode::Kind::sequence && !node.items.empty() &&
         node.items.front().kind == YamlNode::Kind::map;
}

/// All data below a node, of each sort the first.
void collect(YamlNode& node, const std::string& file, const std::string& path,
             std::set<std::string>& known, std::vector<Datum>& data) {
  for (YamlNode& item : node.items) collect(item, file, path, known, data);
  const std::string sort = sort_of(node);
  for (std::size_t i = 0; i < node.entries.size(); ++i) {
    YamlEntry& entry = node.entries[i];
    const std::string here = path.empty() ? entry.key : path + "." + entry.key;
    if (!is_list_of_maps(entry.value) && !things.contains(entry.key) &&
        known.insert(here + sort).second)
      data.push_back(
          {file, &node, i, file + ":" + std::to_string(entry.key_where.line) + ": " + here + sort});
    collect(entry.value, file, here, known, data);
  }
}

/// Of one thing that a rule judges, at however many places: the gravest verdict and the least
/// margin.
struct Standing {
  Verdict verdict = Verdict::pass;
  std::optional<double> margin;
  int places = 0;
};

struct Checked {
  std::map<std::string, Standing> standings;
  std::map<std::string, Verdict> routes;  ///< of each rule on each route, unknown left out
  int unknown = 0;
  std::set<std::string> assumptions;
};

std::set<std::string> assumptions_of(const PreparedProject& prepared) {
  const std::vector<std::string> sentences = describe(prepared).assumptions;
  return {sentences.begin(), sentences.end()};
}

Checked checked(const PreparedProject& prepared) {
  Checked result;
  result.assumptions = assumptions_of(prepared);
  for (const Judgement& each : judge(prepared, {})) {
    if (each.verdict == Verdict::unknown) {
      ++result.unknown;
      continue;
    }
    const std::string on_route = each.rule + ": " + each.route;
    Verdict& gravest = result.routes[on_route];
    gravest = std::max(gravest, each.verdict);
    const std::string key = on_route + ": " + each.with.value_or("");
    Standing& standing =
        result.standings.try_emplace(key, Standing{each.verdict, each.margin()}).first->second;
    ++standing.places;
    standing.verdict = std::max(standing.verdict, each.verdict);
    if (each.margin())
      standing.margin = std::min(standing.margin.value_or(*each.margin()), *each.margin());
  }
  return result;
}

/// What is better without the datum, one a line.
std::string better(const Checked& with, const Checked& without) {
  std::string found;
  for (const auto& [key, verdict] : with.routes) {
    const auto now = without.routes.find(key);
    if (verdict != Verdict::pass && now != without.routes.end() && now->second == Verdict::pass)
      found += "  passes now: " + key + "\n";
  }
  for (const auto& [key, standing] : with.standings) {
    const auto now = without.standings.find(key);
    if (now == without.standings.end()) {
      if (standing.verdict != Verdict::pass) found += "  not said any more: " + key + "\n";
      continue;
    }
    if (now->second.verdict < standing.verdict) found += "  milder: " + key + "\n";
    // With fewer places the least of them may only have gone.
    if (standing.margin && now->second.margin && now->second.places == standing.places &&
        *now->second.margin > *standing.margin + same_number)
      found += "  more to spare: " + key + "\n";
  }
  return found;
}

/// A project of the demo, written anew, with nothing left out.
struct Whole {
  fs::path path;
  std::set<std::string> files;
  Checked checks;
};

/// Closures are left out where the datum is none of theirs: what a hand comes to takes most of the
/// time of a check.
void shut(Project& project, bool closures) {
  if (closures) return;
  project.closures.clear();
  project.tasks.clear();
}

Whole whole_project(const fs::path& path, bool closures) {
  OpenedProject opened = open_with_files(path);
  shut(*opened.project, closures);
  Whole whole{path, {}, checked(prepare(*opened.project))};
  for (const fs::path& file : opened.files) whole.files.insert(file.filename().string());
  return whole;
}

/// What is better now that a datum is left out, and is not said to be; empty where all is well.
std::string silently_better(const Whole& whole, bool closures) {
  auto project = open_project(whole.path);
  if (!project) return {};
  shut(*project, closures);
  const PreparedProject prepared = prepare(*project);
  const std::set<std::string> assumptions = assumptions_of(prepared);
  if (!std::includes(whole.checks.assumptions.begin(), whole.checks.assumptions.end(),
                     assumptions.begin(), assumptions.end()))
    return {};
  const Checked without = checked(prepared);
  return without.unknown > whole.checks.unknown ? std::string() : better(whole.checks, without);
}

TEST(MissingDatum, NeverMakesTheDemoBetterWithoutSayingSo) {
  const ProjectFolder folder;
  std::map<std::string, YamlDocument> documents;
  for (const auto& entry : fs::directory_iterator(fs::path(LINEWRIGHT_SOURCE_DIR) / "routes")) {
    if (entry.path().extension() != ".yaml") continue;
    const std::string name = entry.path().filename().string();
    documents[name] = read_yaml(text_of(entry.path()), name);
    folder.write(name, yaml_text_of(documents[name].root));
  }
  std::map<bool, std::vector<Whole>> projects;
  for (const bool closures : {false, true})
    for (const std::string name : {"as-drawn.yaml", "mended.yaml"})
      projects[closures].push_back(whole_project(folder.path() / name, closures));
  // What both projects have a file of its own for is looked at in both.
  std::map<bool, std::set<std::string>> known;
  std::vector<Datum> data;
  for (auto& [name, document] : documents)
    collect(document.root, name, "", known[name.find("as-drawn") != std::string::npos], data);
  ASSERT_GT(data.size(), 200u);
  for (const Datum& datum : test::some_of(data)) {
    std::vector<YamlEntry>& entries = datum.map->entries;
    const auto at = entries.begin() + static_cast<std::ptrdiff_t>(datum.entry);
    // Moved, not copied: other data point into it.
    YamlEntry left_out = std::move(*at);
    entries.erase(at);
    folder.write(datum.file, yaml_text_of(documents[datum.file].root));
    const bool closures = datum.words.find("closures.") != std::string::npos ||
                          datum.words.find("tasks.") != std::string::npos;
    for (const Whole& whole : projects[closures])
      if (whole.files.contains(datum.file)) {
        EXPECT_EQ(silently_better(whole, closures), "")
            << whole.path.filename() << " without " << datum.words;
      }
    entries.insert(entries.begin() + static_cast<std::ptrdiff_t>(datum.entry), std::move(left_out));
    folder.write(datum.file, yaml_text_of(documents[datum.file].root));
  }
}

}  // namespace
}  // namespace linewright
