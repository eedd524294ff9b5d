#pragma once
// What is fed with anything at all. Each takes bytes, and ends the program where what is said of it
// does not hold; whatever else goes wrong, the sanitizers find.

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace linewright::fuzz {

using Target = void (*)(std::string_view bytes);

/// Files of a project, the first "project.yaml"; a line "=== NAME" begins another. Loads or says
/// why not, with a place for each error, and what it loads expands to the same.
void project(std::string_view bytes);
/// The same files through `check`, `cutlist`, `rig`, `leak-test plan` and what else tells of a
/// project: each ends with an exit code of its own, and none says "nan" or "inf".
void whole(std::string_view bytes);
/// A quantity of every dimension: a finite number, or an error.
void quantity(std::string_view bytes);
void mesh_stl(std::string_view bytes);
void mesh_obj(std::string_view bytes);
void mesh_glb(std::string_view bytes);
/// A log of readings of either kind; what it holds is judged.
void readings(std::string_view bytes);

struct NamedTarget {
  std::string_view name;
  Target run;
  /// Folders below the project's root that hold seeds, parted by spaces, and the ending of the
  /// files to take. Of a ".txt" each line is one.
  std::string_view seeds;
  std::string_view ending;
};

std::span<const NamedTarget> targets();

/// The seeds of a target, each as the target takes it.
std::vector<std::string> seeds_of(const NamedTarget& target);

}  // namespace linewright::fuzz
